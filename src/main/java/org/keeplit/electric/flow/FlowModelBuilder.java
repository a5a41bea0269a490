package org.keeplit.electric.flow;

import static org.keeplit.electric.flow.FlowModel.GROUND;

import com.google.common.collect.ImmutableList;
import com.google.common.primitives.ImmutableIntArray;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

/**
 * Collects terminals and elements. Each method that adds an element gives its index; what is wrong
 * is collected as sentences and thrown by {@link #build}, all of it at once. Terminals are indices
 * from {@link #terminal}, or {@link FlowModel#GROUND}.
 */
public final class FlowModelBuilder {
    /** Branches of less impedance than this, in ohm, cannot be told from none. */
    static final double SMALLEST_IMPEDANCE = 1e-7;

    private final Map<String, Integer> terminals = new LinkedHashMap<>();
    private final List<Element> elements = new ArrayList<>();
    private final ModelChecks checks = new ModelChecks();
    private final List<String> loadCases = new ArrayList<>();
    private final StateLayoutBuilder layout = new StateLayoutBuilder();
    private FlowOptions options = FlowOptions.DEFAULT;
    private double lowestVoltage = 0.7;

    FlowModelBuilder() {}

    /**
     * The terminal of a name, made at the first request.
     *
     * @param name a conductor at a node, such as "632.A"
     * @return its index
     */
    public int terminal(String name) {
        return terminals.computeIfAbsent(name, key -> terminals.size());
    }

    /**
     * Several terminals of one node.
     *
     * @param node the node's name
     * @param conductors one letter a conductor
     * @return the terminals "node.letter", in order
     */
    public int[] terminals(String node, String conductors) {
        return conductors.chars().map(c -> terminal(node + "." + (char) c)).toArray();
    }

    /**
     * Sets the numbers of the method.
     *
     * @param value the options
     * @return this builder
     */
    public FlowModelBuilder options(FlowOptions value) {
        options = value;
        return this;
    }

    /**
     * Sets the voltage below which loads added from here on keep their impedance.
     *
     * @param part as a part of the load's rated voltage, 0.7 unless set
     * @return this builder
     */
    public FlowModelBuilder lowestVoltage(double part) {
        lowestVoltage = part;
        return this;
    }

    /**
     * Names the load cases; before any load. Without this there is one case, "normal".
     *
     * @param names at least one
     * @return this builder
     */
    public FlowModelBuilder loadCases(String... names) {
        checks.require(loadCases.isEmpty(), "Load cases are named once, before the first load.");
        checks.require(names.length > 0, "There must be at least one load case.");
        loadCases.addAll(List.of(names));
        return this;
    }

    /**
     * Adds a line section without shunt admittance.
     *
     * @param name its name
     * @param from the sending terminals, one a conductor
     * @param to the receiving terminals
     * @param impedance ohm per unit of length, a row for each conductor
     * @param length in the same unit
     * @return the element's index
     */
    public int line(String name, int[] from, int[] to, ComplexMatrix impedance, double length) {
        return line(name, from, to, impedance, ComplexMatrix.zero(from.length), length);
    }

    /**
     * Adds a line section.
     *
     * @param name its name
     * @param from the sending terminals, one a conductor
     * @param to the receiving terminals
     * @param impedance ohm per unit of length, a row for each conductor
     * @param shunt siemens per unit of length
     * @param length in the same unit
     * @return the element's index, or -1 if it cannot be built
     */
    public int line(
            String name, int[] from, int[] to, ComplexMatrix impedance, ComplexMatrix shunt, double length) {
        int n = from.length;
        boolean good = checks.require(length > 0, "Line section \"%s\" has length %s.", name, length)
                & checks.require(
                        to.length == n && impedance.rows() == n && shunt.rows() == n,
                        "Line section \"%s\" has %s and %s ends, %s rows of impedance and %s of admittance.",
                        name, n, to.length, impedance.rows(), shunt.rows())
                && checks.impedance("Line section", name, impedance.times(length))
                        & checks.symmetric("Line section", name, "a shunt admittance", shunt);
        return add(name, good, ends(from, to), t ->
                new LineSection(name, t, impedance.times(length), shunt.times(length)));
    }

    /**
     * Adds a source that is always on.
     *
     * @param name its name
     * @param phases its terminals
     * @param back where its neutral is: a terminal or ground
     * @param emf the voltages from {@code back}, one a phase
     * @param impedance ohm, a row for each phase; see {@link SourceImpedance}
     * @return the element's index
     */
    public int source(String name, int[] phases, int back, Complex[] emf, ComplexMatrix impedance) {
        return addSource(name, phases, back, emf, impedance, -1);
    }

