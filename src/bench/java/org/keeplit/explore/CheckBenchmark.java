package org.keeplit.explore;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.keeplit.Keeplit;
import org.keeplit.language.Library;
import org.keeplit.network.Network;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.Watcher;
import org.keeplit.plain.PlainEvaluator;
import org.keeplit.plain.PlainResult;
import org.keeplit.procedure.Binding;
import org.keeplit.procedure.Procedure;
import org.keeplit.text.Problems;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** A whole check of a procedure, warm: reading, preparing and exploring apart, and the plain evaluator as reference. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class CheckBenchmark {
    /** The procedure's file. */
    @Param({"recloser-out", "recloser-back"})
    public String file;

    private Path path;
    private Procedure procedure;
    private Procedure.Proof proof;
    private Network network;

    /** Reads the files once. */
    @Setup
    public void read() {
        path = Path.of("procedures", file + ".procedure");
        Library library = Keeplit.read(List.of(path));
        procedure = library.givenProcedures().get(0);
        proof = procedure.proofs().get(0);
        network = library.networks().get(proof.network());
    }

    /** {@return what was read} */
    @Benchmark
    public Library reading() {
        return Keeplit.read(List.of(path));
    }

    /** {@return the program before the search} */
    @Benchmark
    public Proving.Prepared preparing() {
        return Proving.prepare(procedure, network, proof, new Problems()).orElseThrow();
    }

    /** {@return what the fast evaluator finds, preparing included} */
    @Benchmark
    public Outcome proving() {
        return Proving.prove(procedure, network, proof, Limits.USUAL, Watcher.NOBODY, new Problems())
                .orElseThrow();
    }

    /** {@return what the plain evaluator finds} */
    @Benchmark
    public PlainResult plainly() {
        return PlainEvaluator.evaluate(
                Binding.bind(procedure, network, proof, new Problems()).orElseThrow(), 1_000_000);
    }
}
