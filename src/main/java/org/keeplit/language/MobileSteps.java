package org.keeplit.language;

import com.google.common.collect.ImmutableSet;
import java.util.List;
import java.util.Optional;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;
import org.keeplit.procedure.Action;

/** The steps that connect, start, stop and disconnect a temporary source. */
final class MobileSteps {
    private static final ImmutableSet<Type> SOURCES = ImmutableSet.of(Type.MOBILE);
    private static final ImmutableSet<Type> POINTS = ImmutableSet.of(Type.POINT);
    private static final int CABLE = 2;

    private MobileSteps() {}

    static List<StepPattern> patterns() {
        return List.of(
                StepPattern.of("connects|connect {term} to {spot}", MobileSteps::connect),
                StepPattern.of("disconnects|disconnect {term}", MobileSteps::disconnect),
                StepPattern.once("starts|start {term}", (m, s) -> run(m, s, true)),
                StepPattern.once("stops|stop {term}", (m, s) -> run(m, s, false)));
    }

    private static Term source(StepPattern.Match match, StepText step, String verb) {
        return step.resolve(match.term(0), SOURCES, "“" + verb + "”");
    }

    /** {@code connects M to POINT on P}: the cable of each phase goes on that phase. */
    private static List<Action> connect(StepPattern.Match match, StepText step) {
        StepText.Spot spot = match.get(1, StepText.Spot.class);
        spot.phase().ifPresent(step::phases);
        Term point = step.resolve(spot.term(), POINTS, "a cable");
        return List.of(
                new Action.Clamp(source(match, step, "connects"), CABLE, new Action.Spot(point, Optional.empty())));
    }

    private static List<Action> disconnect(StepPattern.Match match, StepText step) {
        return List.of(new Action.Unclamp(source(match, step, "disconnects"), CABLE));
    }

    /** Its output switch moves on all phases at once. */
    private static List<Action> run(StepPattern.Match match, StepText step, boolean on) {
        Term source = source(match, step, on ? "starts" : "stops");
        return List.of(new Action.Run(source, on));
    }
}
