package org.keeplit.electric.flow;

import static org.keeplit.electric.flow.FlowModel.GROUND;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

/**
 * Small networks with everything in them: laterals of one to three phases, loops, contacts, banks of
 * all connections, regulators, loads of all kinds. The same number gives the same network. What goes
 * to the builder is noted a second time as plain parts, from which the oracle starts.
 */
final class RandomNetwork {
    static final double VOLTS = 7200;

    /** The parts, as the oracle takes them; terminals as in the model. */
    sealed interface Part {}

    record Line(int[] from, int[] to, ComplexMatrix impedance, ComplexMatrix shunt) implements Part {}

    /** A source; a generator if it has an index into the list of them. */
    record Emf(int[] phases, Complex[] volts, ComplexMatrix impedance, int generator) implements Part {}

    /** A load, or with an element index a follower that the state switches. */
    record Draw(int from, int to, double rated, double lowest, LoadPower power, int follower) implements Part {}

    record Pole(int element, int from, int to, Complex impedance) implements Part {}

    record Unit(Winding[] windings) implements Part {}

    record Step(int element, int source, int load, int common, RegulatorKind kind, Complex impedance)
            implements Part {}

    record Fixed(int from, int to, Complex siemens) implements Part {}

    final List<Part> parts = new ArrayList<>();
    final List<Integer> contacts = new ArrayList<>();
    final List<Integer> regulators = new ArrayList<>();
    final List<Integer> generators = new ArrayList<>();
    final FlowModel model;

    private final Random random;
    private final int rotation;
    private final FlowModelBuilder builder = FlowModel.builder();
    /** Three-phase nodes of the primary and of secondaries with their line-to-line volts. */
    private final List<String> primary = new ArrayList<>();
    private int count;

    RandomNetwork(long seed) {
        this(seed, 0);
    }

    /**
     * Builds a network.
     *
     * @param seed the number
     * @param rotation by how many phases everything is moved on
     */
    RandomNetwork(long seed, int rotation) {
        random = new Random(seed);
        this.rotation = rotation;
        addSource("s", -1, false);
        primary.add("s");
        int nodes = 3 + random.nextInt(4);
        for (int k = 0; k < nodes; k++) {
            addSection(pick(primary), "n" + k);
            primary.add("n" + k);
        }
        addTie();
        addBanks();
        addLateral();
        for (int k = 0; k < 3; k++) {
            addLoads(pick(primary), VOLTS * Math.sqrt(3), 150_000);
        }
        String place = pick(primary);
        addSource(place, generators.size(), random.nextBoolean());
        addNeutralLateral();
        addFollower();
        model = builder.build();
    }

    private String pick(List<String> from) {
        return from.get(random.nextInt(from.size()));
    }

    private int terminal(String node, int phase) {
        return builder.terminal(node + "." + "ABC".charAt((phase + rotation) % 3));
    }

    private int[] phases(String node) {
        return new int[] {terminal(node, 0), terminal(node, 1), terminal(node, 2)};
    }

    private double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    private Complex impedance(double low, double high) {
        return new Complex(between(low, high), between(low, 2 * high));
    }

    private void addSource(String node, int generator, boolean runs) {
        Complex[] volts = new Complex[3];
        for (int k = 0; k < 3; k++) {
            volts[k] = Complex.polar(VOLTS * 1.02, -120 * ((k + rotation) % 3));
        }
        ComplexMatrix z = ComplexMatrix.balanced(3, new Complex(0.2, 1.1), new Complex(0.05, 0.2));
        int[] phases = phases(node);
        parts.add(new Emf(phases, volts, z, generator));
        if (generator < 0) {
            builder.source("source", phases, GROUND, volts, z);
        } else {
            generators.add(builder.generator("generator", phases, GROUND, volts, z, runs));
        }
    }

    private void addContact(int from, int to, boolean closed) {
        Complex z = new Complex(Math.pow(10, between(-4.5, -2)), 0);
        int element = builder.contact("contact " + count++, from, to, z, closed);
        contacts.add(element);
        parts.add(new Pole(element, from, to, z));
    }

