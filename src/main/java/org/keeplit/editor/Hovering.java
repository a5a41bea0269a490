package org.keeplit.editor;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.keeplit.insight.AsWritten;
import org.keeplit.explore.Standing;
import org.keeplit.network.Element;
import org.keeplit.network.Kind;
import org.keeplit.network.Network;
import org.keeplit.procedure.Procedure;
import org.keeplit.rule.Chance;
import org.keeplit.rule.Rule;
import org.keeplit.rule.Rulebook;
import org.keeplit.rule.Template;

/** Tells what a name means: the device with its ratings, how it stands before and after the step; a rule, a kind, a person. */
final class Hovering {
    private final Page page;
    private final Names names;
    private final Proved proved;

    Hovering(Page page, Names names, Proved proved) {
        this.page = page;
        this.names = names;
        this.proved = proved;
    }

    /** {@return the text, in Markdown; nothing where there is nothing to tell} @param name what is asked for @param line the line, from 1 */
    Optional<String> of(Name name, int line) {
        List<String> parts = new ArrayList<>();
        switch (name.sort()) {
            case ELEMENT -> network(name.scope()).flatMap(n -> n.element(name.text())).ifPresent(e -> element(e, parts));
            case KIND -> kind(name.text()).ifPresent(k -> kind(k, parts));
            case RULE -> rule(name.text()).ifPresent(r -> parts.add("**" + r.name() + "**, " + r.severity().word() + "\n\n" + r.because()
                    + "\n\nSource: " + r.citation().orElse("common practice, no source")));
            case EVENT -> page.library().rulebooks().values().stream().flatMap(b -> b.chances().stream()).filter(c -> c.name().equals(name.text()))
                    .findFirst().ifPresent(c -> event(c, parts));
            case NODE -> network(name.scope()).ifPresent(n -> parts.add("node **" + name.text() + "**, phases " + n.nodes().get(name.text())));
            case PROCEDURE -> Optional.ofNullable(page.library().procedures().get(name.text()))
                    .ifPresent(p -> parts.add("**" + p.name() + "** revision " + p.revision() + "\n\n" + p.title()));
            case RULEBOOK -> Optional.ofNullable(page.library().rulebooks().get(name.text()))
                    .ifPresent(b -> parts.add("rulebook **" + b.name() + "**\n\n" + b.title() + "\n\n" + b.rules().size() + " rules"));
            case PERSON -> procedures(name.scope()).flatMap(p -> p.crew().stream()).filter(p -> p.name().equals(name.text())).findFirst()
                    .ifPresent(p -> parts.add("**" + p.name() + "**, " + p.title()));
            case VARIABLE -> variable(name, parts);
            default -> { }
        }
        states(name, line, parts);
        return parts.isEmpty() ? Optional.empty() : Optional.of(String.join("\n\n", parts));
    }

    /** What happens, as the story tells it, and which rules are kept in spite of it. */
    private void event(Chance chance, List<String> parts) {
        parts.add("event **" + chance.name() + "**\n\n" + said(chance.says()));
        String rules = names.all().filter(n -> n.sort() == Name.Sort.EVENT && !n.declares() && n.text().equals(chance.name()))
                .flatMap(n -> ruleAround(n).stream())
                .distinct()
                .collect(Collectors.joining(", "));
        if (!rules.isEmpty()) {
            parts.add("Rules judged in spite of it: " + rules);
        }
    }

    /** {@return a sentence as it is written, with its gaps} */
    private static String said(Template says) {
        return says.parts().stream()
                .map(part -> part instanceof Template.Text text ? text.text() : part instanceof Template.Gap gap ? "{" + gap.variable() + "}" : "{\u2026}")
                .collect(Collectors.joining());
    }

    /** {@return the rule in which an event is named: the last one that begins above} */
    private Optional<String> ruleAround(Name event) {
        return names.in(event.span().source().name()).stream()
                .filter(n -> n.sort() == Name.Sort.RULE && n.span().line() < event.span().line())
                .reduce((a, b) -> b)
                .map(Name::text);
    }

    private Optional<Network> network(String name) {
        return Optional.ofNullable(page.library().networks().get(name));
    }

