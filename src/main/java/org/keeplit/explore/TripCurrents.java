package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.keeplit.electric.Contact;
import org.keeplit.electric.SiteGraph;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.flow.FlowSolution;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;

/**
 * The currents by which a device trips. Where another way leads around a pole, nobody knows how the current parts: the
 * device's share is anything from nothing to all.
 */
final class TripCurrents {
    private final Element.Device device;
    private final SiteGraph site;
    private final ImmutableList<Contact> poles;

    TripCurrents(World world, Element.Device device) {
        this.device = device;
        this.site = world.siteGraph(device.site());
        this.poles = world.grid().contactsOf(device.name()).stream()
                .filter(c -> c.part() == Contact.Part.POLE && c.phase().isPhase())
                .collect(ImmutableList.toImmutableList());
    }

    /**
     * The currents of one state in one load case.
     *
     * @param all what the pole of each phase carries, or would if no other way led around it; open poles are left out
     * @param shared the phases of which its share is not known
     */
    record Currents(Map<Conductor, Complex> all, List<Conductor> shared) {
        /** {@return the bounds of a phase's current, in ampere} */
        double[] phase(Conductor phase) {
            double most = all.getOrDefault(phase, Complex.ZERO).abs();
            return new double[] {shared.contains(phase) ? 0 : most, most};
        }

        /** {@return the bounds of the residual current, in ampere} */
        double[] residual() {
            Complex known = Complex.ZERO;
            List<Complex> parts = new ArrayList<>();
            for (Map.Entry<Conductor, Complex> one : all.entrySet()) {
                if (shared.contains(one.getKey())) {
                    parts.add(one.getValue());
                } else {
                    known = known.plus(one.getValue());
                }
            }
            return SharedCurrent.bounds(known, parts);
        }
    }

    /** {@return its closed poles} */
    List<Contact> closed(Scene scene) {
        return poles.stream().filter(scene.analysis()::isClosed).toList();
    }

    /** {@return whether all of its poles are open} */
    boolean isOpen(Scene scene) {
        return poles.stream().noneMatch(scene.analysis()::isClosed);
    }

    /** {@return the currents in each load case, or nothing if a load flow has no solution, which the scene notes} */
    List<Currents> in(Scene scene) {
        List<Contact> around = new ArrayList<>();
        List<Conductor> shared = new ArrayList<>();
        List<Contact> closed = poles.stream().filter(scene.analysis()::isClosed).toList();
        for (Contact pole : closed) {
            List<Contact> ways = site.waysAround(device, pole.phase(), scene.analysis()::isClosed);
            if (!ways.isEmpty()) {
                around.addAll(ways);
                shared.add(pole.phase());
            }
        }
        List<Currents> all = new ArrayList<>();
        for (int i = 0; i < scene.loadCases(); i++) {
            FlowSolution flow = scene.flowWithout(around, i);
            if (flow == null) {
                return List.of();
            }
            Map<Conductor, Complex> currents = new EnumMap<>(Conductor.class);
            closed.forEach(pole -> currents.put(pole.phase(), flow.current(scene.power().element(pole), 0)));
            all.add(new Currents(currents, shared));
        }
        return all;
    }
}
