package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Noun;
import org.keeplit.condition.Type;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.procedure.Example;
import org.keeplit.procedure.Procedure;
import org.keeplit.rule.Rule;
import org.keeplit.rule.Trigger;

/** Reads what must come of an example: that it holds, or what it breaks and for which reason. */
final class MustReader {
    private static final String FORM = "must hold, or must fail on RULE at STEP on phase B";

    private final Item item;
    private final Session session;
    private final Report report;
    private final Header header;
    private final Set<String> labels;

    /** A reader. @param labels the labels of the example's steps */
    MustReader(Item item, Session session, Header header, Set<String> labels) {
        this.item = item;
        this.session = session;
        this.report = item.report();
        this.header = header;
        this.labels = labels;
    }

    /** {@return what must be broken, nothing if the example must hold} @param title the example */
    List<Example.Breaks> read(List<Node> sections, Lexeme title) {
        List<Example.Breaks> breaks = new ArrayList<>();
        List<Node> holds = new ArrayList<>();
        List<Node> musts = sections.stream().filter(s -> s.line().starts("must")).toList();
        for (Node section : musts) {
            if (section.readable()) {
                report.attempt(() -> must(section, breaks, holds));
            }
        }
        if (musts.isEmpty()) {
            report.add(Code.MISSING_LINE
                    .at(title.span(), "the example does not say what must come of it")
                    .help("end it with " + FORM));
        } else if (!holds.isEmpty() && musts.size() > 1) {
            report.add(Code.DUPLICATE.at(
                    holds.get(0).span(), "an example that must hold cannot say more about what must come of it"));
        }
        return breaks;
    }

    private void must(Node section, List<Example.Breaks> breaks, List<Node> holds) {
        var parts = Shape.of(section.line(), Shapes::mustLine, FORM);
        if (parts.HOLD() != null) {
            if (!parts.any().isEmpty() || !section.children().isEmpty()) {
                throw new Misread(Code.UNEXPECTED.at(section.span(), "“must hold” stands alone"));
            }
            holds.add(section);
            return;
        }
        Scope none = Scope.root(session.vocabulary(item));
        Work work = new Work(session, report, header.crew, new LinkedHashMap<>());
        Procedure.MustFail what = new EditResolver(work, none, labels, true).mustFail(section, header);
        Optional<Rule> rule = header.keeps.stream()
                .filter(book -> what.rulebook().isEmpty() || what.rulebook().get().equals(book.name()))
                .flatMap(book -> book.rules().stream())
                .filter(r -> r.name().equals(what.rule()))
                .findFirst();
        breaks.add(reasons(section, what, rule));
    }

    private Example.Breaks reasons(Node section, Procedure.MustFail what, Optional<Rule> rule) {
        Scope scope = scope(rule);
        List<String> own = rule.map(MustReader::variables).orElse(List.of());
        Map<String, String> bindings = new LinkedHashMap<>();
        ImmutableList.Builder<Condition> because = ImmutableList.builder();
        List<String> says = new ArrayList<>();
        for (Node node : section.children()) {
            if (node.readable()) {
                report.attempt(() -> reason(node, scope, own, bindings, because, says));
            }
        }
        return new Example.Breaks(what, ImmutableMap.copyOf(bindings), because.build(), says.stream().findFirst());
    }

    private void reason(
            Node node,
            Scope scope,
            List<String> own,
            Map<String, String> bindings,
            ImmutableList.Builder<Condition> because,
            List<String> says) {
        Line line = node.line();
        switch (line.head().getText()) {
            case "with" -> {
                for (var binding : Shape.of(line, Shapes::withLine, "with D as r-24 and P as B").bindings().binding()) {
                    Lexeme variable = Shape.lexeme(binding.name(0));
                    if (!own.contains(variable.getText())) {
                        throw new Misread(Code.UNKNOWN_NAME
                                .at(variable.span(), "the rule has no variable " + Cursor.clip(variable.getText()))
                                .help(own.isEmpty()
                                        ? "its first line binds none"
                                        : "it has " + Suggestions.list(own, "and")));
                    }
                    bindings.put(variable.getText(), Shape.lexeme(binding.name(1)).value());
                }
            }
            case "because" -> {
                Cursor cursor = Cursor.over(line);
                cursor.next("because");
                because.add(new ConditionReader(scope, report, node).read(cursor));
            }
            case "says" -> says.add(((Lexeme) Shape.of(line, Shapes::saysLine, "says \"…\"")
                            .STRING()
                            .getSymbol())
                    .value());
            default -> throw new Misread(Code.UNKNOWN_LINE
                    .at(line.head().span(), "“" + Cursor.clip(line.head().getText()) + "” starts no line here")
                    .help("a reason starts with “with”, “because” or “says”"));
        }
    }

    /** {@return the variables that the first line of a rule binds} */
    private static List<String> variables(Rule rule) {
        List<String> all = new ArrayList<>();
        for (Trigger trigger : rule.triggers()) {
            trigger.binders().forEach(b -> all.add(b.variable()));
            trigger.phase().ifPresent(all::add);
            trigger.by().ifPresent(all::add);
        }
        rule.binders().forEach(b -> all.add(b.variable()));
        return all.stream().distinct().toList();
    }

    /** {@return the names in a reason: the rule's variables, then those of the example and what is in the network} */
    private Scope scope(Optional<Rule> rule) {
        Scope scope = VariantResolver.scope(header, item, session);
        scope.addNetworks(header.networks, header.allNetworks);
        scope.define(() -> header.keeps.stream()
                .flatMap(book -> book.definitions().stream())
                .toList());
        rule.ifPresent(r -> {
            for (Trigger trigger : r.triggers()) {
                trigger.binders().forEach(b -> scope.inherit(b.variable(), b.noun(), b.span()));
                trigger.phase().ifPresent(p -> scope.inherit(p, Noun.all(Type.PHASE, "phase"), r.span()));
                trigger.by().ifPresent(p -> scope.inherit(p, Noun.all(Type.PERSON, "person"), r.span()));
            }
            r.binders().forEach(b -> scope.inherit(b.variable(), b.noun(), b.span()));
        });
        return scope;
    }
}
