package org.keeplit.plain;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.keeplit.network.Element;

/** Where the taps of regulators stand in figures: on neutral if that is known, else as stated, else where the control rests. */
final class PlainTaps {
    private static final int ROUNDS = 100;

    private final Scenery scenery;
    private final Map<Integer, Map<String, Integer>> resting = new HashMap<>();

    PlainTaps(Scenery scenery) {
        this.scenery = scenery;
    }

    /** {@return the tap of a regulator, by its name and phase, in a state} */
    int at(String name, Circuit now, PlainPieces.Case asked) {
        return now.isNeutral(name) ? 0 : resting(asked).getOrDefault(name, pieces().statedTap(name));
    }

    private PlainPieces pieces() {
        return scenery.wiring().pieces();
    }

    private Map<String, Integer> resting(PlainPieces.Case asked) {
        return resting.computeIfAbsent(asked.number(), n -> settle(asked));
    }

    /** All controls step by one tap at once, from neutral on, at the start of the run, until none wants to. */
    private Map<String, Integer> settle(PlainPieces.Case asked) {
        Map<String, Integer> taps = new HashMap<>();
        List<String> free = pieces().free();
        free.forEach(name -> taps.put(name, 0));
        for (int round = 0; round < ROUNDS && !free.isEmpty(); round++) {
            Map<String, Integer> steps = steps(taps, asked);
            if (steps.values().stream().allMatch(s -> s == 0)) {
                break;
            }
            steps.forEach((name, step) -> taps.merge(name, step, Integer::sum));
        }
        return taps;
    }

    private Map<String, Integer> steps(Map<String, Integer> taps, PlainPieces.Case asked) {
        PlainFlow flow = new PlainFlow(
                scenery.names().bound().network(),
                pieces(),
                name -> taps.getOrDefault(name, pieces().statedTap(name)),
                scenery.wiring().joints(),
                scenery.start().circuit()::isClosed,
                asked);
        Map<String, Integer> steps = new HashMap<>();
        for (String name : taps.keySet()) {
            String bank = name.substring(0, name.lastIndexOf(' '));
            String phase = name.substring(name.lastIndexOf(' ') + 1);
            Element.Regulator regulator = (Element.Regulator) scenery.names().element(bank);
            String end = Names.node(regulator.to(), org.keeplit.network.Conductor.valueOf(phase));
            Cx out = flow.into(flow.piece(name), end).times(-1);
            int step = flow.settled() ? pieces().step(name, flow.volts(end), out) : 0;
            steps.put(name, Math.abs(taps.get(name) + step) > 16 ? 0 : step);
        }
        return steps;
    }
}
