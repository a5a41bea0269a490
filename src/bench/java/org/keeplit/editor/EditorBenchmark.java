package org.keeplit.editor;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;

/**
 * From a change to its diagnostics, over the protocol, in a broken procedure file of 2,000 lines, while the proof of another file runs
 * behind it. What counts is the 95th percentile: it should be below 100 ms.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class EditorBenchmark {
    private static final int LINES = 2_000;

    private ScriptedClient client;
    private Path file;
    private Path proved;
    private String text;
    private int edit;

    /** Opens both files. */
    @Setup
    public void open() throws IOException {
        file = Path.of("procedures/recloser-out.procedure").toAbsolutePath();
        proved = Path.of("procedures/recloser-variants.procedure").toAbsolutePath();
        String one = Files.readString(file);
        String procedure = one.substring(one.indexOf("procedure "));
        StringBuilder all = new StringBuilder(one);
        for (int i = 1; all.toString().lines().count() < LINES; i++) {
            all.append('\n').append(procedure.replaceFirst("procedure [A-Z0-9-]+", "procedure LP-12-" + i));
        }
        text = all.toString();
        client = new ScriptedClient(Path.of("procedures").toAbsolutePath());
        client.open(file);
        client.open(proved);
    }

    /** The proof begins anew, so that it runs through the whole iteration. */
    @Setup(Level.Iteration)
    public void prove() throws IOException, InterruptedException {
        client.write(proved, Files.readString(proved) + "# " + edit + "\n");
        client.diagnostics(proved);
        Thread.sleep(1_000);
    }

    /** One letter more in a line that is wrong. */
    @Benchmark
    public Object fromAChangeToItsDiagnostics() {
        edit++;
        client.write(file, text.replaceFirst("end\n", "end\n  east opems " + edit + "\n"));
        return client.diagnostics(file, d -> !d.isEmpty());
    }

    /** Closes both. */
    @TearDown
    public void close() {
        client.close();
    }
}
