package org.keeplit.electric.power;

import static org.keeplit.electric.power.Assembly.SQRT3;
import static org.keeplit.electric.power.Assembly.figure;
import static org.keeplit.electric.power.Assembly.need;

import java.util.ArrayList;
import java.util.List;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.flow.DistributedLoad;
import org.keeplit.electric.flow.FlowModel;
import org.keeplit.electric.flow.LoadPower;
import org.keeplit.network.Conductor;
import org.keeplit.network.Connection;
import org.keeplit.network.Element;

/** Adds loads, capacitors and customers' generators to a model. */
final class Shunts {
    private final Assembly assembly;
    private final List<Integer> generators = new ArrayList<>();

    Shunts(Assembly assembly) {
        this.assembly = assembly;
    }

    /** {@return the elements of the generators added, one for each phase or two of them} */
    List<Integer> generators() {
        return List.copyOf(generators);
    }

    /**
     * A generator follows the voltage that it finds, phase by phase; it holds no island. Where nothing grounds the system it
     * delivers between phases: constant power to ground would leave the voltage of the star point to chance.
     */
    void generator(Element.Generator generator) {
        List<Conductor> phases = generator.phases().list().stream().filter(Conductor::isPhase).toList();
        boolean between = phases.size() > 1 && !assembly.nominal.grounded(generator.node());
        int parts = between && phases.size() == 2 ? 1 : phases.size();
        Complex each = new Complex(
                        need(generator, "active power"), figure(generator.figures(), "reactive power", 0))
                .times(1.0 / parts);
        for (int i = 0; i < parts; i++) {
            Conductor next = phases.get((i + 1) % phases.size());
            generators.add(assembly.builder.follower(
                    generator.name() + words(phases, i, between),
                    assembly.at(generator.node(), phases.get(i)),
                    between ? assembly.at(generator.node(), next) : FlowModel.GROUND,
                    between ? assembly.nominal.lineToLine(generator.node()) : assembly.nominal.toGround(generator.node(), phases.get(i)),
                    each,
                    false));
        }
    }

    void load(Element.Load load) {
        if (load.along().isEmpty()) {
            load(load, load.name(), assembly.at(load.node(), load.phases()), 1);
            return;
        }
        int[] quarter = load.phases().list().stream()
                .filter(Conductor::isPhase)
                .mapToInt(p -> assembly.quarters.get(load.along().get() + " " + p))
                .toArray();
        load(load, load.name() + " at the quarter", quarter, DistributedLoad.AT_QUARTER);
        load(load, load.name() + " at the end", assembly.at(load.node(), load.phases()), DistributedLoad.AT_END);
    }

    /** Adds a part of a load at some terminals. */
    private void load(Element.Load load, String name, int[] phases, double part) {
        double volts = assembly.nominal.lineToLine(load.node());
        List<Conductor> list =
                load.phases().list().stream().filter(Conductor::isPhase).toList();
        boolean between = load.connection() == Connection.DELTA && phases.length > 1;
        int parts = between && phases.length == 2 ? 1 : phases.length;
        int neutral = load.connection() == Connection.WYE && phases.length > 1
                ? assembly.builder.terminal(name + " neutral")
                : FlowModel.GROUND;
        for (int i = 0; i < parts; i++) {
            int back = between ? phases[(i + 1) % phases.length] : neutral;
            assembly.builder.load(
                    name + words(list, i, between),
                    phases[i],
                    back,
                    between ? volts : assembly.nominal.toGround(load.node(), list.get(i)),
                    inAllCases(load, power(load, leg(list, i, between), parts).times(part)));
        }
    }

    /** {@return where a part is, in words that stand behind the name} */
    private static String words(List<Conductor> phases, int part, boolean between) {
        return between ? " between " + phases.get(part) + " and " + phases.get((part + 1) % phases.size()) : " on phase " + phases.get(part);
    }

    /** {@return how the power of a part is called: by its phase, in delta by its two in the order of the rotation} */
    private static String leg(List<Conductor> phases, int part, boolean between) {
        Conductor one = phases.get(part);
        if (!between) {
            return one.toString();
        }
        Conductor next = phases.get((part + 1) % phases.size());
        return one == Conductor.A && next == Conductor.C ? "CA" : "" + one + next;
    }

    /** {@return what a load draws on one phase, or between it and the next: its own figure, or a share of the whole} */
    private static Complex power(Element.Load load, String leg, int parts) {
        boolean own = load.figures().keySet().stream().anyMatch(name -> name.startsWith("active power "));
        return own
                ? new Complex(
                        figure(load.figures(), "active power " + leg, 0),
                        figure(load.figures(), "reactive power " + leg, 0))
                : new Complex(
                                figure(load.figures(), "active power", 0),
                                figure(load.figures(), "reactive power", 0))
                        .times(1.0 / parts);
    }

    private LoadPower[] inAllCases(Element.Load load, Complex power) {
        LoadPower each = switch (load.model()) {
            case POWER -> LoadPower.constantPower(power);
            case CURRENT -> LoadPower.constantCurrent(power);
            case IMPEDANCE -> LoadPower.constantImpedance(power);
        };
        LoadPower[] cases = new LoadPower[factors().size() + 1];
        cases[0] = each;
        for (int i = 1; i < cases.length; i++) {
            cases[i] = each.times(factors().get(i - 1));
        }
        return cases;
    }

    void capacitor(Element.Capacitor bank) {
        double volts = assembly.nominal.lineToLine(bank.node());
        int[] phases = assembly.at(bank.node(), bank.phases());
        List<Conductor> list =
                bank.phases().list().stream().filter(Conductor::isPhase).toList();
        boolean between = bank.connection() == Connection.DELTA && phases.length > 1;
        int parts = between && phases.length == 2 ? 1 : phases.length;
        double vars = need(bank, "reactive power") / parts;
        int neutral = bank.connection() == Connection.WYE && phases.length > 1
                ? assembly.builder.terminal(bank.name() + " neutral")
                : FlowModel.GROUND;
        for (int i = 0; i < parts; i++) {
            int back = between ? phases[(i + 1) % phases.length] : neutral;
            assembly.builder.capacitor(bank.name() + words(list, i, between), phases[i], back, between ? volts : volts / SQRT3, vars);
        }
    }

    private List<Double> factors() {
        return assembly.network.system().entrySet().stream()
                .filter(e -> e.getKey().startsWith("load case "))
                .map(e -> e.getValue().si())
                .toList();
    }
}
