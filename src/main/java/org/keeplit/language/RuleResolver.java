package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Noun;
import org.keeplit.condition.Type;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.rule.Rule;
import org.keeplit.rule.Template;

/** Builds one rule from its section. */
final class RuleResolver {
    private static final ImmutableSet<String> HEADS =
            ImmutableSet.of("always", "never", "while", "before", "after", "between", "at");
    private static final List<String> CLAUSES =
            List.of("require", "unless", "even", "severity", "applies", "says", "because", "citation");

    private final Lexeme name;
    private final Node section;
    private final Report report;
    private final Scope scope;
    private final Map<String, Node> lines = new LinkedHashMap<>();
    private final RuleHead head;
    private List<String> events = List.of();

    /**
     * A reader of one rule.
     *
     * @param book the names that its rulebook makes known
     */
    RuleResolver(Lexeme name, Node section, Scope book, Report report) {
        this.name = name;
        this.section = section;
        this.report = report;
        this.scope = book.inner();
        this.head = new RuleHead(scope, report, section);
    }

    /** {@return this reader, which knows of events} @param known the names of those of the rulebook and of those that it extends */
    RuleResolver knowing(List<String> known) {
        events = known;
        return this;
    }

    /** {@return the rule} @param applies what the whole rulebook applies to */
    Rule resolve(List<Applies> applies) {
        int before = report.errors();
        boolean readable = sort();
        Node first = lines.get("head");
        if (first == null) {
            if (readable) {
                report.add(Code.MISSING_LINE
                        .at(name.span(), "the rule " + name.value() + " does not say when it is judged")
                        .help("it starts with always, never, while, before, after, between, at the start or at the end"));
            }
            throw Misread.told();
        }
        try {
            head.read(first);
        } catch (Misread misread) {
            // The other lines are read for their mistakes, though it is not known what the variables are.
            report.add(misread);
            scope.forgive();
        }
        Optional<Condition> require = clause("require");
        Optional<Condition> unless = clause("unless");
        ImmutableSet<String> evenIf = report.attempt(this::evenIf).orElse(ImmutableSet.of());
        Rule.Severity severity = report.attempt(this::severity).orElse(Rule.Severity.STOP);
        Optional<Applies> own = applies();
        Template says = text("says", readable)
                .flatMap(t -> report.attempt(() -> new TemplateReader(scope, t).read()))
                .orElse(new Template(ImmutableList.of()));
        String because = text("because", readable).map(Lexeme::value).orElse("");
        Optional<String> citation = text("citation", false).map(Lexeme::value);
        Condition body = body(require, readable && report.errors() == before);
        if (report.errors() != before) {
            throw Misread.told();
        }
        Rule rule = new Rule(
                name.value(),
                head.form(),
                ImmutableList.copyOf(head.triggers()),
                ImmutableList.copyOf(head.until()),
                ImmutableList.copyOf(head.binders()),
                head.form() == Rule.Form.WHILE ? Optional.of(head.condition()) : Optional.empty(),
                body,
                unless,
                evenIf,
                severity,
                says,
                because,
                citation,
                name.span());
        if (own.isPresent()) {
            rule = own.get().to(rule, true);
        }
        for (Applies one : applies) {
            rule = one.to(rule, false);
        }
        return rule;
    }

    /** {@code even if clamp-comes-off, feeder-trips}. */
    private ImmutableSet<String> evenIf() {
        Node node = lines.get("even");
        return node == null ? ImmutableSet.of() : ChanceResolver.named(Cursor.over(node.line()), events);
    }

