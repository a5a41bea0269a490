package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import com.google.common.primitives.ImmutableIntArray;
import org.keeplit.condition.Truth;
import org.keeplit.electric.Analysis;
import org.keeplit.electric.Contact;
import org.keeplit.electric.Level;
import org.keeplit.electric.SiteGraph;
import org.keeplit.network.ClosingDuty;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.OpeningDuty;
import org.keeplit.program.Field;
import org.keeplit.program.FieldKey;

/** The questions that nodes ask of a scene. */
final class Nodes {
    private Nodes() {}

    /** A field has a value. */
    record FieldIs(Field field, int value) implements Node {
        @Override
        public void reads(Reads into) {
            into.field(field);
        }

        @Override
        public Truth eval(Scene scene) {
            return Truth.of(field.get(scene.state()) == value);
        }
    }

    /** A field has at least a value and at most another. */
    record FieldIn(Field field, int least, int most) implements Node {
        @Override
        public void reads(Reads into) {
            into.field(field);
        }

        @Override
        public Truth eval(Scene scene) {
            int value = field.get(scene.state());
            return Truth.of(value >= least && value <= most);
        }
    }

    /** A tap stands on neutral; it is never known to stand elsewhere. */
    record Neutral(Field field) implements Node {
        @Override
        public void reads(Reads into) {
            into.field(field);
        }

        @Override
        public Truth eval(Scene scene) {
            return field.get(scene.state()) == FieldKey.Tap.NEUTRAL ? Truth.TRUE : Truth.UNKNOWN;
        }
    }

    /** What is asked of the voltage at a vertex. */
    enum Voltage {
        /** Supplied by a source. */
        ENERGIZED,
        /** Any voltage. */
        ALIVE,
        /** No voltage. */
        DEAD
    }

    /** How alive a vertex is. */
    record Alive(int vertex, Voltage asked) implements Node {
        @Override
        public void reads(Reads into) {
            into.position();
        }

        @Override
        public Truth eval(Scene scene) {
            Level level = scene.analysis().level(vertex);
            Truth unknown = level == Level.MAY_BE ? Truth.UNKNOWN : null;
            return switch (asked) {
                case ENERGIZED -> unknown != null ? unknown : Truth.of(level == Level.ENERGIZED);
                case ALIVE -> unknown != null ? unknown : Truth.of(level.isAlive());
                case DEAD -> Analysis.dead(level);
            };
        }
    }

    /**
     * A load is supplied. The cells stand for the load, so that loads at one place are one question.
     *
     * @param a the cell of phase A; -1 for a phase that it does not use
     * @param b the cell of phase B
     * @param c the cell of phase C
     */
    record Supplied(ImmutableIntArray cells) implements Node {
        @Override
        public void reads(Reads into) {
            into.position();
        }

        @Override
        public Truth eval(Scene scene) {
            return scene.analysis().supplied(cells.toArray());
        }
    }

    /** A device or regulator is bypassed. */
    record Bypassed(Element.Branch branch, Conductor phase, SiteGraph site) implements Node {
        @Override
        public void reads(Reads into) {
            into.position();
        }

        @Override
        public Truth eval(Scene scene) {
            return site.bypassed(branch, phase, scene.analysis()::isClosed, scene.taps());
        }

        @Override
        public int hashCode() {
            return branch.name().hashCode() * 31 + phase.ordinal();
        }
    }

    /** A device is looped. */
    record Looped(Element.Branch branch, Conductor phase) implements Node {
        @Override
        public void reads(Reads into) {
            into.position();
        }

        @Override
        public Truth eval(Scene scene) {
            return Truth.of(scene.analysis().looped(branch, phase));
        }

        @Override
        public int hashCode() {
            return branch.name().hashCode() * 37 + phase.ordinal();
        }
    }

    /** Opening a contact would be one of some duties. @param duties bits of ordinals */
    record Opening(Contact contact, int duties) implements Node {
        @Override
        public void reads(Reads into) {
            into.position();
        }

        @Override
        public Truth eval(Scene scene) {
            OpeningDuty duty = scene.analysis().openingDuty(contact);
            return Truth.of((duties & 1 << duty.ordinal()) != 0);
        }
    }

    /** {@return what closing a contact would be, a regulator off neutral between its sides included} */
    static ClosingDuty closingDuty(Scene scene, Contact contact, SiteGraph site) {
        ClosingDuty duty = scene.analysis().closingDuty(contact);
        boolean unequal = duty == ClosingDuty.PARALLEL
                && site.unequal(contact, scene.analysis()::isClosed, scene.taps()) != Truth.FALSE;
        return unequal ? ClosingDuty.UNEQUAL : duty;
    }

    /** Closing a contact would be one of some duties. @param duties bits of ordinals */
    record Closing(Contact contact, SiteGraph site, int duties) implements Node {
        @Override
        public void reads(Reads into) {
            into.position();
        }

        @Override
        public Truth eval(Scene scene) {
            ClosingDuty duty = closingDuty(scene, contact, site);
            return Truth.of((duties & 1 << duty.ordinal()) != 0);
        }
    }

    /** A device feeds a site. @param elsewhere the fields that say which open devices may be closed from somewhere else */
    record Feeds(String device, String site, ImmutableList<Field> elsewhere) implements Node {
        @Override
        public void reads(Reads into) {
            into.position();
            elsewhere.forEach(into::field);
        }

        @Override
        public Truth eval(Scene scene) {
            return Truth.of(scene.analysis().feeding(site, scene.mayClose()).contains(device));
        }
    }

    /** A device or regulator is isolated. */
    record Isolated(Element.Branch branch) implements Node {
        @Override
        public void reads(Reads into) {
            into.position();
        }

        @Override
        public Truth eval(Scene scene) {
            return scene.analysis().isolated(branch);
        }

        @Override
        public int hashCode() {
            return branch.name().hashCode();
        }
    }

    /** Plain conductor joins a vertex to an applied ground. */
    record Grounded(int vertex) implements Node {
        @Override
        public void reads(Reads into) {
            into.position();
        }

        @Override
        public Truth eval(Scene scene) {
            return Truth.of(scene.analysis().groundedForPeople(vertex));
        }
    }

    /** Anything that conducts joins a vertex to an applied ground. */
    record Tied(int vertex) implements Node {
        @Override
        public void reads(Reads into) {
            into.position();
        }

        @Override
        public Truth eval(Scene scene) {
            return Truth.of(scene.analysis().tiedToGround(vertex));
        }
    }

    /** Two voltages, or a voltage and a ground, meet at a vertex; the cell stands for it. */
    record Shorted(int vertex, int cell) implements Node {
        @Override
        public void reads(Reads into) {
            into.position();
        }

        @Override
        public Truth eval(Scene scene) {
            return Truth.of(scene.analysis().shorted(vertex));
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Shorted that && cell == that.cell;
        }

        @Override
        public int hashCode() {
            return cell;
        }
    }
}
