package org.keeplit.electric.flow;

import com.google.common.collect.ImmutableList;
import com.google.common.primitives.ImmutableIntArray;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

/**
 * A load between two terminals or a terminal and ground; also a generator that only follows the
 * voltage that it finds, which is a load of negative power. Position 0 is the from end, position 1
 * the to end. Below its lowest voltage a load keeps the impedance that it has there.
 */
public final class Load extends Element {
    private static final ComplexMatrix NOTHING = ComplexMatrix.zero(2);

    private final double ratedVolts;
    private final double lowestVolts;
    private final ImmutableList<LoadPower> powers;
    private final int ordinal;

    Load(
            String name,
            ImmutableIntArray terminals,
            double ratedVolts,
            double lowestVolts,
            ImmutableList<LoadPower> powers,
            int ordinal) {
        super(name, terminals);
        this.ratedVolts = ratedVolts;
        this.lowestVolts = lowestVolts;
        this.powers = powers;
        this.ordinal = ordinal;
    }

    /**
     * The rated voltage across the load.
     *
     * @return volts
     */
    public double ratedVolts() {
        return ratedVolts;
    }

    /**
     * The voltage below which the load keeps its impedance.
     *
     * @return volts across the load
     */
    public double lowestVolts() {
        return lowestVolts;
    }

    /**
     * What the load draws at rated voltage in a load case.
     *
     * @param loadCase the case's index
     * @return the power
     */
    public LoadPower power(int loadCase) {
        return powers.get(loadCase);
    }

    int ordinal() {
        return ordinal;
    }

    /** A generator that follows the voltage, switched by the state. */
    boolean isFollower() {
        return ordinal >= 0;
    }

    /** Says whether the load draws (or feeds) anything in a state, given a voltage. */
    boolean inService(FlowState state) {
        return ordinal < 0 || state.runs(ordinal);
    }

    /** Conjugate power over squared voltage for the parts that do not keep their impedance. */
    Complex slackAdmittance(int loadCase, double volts) {
        LoadPower power = powers.get(loadCase);
        double at = Math.max(volts, lowestVolts);
        return power.constantPower()
                .conjugate()
                .times(1 / (at * at))
                .plus(power.constantCurrent().conjugate().times(1 / (ratedVolts * at)));
    }

    /** The admittance of the part that keeps its impedance. */
    Complex fixedAdmittance(int loadCase) {
        return powers.get(loadCase).constantImpedance().conjugate().times(1 / (ratedVolts * ratedVolts));
    }

    /** The current from the from end to the to end at a voltage. */
    Complex current(FlowState state, Complex voltage) {
        if (!inService(state)) {
            return Complex.ZERO;
        }
        int loadCase = state.loadCase();
        return slackAdmittance(loadCase, voltage.abs())
                .plus(fixedAdmittance(loadCase))
                .times(voltage);
    }

    /** Nothing: what a load is to the linear network depends on the matrix that it goes into. */
    @Override
    ComplexMatrix admittance(FlowState state) {
        return NOTHING;
    }

    /** A load between two conductors feeds one from the other; a follower feeds nothing by itself. */
    @Override
    void couple(DisjointSets sets) {
        if (!isFollower()) {
            coupleAll(sets);
        }
    }
}
