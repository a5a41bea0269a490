package org.keeplit.condition;

import org.keeplit.network.Phases;

/** On which phases something is meant. */
public sealed interface PhaseTerm {
    /** All phases that the object has. */
    PhaseTerm ALL = new All(false);

    /**
     * All phases that the object has. Whether that is said changes the words only, and nothing of the meaning: both are equal.
     *
     * @param said whether {@code on all phases} is written, and not merely meant
     */
    record All(boolean said) implements PhaseTerm {
        @Override
        public boolean equals(Object other) {
            return other instanceof All;
        }

        @Override
        public int hashCode() {
            return All.class.hashCode();
        }

        @Override
        public String toString() {
            return "all phases";
        }
    }

    /**
     * The named ones.
     *
     * @param phases at least one
     */
    record Given(Phases phases) implements PhaseTerm {
        @Override
        public String toString() {
            return phases.toString();
        }
    }

    /**
     * The one that a variable stands for.
     *
     * @param name the variable
     */
    record Variable(String name) implements PhaseTerm {
        @Override
        public String toString() {
            return name;
        }
    }
}
