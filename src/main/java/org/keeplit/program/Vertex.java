package org.keeplit.program;

import org.keeplit.network.Conductor;
import org.keeplit.network.Side;

/** A place with one conductor: what the electrical graph is made of. */
public sealed interface Vertex {
    /** The one vertex of the earth. */
    Vertex EARTH = new Earth();

    /** {@return its conductor} */
    Conductor conductor();

    /** {@return the same place on another phase; a piece of temporary equipment or the earth is a place by itself} @param phase the phase */
    default Vertex beside(Conductor phase) {
        if (this instanceof AtNode there) {
            return new AtNode(there.node, phase);
        } else if (this instanceof Lead there) {
            return new Lead(there.device, there.side, phase);
        } else if (this instanceof Bushing there) {
            return new Bushing(there.device, there.side, phase);
        }
        return this;
    }

    /** The earth. */
    record Earth() implements Vertex {
        @Override
        public Conductor conductor() {
            return Conductor.N;
        }

        @Override
        public String toString() {
            return "earth";
        }
    }

    /** A conductor at a node. @param node the node's name @param conductor the conductor */
    record AtNode(String node, Conductor conductor) implements Vertex {
        @Override
        public String toString() {
            return node + " phase " + conductor;
        }
    }

    /** A lead of a device. @param device the device @param side which side @param conductor the phase */
    record Lead(String device, Side side, Conductor conductor) implements Vertex {
        @Override
        public String toString() {
            return "the " + side.word() + " lead of " + device + " on phase " + conductor;
        }
    }

    /** A bushing of a device. @param device the device @param side which side @param conductor the phase */
    record Bushing(String device, Side side, Conductor conductor) implements Vertex {
        @Override
        public String toString() {
            return "the " + side.word() + " bushing of " + device + " on phase " + conductor;
        }
    }

    /**
     * The windings of a temporary source, behind its output switch.
     *
     * @param family the family's name
     * @param conductor the phase
     */
    record Machine(String family, Conductor conductor) implements Vertex {
        @Override
        public String toString() {
            return "the windings of " + family + " on phase " + conductor;
        }
    }

    /**
     * A piece of temporary equipment.
     *
     * @param family the family's name
     * @param conductor the phase that it was brought for
     */
    record Temporary(String family, Conductor conductor) implements Vertex {
        @Override
        public String toString() {
            return family + " on phase " + conductor;
        }
    }
}
