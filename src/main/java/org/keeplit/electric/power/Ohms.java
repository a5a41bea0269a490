package org.keeplit.electric.power;

import org.keeplit.electric.Contact;
import org.keeplit.electric.complex.Complex;
import org.keeplit.network.Network;
import org.keeplit.network.Element;
import org.keeplit.unit.Quantity;

/**
 * What contacts put in the way of current when nothing is stated: common practice, no source. A vacuum or knife contact
 * has 0.1 to 0.3 milliohm, a clamp with its share of the jumper 1 to 3. A hydraulic recloser's series coil has far more,
 * and the more the smaller its rating; its turns go with the inverse of the rating, so its impedance with the square.
 */
final class Ohms {
    private static final double POLE = 0.2e-3;
    private static final double LEAD_END = 0.05e-3;
    private static final double CLAMP = 1e-3;
    private static final double GROUND_END = 1e-3;
    /** A coil of 100 A, from memory: about 0.03 ohm, mostly reactance. */
    private static final Complex COIL_100 = new Complex(0.012, 0.028);

    private Ohms() {}

    /** {@return the impedance of a closed contact, in ohm} */
    static Complex of(Contact contact, Network network) {
        return switch (contact.part()) {
            case POLE -> pole(contact, network);
            case LEAD -> Complex.real(LEAD_END);
            case CLAMP -> Complex.real(stated(contact, CLAMP));
            case GROUND -> Complex.real(stated(contact, GROUND_END));
        };
    }

    private static double stated(Contact contact, double otherwise) {
        Quantity impedance = contact.kind().ratings().get("impedance");
        // A kind states the whole piece; each of its two ends has half of it.
        return impedance == null ? otherwise : impedance.si() / 2;
    }

    private static Complex pole(Contact contact, Network network) {
        Element element = network.element(contact.owner()).orElseThrow();
        Quantity stated = element.figures().getOrDefault("impedance", contact.kind().ratings().get("impedance"));
        if (stated != null) {
            return Complex.real(stated.si());
        }
        Quantity coil = element.figures().get("coil");
        if (coil != null) {
            double ratio = 100 / coil.si();
            return COIL_100.times(ratio * ratio);
        }
        return Complex.real(POLE);
    }
}
