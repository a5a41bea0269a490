package org.keeplit.explore;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.network.Conductor;

/** What the variables of a rule stand for. */
record Environment(Map<String, Obj> objects) {
    static final Environment EMPTY = new Environment(Map.of());

    Environment with(String variable, Obj object) {
        Map<String, Obj> more = new LinkedHashMap<>(objects);
        more.put(variable, object);
        return new Environment(more);
    }

    /** {@return whether a phase is one of those that are meant} */
    boolean covers(PhaseTerm meant, Conductor phase) {
        if (meant instanceof PhaseTerm.Given given) {
            return given.phases().contains(phase);
        } else if (meant instanceof PhaseTerm.Variable variable) {
            return ((Obj.OnPhase) get(variable.name())).phase() == phase;
        }
        return true;
    }

    /** {@return the phase that the first variable names that names one} */
    Optional<Conductor> phase() {
        for (Obj object : objects.values()) {
            if (object instanceof Obj.OnPhase on) {
                return Optional.of(on.phase());
            } else if (object instanceof Obj.Spot spot) {
                return Optional.of(spot.vertex().conductor());
            }
        }
        return Optional.empty();
    }

    Obj get(String variable) {
        return objects.get(variable);
    }
}
