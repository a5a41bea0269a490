package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Figure;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;
import org.keeplit.procedure.Action;
import org.keeplit.unit.Quantity;

/** The steps that every procedure knows: words, tags, going up and down, proofs, records and waiting. */
final class CoreSteps {
    private static final ImmutableSet<Type> DEVICES = ImmutableSet.of(Type.DEVICE);
    private static final ImmutableSet<Type> POINTS = ImmutableSet.of(Type.POINT);
    private static final ImmutableSet<Type> WITH_SITE = ImmutableSet.of(Type.DEVICE, Type.REGULATOR);

    /** All patterns that no kind has to declare. */
    static final ImmutableList<StepPattern> ALL = ImmutableList.<StepPattern>builder()
            .addAll(speech())
            .addAll(people())
            .addAll(proofs())
            .addAll(words())
            .addAll(JumperSteps.patterns())
            .addAll(LeadSteps.patterns())
            .addAll(MobileSteps.patterns())
            .build();

    private CoreSteps() {}

    private static List<StepPattern> speech() {
        return List.of(
                StepPattern.once("asks|ask {term} for {term}", (m, s) -> {
                    s.person(m.term(0), "“asks”");
                    return speak(Action.Speech.ASK, m.term(1), s);
                }),
                StepPattern.once("issues|issue {term} to {term}", (m, s) -> {
                    s.person(m.term(1), "“issues … to”");
                    return speak(Action.Speech.ISSUE, m.term(0), s);
                }),
                StepPattern.once("repeats|repeat {term}", (m, s) -> speak(Action.Speech.REPEAT, m.term(0), s)),
                StepPattern.once("confirms|confirm {term}", (m, s) -> speak(Action.Speech.CONFIRM, m.term(0), s)),
                StepPattern.once("releases|release {term}", (m, s) -> speak(Action.Speech.RELEASE, m.term(0), s)));
    }

    private static List<Action> speak(Action.Speech speech, TermText permit, StepText step) {
        return List.of(new Action.Speak(speech, step.permit(permit, "this step")));
    }

    private static List<StepPattern> people() {
        return List.of(
                StepPattern.once("tags|tag {set}", (m, s) -> tag(m, s, true)),
                StepPattern.once("takes|take tag off {set}", (m, s) -> tag(m, s, false)),
                StepPattern.once(
                        "goes|go aloft at {term}",
                        (m, s) -> List.of(new Action.GoAloft(s.resolve(m.term(0), WITH_SITE, "“goes aloft at”")))),
                StepPattern.once("briefs|brief {term}", CoreSteps::brief),
                StepPattern.once("comes|come down", (m, s) -> List.of(new Action.ComeDown())));
    }

    /** {@code foreman briefs east, west and desk}. */
    private static List<Action> brief(StepPattern.Match match, StepText step) {
        ImmutableList.Builder<Term> people = ImmutableList.builder();
        people.add(step.person(match.term(0), "“briefs”"));
        Cursor cursor = step.cursor();
        while (cursor.take(",", "and") || cursor.take("and") || cursor.take(",")) {
            people.add(step.person(new TermReader(step.scope()).read(cursor, "a person"), "“briefs”"));
        }
        return List.of(new Action.Brief(people.build()));
    }

    private static List<Action> tag(StepPattern.Match match, StepText step, boolean on) {
        List<Action> actions = new ArrayList<>();
        for (Object item : match.get(0, List.class)) {
            actions.add(new Action.Tag(step.set((StepText.SetItem) item, DEVICES, "a tag"), on));
        }
        return actions;
    }

    private static List<StepPattern> proofs() {
        return List.of(
                StepPattern.once(
                        "checks|check {condition}", (m, s) -> List.of(new Action.Check(m.get(0, Condition.class)))),
                StepPattern.once("measures|measure {figure}", (m, s) -> measure(m.get(0, Figure.Measured.class), s)),
                proof("open", Action.Proof.OPEN, DEVICES),
                proof("closed", Action.Proof.CLOSED, DEVICES),
                proof("in phase", Action.Proof.IN_PHASE, DEVICES),
                proof("at neutral", Action.Proof.NEUTRAL, ImmutableSet.of(Type.REGULATOR)),
                proof("carries|carry current", Action.Proof.CARRYING, ImmutableSet.of(Type.JUMPER, Type.DEVICE)),
                StepPattern.of(
                        "tests|test {term} dead",
                        (m, s) -> List.of(new Action.TestDead(s.resolve(m.term(0), POINTS, "“tests … dead”")))));
    }

    /** The figure says the phases of the step; its limit, if there is one, stands in a clause below. */
    private static List<Action> measure(Figure.Measured figure, StepText step) {
        step.phases(figure.phase());
        return List.of(new Action.MeasureFigure(figure, Optional.empty()));
    }

    private static StepPattern proof(String words, Action.Proof proof, Set<Type> of) {
        String asker = "“proves … " + words.replace("|carry", "") + "”";
        return StepPattern.of(
                "proves|prove {term} " + words,
                (m, s) -> List.of(new Action.Prove(proof, s.resolve(m.term(0), of, asker))));
    }

    private static List<StepPattern> words() {
        return List.of(
                StepPattern.once("records|record {text}", (m, s) -> List.of(new Action.Record(m.get(0, String.class)))),
                StepPattern.of(
                        "waits|wait {time} with {term} dead",
                        (m, s) -> List.of(new Action.WaitDead(
                                m.get(0, Quantity.class),
                                s.resolve(m.term(1), ImmutableSet.of(Type.CAPACITOR), "“waits … dead”")))),
                StepPattern.once(
                        "waits|wait until {condition}",
                        (m, s) -> List.of(new Action.WaitUntil(m.get(0, Condition.class)))),
                StepPattern.once("inspects|inspect {text}", CoreSteps::inspect),
                StepPattern.of("works|work on {term}", CoreSteps::work),
                StepPattern.once("does|do {text}", (m, s) -> List.of(new Action.Do(m.get(0, String.class)))));
    }

    private static List<Action> inspect(StepPattern.Match match, StepText step) {
        Cursor cursor = step.cursor();
        if (!step.option("finds") && !step.option("find")) {
            throw cursor.unexpected("a comma and what is found, such as , finds \"good\" or \"wet\",");
        }
        List<String> outcomes = new ArrayList<>();
        outcomes.add(step.readText(cursor));
        while (cursor.take(",") || cursor.take("or")) {
            cursor.take("or");
            outcomes.add(step.readText(cursor));
        }
        if (ImmutableSet.copyOf(outcomes).size() < Math.max(2, outcomes.size())) {
            throw new Misread(Code.UNFINISHED.at(step.here(), "an inspection has at least two different outcomes"));
        }
        return List.of(new Action.Inspect(match.get(0, String.class), ImmutableList.copyOf(outcomes)));
    }

    private static List<Action> work(StepPattern.Match match, StepText step) {
        step.cursor().expect("a colon and what is done, in quotes,", ":");
        String words = step.readText(step.cursor());
        return List.of(new Action.Work(step.resolve(match.term(0), POINTS, "“works on”"), words));
    }
}