    private void addLine(int[] from, int[] to) {
        int n = from.length;
        Complex self = impedance(0.3, 1);
        Complex mutual = self.times(between(0.2, 0.4));
        ComplexMatrix z = ComplexMatrix.of(n, n, (i, j) -> i == j ? self.times(1 + 0.05 * i) : mutual);
        ComplexMatrix y = ComplexMatrix.of(n, n, (i, j) -> new Complex(0, i == j ? 6e-6 : -1e-6));
        double length = between(0.1, 2);
        builder.line("line " + count++, from, to, z, y, length);
        parts.add(new Line(from, to, z.times(length), y.times(length)));
    }

    /** A section with three poles at its sending end, sometimes three regulators instead. */
    private void addSection(String from, String to) {
        String middle = to + "-in";
        boolean regulated = random.nextInt(4) == 0;
        for (int k = 0; k < 3; k++) {
            if (regulated) {
                Complex z = new Complex(0.01, 0.05);
                int tap = random.nextInt(21) - 10;
                RegulatorKind kind = random.nextBoolean() ? RegulatorKind.TYPE_A : RegulatorKind.TYPE_B;
                int element = builder.regulator("regulator " + count++, terminal(from, k), terminal(middle, k),
                        GROUND, kind, z, tap);
                regulators.add(element);
                parts.add(new Step(element, terminal(from, k), terminal(middle, k), GROUND, kind, z));
                // A bypass of the same phase, mostly open.
                addContact(terminal(from, k), terminal(middle, k), false);
            } else {
                addContact(terminal(from, k), terminal(middle, k), random.nextInt(10) > 0);
            }
        }
        addLine(phases(middle), phases(to));
        if (!regulated && random.nextInt(3) == 0) {
            addContact(terminal(from, 0), terminal(middle, 0), random.nextBoolean());
        }
    }

    private void addTie() {
        String a = primary.get(1 + random.nextInt(primary.size() - 1));
        String b = pick(primary);
        for (int k = 0; k < 3 && !a.equals(b); k++) {
            addContact(terminal(a, k), terminal(b, k), random.nextBoolean());
        }
    }

    private void addBanks() {
        WindingConnection[] kinds = WindingConnection.values();
        int banks = 1 + random.nextInt(2);
        for (int b = 0; b < banks; b++) {
            String from = pick(primary);
            String in = "bank" + b;
            String out = "low" + b;
            for (int k = 0; k < 3; k++) {
                addContact(terminal(from, k), terminal(in, k), random.nextInt(5) > 0);
            }
            WindingConnection high = kinds[random.nextInt(3)];
            WindingConnection low = kinds[random.nextInt(3)];
            boolean floating = high == WindingConnection.WYE && low != WindingConnection.WYE && random.nextBoolean();
            int neutral = floating ? builder.terminal(in + ".N") : GROUND;
            int units = low != WindingConnection.WYE && high == WindingConnection.WYE && !floating
                            && random.nextInt(3) == 0 ? 2 : 3;
            for (int k = 0; k < units; k++) {
                addUnit(in, out, k, high, low, neutral);
            }
            addDeltaLoads(out, low);
        }
    }

    private void addUnit(
            String in, String out, int k, WindingConnection high, WindingConnection low, int neutral) {
        double highVolts = VOLTS * Math.sqrt(3) * high.windingVolts();
        double lowVolts = 480 * low.windingVolts();
        Winding[] windings = {
            new Winding(terminal(in, k), high.back(k) < 0 ? neutral : terminal(in, high.back(k)), highVolts,
                    new Complex(0.005, 0.02).times(highVolts * highVolts / 100_000)),
            new Winding(terminal(out, k), low.back(k) < 0 ? GROUND : terminal(out, low.back(k)), lowVolts,
                    new Complex(0.005, 0.02).times(lowVolts * lowVolts / 100_000))
        };
        builder.transformer("unit " + count++, windings);
        parts.add(new Unit(windings));
    }

    private void addDeltaLoads(String node, WindingConnection low) {
        for (int k = 0; k < 3; k++) {
            boolean wye = low == WindingConnection.WYE;
            int back = wye ? GROUND : terminal(node, (k + 1) % 3);
            addLoad(terminal(node, k), back, wye ? 480 / Math.sqrt(3) : 480, 20_000);
        }
    }

