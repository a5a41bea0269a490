package org.keeplit.program;

import org.keeplit.condition.Predicate;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Mode;
import org.keeplit.network.Phases;

/** Under which phase the fields of an element are kept, and other rules for naming fields. */
public final class Units {
    private Units() {}

    /** {@return the phase whose pole stands for this one: the first phase of a ganged device} @param element the element @param phase the phase */
    public static Conductor pole(Element element, Conductor phase) {
        return StartValues.unit(element, phase);
    }

    /** {@return the phase under which a mode is kept} @param element the element @param mode the mode @param phase the phase */
    public static Conductor mode(Element element, Mode mode, Conductor phase) {
        return StartValues.modeUnit(element, mode, phase);
    }

    /** {@return the phases that a setting is for: one, or all where one setting serves all} */
    static Phases modePhases(Element element, Mode mode, Conductor phase) {
        return StartValues.isPerPhase(element, mode) ? Phases.of(phase) : element.phases();
    }

    /** {@return the field of a test for dead} @param vertex where */
    public static FieldKey.Proved provedDead(Vertex vertex) {
        return new FieldKey.Proved(Predicate.PROVED_DEAD.name(), vertex.toString(), vertex.conductor());
    }
}
