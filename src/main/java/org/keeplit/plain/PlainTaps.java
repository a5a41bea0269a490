package org.keeplit.plain;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Where the taps of regulators stand in figures: on neutral if that is known, else as stated, else where the control rests. */
final class PlainTaps {
    private static final int ROUNDS = 100;

    private final Scenery scenery;
    private final Map<Integer, Map<PlainPieces.Stepper, Integer>> resting = new HashMap<>();

    PlainTaps(Scenery scenery) {
        this.scenery = scenery;
    }

    /** {@return the tap of a regulator in a state} */
    int at(PlainPieces.Stepper regulator, Circuit now, PlainPieces.Case asked) {
        return now.isNeutral(regulator.bank().name(), regulator.phase())
                ? 0
                : resting(asked).getOrDefault(regulator, regulator.statedTap());
    }

    private PlainPieces pieces() {
        return scenery.wiring().pieces();
    }

    private Map<PlainPieces.Stepper, Integer> resting(PlainPieces.Case asked) {
        return resting.computeIfAbsent(asked.number(), n -> settle(asked));
    }

    /** All controls step by one tap at once, from neutral on, at the start of the run, until none wants to. */
    private Map<PlainPieces.Stepper, Integer> settle(PlainPieces.Case asked) {
        Map<PlainPieces.Stepper, Integer> taps = new HashMap<>();
        List<PlainPieces.Stepper> free = pieces().free();
        free.forEach(regulator -> taps.put(regulator, 0));
        for (int round = 0; round < ROUNDS && !free.isEmpty(); round++) {
            Map<PlainPieces.Stepper, Integer> steps = steps(taps, asked);
            if (steps.values().stream().allMatch(s -> s == 0)) {
                break;
            }
            steps.forEach((regulator, step) -> taps.merge(regulator, step, Integer::sum));
        }
        return taps;
    }

    private Map<PlainPieces.Stepper, Integer> steps(
            Map<PlainPieces.Stepper, Integer> taps, PlainPieces.Case asked) {
        PlainFlow flow = new PlainFlow(
                scenery.names().bound().network(),
                pieces(),
                regulator -> taps.getOrDefault(regulator, regulator.statedTap()),
                scenery.wiring().joints(),
                scenery.start().circuit()::isClosed,
                asked);
        Map<PlainPieces.Stepper, Integer> steps = new HashMap<>();
        taps.forEach((regulator, tap) -> {
            String end = Names.node(regulator.bank().to(), regulator.phase());
            Cx out = flow.into(flow.piece(regulator.name()), end).times(-1);
            int step = flow.settled() ? pieces().step(regulator, flow.volts(end), out) : 0;
            steps.put(regulator, Math.abs(tap + step) > 16 ? 0 : step);
        });
        return steps;
    }
}
