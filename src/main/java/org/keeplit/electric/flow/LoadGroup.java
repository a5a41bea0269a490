package org.keeplit.electric.flow;

/** Three loads as one load of three phases. */
public final class LoadGroup {
    private LoadGroup() {}

    /**
     * Adds loads from each phase to the neutral.
     *
     * @param builder takes the loads, named "name.1" to "name.3"
     * @param name the group's name
     * @param phases the phase terminals, one a power
     * @param neutral a terminal, or ground
     * @param lineToLineVolts rated volts
     * @param powers what each draws
     * @return the element indices
     */
    public static int[] wye(
            FlowModelBuilder builder,
            String name,
            int[] phases,
            int neutral,
            double lineToLineVolts,
            LoadPower... powers) {
        int[] loads = new int[powers.length];
        for (int k = 0; k < loads.length; k++) {
            loads[k] = builder.load(
                    name + "." + (k + 1), phases[k], neutral, lineToLineVolts / Math.sqrt(3), powers[k]);
        }
        return loads;
    }

    /**
     * Adds loads AB, BC and CA.
     *
     * @param builder takes the loads, named "name.1" to "name.3"
     * @param name the group's name
     * @param phases the three phase terminals
     * @param lineToLineVolts rated volts
     * @param powers what each draws
     * @return the element indices
     */
    public static int[] delta(
            FlowModelBuilder builder, String name, int[] phases, double lineToLineVolts, LoadPower... powers) {
        int[] loads = new int[powers.length];
        for (int k = 0; k < loads.length; k++) {
            loads[k] = builder.load(
                    name + "." + (k + 1), phases[k], phases[(k + 1) % 3], lineToLineVolts, powers[k]);
        }
        return loads;
    }
}
