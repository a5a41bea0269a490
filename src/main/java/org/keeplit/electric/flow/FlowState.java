package org.keeplit.electric.flow;

import com.google.common.collect.ImmutableSortedMap;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Map;
import java.util.TreeMap;
import org.keeplit.electric.complex.Complex;

/**
 * Everything that may change while the model stays: which contacts conduct, the taps, which
 * generators run, the load case, and impedances that stand in for those of contacts. A value: equal
 * states have equal solutions. Start from {@link FlowModel#baseState} and {@link #edit}.
 */
public final class FlowState {
    private final StateLayout layout;
    private final BitSet contacts;
    private final BitSet generators;
    private final int[] taps;
    private final int loadCase;
    private final ImmutableSortedMap<Integer, Complex> overrides;

    FlowState(
            StateLayout layout,
            BitSet contacts,
            BitSet generators,
            int[] taps,
            int loadCase,
            Map<Integer, Complex> overrides) {
        this.layout = layout;
        this.contacts = (BitSet) contacts.clone();
        this.generators = (BitSet) generators.clone();
        this.taps = taps.clone();
        this.loadCase = loadCase;
        this.overrides = ImmutableSortedMap.copyOf(overrides);
    }

    /**
     * Says whether a contact conducts.
     *
     * @param element the contact's element index
     * @return true if it is closed
     */
    public boolean isClosed(int element) {
        return conducts(layout.contact(element));
    }

    /**
     * A regulator's tap.
     *
     * @param element the regulator's element index
     * @return the tap, 0 at neutral
     */
    public int tap(int element) {
        return taps[layout.regulator(element).ordinal()];
    }

    /**
     * Says whether a generator runs.
     *
     * @param element the generator's element index
     * @return true if it runs
     */
    public boolean isRunning(int element) {
        return runs(layout.generator(element));
    }

    /**
     * The load case.
     *
     * @return its index in {@link FlowModel#loadCases}
     */
    public int loadCase() {
        return loadCase;
    }

    /**
     * Starts a change; this state stays as it is.
     *
     * @return an editor that begins with this state
     */
    public Editor edit() {
        return new Editor(this);
    }

    boolean conducts(int ordinal) {
        return contacts.get(ordinal);
    }

    boolean runs(int ordinal) {
        return generators.get(ordinal);
    }

    int tapAt(int ordinal) {
        return taps[ordinal];
    }

    /** The impedance that stands in for a contact's own, or null. */
    Complex override(int ordinal) {
        return overrides.isEmpty() ? null : overrides.get(ordinal);
    }

    StateLayout layout() {
        return layout;
    }

    /** The elements, in order, whose admittance may differ between this state and another. */
    int[] differences(FlowState other) {
        BitSet changed = new BitSet(layout.elements().size());
        BitSet contactChanges = (BitSet) contacts.clone();
        contactChanges.xor(other.contacts);
        overrides.forEach((ordinal, value) -> contactChanges.set(ordinal));
        other.overrides.forEach((ordinal, value) -> contactChanges.set(ordinal));
        contactChanges.stream().forEach(k -> changed.set(layout.contacts().get(k)));
        BitSet generatorChanges = (BitSet) generators.clone();
        generatorChanges.xor(other.generators);
        generatorChanges.stream().forEach(k -> changed.set(layout.generators().get(k)));
        for (int k = 0; k < taps.length; k++) {
            if (taps[k] != other.taps[k]) {
                changed.set(layout.regulators().get(k));
            }
        }
        return changed.stream().toArray();
    }

    /** A copy with another load case. */
    FlowState inCase(int otherCase) {
        return new FlowState(layout, contacts, generators, taps, otherCase, overrides);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof FlowState that
                && layout == that.layout
                && loadCase == that.loadCase
                && contacts.equals(that.contacts)
                && generators.equals(that.generators)
                && Arrays.equals(taps, that.taps)
                && overrides.equals(that.overrides);
    }

    @Override
    public int hashCode() {
        int hash = 31 * contacts.hashCode() + generators.hashCode();
        hash = 31 * hash + Arrays.hashCode(taps);
        return 31 * (31 * hash + loadCase) + overrides.hashCode();
    }

    /** Collects changes to a state. */
    public static final class Editor {
        private final StateLayout layout;
        private final BitSet contacts;
        private final BitSet generators;
        private final int[] taps;
        private final Map<Integer, Complex> overrides;
        private int loadCase;

        private Editor(FlowState state) {
            layout = state.layout;
            contacts = (BitSet) state.contacts.clone();
            generators = (BitSet) state.generators.clone();
            taps = state.taps.clone();
            overrides = new TreeMap<>(state.overrides);
            loadCase = state.loadCase;
        }

        /**
         * Opens or closes a contact.
         *
         * @param element the contact's element index
         * @param closed whether it conducts
         * @return this editor
         */
        public Editor contact(int element, boolean closed) {
            contacts.set(layout.contact(element), closed);
            return this;
        }

        /**
         * Sets a regulator's tap.
         *
         * @param element the regulator's element index
         * @param tap a tap within its range
         * @return this editor
         * @throws IllegalArgumentException if the regulator has no such tap
         */
        public Editor tap(int element, int tap) {
            Regulator regulator = layout.regulator(element);
            if (tap < regulator.lowestTap() || tap > regulator.highestTap()) {
                throw new IllegalArgumentException(
                        "Regulator \"" + regulator.name() + "\" has taps " + regulator.lowestTap() + " to "
                                + regulator.highestTap() + ", not " + tap + ".");
            }
            taps[regulator.ordinal()] = tap;
            return this;
        }

        /**
         * Starts or stops a generator.
         *
         * @param element the generator's element index
         * @param runs whether it runs
         * @return this editor
         */
        public Editor generator(int element, boolean runs) {
            generators.set(layout.generator(element), runs);
            return this;
        }

        /**
         * Chooses the load case.
         *
         * @param index its index in {@link FlowModel#loadCases}
         * @return this editor
         * @throws IllegalArgumentException if there is no such case
         */
        public Editor loadCase(int index) {
            if (index < 0 || index >= layout.loadCases().size()) {
                throw new IllegalArgumentException("There is no load case number " + index + ".");
            }
            loadCase = index;
            return this;
        }

        /**
         * Gives a contact another impedance in this state, as for a poor clamp.
         *
         * @param element the contact's element index
         * @param ohms the impedance, not zero; null for the model's own
         * @return this editor
         * @throws IllegalArgumentException if the impedance is zero or not a number
         */
        public Editor impedance(int element, Complex ohms) {
            int ordinal = layout.contact(element);
            if (ohms == null) {
                overrides.remove(ordinal);
                return this;
            }
            if (!ohms.isFinite() || ohms.abs() < FlowModelBuilder.SMALLEST_IMPEDANCE) {
                throw new IllegalArgumentException(
                        "Contact \"" + layout.elements().get(element).name() + "\" cannot have the impedance "
                                + ohms.re() + " + j" + ohms.im() + " ohm.");
            }
            overrides.put(ordinal, ohms);
            return this;
        }

        /**
         * The state with the changes.
         *
         * @return the new state
         */
        public FlowState state() {
            return new FlowState(layout, contacts, generators, taps, loadCase, overrides);
        }
    }
}
