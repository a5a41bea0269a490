package org.keeplit.program;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Trait;
import org.keeplit.unit.Quantity;

/** At which currents a device trips by itself, in ampere. */
public final class Pickups {
    /** From memory: IEEE C37.60 allows a minimum trip to be off by a tenth. */
    private static final double TOLERANCE = 0.1;

    private Pickups() {}

    /**
     * The current of one phase at which a device trips: its minimum trip, else its pickup, else twice its series coil
     * (NAVFAC MO-201 (1990) 3.6.3).
     *
     * @param device the device
     * @return the current; empty if it states none of them
     */
    public static OptionalDouble phase(Element.Device device) {
        for (String name : List.of("minimum trip", "pickup")) {
            OptionalDouble stated = figure(device, name);
            if (stated.isPresent()) {
                return stated;
            }
        }
        OptionalDouble coil = figure(device, "coil");
        return coil.isPresent() ? OptionalDouble.of(2 * coil.getAsDouble()) : coil;
    }

    /** {@return the residual current at which a device trips; empty if it states none} @param device the device */
    public static OptionalDouble ground(Element.Device device) {
        return figure(device, "ground pickup");
    }

    /** {@return how far off its pickups may be, as a part of them} @param device the device */
    public static double tolerance(Element.Device device) {
        return figure(device, "pickup tolerance").orElse(TOLERANCE);
    }

    /** {@return whether a device may trip by itself at all} @param device the device */
    public static boolean trips(Element.Device device) {
        return device.kind().has(Trait.TRIPS)
                && (phase(device).isPresent() || ground(device).isPresent());
    }

    /** {@return whether a device may do anything by itself} @param device the device */
    public static boolean actsByItself(Element.Device device) {
        return trips(device)
                || device.kind().has(Trait.RESTORES)
                || device.kind().has(Trait.SELF_SWITCHING);
    }

    /** {@return whether an element is built of units that act alone} @param element the element */
    static boolean hasUnits(Element element) {
        return !(element instanceof Element.Device device && device.ganged());
    }

    /** {@return the phases under which a device's poles are kept: one for a ganged set} @param device the device */
    public static List<Conductor> units(Element.Device device) {
        List<Conductor> all = new ArrayList<>();
        for (Conductor phase : device.phases()) {
            if (phase.isPhase() && Units.pole(device, phase) == phase) {
                all.add(phase);
            }
        }
        return all;
    }

    private static OptionalDouble figure(Element.Device device, String name) {
        Quantity own = device.figures().getOrDefault(name, device.kind().ratings().get(name));
        return own == null ? OptionalDouble.empty() : OptionalDouble.of(own.si());
    }
}
