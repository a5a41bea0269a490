package org.keeplit.language;

import com.google.common.collect.ImmutableSet;
import java.util.List;
import java.util.Optional;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;
import org.keeplit.network.Side;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.Person;

/** The steps that put jumpers on and take them off. */
final class JumperSteps {
    private static final ImmutableSet<Type> JUMPERS = ImmutableSet.of(Type.JUMPER);
    private static final ImmutableSet<Type> POINTS = ImmutableSet.of(Type.POINT);

    private JumperSteps() {}

    static List<StepPattern> patterns() {
        return List.of(
                StepPattern.of("installs|install {term} around {term}", JumperSteps::around),
                StepPattern.of("installs|install {term} from {spot} to {spot}", JumperSteps::between),
                StepPattern.of("removes|remove {term}", JumperSteps::remove),
                StepPattern.of("puts|put first clamp of {term} on {spot}", (m, s) -> clamp(m, s, 1)),
                StepPattern.of("puts|put second clamp of {term} on {spot}", (m, s) -> clamp(m, s, 2)),
                StepPattern.of("puts|put first clamp of {spot} on {spot}", (m, s) -> pieceClamp(m, s, 1)),
                StepPattern.of("puts|put second clamp of {spot} on {spot}", (m, s) -> pieceClamp(m, s, 2)),
                StepPattern.of("takes|take first clamp of {term} off", (m, s) -> unclamp(m, s, 1)),
                StepPattern.of("takes|take second clamp of {term} off", (m, s) -> unclamp(m, s, 2)));
    }

    private static Term jumper(TermText text, StepText step) {
        return step.resolve(text, JUMPERS, "a clamp");
    }

    /** {@code installs J around R on P, line to line, source side first}. */
    private static List<Action> around(StepPattern.Match match, StepText step) {
        Term jumper = jumper(match.term(0), step);
        TermText.PartKind[] ends = ends(step);
        boolean sourceFirst = step.option("source", "side", "first");
        boolean loadFirst = !sourceFirst && step.option("load", "side", "first");
        checkHands(step);
        Action.Spot source = spot(step, match.term(1), Side.SOURCE, ends[0]);
        Action.Spot load = spot(step, match.term(1), Side.LOAD, ends[1]);
        return List.of(
                loadFirst
                        ? new Action.Install(jumper, load, source, true)
                        : new Action.Install(jumper, source, load, sourceFirst));
    }

    /** {@return where the clamps go on the source side and on the load side} */
    private static TermText.PartKind[] ends(StepText step) {
        String[] words = {"line", "bushing"};
        TermText.PartKind[] kinds = {TermText.PartKind.LINE, TermText.PartKind.BUSHING};
        for (int source = 0; source < 2; source++) {
            for (int load = 0; load < 2; load++) {
                if (step.option(words[source], "to", words[load])) {
                    return new TermText.PartKind[] {kinds[source], kinds[load]};
                }
            }
        }
        throw new Misread(Code.CLAMPS_UNSAID
                .at(step.here(), "the step does not say where the clamps go")
                .help("add “, line to line”, source side first in the wording; a clamp inboard of a lead is"
                        + " a bushing"));
    }

    private static Action.Spot spot(StepText step, TermText device, Side side, TermText.PartKind part) {
        TermText at = new TermText.Part(part, side, device, device.span(), device.words());
        Term whole = step.resolve(device, ImmutableSet.of(Type.DEVICE, Type.REGULATOR), "“around”");
        if (whole.type() == Type.REGULATOR && part == TermText.PartKind.BUSHING) {
            throw new Misread(Code.WRONG_BUILD.at(device.span(), "a regulator has no bushing for a clamp here"));
        }
        return new Action.Spot(step.resolve(at, POINTS, "a clamp"), Optional.empty());
    }

    /** Two people at one jumper must stand on two sides, or nobody knows who holds which clamp. */
    private static void checkHands(StepText step) {
        List<Lexeme> actors = step.actors();
        if (actors.size() == 1) {
            return;
        }
        List<Optional<Side>> sides = actors.stream()
                .map(a -> Optional.ofNullable(step.work().crew().get(a.value())).flatMap(Person::side))
                .toList();
        boolean clear = actors.size() == 2
                && sides.stream().allMatch(Optional::isPresent)
                && !sides.get(0).equals(sides.get(1));
        if (!clear) {
            throw new Misread(Code.WHO_HOLDS_WHICH
                    .at(Line.spanOf(actors), "it is not clear who holds which clamp")
                    .help("name one person, or two of whom one stands on the source side and one on the load side"));
        }
    }

