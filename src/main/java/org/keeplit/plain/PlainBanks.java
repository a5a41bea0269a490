package org.keeplit.plain;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.keeplit.network.Conductor;
import org.keeplit.network.Connection;
import org.keeplit.network.Element;

/** The windings of transformer banks as admittances between their ends. */
final class PlainBanks {
    private static final double USUAL_TRANSFORMER_RATIO = 5;

    private final PlainNominal nominal;

    PlainBanks(PlainNominal nominal) {
        this.nominal = nominal;
    }

    /** {@return the windings of a bank, a piece each; a centre-tapped unit is one} */
    List<PlainPieces.Piece> of(Element.Transformer t) {
        Cx part = part(t);
        if (t.centreTapped()) {
            return List.of(centreTapped(t, part));
        }
        double unit = PlainPieces.need(t, "rating") / t.windings().size();
        List<PlainPieces.Piece> pieces = new ArrayList<>();
        for (Conductor start : t.windings()) {
            Coils coils = Coils.of(t, start);
            double high = nominal.at(t.from()) / (t.primary() == Connection.DELTA ? 1 : PlainPieces.SQRT3);
            double low = PlainPieces.need(t, "low voltage") / (t.secondary() == Connection.DELTA ? 1 : PlainPieces.SQRT3);
            List<String> ends =
                    Arrays.asList(coils.primary()[0], coils.primary()[1], coils.secondary()[0], coils.secondary()[1]);
            Cx siemens = Cx.ONE.over(part.times(high * high / unit));
            double turns = high / low;
            pieces.add(new PlainPieces.Piece(
                    ends, PlainPieces.outer(siemens, 1, -1, -turns, turns), PlainPieces.allAlive(ends), null));
        }
        return pieces;
    }

    /** {@return the leakage in parts of the rating; of the three figures any two, or the magnitude and a ratio, give it} */
    private static Cx part(Element.Transformer t) {
        double r = PlainPieces.figure(t, "resistance", Double.NaN);
        double x = PlainPieces.figure(t, "reactance", Double.NaN);
        if (!Double.isNaN(r) && !Double.isNaN(x)) {
            return new Cx(r, x);
        }
        double z = PlainPieces.need(t, "impedance");
        if (Double.isNaN(r)) {
            r = Double.isNaN(x)
                    ? z / Math.hypot(1, PlainPieces.figure(t, "reactance ratio", USUAL_TRANSFORMER_RATIO))
                    : Math.sqrt(Math.max(0, z * z - x * x));
        }
        return new Cx(r, Math.sqrt(Math.max(0, z * z - r * r)));
    }

    /**
     * Three coils on one core, the primary and the halves of the secondary, without magnetizing current: the core's volts a
     * turn are what makes their ampere-turns cancel.
     */
    private PlainPieces.Piece centreTapped(Element.Transformer t, Cx part) {
        List<String> primary = Voltages.taken(t);
        double high = nominal.at(t.from()) / (primary.size() == 2 ? 1 : PlainPieces.SQRT3);
        double leg = PlainPieces.need(t, "low voltage") / 2;
        double rating = PlainPieces.need(t, "rating");
        double[] turns = {high, leg, -leg};
        Cx outside = new Cx(part.re() / 2, part.im() * 0.8);
        Cx inside = new Cx(part.re(), part.im() * 0.4);
        Cx[] siemens = {
            Cx.ONE.over(outside.times(high * high / rating)),
            Cx.ONE.over(inside.times(leg * leg / rating)),
            Cx.ONE.over(inside.times(leg * leg / rating))
        };
        Cx all = Cx.ZERO;
        for (int k = 0; k < 3; k++) {
            all = all.plus(siemens[k].times(turns[k] * turns[k]));
        }
        // The primary's other end sees the opposite of the first; the tap is earth.
        List<String> ends = Arrays.asList(
                primary.get(0),
                Names.node(t.to(), Conductor.X1),
                Names.node(t.to(), Conductor.X3),
                primary.size() == 2 ? primary.get(1) : null);
        int[] coil = {0, 1, 2, 0};
        int[] sign = {1, 1, 1, -1};
        PlainMatrix matrix = new PlainMatrix(4);
        for (int i = 0; i < 4; i++) {
            for (int j = 0; j < 4; j++) {
                int k = coil[i];
                int m = coil[j];
                Cx both = siemens[k].times(turns[k]).times(siemens[m].times(turns[m])).over(all).times(-1);
                Cx own = k == m ? siemens[k].plus(both) : both;
                matrix.add(i, j, own.times(sign[i] * sign[j]));
            }
        }
        return new PlainPieces.Piece(ends, matrix, PlainPieces.allAlive(ends), null);
    }
}