    private Optional<Kind> kind(String name) {
        return page.library().equipment().values().stream().flatMap(e -> Stream.ofNullable(e.kinds().get(name))).findFirst();
    }

    private Optional<Rule> rule(String name) {
        return page.library().rulebooks().values().stream().map(Rulebook::rules).flatMap(List::stream).filter(r -> r.name().equals(name)).findFirst();
    }

    private Stream<Procedure> procedures(String root) {
        return page.library().procedures().values().stream().filter(p -> names.root(p.name()).equals(root));
    }

    private static void element(Element element, List<String> parts) {
        StringBuilder text = new StringBuilder("**" + element.name() + "**, " + element.kind().name() + ", phases " + element.phases());
        if (element instanceof Element.Branch branch) {
            text.append(", from ").append(branch.from()).append(" to ").append(branch.to());
        }
        parts.add(text.toString());
        List<String> figures = new ArrayList<>();
        element.figures().forEach((name, value) -> figures.add(name + " " + value));
        element.kind().ratings().forEach((name, value) -> {
            if (!element.figures().containsKey(name)) {
                figures.add(name + " " + value + " (its kind's)");
            }
        });
        if (!figures.isEmpty()) {
            parts.add(String.join(", ", figures));
        }
    }

    private static void kind(Kind kind, List<String> parts) {
        parts.add("kind **" + kind.name() + "**");
        List<String> verbs = kind.verbs().stream().map(v -> v.one().with("…")).toList();
        if (!verbs.isEmpty()) {
            parts.add("people do: " + String.join(", ", verbs));
        }
        List<String> ratings = new ArrayList<>();
        kind.ratings().forEach((name, value) -> ratings.add(name + " " + value));
        if (!ratings.isEmpty()) {
            parts.add(String.join(", ", ratings));
        }
    }

    /** A parameter stands for something else at each place. */
    private void variable(Name name, List<String> parts) {
        procedures(name.scope()).findFirst().ifPresent(procedure -> {
            procedure.parameters().stream().filter(p -> p.name().equals(name.text())).findFirst()
                    .ifPresent(p -> parts.add("**" + p.name() + "**, " + p.noun().words()));
            procedure.temporaries().stream().filter(t -> t.name().equals(name.text())).findFirst()
                    .ifPresent(t -> parts.add("**" + t.name() + "**, " + t.kind().name() + " for each phase of " + t.of()));
            procedure.permits().stream().filter(p -> p.name().equals(name.text())).findFirst()
                    .ifPresent(p -> parts.add("**" + p.name() + "**, " + p.type().name().toLowerCase(java.util.Locale.ROOT) + " for " + p.target()));
            for (Procedure.Proof proof : procedure.proofs()) {
                Optional.ofNullable(proof.arguments().get(name.text()))
                        .flatMap(term -> network(proof.network()).flatMap(n -> n.element(term.toString())))
                        .ifPresent(e -> element(e, parts));
            }
        });
    }

    /** How the thing stands before and after the step of the line, when the steps are done in the order of the text. */
    private void states(Name name, int line, List<String> parts) {
        if (proved.version() != page.version()) {
            return;
        }
        for (Proved.Verdict verdict : proved.verdicts()) {
            String procedure = verdict.judgement().procedure().name();
            boolean other = !names.root(procedure).equals(name.scope()) && name.sort() != Name.Sort.ELEMENT;
            if (other || verdict.written().isEmpty()) {
                continue;
            }
            AsWritten written = verdict.written().get();
            String object = Optional.ofNullable(verdict.judgement().instance().proof().arguments().get(name.text()))
                    .map(Object::toString)
                    .orElse(name.text());
            Standing before = written.start();
            for (AsWritten.Done done : written.steps()) {
                boolean here = done.part().acts().get(0).step().span().line() == line
                        && done.part().acts().get(0).step().span().source().name().equals(page.name());
                if (here && !before.words(object).isEmpty()) {
                    parts.add("Before this step: " + String.join(", ", before.words(object)));
                    parts.add("After it: " + String.join(", ", done.after().words(object)));
                    return;
                }
                before = done.after();
            }
        }
    }
}
