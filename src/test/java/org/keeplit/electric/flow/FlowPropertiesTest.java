package org.keeplit.electric.flow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.constraints.LongRange;
import org.keeplit.electric.complex.Complex;

/** Laws that hold in every state of every network. */
class FlowPropertiesTest {
    private static final int STATES = 4;

    private static List<FlowState> states(RandomNetwork network, long seed) {
        List<FlowState> states = new ArrayList<>();
        states.add(network.model.baseState());
        Random choice = new Random(~seed);
        for (int k = 1; k < STATES; k++) {
            states.add(network.randomState(choice));
        }
        return states;
    }

    private static List<FlowSolution> solutions(RandomNetwork network, long seed) {
        FlowSolver solver = network.model.solver();
        return states(network, seed).stream().flatMap(s -> solver.solve(s).solution().stream()).toList();
    }

    @Property(tries = 100, shrinking = ShrinkingMode.OFF)
    void currentsSumToZeroAtEveryTerminal(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
        RandomNetwork network = new RandomNetwork(seed);
        for (FlowSolution solution : solutions(network, seed)) {
            Complex[] sum = new Complex[network.model.terminals().size()];
            Arrays.fill(sum, Complex.ZERO);
            for (int e = 0; e < network.model.elements().size(); e++) {
                Element element = network.model.elements().get(e);
                for (int p = 0; p < element.positions(); p++) {
                    if (element.terminal(p) >= 0) {
                        sum[element.terminal(p)] = sum[element.terminal(p)].plus(solution.current(e, p));
                    }
                }
            }
            double stray = network.model.options().strayConductance();
            for (int t = 0; t < sum.length; t++) {
                Complex rest = sum[t].plus(solution.voltage(t).times(stray));
                assertTrue(rest.abs() < 1e-5, network.model.terminals().get(t) + ": " + rest);
            }
        }
    }

    @Property(tries = 100, shrinking = ShrinkingMode.OFF)
    void powersBalance(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
        RandomNetwork network = new RandomNetwork(seed);
        for (FlowSolution solution : solutions(network, seed)) {
            Complex sum = Complex.ZERO;
            double size = 1;
            for (int e = 0; e < network.model.elements().size(); e++) {
                Complex power = solution.power(e);
                sum = sum.plus(power);
                size = Math.max(size, power.abs());
            }
            for (int t = 0; t < network.model.terminals().size(); t++) {
                double volts = solution.voltage(t).abs();
                sum = sum.plus(Complex.real(volts * volts * network.model.options().strayConductance()));
            }
            assertTrue(sum.abs() < 1e-7 * size + 1e-2, "left over: " + sum + " of " + size);
            assertTrue(solution.losses().re() > -1e-3, "losses: " + solution.losses());
        }
    }

    @Property(tries = 50, shrinking = ShrinkingMode.OFF)
    void whatCameBeforeDoesNotMatter(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
        RandomNetwork network = new RandomNetwork(seed);
        List<FlowState> states = states(network, seed);
        FlowSolver used = network.model.solver();
        states.forEach(used::solve);
        List<FlowState> shuffled = new ArrayList<>(states);
        Collections.shuffle(shuffled, new Random(seed));
        RandomNetwork again = new RandomNetwork(seed);
        for (FlowState state : shuffled) {
            FlowResult after = used.solve(state);
            FlowResult fresh = again.model.solver().solve(translate(again.model, network, state));
            assertEquals(fresh.solution().isPresent(), after.solution().isPresent());
            assertEquals(fresh.iterations(), after.iterations());
            for (int t = 0; after.solution().isPresent() && t < network.model.terminals().size(); t++) {
                // Bit for bit.
                assertEquals(fresh.solution().get().voltage(t), after.solution().get().voltage(t));
            }
        }
    }

    /** Two threads with a solver each find what one finds. */
    @Property(tries = 10, shrinking = ShrinkingMode.OFF)
    void threadsDoNotMatter(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
        RandomNetwork network = new RandomNetwork(seed);
        List<FlowState> states = states(network, seed);
        List<Complex> alone = firstVoltages(new RandomNetwork(seed).model, network, states);
        List<List<Complex>> together = java.util.stream.IntStream.range(0, 2).parallel()
                .mapToObj(thread -> firstVoltages(network.model, network, states)).toList();
        assertEquals(List.of(alone, alone), together);
    }

    private static List<Complex> firstVoltages(FlowModel model, RandomNetwork network, List<FlowState> states) {
        FlowSolver solver = model.solver();
        return states.stream()
                .map(state -> solver.solve(translate(model, network, state)))
                .flatMap(result -> result.solution().stream())
                .map(solution -> solution.voltage(model.terminals().indexOf("n0.A")))
                .toList();
    }