    /**
     * Adds a generator that can hold an island by itself, on or off as the state says.
     *
     * @param name its name
     * @param phases its terminals
     * @param back where its neutral is: a terminal or ground
     * @param emf the voltages from {@code back}, one a phase
     * @param impedance ohm, a row for each phase
     * @param runs whether it runs in the base state
     * @return the element's index
     */
    public int generator(
            String name, int[] phases, int back, Complex[] emf, ComplexMatrix impedance, boolean runs) {
        int ordinal = layout.generator(elements.size(), runs);
        return addSource(name, phases, back, emf, impedance, ordinal);
    }

    private int addSource(
            String name, int[] phases, int back, Complex[] emf, ComplexMatrix impedance, int ordinal) {
        ComplexMatrix column = ComplexMatrix.of(emf.length, 1, (i, j) -> emf[i]);
        boolean good = checks.require(
                        emf.length == phases.length && impedance.rows() == phases.length,
                        "Source \"%s\" has %s phases, %s voltages and %s rows of impedance.",
                        name, phases.length, emf.length, impedance.rows())
                && checks.impedance("Source", name, impedance)
                        & checks.require(column.isFinite(), "Source \"%s\" has a voltage that is no number.", name);
        layout.source(elements.size());
        return add(name, good, ends(phases, new int[] {back}), t -> new Source(name, t, column, impedance, ordinal));
    }

    /**
     * Adds a load with the same power in every load case.
     *
     * @param name its name
     * @param from one terminal
     * @param to the other terminal, or ground
     * @param ratedVolts the voltage across it at which {@code power} holds
     * @param power what it draws
     * @return the element's index
     */
    public int load(String name, int from, int to, double ratedVolts, LoadPower power) {
        return load(name, from, to, ratedVolts, inEveryCase(power));
    }

    private LoadPower[] inEveryCase(LoadPower power) {
        LoadPower[] powers = new LoadPower[cases().size()];
        Arrays.fill(powers, power);
        return powers;
    }

    /**
     * Adds a load with a power for each load case.
     *
     * @param name its name
     * @param from one terminal
     * @param to the other terminal, or ground
     * @param ratedVolts the voltage across it at which the powers hold
     * @param powers what it draws, one a load case
     * @return the element's index
     */
    public int load(String name, int from, int to, double ratedVolts, LoadPower[] powers) {
        return addLoad(name, from, to, ratedVolts, powers, -1);
    }

    private int addLoad(String name, int from, int to, double ratedVolts, LoadPower[] powers, int ordinal) {
        boolean good = checks.load(name, ratedVolts, lowestVoltage, powers, cases().size())
                & checks.distinct("Load", name, from, to);
        double lowest = lowestVoltage * ratedVolts;
        return add(name, good, ends(new int[] {from, to}), t ->
                new Load(name, t, ratedVolts, lowest, ImmutableList.copyOf(powers), ordinal));
    }

    /**
     * Adds a generator that follows the voltage that it finds, and feeds nothing by itself. Where
     * little else holds the voltage (a conductor alive only through loads, say), constant power can
     * have two solutions; the one found is always the same, but a voltage far above the rated one
     * means that the real machine would have tripped.
     *
     * @param name its name
     * @param from one terminal
     * @param to the other terminal, or ground
     * @param ratedVolts its rated voltage
     * @param delivered the power that it delivers, P + jQ
     * @param runs whether it runs in the base state
     * @return the element's index
     */
    public int follower(String name, int from, int to, double ratedVolts, Complex delivered, boolean runs) {
        int ordinal = layout.generator(elements.size(), runs);
        LoadPower[] powers = inEveryCase(LoadPower.constantPower(delivered.negate()));
        return addLoad(name, from, to, ratedVolts, powers, ordinal);
    }

    /**
     * Adds a capacitor.
     *
     * @param name its name
     * @param from one terminal
     * @param to the other terminal, or ground
     * @param ratedVolts its rated voltage
     * @param vars what it gives at rated voltage
     * @return the element's index
     */
    public int capacitor(String name, int from, int to, double ratedVolts, double vars) {
        checks.require(ratedVolts > 0, "Capacitor \"%s\" has the rated voltage %s.", name, ratedVolts);
        return shunt(name, from, to, new Complex(0, vars / (ratedVolts * ratedVolts)));
    }

