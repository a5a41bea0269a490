package org.keeplit.explore;

import java.util.List;
import org.keeplit.electric.Contact;
import org.keeplit.electric.Section;
import org.keeplit.electric.flow.FlowState;
import org.keeplit.electric.power.PowerStates;
import org.keeplit.network.Element;

/** Figures of short circuits: with generators off, sources behind their impedances, and no load. */
final class FaultAmounts {
    private FaultAmounts() {}

    /** The largest short-circuit current on either side of a contact. */
    record AtContact(Contact contact) implements Amount {
        @Override
        public double value(Scene scene, int loadCase) {
            return Math.max(scene.faultCurrent(contact.a()), scene.faultCurrent(contact.b()));
        }
    }

    /**
     * The largest short-circuit current at some places, in this state or in the run's first.
     *
     * @param vertices where
     * @param start what the load flow reads of the first state
     */
    record Available(List<Integer> vertices, FlowState start) implements Amount {
        @Override
        public double value(Scene scene, int loadCase) {
            return vertices.stream()
                    .mapToDouble(v -> Math.max(
                            scene.faultCurrent(v), scene.powerStates().faultCurrent(start, v)))
                    .max()
                    .orElse(0);
        }
    }

    /**
     * The least that a device sees of a fault in the section beyond another.
     *
     * @param sight what sees, and where
     * @param ground whether of a fault to ground, else of one between phases
     */
    record Beyond(Sight sight, boolean ground) implements Amount {
        @Override
        public double value(Scene scene, int loadCase) {
            PowerStates.Least least = scene.leastFault(sight);
            return ground ? least.ground() : least.phase();
        }
    }

    /**
     * A device that looks into the section beyond another.
     *
     * @param poles the poles that see
     * @param beyond the device whose section it is
     * @param site where that stands
     * @param ohms the resistance of a fault to ground
     */
    record Sight(List<Contact> poles, Element.Branch beyond, String site, double ohms) {
        /** Works it out, whatever is remembered. */
        PowerStates.Least find(Scene scene) {
            List<Integer> ends = Section.ends(scene.power().grid(), scene.analysis()::isClosed, beyond, site);
            List<Contact> closed =
                    poles.stream().filter(scene.analysis()::isClosed).toList();
            return scene.powerStates().leastFault(scene.flowState(0), ends, closed, ohms);
        }

        @Override
        public int hashCode() {
            return poles.hashCode() * 31 + beyond.name().hashCode();
        }
    }
}
