package org.keeplit.gridfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.keeplit.network.Conductor;
import org.keeplit.network.Phases;

/** Phases as the standard writes them: one conductor, or several in a row such as {@code ABCN} and {@code Ns2}. */
final class PhaseCodes {
    private PhaseCodes() {}

    /** {@return the conductors of a code in its order, the neutral among them; empty if it has one that no network text knows} */
    static Optional<List<Conductor>> parse(String code) {
        List<Conductor> all = new ArrayList<>();
        for (int i = 0; i < code.length(); i++) {
            char c = code.charAt(i);
            if (c == 's') {
                // s1, s2 and s12: the legs of a centre tap, X1 and X3 by their terminals.
                String legs = code.substring(i + 1).replaceAll("[^12].*", "");
                for (char leg : legs.toCharArray()) {
                    all.add(leg == '1' ? Conductor.X1 : Conductor.X3);
                }
                i += legs.length();
                if (legs.isEmpty()) {
                    return Optional.empty();
                }
            } else if ("ABCN".indexOf(c) >= 0) {
                all.add(Conductor.valueOf(String.valueOf(c)));
            } else {
                return Optional.empty();
            }
        }
        return all.isEmpty() ? Optional.empty() : Optional.of(all);
    }

    /** {@return the phase of an object's part, told as a mistake if it is none} */
    static Optional<Conductor> one(CimModel model, CimObject part, String attribute) {
        String code = model.choice(part, attribute).orElse("");
        Optional<Conductor> phase = parse(code).filter(l -> l.size() == 1).map(l -> l.get(0));
        if (phase.isEmpty()) {
            model.mark("bad-phase", part, code.isEmpty() ? part + " does not say its " + attribute : attribute + " of " + part + " is " + CimModel.clip(code),
                    "phases are A, B, C, N, s1 and s2");
        }
        return phase;
    }

    /** {@return conductors as a network text writes them, without the neutral} */
    static String words(Iterable<Conductor> conductors) {
        Phases phases = Phases.NONE;
        for (Conductor conductor : conductors) {
            if (conductor != Conductor.N) {
                phases = phases.or(Phases.of(conductor));
            }
        }
        return phases.toString();
    }
}
