package org.keeplit.electric.flow;

import com.google.common.primitives.ImmutableIntArray;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

/** A fixed admittance between two terminals, or a terminal and ground: a capacitor, a reactor. */
public final class Shunt extends Element {
    private final ComplexMatrix admittance;

    Shunt(String name, ImmutableIntArray terminals, Complex value) {
        super(name, terminals);
        admittance = branch(value);
    }

    /** The admittance matrix of one branch between two positions. */
    static ComplexMatrix branch(Complex value) {
        return ComplexMatrix.balanced(2, value, value.negate());
    }

    @Override
    ComplexMatrix admittance(FlowState state) {
        return admittance;
    }

    @Override
    void couple(DisjointSets sets) {
        coupleAll(sets);
    }
}
