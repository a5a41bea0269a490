package org.keeplit.condition;

import org.keeplit.network.Phases;

/** On which phases something is meant. */
public sealed interface PhaseTerm {
    /** All phases that the object has. */
    PhaseTerm ALL = new All();

    /** All phases that the object has. */
    record All() implements PhaseTerm {
        @Override
        public String toString() {
            return "all phases";
        }
    }

    /** The named ones. @param phases at least one */
    record Given(Phases phases) implements PhaseTerm {
        @Override
        public String toString() {
            return phases.toString();
        }
    }

    /** The one that a variable stands for. @param name the variable */
    record Variable(String name) implements PhaseTerm {
        @Override
        public String toString() {
            return name;
        }
    }
}
