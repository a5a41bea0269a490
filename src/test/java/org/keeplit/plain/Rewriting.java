package org.keeplit.plain;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Says a made case in other words: other phases, other names, another order of lines. */
final class Rewriting {
    private static final Pattern PHASES = Pattern.compile("(?<= on | onto phase | is phase )([ABC]+)\\b");

    private Rewriting() {}

    /** {@return the case with every text changed} */
    static MadeCase texts(MadeCase made, UnaryOperator<String> change, UnaryOperator<String> phases) {
        return new MadeCase(
                made.elements().stream()
                        .map(e -> new MadeElement(
                                e.kind(),
                                change.apply(e.name()),
                                change.apply(e.from()),
                                e.to() == null ? null : change.apply(e.to()),
                                phases.apply(e.phases()),
                                e.more().stream().map(change).toList()))
                        .toList(),
                made.header().stream().map(change).toList(),
                made.starts().stream().map(change).toList(),
                parts(made.parts(), change),
                made.ends().stream().map(change).toList(),
                made.books(),
                made.rules().stream().map(change).toList());
    }

    private static List<Part> parts(List<Part> parts, UnaryOperator<String> change) {
        List<Part> all = new ArrayList<>();
        for (Part part : parts) {
            if (part instanceof Part.Step step) {
                all.add(new Part.Step(change.apply(step.sentence()), step.clauses().stream().map(change).toList()));
            } else if (part instanceof Part.Group group) {
                all.add(new Part.Group(
                        change.apply(group.head()),
                        parts(group.parts(), change),
                        group.otherwise() == null ? null : parts(group.otherwise(), change)));
            }
        }
        return all;
    }

    /** {@return the case on other phases} @param to the letters that A, B and C become */
    static MadeCase phases(MadeCase made, String to) {
        UnaryOperator<String> letters = s -> {
            if (s.startsWith("X")) {
                return s;
            }
            StringBuilder all = new StringBuilder();
            s.chars().map(c -> to.charAt(c - 'A')).sorted().forEach(c -> all.append((char) c));
            return all.toString();
        };
        return texts(
                made,
                text -> {
                    Matcher matcher = PHASES.matcher(text);
                    return matcher.replaceAll(m -> letters.apply(m.group(1)));
                },
                letters);
    }

    /** {@return the case with nothing in it that takes phases in the order of the letters} */
    static MadeCase withoutOrderOfPhases(MadeCase made) {
        return texts(
                made,
                text -> text.replace(", in order", "")
                        .replaceAll("(?<=^for each phase P of [-a-z0-9]{1,9}) in order$", "")
                        .replaceAll(", (source side|load side|ground end|line end) first", "")
                        .replace("phases in order", "records \"sheet\""),
                phases -> phases);
    }

    static MadeCase renamed(MadeCase made) {
        return texts(made, text -> text.replaceAll("\\b([ncdglstuv])-(\\d+)\\b", "x$2-$1"), phases -> phases);
    }

    /** {@return the case with every group, and the whole, in an order} */
    static MadeCase allInOrder(MadeCase made, String order) {
        List<Part> changed = parts(
                made.parts(), text -> List.of("in order", "in any order", "together").contains(text) ? order : text);
        return made.withParts(List.of(Part.group(order, changed)));
    }
}
