package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.keeplit.condition.Figure;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.Block;
import org.keeplit.text.Problem;

/** Builds one step from its line: label, actors, verb with its objects, phases, options; then the clauses below. */
final class StepResolver {
    private final Work work;
    private final Scope scope;

    StepResolver(Work work, Scope scope) {
        this.work = work;
        this.scope = scope;
    }

    /** {@return the step, or the steps if it names several objects} @param lexemes its line, or a part of a line */
    Block resolve(Node node, List<Lexeme> lexemes) {
        Cursor cursor = Cursor.over(lexemes);
        Optional<Lexeme> label = label(cursor);
        int start = cursor.index();
        List<Lexeme> actors = actors(cursor);
        StepText step = new StepText(work, scope, node, actors, cursor);
        List<Action> actions = actions(cursor, step);
        boolean ordered = step.option("in", "order");
        cursor.finish("the step");
        label.ifPresent(this::register);
        StepClauses clauses = new StepClauses(work, scope, node, figure(actions)).read();
        String sentence = Line.written(lexemes.subList(start, lexemes.size()));
        ImmutableList<Term> who = actors.stream()
                .map(a -> (Term) new Term.Name(a.value(), Type.PERSON, a.span()))
                .collect(ImmutableList.toImmutableList());
        ImmutableList<Block> steps = actions.stream()
                .map(action -> (Block) new Block.Step(
                        label.map(Lexeme::value),
                        who,
                        action instanceof Action.MeasureFigure m
                                ? new Action.MeasureFigure(m.figure(), clauses.limit())
                                : action,
                        step.phases(),
                        ordered || clauses.ordered(),
                        clauses.asOne(),
                        clauses.requires(),
                        clauses.expects(),
                        clauses.records(),
                        clauses.cautions(),
                        clauses.because(),
                        sentence,
                        Line.spanOf(lexemes)))
                .collect(ImmutableList.toImmutableList());
        if (steps.size() == 1) {
            return steps.get(0);
        }
        if (!clauses.expects().isEmpty()) {
            throw new Misread(Code.UNEXPECTED
                    .at(clauses.expects().get(0).span(), "a step with several objects cannot have an expectation")
                    .help("write one step for each object"));
        }
        Block.Order order = ordered || clauses.ordered() ? Block.Order.IN_ORDER : Block.Order.TOGETHER;
        return new Block.Group(order, steps, Line.spanOf(lexemes));
    }

    /** {@return the figure that a step measures, if it does} */
    private static Optional<Figure> figure(List<Action> actions) {
        return actions.get(0) instanceof Action.MeasureFigure measure
                ? Optional.of(measure.figure())
                : Optional.empty();
    }

    private Optional<Lexeme> label(Cursor cursor) {
        if (!cursor.sees(1, ":")) {
            return Optional.empty();
        }
        Lexeme label = cursor.next("");
        cursor.next("");
        if (!label.isName()) {
            throw new Misread(Code.RESERVED
                    .at(label.span(), "“" + label.getText() + "” is a word of the language, so it cannot be a label")
                    .help("write it in quotes, or choose another label"));
        }
        return Optional.of(label);
    }

    private void register(Lexeme label) {
        Lexeme first = work.labels().putIfAbsent(label.value(), label);
        if (first != null) {
            throw new Misread(Code.DUPLICATE
                    .at(label.span(), "there is already a step " + label.value())
                    .related(first.span(), "the first one"));
        }
    }

    private List<Lexeme> actors(Cursor cursor) {
        List<Lexeme> actors = new ArrayList<>();
        do {
            cursor.take("and");
            Lexeme actor = cursor.need("who acts");
            if (!scope.isPerson(actor.value())) {
                throw new Misread(stranger(cursor, actor, actors.isEmpty()));
            }
            cursor.next("");
            actors.add(actor);
        } while (cursor.sees(0, "and") || cursor.sees(0, ",") && cursor.take(","));
        return actors;
    }