    /** The same state of a network built a second time. */
    private static FlowState translate(FlowModel to, RandomNetwork from, FlowState state) {
        FlowState.Editor editor = to.baseState().edit();
        for (int contact : from.contacts) {
            editor.contact(contact, state.isClosed(contact));
            editor.impedance(contact, state.override(((Contact) from.model.elements().get(contact)).ordinal()));
        }
        from.regulators.forEach(regulator -> editor.tap(regulator, state.tap(regulator)));
        from.generators.forEach(generator -> editor.generator(generator, state.isRunning(generator)));
        return editor.state();
    }

    @Property(tries = 50, shrinking = ShrinkingMode.OFF)
    void phasesMayBeRenamed(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
        RandomNetwork network = new RandomNetwork(seed);
        RandomNetwork turned = new RandomNetwork(seed, 1);
        List<FlowState> states = states(network, seed);
        Complex turn = Complex.polar(1, -120);
        for (FlowState state : states) {
            var plain = network.model.solver().solve(state).solution();
            var moved = turned.model.solver().solve(translate(turned.model, network, state)).solution();
            assertEquals(plain.isPresent(), moved.isPresent());
            for (int e = 0; plain.isPresent() && e < network.model.elements().size(); e++) {
                for (int p = 0; p < network.model.elements().get(e).positions(); p++) {
                    Complex expected = plain.get().current(e, p).times(turn);
                    Complex actual = moved.get().current(e, p);
                    assertTrue(
                            expected.minus(actual).abs() < 1e-4 + 1e-6 * expected.abs(),
                            network.model.elements().get(e).name() + ": " + expected + " and " + actual);
                }
            }
        }
    }

    /** Alive as a walk through the network says, from the parts and not from the model's own zones. */
    @Property(tries = 100, shrinking = ShrinkingMode.OFF)
    void deadIslandsAreExactlyZeroAndLiveOnesAreNot(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
        RandomNetwork network = new RandomNetwork(seed);
        for (FlowSolution solution : solutions(network, seed)) {
            BitSet live = walk(network, solution.state());
            for (int t = 0; t < network.model.terminals().size(); t++) {
                assertEquals(live.get(t), solution.isLive(t), network.model.terminals().get(t));
                if (!live.get(t)) {
                    assertEquals(Complex.ZERO, solution.voltage(t));
                }
            }
            for (int e = 0; e < network.model.elements().size(); e++) {
                Element element = network.model.elements().get(e);
                if (!live.get(Math.max(0, element.terminal(0))) && element.terminal(0) >= 0) {
                    assertEquals(Complex.ZERO, solution.current(e, 0), element.name());
                }
            }
        }
    }

    private static BitSet walk(RandomNetwork network, FlowState state) {
        BitSet live = new BitSet();
        for (int before = -1; before != live.cardinality(); ) {
            before = live.cardinality();
            for (RandomNetwork.Part part : network.parts) {
                spread(network, state, part, live);
            }
        }
        return live;
    }

    private static void spread(RandomNetwork network, FlowState state, RandomNetwork.Part part, BitSet live) {
        if (part instanceof RandomNetwork.Emf emf) {
            if (emf.generator() < 0 || state.isRunning(network.generators.get(emf.generator()))) {
                Arrays.stream(emf.phases()).forEach(live::set);
            }
        } else if (part instanceof RandomNetwork.Line line) {
            for (int k = 0; k < line.from().length; k++) {
                together(live, line.from()[k], line.to()[k]);
            }
        } else if (part instanceof RandomNetwork.Draw draw && draw.follower() < 0) {
            together(live, draw.from(), draw.to());
        } else if (part instanceof RandomNetwork.Pole pole && state.isClosed(pole.element())) {
            together(live, pole.from(), pole.to());
        } else if (part instanceof RandomNetwork.Step step) {
            together(live, step.source(), step.load());
        } else if (part instanceof RandomNetwork.Unit unit) {
            together(live, Arrays.stream(unit.windings()).flatMapToInt(
                    w -> java.util.stream.IntStream.of(w.from(), w.to())).toArray());
        }
    }

    private static void together(BitSet live, int... terminals) {
        int[] real = Arrays.stream(terminals).filter(t -> t >= 0).toArray();
        if (real.length > 1 && Arrays.stream(real).anyMatch(live::get)) {
            Arrays.stream(real).forEach(live::set);
        }
    }
}
