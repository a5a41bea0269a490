package org.keeplit.electric.flow;

import org.keeplit.electric.complex.Complex;

/**
 * Many faults on one state of a network, one at a time: with the response to one ampere at each place every fault there is
 * a few multiplications. Like the short circuit a pure function of model, state and place.
 */
public final class FaultSweep {
    private final FlowModel model;
    private final FlowState state;
    private final int[] terminals;
    private final int[] contacts;
    private final Complex[] before;
    private final Complex[] through;
    /** The voltage at one place for an ampere into another. */
    private final Complex[][] impedances;
    /** The current through a contact for an ampere into a place. */
    private final Complex[][] shares;

    FaultSweep(FlowModel model, FlowState state, int[] terminals, int[] contacts, double[] voltages) {
        this.model = model;
        this.state = state;
        this.terminals = terminals.clone();
        this.contacts = contacts.clone();
        this.before = new Complex[terminals.length];
        this.impedances = new Complex[terminals.length][];
        this.shares = new Complex[terminals.length][];
        for (int k = 0; k < terminals.length; k++) {
            before[k] = model.at(voltages, terminals[k]);
        }
        this.through = through(voltages);
    }

    private Complex[] through(double[] voltages) {
        Complex[] amperes = new Complex[contacts.length];
        for (int c = 0; c < contacts.length; c++) {
            Contact contact = (Contact) model.elements().get(contacts[c]);
            Complex across = model.at(voltages, contact.terminal(0)).minus(model.at(voltages, contact.terminal(1)));
            amperes[c] = across.times(contact.impedance(state).reciprocal());
        }
        return amperes;
    }

    /** Takes in the voltages everywhere for one ampere into a place. */
    void take(int place, double[] response) {
        impedances[place] = new Complex[terminals.length];
        for (int k = 0; k < terminals.length; k++) {
            impedances[place][k] = model.at(response, terminals[k]);
        }
        shares[place] = through(response);
    }

    /** {@return the voltage at a place before the fault, in volt} @param place its index */
    public Complex before(int place) {
        return before[place];
    }

    /** {@return the voltage at a place for one ampere into another, in ohm} @param from the other @param at the place */
    public Complex impedance(int from, int at) {
        return impedances[from][at];
    }

    /**
     * The residual current through the contacts for a fault to ground.
     *
     * @param place where
     * @param ohms the resistance of the fault
     * @param share of less than this part of the fault they see nothing
     * @return ampere; infinite if they see nothing of it
     */
    public double toGround(int place, double ohms, double share) {
        Complex fault = before[place].times(
                impedances[place][place].plus(Complex.real(ohms)).reciprocal());
        Complex sum = Complex.ZERO;
        for (int c = 0; c < contacts.length; c++) {
            sum = sum.plus(through[c]).minus(shares[place][c].times(fault));
        }
        return seen(sum.abs(), fault, share);
    }

    /**
     * The largest current through one of the contacts for a bolted fault between two places.
     *
     * @param one the one
     * @param other the other
     * @param share of less than this part of the fault they see nothing
     * @return ampere; infinite if they see nothing of it
     */
    public double between(int one, int other, double share) {
        Complex fault = fault(one, other);
        double most = 0;
        for (int c = 0; c < contacts.length; c++) {
            Complex own = shares[other][c].minus(shares[one][c]).times(fault);
            most = Math.max(most, through[c].plus(own).abs());
        }
        return seen(most, fault, share);
    }

    /**
     * The current through each contact for a bolted fault, with no load.
     *
     * @param one where
     * @param other where else it touches; the same place for a fault to ground
     * @param share of less than this part of the fault a contact sees nothing
     * @return ampere, contact by contact; nothing for a contact that sees nothing
     */
    public Complex[] currents(int one, int other, double share) {
        Complex fault = one == other ? before[one].times(impedances[one][one].reciprocal()) : fault(one, other);
        Complex[] all = new Complex[contacts.length];
        for (int c = 0; c < contacts.length; c++) {
            Complex response = one == other ? shares[one][c] : shares[one][c].minus(shares[other][c]);
            Complex own = through[c].minus(response.times(fault));
            all[c] = own.abs() < share * fault.abs() ? Complex.ZERO : own;
        }
        return all;
    }

    /** {@return the current of a bolted fault between two places} */
    private Complex fault(int one, int other) {
        Complex loop = impedances[one][one]
                .plus(impedances[other][other])
                .minus(impedances[one][other])
                .minus(impedances[other][one]);
        return before[one].minus(before[other]).times(loop.reciprocal());
    }

    private static double seen(double amperes, Complex fault, double share) {
        return amperes < share * fault.abs() ? Double.POSITIVE_INFINITY : amperes;
    }
}
