package org.keeplit.plain;

import org.keeplit.network.Element;
import org.keeplit.network.Network;
import org.keeplit.unit.Quantity;

/** What a closed joint has in ohm. */
final class PlainOhms {
    private static final double POLE = 0.2e-3;
    private static final double LEAD = 0.05e-3;
    private static final double CLAMP = 1e-3;
    private static final Cx COIL_OF_100 = new Cx(0.012, 0.028);

    private PlainOhms() {}

    static Cx of(Joint joint, Network network) {
        Quantity kind = joint.kind().ratings().get("impedance");
        return switch (joint.part()) {
            case LEAD -> Cx.real(LEAD);
            // The kind states a whole jumper, each clamp is half of it.
            case CLAMP, GROUND -> Cx.real(kind == null ? CLAMP : kind.si() / 2);
            case POLE -> pole(network.element(joint.owner()).orElseThrow(), kind);
            default -> throw new IllegalArgumentException(joint.owner() + " is no contact");
        };
    }

    private static Cx pole(Element device, Quantity kind) {
        Quantity own = device.figures().get("impedance");
        Quantity coil = device.figures().get("coil");
        if (own != null || kind != null) {
            return Cx.real(own != null ? own.si() : kind.si());
        }
        // Turns go with the inverse of the rating, so ohms with its square.
        return coil == null ? Cx.real(POLE) : COIL_OF_100.times(1e4 / (coil.si() * coil.si()));
    }
}
