package org.keeplit.electric.flow;

import static com.google.common.base.Preconditions.checkArgument;

import com.google.common.primitives.ImmutableIntArray;
import org.keeplit.electric.complex.Complex;

/**
 * A short circuit: each faulted terminal leads through its own impedance to one common point, which
 * is grounded through an impedance or not at all.
 *
 * @param terminals the faulted terminals, one or more
 * @param impedance from each terminal to the common point, ohm; zero allowed
 * @param toGround from the common point to ground, ohm; zero allowed; null if it is not grounded
 */
public record Fault(ImmutableIntArray terminals, Complex impedance, Complex toGround) {
    // Refuses faults that are none.
    public Fault {
        checkArgument(!terminals.isEmpty(), "A fault needs a terminal.");
        checkArgument(
                terminals.stream().allMatch(t -> t != FlowModel.GROUND),
                "Ground cannot be faulted; a fault to ground has an impedance to ground.");
        checkArgument(
                terminals.stream().distinct().count() == terminals.length(), "A fault names a terminal twice.");
        checkArgument(
                impedance.isFinite() && (toGround == null || toGround.isFinite()),
                "A fault has an impedance that is no number.");
    }

    /**
     * A line-to-ground fault.
     *
     * @param line the terminal
     * @param impedance to ground, ohm
     * @return the fault
     */
    public static Fault lineToGround(int line, Complex impedance) {
        return new Fault(ImmutableIntArray.of(line), impedance, Complex.ZERO);
    }

    /**
     * A line-to-line fault.
     *
     * @param a one terminal
     * @param b the other
     * @param impedance between the two, ohm
     * @return the fault
     */
    public static Fault lineToLine(int a, int b, Complex impedance) {
        return new Fault(ImmutableIntArray.of(a, b), impedance.times(0.5), null);
    }

    /**
     * A double line-to-ground fault.
     *
     * @param a one terminal
     * @param b the other
     * @param impedance from each to the common point, ohm
     * @param toGround from the common point to ground, ohm
     * @return the fault
     */
    public static Fault doubleLineToGround(int a, int b, Complex impedance, Complex toGround) {
        return new Fault(ImmutableIntArray.of(a, b), impedance, toGround);
    }

    /**
     * A three-phase fault clear of ground.
     *
     * @param a one terminal
     * @param b another
     * @param c another
     * @param impedance from each to the common point, ohm
     * @return the fault
     */
    public static Fault threePhase(int a, int b, int c, Complex impedance) {
        return new Fault(ImmutableIntArray.of(a, b, c), impedance, null);
    }

    /**
     * A three-phase fault to ground.
     *
     * @param a one terminal
     * @param b another
     * @param c another
     * @param impedance from each to the common point, ohm
     * @param toGround from the common point to ground, ohm
     * @return the fault
     */
    public static Fault threePhaseToGround(int a, int b, int c, Complex impedance, Complex toGround) {
        return new Fault(ImmutableIntArray.of(a, b, c), impedance, toGround);
    }
}