    /**
     * Adds a fixed admittance.
     *
     * @param name its name
     * @param from one terminal
     * @param to the other terminal, or ground
     * @param siemens the admittance
     * @return the element's index
     */
    public int shunt(String name, int from, int to, Complex siemens) {
        boolean good = checks.require(siemens.isFinite(), "\"%s\" has an admittance that is no number.", name)
                & checks.distinct("Shunt", name, from, to);
        return add(name, good, ends(new int[] {from, to}), t -> new Shunt(name, t, siemens));
    }

    /**
     * Adds a transformer unit without magnetizing current.
     *
     * @param name its name
     * @param windings its windings, at least two
     * @return the element's index
     */
    public int transformer(String name, Winding... windings) {
        return transformer(name, Complex.ZERO, windings);
    }

    /**
     * Adds a transformer unit.
     *
     * @param name its name
     * @param noLoad what it draws at rated voltage without load, P + jQ
     * @param windings its windings, at least two
     * @return the element's index
     */
    public int transformer(String name, Complex noLoad, Winding... windings) {
        int[] terminalsInOrder = new int[2 * windings.length];
        for (int k = 0; k < windings.length; k++) {
            terminalsInOrder[2 * k] = windings[k].from();
            terminalsInOrder[2 * k + 1] = windings[k].to();
        }
        boolean good = checks.windings(name, windings)
                & checks.require(noLoad.isFinite(), "Transformer \"%s\" has a no-load power that is no number.", name);
        return add(name, good, ends(terminalsInOrder), t ->
                new Transformer(name, t, List.of(windings), noLoad.conjugate()));
    }

    /**
     * Adds a single-phase step regulator of taps -16 to 16.
     *
     * @param name its name
     * @param source the source bushing
     * @param load the load bushing
     * @param common the common bushing: ground, a neutral, or another phase
     * @param kind how its taps act
     * @param impedance its series impedance in ohm, not zero
     * @param tap the tap in the base state
     * @return the element's index
     */
    public int regulator(
            String name, int source, int load, int common, RegulatorKind kind, Complex impedance, int tap) {
        int range = 16;
        int ordinal = layout.regulator(elements.size(), tap);
        boolean good = checks.branch("Regulator", name, source, load, impedance)
                & checks.require(
                        Math.abs(tap) <= range, "Regulator \"%s\" has taps -16 to 16, not %s.", name, tap);
        return add(name, good, ends(new int[] {source, load, common}), t ->
                new Regulator(name, t, kind, impedance, -range, range, ordinal));
    }

    /**
     * Adds a contact.
     *
     * @param name its name
     * @param from one terminal
     * @param to the other terminal, or ground
     * @param impedance ohm while it conducts, not zero
     * @param conducts whether it conducts in the base state
     * @return the element's index
     */
    public int contact(String name, int from, int to, Complex impedance, boolean conducts) {
        int ordinal = layout.contact(elements.size(), conducts);
        boolean good = checks.branch("Contact", name, from, to, impedance);
        return add(name, good, ends(new int[] {from, to}), t -> new Contact(name, t, impedance, ordinal));
    }

    /**
     * Builds the model.
     *
     * @return the model
     * @throws FlowModelException if anything is wrong, with every problem found
     */
    public FlowModel build() {
        List<String> names = List.copyOf(terminals.keySet());
        checks.connections(elements, names);
        checks.throwIfAny();
        return new FlowModel(names, layout.baseState(elements, cases()), options);
    }

    private List<String> cases() {
        if (loadCases.isEmpty()) {
            loadCases.add("normal");
        }
        return loadCases;
    }

    private interface Maker {
        Element make(ImmutableIntArray ends);
    }

    /** Adds the element if it is good; a bad one still takes its place, so that indices stay right. */
    private int add(String name, boolean good, ImmutableIntArray ends, Maker maker) {
        boolean known = checks.require(
                ends.stream().allMatch(t -> t >= GROUND && t < terminals.size()),
                "Element \"%s\" is connected to a terminal that does not exist.", name);
        elements.add(good && known ? maker.make(ends) : null);
        return elements.size() - 1;
    }

    private static ImmutableIntArray ends(int[]... groups) {
        ImmutableIntArray.Builder ends = ImmutableIntArray.builder();
        for (int[] group : groups) {
            ends.addAll(group);
        }
        return ends.build();
    }
}