    /** {@code installs J from POINT on B to POINT on C}; without phases of their own both are on the step's. */
    private static List<Action> between(StepPattern.Match match, StepText step) {
        Term jumper = jumper(match.term(0), step);
        StepText.Spot from = match.get(1, StepText.Spot.class);
        StepText.Spot to = match.get(2, StepText.Spot.class);
        if (from.phase().isPresent() && to.phase().isEmpty()) {
            throw new Misread(Code.TWO_READINGS
                    .at(to.term().span(), "it is not clear on which phase this clamp goes")
                    .help("say the phase of both points, or of the step alone at its end"));
        }
        Optional<PhaseTerm> far =
                from.phase().isPresent() && !from.phase().equals(to.phase()) ? to.phase() : Optional.empty();
        step.phases(from.phase().or(to::phase).orElse(PhaseTerm.ALL));
        boolean ordered = step.option("first", "end", "first");
        Action.Spot first = new Action.Spot(step.resolve(from.term(), POINTS, "a clamp"), Optional.empty());
        Action.Spot second = new Action.Spot(step.resolve(to.term(), POINTS, "a clamp"), far);
        checkHands(step);
        if (step.actors().size() > 1 && !areTwoSides(first.point(), second.point())) {
            throw new Misread(Code.WHO_HOLDS_WHICH
                    .at(Line.spanOf(step.actors()), "it is not clear who holds which clamp")
                    .help("two people hold the clamps on the two lines of one device; else write one step for each clamp"));
        }
        return List.of(new Action.Install(jumper, first, second, ordered));
    }

    /** {@return whether two points are the lines on both sides of one device, so that each person has the own side} */
    private static boolean areTwoSides(Term one, Term other) {
        return one instanceof Term.LineOf a
                && other instanceof Term.LineOf b
                && a.side() != b.side()
                && a.of().toString().equals(b.of().toString());
    }

    private static List<Action> remove(StepPattern.Match match, StepText step) {
        Term thing = step.resolve(match.term(0), ImmutableSet.of(Type.JUMPER, Type.GROUND), "“removes”");
        if (thing.type() == Type.GROUND) {
            return List.of(new Action.RemoveGround(thing, LeadSteps.groundOrder(step)));
        }
        Optional<Side> first = Optional.empty();
        if (step.option("source", "side", "first")) {
            first = Optional.of(Side.SOURCE);
        } else if (step.option("load", "side", "first")) {
            first = Optional.of(Side.LOAD);
        }
        return List.of(new Action.Remove(thing, first));
    }

    /** {@code puts the first clamp of J on POINT on P}: the clamp goes to the step's own phase. */
    private static List<Action> clamp(StepPattern.Match match, StepText step, int clamp) {
        StepText.Spot spot = match.get(1, StepText.Spot.class);
        spot.phase().ifPresent(step::phases);
        Term point = step.resolve(spot.term(), POINTS, "a clamp");
        return List.of(new Action.Clamp(jumper(match.term(0), step), clamp, new Action.Spot(point, Optional.empty())));
    }

    /** {@code puts the first clamp of J on B on POINT on C}: the piece of one phase goes to another. */
    private static List<Action> pieceClamp(StepPattern.Match match, StepText step, int clamp) {
        StepText.Spot piece = match.get(0, StepText.Spot.class);
        StepText.Spot spot = match.get(1, StepText.Spot.class);
        step.phases(piece.phase().orElse(PhaseTerm.ALL));
        Optional<PhaseTerm> there = spot.phase().equals(piece.phase()) ? Optional.empty() : spot.phase();
        Term point = step.resolve(spot.term(), POINTS, "a clamp");
        return List.of(new Action.Clamp(jumper(piece.term(), step), clamp, new Action.Spot(point, there)));
    }

    private static List<Action> unclamp(StepPattern.Match match, StepText step, int clamp) {
        return List.of(new Action.Unclamp(jumper(match.term(0), step), clamp));
    }
}
