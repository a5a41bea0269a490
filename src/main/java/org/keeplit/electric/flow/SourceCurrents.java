package org.keeplit.electric.flow;

import java.util.Arrays;
import java.util.List;
import org.keeplit.electric.complex.Complex;

/** What the running sources push into the terminals in one state: a few places of a long vector. */
final class SourceCurrents {
    private int[] places = new int[8];
    private double[] values = new double[16];
    private int count;

    SourceCurrents(FlowModel model, FlowState state) {
        List<Element> elements = model.elements();
        for (int element : state.layout().sources().asList()) {
            Source source = (Source) elements.get(element);
            for (int p = 0; source.running(state) && p < source.positions(); p++) {
                if (source.terminal(p) != FlowModel.GROUND) {
                    put(model.pattern().symbolic().place(source.terminal(p)), source.injection(p, state));
                }
            }
        }
    }

    private void put(int place, Complex current) {
        if (count == places.length) {
            places = Arrays.copyOf(places, 2 * count);
            values = Arrays.copyOf(values, 4 * count);
        }
        places[count] = place;
        values[2 * count] = current.re();
        values[2 * count + 1] = current.im();
        count++;
    }

    /** Adds the currents to a vector in elimination order, re and im alternating. */
    void addTo(double[] vector) {
        for (int k = 0; k < count; k++) {
            vector[2 * places[k]] += values[2 * k];
            vector[2 * places[k] + 1] += values[2 * k + 1];
        }
    }
}
