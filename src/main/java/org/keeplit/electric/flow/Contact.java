package org.keeplit.electric.flow;

import com.google.common.primitives.ImmutableIntArray;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

/**
 * A branch that conducts or not as the state says: a pole, a lead, a jumper, a series coil, a
 * protective ground. Position 0 is the from end, position 1 the to end.
 */
public final class Contact extends Element {
    private static final ComplexMatrix OPEN = ComplexMatrix.zero(2);

    private final Complex impedance;
    private final ComplexMatrix closed;
    private final int ordinal;

    Contact(String name, ImmutableIntArray terminals, Complex impedance, int ordinal) {
        super(name, terminals);
        this.impedance = impedance;
        closed = Shunt.branch(impedance.reciprocal());
        this.ordinal = ordinal;
    }

    /**
     * The impedance while it conducts.
     *
     * @param state may give another than the model's
     * @return ohm
     */
    public Complex impedance(FlowState state) {
        Complex other = state.override(ordinal);
        return other == null ? impedance : other;
    }

    int ordinal() {
        return ordinal;
    }

    @Override
    ComplexMatrix admittance(FlowState state) {
        if (!state.conducts(ordinal)) {
            return OPEN;
        }
        return state.override(ordinal) == null ? closed : Shunt.branch(impedance(state).reciprocal());
    }

    /** Nothing: what a contact joins depends on the state. */
    @Override
    void couple(DisjointSets sets) {}
}
