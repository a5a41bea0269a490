package org.keeplit.electric.flow;

import java.util.ArrayList;
import java.util.List;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.sparse.SymbolicLdlt;

/**
 * The loads of one load case whose current is not in proportion to their voltage, as packed arrays
 * for the iteration. A load's current is voltage times (power / volts^2 + current / volts), with
 * volts held at the load's lowest voltage from below.
 */
final class LoadTable {
    final int count;
    final int[] element;
    /** Places in elimination order; -1 for ground. */
    final int[] from;
    final int[] to;
    /** Conjugate power, re and im alternating. */
    final double[] power;
    /** Conjugate power over rated voltage of the part that keeps its current. */
    final double[] current;
    final double[] ratedVolts;
    final double[] lowestVolts;
    final boolean[] follower;

    LoadTable(FlowModel model, int loadCase) {
        List<Integer> chosen = new ArrayList<>();
        for (int e = 0; e < model.elements().size(); e++) {
            if (model.elements().get(e) instanceof Load load && hasSlack(load.power(loadCase))) {
                chosen.add(e);
            }
        }
        count = chosen.size();
        element = chosen.stream().mapToInt(Integer::intValue).toArray();
        from = new int[count];
        to = new int[count];
        power = new double[2 * count];
        current = new double[2 * count];
        ratedVolts = new double[count];
        lowestVolts = new double[count];
        follower = new boolean[count];
        for (int k = 0; k < count; k++) {
            fill(k, (Load) model.elements().get(element[k]), loadCase, model.pattern().symbolic());
        }
    }

    private static boolean hasSlack(LoadPower power) {
        return !power.constantPower().isZero() || !power.constantCurrent().isZero();
    }

    private void fill(int k, Load load, int loadCase, SymbolicLdlt symbolic) {
        from[k] = load.terminal(0) == FlowModel.GROUND ? -1 : symbolic.place(load.terminal(0));
        to[k] = load.terminal(1) == FlowModel.GROUND ? -1 : symbolic.place(load.terminal(1));
        Complex p = load.power(loadCase).constantPower().conjugate();
        Complex i = load.power(loadCase).constantCurrent().conjugate().times(1 / load.ratedVolts());
        power[2 * k] = p.re();
        power[2 * k + 1] = p.im();
        current[2 * k] = i.re();
        current[2 * k + 1] = i.im();
        ratedVolts[k] = load.ratedVolts();
        lowestVolts[k] = load.lowestVolts();
        follower[k] = load.isFollower();
    }
}