    /** {@code severity caution}. */
    private Rule.Severity severity() {
        Node node = lines.get("severity");
        if (node == null) {
            return Rule.Severity.STOP;
        }
        Cursor cursor = Cursor.over(node.line());
        cursor.next("severity");
        Lexeme word = cursor.next("stop, caution or advice");
        cursor.finish("the severity");
        List<String> known = new ArrayList<>();
        for (Rule.Severity severity : Rule.Severity.values()) {
            if (word.is(severity.word())) {
                return severity;
            }
            known.add(severity.word());
        }
        throw new Misread(Code.UNKNOWN_SEVERITY
                .at(word.span(), "“" + Cursor.clip(word.getText()) + "” is no severity")
                .help(Suggestions.didYouMean(word.getText(), known).orElse("it is stop, caution or advice")));
    }

    private Optional<Applies> applies() {
        Node node = lines.get("applies");
        return node == null
                ? Optional.empty()
                : report.attempt(() -> Applies.read(Cursor.over(node.line()), scope));
    }

    /** Puts the lines by their first words. @return whether all of them can be read */
    private boolean sort() {
        boolean readable = true;
        for (Node node : section.children()) {
            String word = node.head().getText();
            boolean isHead = HEADS.contains(word);
            if (!node.readable()) {
                readable = false;
            } else if (!isHead && !CLAUSES.contains(word)) {
                List<String> known = new ArrayList<>(HEADS);
                known.addAll(CLAUSES);
                report.add(Code.UNKNOWN_LINE
                        .at(node.head().span(), "“" + Cursor.clip(word) + "” starts no line of a rule")
                        .help(Suggestions.didYouMean(word, known)
                                .orElse("its lines start with " + Suggestions.list(known, "or"))));
                readable = false;
            } else {
                Node first = lines.putIfAbsent(isHead ? "head" : word, node);
                if (first != null) {
                    report.add(Code.DUPLICATE
                            .at(node.head().span(), "this rule has such a line already")
                            .related(first.head().span(), "the first one"));
                }
            }
        }
        return readable;
    }

    private Optional<Condition> clause(String word) {
        Node node = lines.get(word);
        if (node == null) {
            return Optional.empty();
        }
        return report.attempt(() -> {
            Cursor cursor = Cursor.over(node.line());
            cursor.next(word);
            return new ConditionReader(scope, report, node).read(cursor);
        });
    }

    private Condition body(Optional<Condition> require, boolean tell) {
        Rule.Form form = head.form();
        Condition condition = head.condition();
        boolean conditionIsBody = form == Rule.Form.ALWAYS
                || form == Rule.Form.AT_START
                || form == Rule.Form.AT_END
                || form == Rule.Form.EVENTUALLY;
        if (conditionIsBody && condition != null && lines.containsKey("require")) {
            report.add(Code.DUPLICATE
                    .at(lines.get("require").head().span(), "the rule says already what must be so")
                    .related(condition.span(), "here"));
        }
        if (conditionIsBody && condition != null) {
            return condition;
        }
        if (require.isEmpty() && !lines.containsKey("require") && tell) {
            report.add(Code.MISSING_LINE
                    .at(name.span(), "the rule " + name.value() + " requires nothing")
                    .help("add a line “require …”"));
        }
        return require.orElse(new Condition.All(ImmutableList.of(), name.span()));
    }

    private Optional<Lexeme> text(String word, boolean must) {
        Node node = lines.get(word);
        if (node == null) {
            if (must) {
                report.add(Code.MISSING_LINE
                        .at(name.span(), "the rule " + name.value() + " has no line “" + word + "”")
                        .help(
                                word.equals("says")
                                        ? "add what to tell when it is broken: says \"…\""
                                        : "add why it matters: because \"…\""));
            }
            return Optional.empty();
        }
        return report.attempt(() -> (Lexeme) Shape.of(node.line(), Shapes::textLine, word + " \"…\"")
                .STRING()
                .getSymbol());
    }

    /** A variable that no line of the rule names, for a participant that the head leaves out. */
    static Condition.Binder unnamed(Type type, Lexeme near) {
        return new Condition.Binder(
                "(" + type.phrase().replaceFirst("^an? ", "") + ")",
                Noun.all(type, type.phrase()),
                Optional.empty(),
                Optional.empty(),
                near.span());
    }
}