    private Problem stranger(Cursor cursor, Lexeme actor, boolean first) {
        String written = Cursor.clip(actor.getText());
        List<String> heads = List.of(
                "together",
                "repeat",
                "stage",
                "end",
                "otherwise",
                "crew",
                "temporary",
                "hold",
                "clearance",
                "proved",
                "planned",
                "keeps",
                "title",
                "requires",
                "expects",
                "records",
                "caution",
                "because",
                "call");
        Optional<String> head = Suggestions.nearest(written, heads);
        boolean verbNext = cursor.peek(1) != null && isVerb(cursor.peek(1));
        if (first && actor.isReserved()) {
            return Code.UNKNOWN_LINE
                    .at(actor.span(), "“" + written + "” starts no line here")
                    .help("a step starts with somebody of the crew: " + Suggestions.list(scope.people(), "or"));
        }
        if (first && !verbNext && isVerb(actor)) {
            return Code.NO_ACTOR
                    .at(actor.span(), "the step does not say who does it")
                    .help("begin it with somebody of the crew: " + Suggestions.list(scope.people(), "or"));
        }
        if (first && !verbNext && head.isPresent()) {
            return Code.UNKNOWN_LINE
                    .at(actor.span(), "“" + written + "” starts no line here")
                    .help("did you mean " + head.get() + "?");
        }
        return TermReader.nobody(actor, scope);
    }

    private boolean isVerb(Lexeme word) {
        return patterns().stream().anyMatch(p -> p.firstForms().contains(word.getText()));
    }

    private List<StepPattern> patterns() {
        List<StepPattern> all = new ArrayList<>(CoreSteps.ALL);
        all.addAll(scope.vocabulary().verbs());
        return all;
    }

    /** Finds the longest pattern that fits, and lets it make the action. */
    private List<Action> actions(Cursor cursor, StepText step) {
        Lexeme verb = cursor.need("what is done");
        int start = cursor.index();
        List<StepPattern.Miss> misses = new ArrayList<>();
        StepPattern best = null;
        StepPattern.Match found = null;
        int end = start;
        for (StepPattern pattern : patterns()) {
            StepPattern.Match match = pattern.match(cursor, step, misses);
            if (match != null && (found == null || match.words() > found.words())) {
                best = pattern;
                found = match;
                end = cursor.index();
            }
            cursor.moveTo(start);
        }
        if (found == null) {
            throw miss(cursor, verb, start, misses);
        }
        cursor.moveTo(end);
        if (best.phased()) {
            step.phases(PhaseReader.optional(cursor, scope));
        } else if (cursor.sees(0, "on")) {
            throw new Misread(
                    cursor.problem(Code.NOT_PER_PHASE, "“" + cursor.words(start) + "” is not done phase by phase")
                            .help("leave out “" + Cursor.clip(Line.written(cursor.rest())) + "”"));
        }
        return best.frame().build(found, step);
    }

    private Misread miss(Cursor cursor, Lexeme verb, int start, List<StepPattern.Miss> misses) {
        int furthest = misses.stream()
                .map(StepPattern.Miss::at)
                .max(Comparator.naturalOrder())
                .orElse(start);
        if (furthest == start) {
            Set<String> verbs = new LinkedHashSet<>();
            Set<String> singular = new LinkedHashSet<>();
            patterns().forEach(p -> {
                verbs.addAll(p.firstForms());
                singular.add(p.firstForms().iterator().next());
            });
            return new Misread(Code.UNKNOWN_VERB
                    .at(verb.span(), "“" + Cursor.clip(verb.getText()) + "” is no step that anybody here knows")
                    .help(Suggestions.didYouMean(verb.getText(), verbs)
                            .orElse("the steps start with " + Suggestions.list(singular, "and"))));
        }
        List<StepPattern.Miss> last =
                misses.stream().filter(m -> m.at() == furthest).toList();
        for (StepPattern.Miss one : last) {
            if (one.why() != null) {
                return one.why();
            }
        }
        Set<String> wanted = new LinkedHashSet<>();
        last.forEach(m -> wanted.add(m.wanted()));
        cursor.moveTo(furthest);
        String options =
                Suggestions.list(wanted.stream().map(w -> "“" + w + "”").toList(), "or");
        if (cursor.done()) {
            return new Misread(cursor.problem(Code.UNFINISHED, options + " is missing here"));
        }
        String written = cursor.need("").getText();
        Problem problem = cursor.problem(
                Code.UNEXPECTED,
                "after “" + cursor.words(start) + "” comes " + options + ", not “" + Cursor.clip(written) + "”");
        return new Misread(
                Suggestions.didYouMean(written, wanted).map(problem::help).orElse(problem));
    }
}
