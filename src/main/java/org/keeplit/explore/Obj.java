package org.keeplit.explore;

import org.keeplit.condition.Term;
import org.keeplit.electric.Contact;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.procedure.Permit;
import org.keeplit.procedure.Temporary;
import org.keeplit.program.Vertex;

/** What a variable can stand for. */
sealed interface Obj {
    /** {@return how people call it} */
    String words();

    /** A piece of the network. */
    record Of(Element element) implements Obj {
        @Override
        public String words() {
            return element.name();
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Of that && element.name().equals(that.element.name());
        }

        @Override
        public int hashCode() {
            return element.name().hashCode();
        }
    }

    /** A point with all its phases, by the term that names it. */
    record Place(Term term) implements Obj {
        @Override
        public String words() {
            return term.toString();
        }
    }

    /** A point on one phase. */
    record Spot(Vertex vertex) implements Obj {
        @Override
        public String words() {
            return vertex.toString();
        }
    }

    /** A person. */
    record Someone(String name) implements Obj {
        @Override
        public String words() {
            return name;
        }
    }

    /** A structure. */
    record Site(String name) implements Obj {
        @Override
        public String words() {
            return name;
        }
    }

    /** A family of temporary equipment. */
    record Family(Temporary temporary) implements Obj {
        @Override
        public String words() {
            return temporary.name();
        }
    }

    /** A hold or a clearance. */
    record Paper(Permit permit) implements Obj {
        @Override
        public String words() {
            return permit.name();
        }
    }

    /** A phase. */
    record OnPhase(Conductor phase) implements Obj {
        @Override
        public String words() {
            return phase.toString();
        }
    }

    /** A contact. */
    record Joint(Contact contact) implements Obj {
        @Override
        public String words() {
            return switch (contact.part()) {
                case POLE -> contact.owner();
                case LEAD -> "a lead of " + contact.owner();
                case CLAMP -> "a clamp of " + contact.owner();
                case GROUND -> "an end of " + contact.owner();
            };
        }
    }
}
