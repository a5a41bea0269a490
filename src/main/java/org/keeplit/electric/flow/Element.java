package org.keeplit.electric.flow;

import com.google.common.primitives.ImmutableIntArray;
import org.keeplit.electric.complex.ComplexMatrix;

/**
 * A piece of equipment between terminals. Its positions number its own ends, from 0; several may be
 * the same terminal, or ground.
 */
public abstract sealed class Element
        permits LineSection, Source, Load, Shunt, Transformer, Regulator, Contact {
    private final String name;
    private final ImmutableIntArray terminals;

    Element(String name, ImmutableIntArray terminals) {
        this.name = name;
        this.terminals = terminals;
    }

    /**
     * The name given to the builder.
     *
     * @return the name
     */
    public final String name() {
        return name;
    }

    /**
     * The number of positions.
     *
     * @return how many ends the element has
     */
    public final int positions() {
        return terminals.length();
    }

    /**
     * The terminal at a position.
     *
     * @param position from 0
     * @return a terminal's index or {@link FlowModel#GROUND}
     */
    public final int terminal(int position) {
        return terminals.get(position);
    }

    /** What the element is to the linear network in a state: currents in = this times voltages. */
    abstract ComplexMatrix admittance(FlowState state);

    /** Joins the terminals that are alive together whatever the state, contacts aside. */
    abstract void couple(DisjointSets sets);

    /** Joins all terminals of the element. */
    final void coupleAll(DisjointSets sets) {
        // Ground between two ends must not part them: join every pair.
        for (int p = 0; p < positions(); p++) {
            for (int q = p + 1; q < positions(); q++) {
                coupleEnds(sets, p, q);
            }
        }
    }

    final void coupleEnds(DisjointSets sets, int position, int other) {
        if (terminal(position) != FlowModel.GROUND && terminal(other) != FlowModel.GROUND) {
            sets.join(terminal(position), terminal(other));
        }
    }
}
