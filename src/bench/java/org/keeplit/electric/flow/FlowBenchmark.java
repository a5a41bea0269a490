package org.keeplit.electric.flow;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/**
 * What a new state costs, beside one forward and back substitution on the same feeder, and what the
 * model costs once. A state's time over substitutions times iterations is the figure to watch; the
 * iterations are printed at set-up.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class FlowBenchmark {
    /** How many nodes the feeder has. */
    @Param({"1000", "10000", "100000"})
    public int nodes;

    private FlowModel model;
    private FlowSolver solver;
    private List<FlowState> states;
    private NodalMatrix matrix;
    private double[] vector;
    private int next;

    /** Builds the feeder and what it keeps. */
    @Setup
    public void build() {
        model = GeneratedFeeder.build(nodes);
        solver = model.solver();
        states = GeneratedFeeder.states(model, 60);
        matrix = model.baseCase(0).flow().copy();
        vector = model.vector();
        double iterations = states.stream().mapToInt(s -> solver.solve(s).iterations()).average().orElseThrow();
        System.out.printf("# %d nodes, %d terminals, %d places in the factor, %.2f iterations a state%n",
                nodes, model.terminals().size(), model.pattern().symbolic().factorSize(), iterations);
    }

    /**
     * A state that has not been solved just before.
     *
     * @return its result
     */
    @Benchmark
    public FlowResult newState() {
        next = (next + 1) % states.size();
        return solver.solve(states.get(next));
    }

    /**
     * One forward and back substitution.
     *
     * @return the vector solved in place
     */
    @Benchmark
    public double[] substitution() {
        for (int k = 0; k < vector.length - 2; k++) {
            vector[k] = 1;
        }
        matrix.solve(vector);
        return vector;
    }

    /**
     * Ordering, analysis, both factorisations and the base solution.
     *
     * @return a model that has solved its base state
     */
    @Benchmark
    public FlowResult modelFromScratch() {
        FlowModel fresh = GeneratedFeeder.build(nodes);
        return fresh.solver().solve(fresh.baseState());
    }
}
