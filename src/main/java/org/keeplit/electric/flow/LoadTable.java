package org.keeplit.electric.flow;

import java.util.ArrayList;
import java.util.Comparator;
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
    /** Places in elimination order; ground has the place after the last. */
    final int[] from;
    final int[] to;
    /** Conjugate power, re and im alternating. */
    final double[] power;
    /** Conjugate power over rated voltage of the part that keeps its current. */
    final double[] current;
    /** Whether a part keeps its current. */
    final boolean[] mixed;
    /** One over the square of the rated voltage. */
    final double[] squareScale;
    /** The square of the lowest voltage. */
    final double[] lowestSquare;
    /** Zones of the two terminals; -1 for ground. */
    final int[] fromZone;
    final int[] toZone;
    final boolean[] follower;

    LoadTable(FlowModel model, int loadCase) {
        List<Integer> chosen = new ArrayList<>();
        for (int e = 0; e < model.elements().size(); e++) {
            if (model.elements().get(e) instanceof Load load && hasSlack(load.power(loadCase))) {
                chosen.add(e);
            }
        }
        // By place, so that a pass over the loads walks through the voltages in order.
        SymbolicLdlt symbolic = model.pattern().symbolic();
        chosen.sort(Comparator.comparingInt(
                e -> place(symbolic, model.elements().get(e).terminal(0))));
        count = chosen.size();
        element = chosen.stream().mapToInt(Integer::intValue).toArray();
        from = new int[count];
        to = new int[count];
        power = new double[2 * count];
        current = new double[2 * count];
        mixed = new boolean[count];
        squareScale = new double[count];
        lowestSquare = new double[count];
        fromZone = new int[count];
        toZone = new int[count];
        follower = new boolean[count];
        for (int k = 0; k < count; k++) {
            fill(k, (Load) model.elements().get(element[k]), loadCase, model);
        }
    }

    private static boolean hasSlack(LoadPower power) {
        return !power.constantPower().isZero() || !power.constantCurrent().isZero();
    }

    private static int place(SymbolicLdlt symbolic, int terminal) {
        return terminal == FlowModel.GROUND ? symbolic.size() : symbolic.place(terminal);
    }

    private void fill(int k, Load load, int loadCase, FlowModel model) {
        from[k] = place(model.pattern().symbolic(), load.terminal(0));
        to[k] = place(model.pattern().symbolic(), load.terminal(1));
        fromZone[k] = model.zones().of(load.terminal(0));
        toZone[k] = model.zones().of(load.terminal(1));
        Complex p = load.power(loadCase).constantPower().conjugate();
        Complex i = load.power(loadCase).constantCurrent().conjugate().times(1 / load.ratedVolts());
        power[2 * k] = p.re();
        power[2 * k + 1] = p.im();
        current[2 * k] = i.re();
        current[2 * k + 1] = i.im();
        mixed[k] = !i.isZero();
        squareScale[k] = 1 / (load.ratedVolts() * load.ratedVolts());
        lowestSquare[k] = load.lowestVolts() * load.lowestVolts();
        follower[k] = load.isFollower();
    }
}
