package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.rule.Overridden;
import org.keeplit.rule.Rule;
import org.keeplit.rule.Rulebook;

/** The rules of a rulebook while it is read: those of the books that it extends, what overrides them, its own. */
final class RuleTable {
    private static final String OVERRIDE = "override rule NAME because \"…\"";

    private final String book;
    private final Report report;
    private final Map<String, Rule> rules = new LinkedHashMap<>();
    private final Map<String, String> origins = new LinkedHashMap<>();
    private final Map<String, Lexeme> places = new LinkedHashMap<>();
    private final List<Overridden> overridden = new ArrayList<>();
    private boolean forgiving;
    private List<String> events = List.of();

    RuleTable(String book, Report report) {
        this.book = book;
        this.report = report;
    }

    /** From here on a rule that is not known is no mistake, since a book could not be read. */
    void forgive() {
        forgiving = true;
    }

    /** The events in spite of which rules may be judged. @param known the names of those of the rulebook and of those that it extends */
    void knowing(List<String> known) {
        events = known;
    }

    /** Takes over what an extended book has. @param place where it is extended */
    void inherit(Rulebook base, Lexeme place) {
        for (Rule rule : base.rules()) {
            String first = origins.putIfAbsent(rule.name(), base.name());
            if (first != null) {
                report.add(Code.DUPLICATE.at(
                        place.span(), "both " + first + " and " + base.name() + " have a rule " + rule.name()));
            }
            rules.put(rule.name(), rule);
        }
        overridden.addAll(base.overridden());
    }

    /** Reads a rule. */
    void add(Node section, Scope scope, List<Applies> applies) {
        // A rule with a wrong name is read for its other mistakes.
        Lexeme name = report.attempt(() -> Shape.lexeme(
                        Shape.of(section.line(), Shapes::ruleHead, "rule NAME").name()))
                .orElse(section.line().last());
        if (origins.containsKey(name.value())) {
            report.add(Code.DUPLICATE
                    .at(name.span(), "the rule " + name.value() + " of " + origins.get(name.value()) + " counts here")
                    .help("to put another in its place: override rule " + name.value() + " because \"…\""));
        }
        first(name);
        rules.putIfAbsent(name.value(), new RuleResolver(name, section, scope, report).knowing(events).resolve(applies));
    }

    /** Reads what stands for a rule of an extended book, or that nothing does. */
    void override(Node section, Scope scope, List<Applies> applies) {
        Line line = section.line();
        Lexeme name;
        String because = "";
        if (line.starts("override", "rule") && line.lexemes().size() == 3) {
            report.add(Code.NO_REASON
                    .at(line.span(), "a rule is overridden with no reason given")
                    .help("say why on the same line: " + OVERRIDE));
            name = line.last();
        } else {
            var parts = Shape.of(line, Shapes::overrideLine, OVERRIDE);
            name = Shape.lexeme(parts.name());
            Lexeme reason = (Lexeme) parts.STRING().getSymbol();
            because = reason.value();
            if (because.isBlank()) {
                report.add(Code.NO_REASON.at(reason.span(), "the reason for overriding the rule is empty"));
            }
        }
        String origin = origins.get(name.value());
        if (origin == null && !forgiving) {
            report.add(Code.UNKNOWN_RULE
                    .at(name.span(), "no rulebook that this one extends has a rule " + Cursor.clip(name.value()))
                    .help(Suggestions.didYouMean(name.value(), origins.keySet())
                            .orElse(
                                    origins.isEmpty()
                                            ? "add a line “extends RULEBOOK” above"
                                            : "their rules are " + Suggestions.list(origins.keySet(), "and"))));
        }
        first(name);
        boolean replaces = !section.children().isEmpty();
        if (replaces) {
            rules.put(name.value(), new RuleResolver(name, section, scope, report).knowing(events).resolve(applies));
        } else {
            rules.remove(name.value());
        }
        if (origin != null) {
            overridden.add(new Overridden(name.value(), origin, book, replaces, because, name.span()));
        }
    }

    private void first(Lexeme name) {
        Lexeme first = places.putIfAbsent(name.value(), name);
        if (first != null) {
            report.add(Code.DUPLICATE
                    .at(name.span(), "there is already a rule " + name.value())
                    .related(first.span(), "the first one"));
        }
    }

    ImmutableList<Rule> rules() {
        return ImmutableList.copyOf(rules.values());
    }

    ImmutableList<Overridden> overridden() {
        return ImmutableList.copyOf(overridden);
    }
}
