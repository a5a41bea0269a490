package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Moment;
import org.keeplit.condition.Noun;
import org.keeplit.condition.Type;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.rule.Rule;
import org.keeplit.rule.Template;
import org.keeplit.rule.Trigger;

/** Builds one rule from its section. */
final class RuleResolver {
    private static final ImmutableSet<String> HEADS =
            ImmutableSet.of("always", "never", "while", "before", "after", "between", "at");
    private static final List<String> CLAUSES =
            List.of("require", "unless", "severity", "applies", "says", "because", "citation");

    private final Lexeme name;
    private final Node section;
    private final Report report;
    private final Scope scope;
    private final Map<String, Node> lines = new LinkedHashMap<>();
    private final List<Condition.Binder> binders = new ArrayList<>();
    private List<Trigger> triggers = List.of();
    private List<Moment> until = List.of();
    private Rule.Form form;
    private Condition condition;

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
    }

    /** {@return the rule} @param applies what the whole rulebook applies to */
    Rule resolve(List<Applies> applies) {
        int before = report.errors();
        boolean readable = sort();
        Node head = lines.get("head");
        if (head == null) {
            if (readable) {
                report.add(Code.MISSING_LINE
                        .at(name.span(), "the rule " + name.value() + " does not say when it is judged")
                        .help("it starts with always, never, while, before, after, between, at the start or at the end"));
            }
            throw Misread.told();
        }
        try {
            head(head);
        } catch (Misread misread) {
            // The other lines are read for their mistakes, though it is not known what the variables are.
            report.add(misread);
            scope.forgive();
        }
        Optional<Condition> require = clause("require");
        Optional<Condition> unless = clause("unless");
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
                form,
                ImmutableList.copyOf(triggers),
                ImmutableList.copyOf(until),
                ImmutableList.copyOf(binders),
                form == Rule.Form.WHILE ? Optional.of(condition) : Optional.empty(),
                body,
                unless,
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

    private void head(Node head) {
        Cursor cursor = Cursor.over(head.line());
        String word = cursor.next("").getText();
        switch (word) {
            case "always" -> always(cursor, head);
            case "never" -> never(cursor, head);
            case "while" -> during(cursor, head);
            case "before" -> before(cursor);
            case "after" -> after(cursor, head);
            case "between" -> between(cursor);
            default -> atEnds(cursor, head);
        }
    }

    private void always(Cursor cursor, Node head) {
        form = Rule.Form.ALWAYS;
        if (cursor.sees(List.of("for", "any"))) {
            cursor.next("for");
            binders(cursor);
            cursor.expect("a comma and the condition", ",");
        } else if (cursor.sees(0, "every") && startsWithBinder(cursor)) {
            // "always every load L is supplied" speaks of each load by itself.
            int start = cursor.index();
            cursor.next("every");
            Condition.Binder binder = new BinderReader(scope, new ConditionReader(scope, report, head)).read(cursor);
            binders.add(binder);
            cursor = resumed(cursor, head, start);
        }
        if (!cursor.done()) {
            condition = new ConditionReader(scope, report, head).read(cursor);
        }
    }

    /** {@return a cursor over the rest of the line with the variable put in front as the subject} */
    private static Cursor resumed(Cursor cursor, Node head, int start) {
        List<Lexeme> all = head.line().lexemes();
        List<Lexeme> rest = new ArrayList<>();
        // The variable is the first capital word after "every".
        all.subList(start, cursor.index()).stream()
                .filter(Lexeme::isVariable)
                .findFirst()
                .ifPresent(rest::add);
        rest.addAll(cursor.rest());
        return Cursor.over(rest);
    }

    private boolean startsWithBinder(Cursor cursor) {
        int back = cursor.index();
        cursor.next("every");
        boolean noun = scope.vocabulary().seesNoun(cursor);
        cursor.moveTo(back);
        return noun;
    }

    private void binders(Cursor cursor) {
        do {
            cursor.expect("any", "any");
            binders.add(new BinderReader(scope, new ConditionReader(scope, report, section)).read(cursor));
        } while (cursor.take("and"));
    }

    private void never(Cursor cursor, Node head) {
        form = Rule.Form.ALWAYS;
        List<Lexeme> all = head.line().lexemes();
        int with = -1;
        for (int i = 1; i + 1 < all.size(); i++) {
            if (all.get(i).is("with") && all.get(i + 1).is("any")) {
                with = i;
            }
        }
        Cursor body = cursor;
        if (with > 0) {
            // The variables are bound behind the condition, but must be known when it is read.
            Cursor tail = Cursor.over(all.subList(with + 1, all.size()));
            binders(tail);
            tail.finish("what the rule ranges over");
            body = Cursor.over(all.subList(1, Math.max(2, with)));
        }
        binders.addAll(0, anyIn(body, head));
        condition = new Condition.Not(condition, condition.span());
    }

    private void during(Cursor cursor, Node head) {
        form = Rule.Form.WHILE;
        binders.addAll(anyIn(cursor, head));
    }

    /** Reads the condition, in which {@code any} may bind variables. @return these */
    private List<Condition.Binder> anyIn(Cursor cursor, Node head) {
        List<Condition.Binder> any = scope.collectAny();
        condition = new ConditionReader(scope, report, head).read(cursor);
        return any;
    }

    private void before(Cursor cursor) {
        form = Rule.Form.BEFORE;
        triggers = new TriggerReader(scope).read(cursor);
    }

    /** {@code after MOMENT}, or {@code after MOMENT eventually CONDITION} or {@code … MOMENT}. */
    private void after(Cursor cursor, Node head) {
        form = Rule.Form.AFTER;
        triggers = new TriggerReader(scope).readUntil(cursor, Set.of("eventually", ","));
        if (!cursor.done()) {
            form = Rule.Form.EVENTUALLY;
            cursor.take(",");
            cursor.expect("“eventually”", "eventually");
            if (Gerunds.start(cursor)) {
                until = new MomentReader(scope).read(cursor);
                condition = new Condition.All(ImmutableList.of(), until.get(0).span());
                cursor.finish("the moment");
            } else {
                condition = new ConditionReader(scope, report, head).read(cursor);
            }
        }
    }

    /** {@code between MOMENT and MOMENT}; the start may stand for the first and the end for the second. */
    private void between(Cursor cursor) {
        form = Rule.Form.BETWEEN;
        int start = cursor.index();
        boolean fromStart = cursor.take("start");
        if (!fromStart) {
            triggers = new TriggerReader(scope).readUntil(cursor, Set.of("and"));
        }
        cursor.expect("“and” with the moment that ends the stretch", "and");
        if (cursor.take("end")) {
            if (fromStart) {
                throw new Misread(Code.UNEXPECTED
                        .at(cursor.from(start), "from the start to the end is always")
                        .help("write: always …"));
            }
        } else {
            until = new MomentReader(scope).read(cursor);
        }
        cursor.finish("the stretch");
    }

    private void atEnds(Cursor cursor, Node head) {
        boolean start = cursor.take("start");
        if (!start) {
            cursor.expect("“the start” or “the end”", "end");
        }
        form = start ? Rule.Form.AT_START : Rule.Form.AT_END;
        if (!cursor.done()) {
            condition = new ConditionReader(scope, report, head).read(cursor);
        }
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
