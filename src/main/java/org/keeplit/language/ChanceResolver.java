package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.keeplit.condition.Condition;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.rule.Chance;
import org.keeplit.rule.Template;

/** Reads an event of a rulebook, and the events that a rule names after {@code even if}. */
final class ChanceResolver {
    private static final List<String> LINES = List.of("any", "when", "then", "says");
    private static final ImmutableSet<Type> ENDS = ImmutableSet.of(Type.JUMPER, Type.GROUND);
    private static final ImmutableSet<Type> SET = ImmutableSet.of(Type.DEVICE, Type.REGULATOR);

    /** What is said of something that an event happens to. @param said the words @param of the sorts it is said of */
    private record Saying(List<String> said, Chance.Kind kind, ImmutableSet<Type> of, boolean onPhases) {}

    private static final List<Saying> SAYINGS = List.of(
            new Saying(List.of("trips"), Chance.Kind.TRIPS, ImmutableSet.of(Type.DEVICE), true),
            new Saying(List.of("opens"), Chance.Kind.OPENS, ImmutableSet.of(Type.DEVICE), true),
            new Saying(List.of("closes"), Chance.Kind.CLOSES, ImmutableSet.of(Type.DEVICE), true),
            new Saying(List.of("fails", "to", "trip"), Chance.Kind.FAILS, ImmutableSet.of(Type.DEVICE), false),
            new Saying(List.of("comes", "off"), Chance.Kind.COMES_OFF, ENDS, true),
            new Saying(List.of("leaves"), Chance.Kind.LEAVES, ImmutableSet.of(Type.PERSON), false),
            new Saying(List.of("is", "out", "of", "reach"), Chance.Kind.OUT_OF_REACH, ImmutableSet.of(Type.PERSON), false),
            new Saying(List.of("has", "a", "passing", "fault"), Chance.Kind.FAULT_PASSES, ImmutableSet.of(Type.LINE), true),
            new Saying(List.of("has", "a", "lasting", "fault"), Chance.Kind.FAULT_STAYS, ImmutableSet.of(Type.LINE), true));

    private final Node section;
    private final Scope scope;
    private final Report report;
    private final List<Chance> chances;

    /**
     * A reader of one event.
     *
     * @param book the names that its rulebook makes known
     * @param chances the events that are known already; takes this one
     */
    ChanceResolver(Node section, Scope book, Report report, List<Chance> chances) {
        this.section = section;
        this.scope = book.inner();
        this.report = report;
        this.chances = chances;
    }

    /** {@return the names on a line {@code even if NAME, NAME}} @param names those that it may name */
    static ImmutableSet<String> named(Cursor cursor, List<String> names) {
        cursor.expect("“even if” and the names of events", "even", "if");
        ImmutableSet.Builder<String> all = ImmutableSet.builder();
        do {
            Lexeme name = cursor.next("the name of an event");
            if (!names.contains(name.value())) {
                throw new Misread(Code.UNKNOWN_EVENT
                        .at(name.span(), "there is no event “" + Cursor.clip(name.value()) + "” here")
                        .help(Suggestions.didYouMean(name.value(), names)
                                .orElse(names.isEmpty()
                                        ? "this rulebook declares none, and extends none that does"
                                        : "the events are " + Suggestions.list(names, "and"))));
            }
            all.add(name.value());
        } while (cursor.take(",", "and") || cursor.take(",") || cursor.take("and"));
        cursor.finish("the events");
        return all.build();
    }

    void read() {
        Cursor head = Cursor.over(section.line());
        head.next("event");
        Lexeme name = head.next("the name of the event");
        head.finish("the name");
        chances.stream().filter(c -> c.name().equals(name.value())).findFirst().ifPresent(first -> {
            throw new Misread(Code.DUPLICATE
                    .at(name.span(), "there is already an event " + name.value())
                    .related(first.span(), "the first one"));
        });
        int before = report.errors();
        List<Node> thens = new ArrayList<>();
        Map<String, Node> lines = lines(thens);
        List<Condition.Binder> binders = new ArrayList<>();
        if (lines.containsKey("any")) {
            report.attempt(() -> binders(Cursor.over(lines.get("any").line()), binders));
        }
        Optional<Condition> when = lines.containsKey("when")
                ? report.attempt(() -> {
                    Cursor cursor = Cursor.over(lines.get("when").line());
                    cursor.next("when");
                    return new ConditionReader(scope, report, lines.get("when")).read(cursor);
                })
                : Optional.empty();
        // What happens is told before any state is known, so its gaps take names only.
        ImmutableList.Builder<Chance.Effect> effects = ImmutableList.builder();
        thens.forEach(node -> report.attempt(() -> effects.add(effect(Cursor.over(node.line())))));
        Optional<Template> says = lines.containsKey("says")
                ? report.attempt(() -> plain(new TemplateReader(scope, text(lines.get("says"))).read(), lines.get("says")))
                : Optional.empty();
        if (thens.isEmpty() || !lines.containsKey("says")) {
            report.add(Code.MISSING_LINE
                    .at(name.span(), "the event " + name.value() + (thens.isEmpty() ? " does not say what happens" : " has no line “says”"))
                    .help(thens.isEmpty()
                            ? "add a line such as: then J comes off on P"
                            : "add it in words for the story: says \"a clamp of {J} comes off\""));
        }
        if (report.errors() > before) {
            throw Misread.told();
        }
        chances.add(new Chance(
                name.value(), ImmutableList.copyOf(binders), when, effects.build(), says.orElseThrow(), name.span()));
    }