    private void addLateral() {
        String from = pick(primary);
        int phase = random.nextInt(3);
        int in = builder.terminal("lateral-in");
        int out = builder.terminal("lateral");
        addContact(terminal(from, phase), in, random.nextInt(4) > 0);
        addLine(new int[] {in}, new int[] {out});
        addLoad(out, GROUND, VOLTS, 60_000);
        // A centre-tapped unit with a leg-to-leg load.
        Complex leakage = new Complex(0.006, 0.02);
        Winding[] windings = {
            new Winding(out, GROUND, VOLTS, leakage.times(VOLTS * VOLTS / 50_000)),
            new Winding(builder.terminal("leg1"), GROUND, 120, leakage.times(120 * 120 / 25_000.0)),
            new Winding(GROUND, builder.terminal("leg2"), 120, leakage.times(120 * 120 / 25_000.0))
        };
        builder.transformer("pole-top", windings);
        parts.add(new Unit(windings));
        addLoad(builder.terminal("leg1"), builder.terminal("leg2"), 240, 12_000);
        addLoad(builder.terminal("leg1"), GROUND, 120, 5_000);
        addContact(in, GROUND, false);
    }

    /** Phase and neutral, the neutral grounded through a contact at one end and a rod at the other. */
    private void addNeutralLateral() {
        int[] in = {builder.terminal("w-in.P"), builder.terminal("w-in.N")};
        int[] out = {builder.terminal("w.P"), builder.terminal("w.N")};
        addContact(terminal(pick(primary), random.nextInt(3)), in[0], random.nextInt(4) > 0);
        addContact(in[1], GROUND, true);
        addLine(in, out);
        Complex rod = new Complex(0.04, 0);
        builder.shunt("rod", out[1], GROUND, rod);
        parts.add(new Fixed(out[1], GROUND, rod));
        addLoad(out[0], out[1], VOLTS, 40_000);
    }

    /** At the source: where little else holds the voltage, constant power has two solutions. */
    private void addFollower() {
        int at = terminal("s", random.nextInt(3));
        Complex delivered = new Complex(between(10_000, 60_000), 0);
        int element = builder.follower("follower", at, GROUND, VOLTS, delivered, random.nextBoolean());
        generators.add(element);
        parts.add(new Draw(
                at, GROUND, VOLTS, 0.7 * VOLTS, LoadPower.constantPower(delivered.negate()), element));
    }

    private void addLoads(String node, double lineVolts, double power) {
        int kind = random.nextInt(3);
        for (int k = 0; k < 3; k++) {
            if (kind == 0) {
                addLoad(terminal(node, k), terminal(node, (k + 1) % 3), lineVolts, power);
            } else if (kind == 1) {
                addLoad(terminal(node, k), GROUND, lineVolts / Math.sqrt(3), power);
            } else {
                Complex siemens = new Complex(0, 100_000 / (lineVolts * lineVolts / 3));
                builder.shunt("capacitor " + count++, terminal(node, k), GROUND, siemens);
                parts.add(new Fixed(terminal(node, k), GROUND, siemens));
            }
        }
    }

    private void addLoad(int from, int to, double rated, double power) {
        Complex va = new Complex(between(0.2, 1) * power, between(0, 0.5) * power);
        LoadPower load = LoadPower.mixed(va, between(0, 0.4), between(0, 0.6));
        builder.load("load " + count++, from, to, rated, load);
        parts.add(new Draw(from, to, rated, 0.7 * rated, load, -1));
    }

    /** A state some steps away from the base state. */
    FlowState randomState(Random choice) {
        FlowState.Editor editor = model.baseState().edit();
        for (int change = 0; change < 1 + choice.nextInt(5); change++) {
            int contact = contacts.get(choice.nextInt(contacts.size()));
            editor.contact(contact, choice.nextBoolean());
            if (choice.nextInt(4) == 0) {
                editor.impedance(contacts.get(choice.nextInt(contacts.size())), new Complex(0.005, 0.001));
            }
        }
        for (int regulator : regulators) {
            if (choice.nextInt(3) == 0) {
                editor.tap(regulator, choice.nextInt(33) - 16);
            }
        }
        for (int generator : generators) {
            editor.generator(generator, choice.nextBoolean());
        }
        return editor.state();
    }
}
