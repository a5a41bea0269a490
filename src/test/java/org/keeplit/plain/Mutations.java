package org.keeplit.plain;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Spoils procedures in small ways; most come out wrong, many come out right. */
final class Mutations {
    private static final Pattern PHASE = Pattern.compile(" on (P|[ABC]+)(?=$|,| )");
    private final Draw draw;
    private final List<MadeElement> elements;
    private final ExtraSteps extra;

    Mutations(Draw draw, List<MadeElement> elements, ExtraSteps extra) {
        this.draw = draw;
        this.elements = elements;
        this.extra = extra;
    }

    List<Part> mutate(List<Part> parts) {
        if (parts.isEmpty()) {
            return List.of(extra.make());
        }
        // Go into a group as often as the top is changed.
        int at = draw.below(parts.size());
        if (parts.get(at) instanceof Part.Group group && draw.chance(60) && !group.parts().isEmpty()) {
            List<Part> inside = mutate(group.parts());
            return replaced(parts, at, inside.isEmpty() ? extra.make() : Part.with(group, inside));
        }
        List<Part> all = new ArrayList<>(parts);
        switch (draw.below(13)) {
            case 0, 1 -> {
                if (all.size() > 1) {
                    all.remove(at);
                }
            }
            case 2, 3 -> {
                if (all.size() > 1) {
                    int before = Math.max(0, at - 1);
                    all.add(before, all.remove(at));
                }
            }
            case 4 -> all.add(draw.below(all.size()), all.remove(at));
            case 5 -> all.add(draw.below(all.size() + 1), all.get(at));
            case 6, 7 -> all.add(draw.below(all.size() + 1), extra.make());
            case 8 -> all.set(at, step(all.get(at), this::otherPhase));
            case 9 -> all.set(at, step(all.get(at), this::otherDevice));
            case 10 -> all.set(at, reordered(all.get(at)));
            case 11 -> {
                return grouped(all, at);
            }
            default -> all.set(at, clause(all.get(at)));
        }
        return all;
    }

    private static List<Part> replaced(List<Part> parts, int at, Part by) {
        List<Part> all = new ArrayList<>(parts);
        all.set(at, by);
        return all;
    }

    private static Part step(Part part, UnaryOperator<String> change) {
        return part instanceof Part.Step s ? new Part.Step(change.apply(s.sentence()), s.clauses()) : part;
    }

    private String otherPhase(String sentence) {
        Matcher matcher = PHASE.matcher(sentence);
        return matcher.find() ? matcher.replaceFirst(" on " + draw.one("A", "B", "C", "AB", "ABC")) : sentence;
    }

    private String otherDevice(String sentence) {
        List<MadeElement> devices = elements.stream().filter(MadeElement::isDevice).toList();
        if (devices.isEmpty() || sentence.contains(" lead ") || sentence.contains(" bushing ") || sentence.contains("install")) {
            return sentence;
        }
        return sentence.replaceFirst("\\bd-\\d+\\b", draw.one(devices).name());
    }

    private Part reordered(Part part) {
        if (part instanceof Part.Step step) {
            return new Part.Step(
                    step.sentence().endsWith(", in order")
                            ? step.sentence().replace(", in order", "")
                            : step.sentence(),
                    step.clauses());
        }
        Part.Group group = (Part.Group) part;
        String head = group.head();
        if (head.startsWith("for each")) {
            head = head.endsWith(" in order") ? head.replace(" in order", "") : head + " in order";
        } else if (!head.startsWith("if") && !head.startsWith("repeat")) {
            head = draw.one("in order", "in any order", "together");
        }
        return new Part.Group(head, group.parts(), group.otherwise());
    }

    /** Puts some neighbours into a group of their own. */
    private List<Part> grouped(List<Part> parts, int at) {
        int until = Math.min(parts.size(), at + draw.between(2, 3));
        List<Part> inside = List.copyOf(parts.subList(at, until));
        List<Part> all = new ArrayList<>(parts.subList(0, at));
        all.add(Part.group(
                draw.one("in order", "in any order", "together", "together", "repeat 2 times", "repeat at most 2 times"),
                inside));
        all.addAll(parts.subList(until, parts.size()));
        return all;
    }

    private Part clause(Part part) {
        if (!(part instanceof Part.Step step) || step.sentence().contains("inspects")) {
            return part;
        }
        List<String> clauses = new ArrayList<>(step.clauses());
        if (!clauses.isEmpty() && draw.chance(50)) {
            clauses.clear();
        } else {
            String condition = draw.one("every load L is supplied", "every person W is on the ground", "H is in force");
            clauses.add(draw.one(
                    "as one because \"hands together\"", "requires " + condition, "expects " + condition,
                    "records \"sheet\""));
        }
        if (clauses.stream().filter(c -> c.startsWith("as one")).count() > 1) {
            return part;
        }
        return new Part.Step(step.sentence(), clauses);
    }
}
