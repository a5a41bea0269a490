package org.keeplit.outside;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Runs Spin (G. Holzmann, The Spin Model Checker, 2003; Debian package {@code spin}) over a model. */
final class Spin {
    /** What is set where an act that cannot be done is an error of the model. */
    static final String CANNOT = "ASKED_FOR_WHAT_CANNOT_BE_DONE";

    private Spin() {}

    /**
     * What runs over one model found.
     *
     * @param states how many states there are
     * @param dark whether a load is ever without supply
     * @param broken whether that is so, or an act comes up that cannot be done
     */
    record Judged(long states, boolean dark, boolean broken) {}

    /** Runs one verifier three times: to count, and to look for what is wrong. @param model a model with assertions @param folder an empty folder to work in */
    static Judged judge(String model, Path folder) throws IOException, InterruptedException {
        Files.writeString(folder.resolve("model.pml"), model);
        tell(folder, List.of("spin", "-a", "model.pml"));
        tell(folder, List.of("gcc", "-O1", "-w", "-DSAFETY", "-DNOREDUCE", "-o", "pan", "pan.c"));
        // With -A assertions are passed over, so that nothing ends the count.
        long states = number(tell(folder, List.of("./pan", "-m10000", "-A")), "(\\S+) states, stored");
        return new Judged(states, errs(folder, "./pan", "-m10000"), errs(folder, "env", CANNOT + "=1", "./pan", "-m10000"));
    }

    private static boolean errs(Path folder, String... command) throws IOException, InterruptedException {
        return number(tell(folder, List.of(command)), "errors: (\\S+)") > 0;
    }

    /**
     * What a run found.
     *
     * @param states how many states it stored
     * @param transitions how many transitions it took
     * @param vector how many bytes a state takes before anything is packed
     * @param bytes how many bytes all states take, with what Spin keeps beside each; without its table
     * @param errors whether an assertion failed
     * @param generating seconds for writing the verifier
     * @param compiling seconds for compiling it
     * @param running seconds for running it
     */
    record Found(long states, long transitions, int vector, double bytes, boolean errors, double generating, double compiling, double running) {}

    /** {@return whether Spin and a C compiler are there} */
    static boolean isThere() {
        return Stream.of("spin", "gcc").allMatch(Spin::onPath);
    }

    private static boolean onPath(String program) {
        return Stream.of(System.getenv("PATH").split(File.pathSeparator))
                .anyMatch(folder -> Files.isExecutable(Path.of(folder, program)));
    }

    /** Runs it with no reduction. @param folder an empty folder to work in */
    static Found run(String model, Path folder) throws IOException, InterruptedException {
        Files.writeString(folder.resolve("model.pml"), model);
        long start = System.nanoTime();
        tell(folder, List.of("spin", "-a", "model.pml"));
        long generated = System.nanoTime();
        tell(folder, List.of("gcc", "-O2", "-w", "-DSAFETY", "-DNOREDUCE", "-o", "pan", "pan.c"));
        long compiled = System.nanoTime();
        String out = tell(folder, List.of("./pan", "-m10000"));
        long done = System.nanoTime();
        return new Found(
                number(out, "(\\S+) states, stored"),
                number(out, "(\\S+) transitions"),
                (int) number(out, "State-vector (\\S+) byte"),
                megabytes(out) * 1024 * 1024,
                number(out, "errors: (\\S+)") > 0,
                (generated - start) / 1e9,
                (compiled - generated) / 1e9,
                (done - compiled) / 1e9);
    }

    /** It says the one where it packs, the other where it does not. */
    private static double megabytes(String out) {
        Matcher matcher = Pattern.compile("(\\S+)\\s+actual memory usage for states").matcher(out);
        if (!matcher.find()) {
            matcher = Pattern.compile("(\\S+)\\s+equivalent memory usage for states").matcher(out);
            return matcher.find() ? Double.parseDouble(matcher.group(1)) : Double.NaN;
        }
        return Double.parseDouble(matcher.group(1));
    }

    private static long number(String out, String pattern) {
        Matcher matcher = Pattern.compile(pattern).matcher(out);
        if (!matcher.find()) {
            throw new IllegalStateException("Spin says nothing like \"" + pattern + "\":\n" + out);
        }
        return (long) Double.parseDouble(matcher.group(1).replace(",", ""));
    }

    static String tell(Path folder, List<String> command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command).directory(folder.toFile()).redirectErrorStream(true).start();
        String out = new String(process.getInputStream().readAllBytes());
        if (process.waitFor() != 0) {
            throw new IllegalStateException(command + " failed:\n" + out);
        }
        return out;
    }
}