    private static Template plain(Template says, Node node) {
        boolean names = says.parts().stream()
                .allMatch(p -> p instanceof Template.Text || p instanceof Template.Gap gap && gap.attribute().isEmpty());
        if (!names) {
            throw new Misread(Code.BAD_TEMPLATE
                    .at(node.span(), "what an event says has gaps for names only")
                    .help("such as {J} or {P}"));
        }
        return says;
    }

    private static Lexeme text(Node node) {
        return (Lexeme) Shape.of(node.line(), Shapes::textLine, "says \"…\"").STRING().getSymbol();
    }

    private Map<String, Node> lines(List<Node> thens) {
        Map<String, Node> lines = new LinkedHashMap<>();
        for (Node node : section.children()) {
            String word = node.head().getText();
            if (!LINES.contains(word)) {
                report.add(Code.UNKNOWN_LINE
                        .at(node.head().span(), "“" + Cursor.clip(word) + "” starts no line of an event")
                        .help(Suggestions.didYouMean(word, LINES)
                                .orElse("its lines start with " + Suggestions.list(LINES, "or"))));
            } else if (word.equals("then")) {
                thens.add(node);
            } else if (lines.putIfAbsent(word, node) != null) {
                report.add(Code.DUPLICATE
                        .at(node.head().span(), "this event has such a line already")
                        .related(lines.get(word).head().span(), "the first one"));
            }
        }
        return lines;
    }

    private void binders(Cursor cursor, List<Condition.Binder> into) {
        do {
            cursor.expect("any", "any");
            into.add(new BinderReader(scope, new ConditionReader(scope, report, section)).read(cursor));
        } while (cursor.take("and") || cursor.take(",", "and"));
        cursor.finish("what it may happen to");
    }

    /** {@code then D trips on P}, {@code then reclosing of D becomes on}. */
    private Chance.Effect effect(Cursor cursor) {
        cursor.next("then");
        int start = cursor.index();
        TermReader terms = new TermReader(scope);
        Optional<String> mode = scope.vocabulary().mode(cursor).filter(m -> cursor.take("of"));
        if (mode.isPresent()) {
            return becomes(cursor, mode.get(), terms);
        }
        cursor.moveTo(start);
        TermText text = terms.read(cursor, "what it happens to");
        for (Saying saying : SAYINGS) {
            if (cursor.sees(saying.said())) {
                cursor.moveTo(cursor.index() + saying.said().size());
                Term of = terms.resolve(text, saying.of(), "“" + String.join(" ", saying.said()) + "”");
                PhaseTerm phase = saying.onPhases() ? PhaseReader.optional(cursor, scope) : PhaseTerm.ALL;
                cursor.finish("what happens");
                return new Chance.Effect(saying.kind(), of, ImmutableList.of(), phase);
            }
        }
        Lexeme here = cursor.need("what happens to it");
        List<String> known = SAYINGS.stream().map(s -> String.join(" ", s.said())).toList();
        throw new Misread(Code.UNKNOWN_EVENT
                .at(here.span(), "“" + Cursor.clip(here.getText()) + "” is nothing that happens by itself")
                .help(known.stream()
                        .filter(s -> s.startsWith(here.getText() + " "))
                        .findFirst()
                        .map(s -> "did you mean “" + s + "”?")
                        .or(() -> Suggestions.didYouMean(here.getText(), known))
                        .orElse("what happens: " + Suggestions.list(known, "or") + ", or SETTING of X becomes VALUE")));
    }

    private Chance.Effect becomes(Cursor cursor, String mode, TermReader terms) {
        Term of = terms.resolve(terms.read(cursor, "whose setting"), SET, "“" + mode + " of”");
        cursor.expect("“becomes” and a value", "becomes");
        Lexeme value = cursor.next("a value of " + mode);
        if (!scope.vocabulary().values(mode).contains(value.value())) {
            throw new Misread(Code.UNKNOWN_MODE
                    .at(value.span(), mode + " is never “" + Cursor.clip(value.value()) + "”")
                    .help("it is " + Suggestions.list(scope.vocabulary().values(mode), "or")));
        }
        PhaseTerm phase = PhaseReader.optional(cursor, scope);
        cursor.finish("what happens");
        return new Chance.Effect(Chance.Kind.BECOMES, of, ImmutableList.of(mode, value.value()), phase);
    }
}
