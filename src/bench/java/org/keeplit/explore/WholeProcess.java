package org.keeplit.explore;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Times the command as a whole process, cold: {@code check}, and {@code slips}, {@code order} and {@code retreat} one after another. */
public final class WholeProcess {
    private static final List<String> FILES = List.of("recloser-out", "recloser-back", "two-jobs");

    private WholeProcess() {}

    /**
     * Prints a table.
     *
     * @param arguments the jar of the command, then how often each is run, 3 if nothing is said
     * @throws IOException if it cannot be run
     * @throws InterruptedException if it is interrupted
     */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        String jar = arguments.length > 0 ? arguments[0] : "target/keeplit.jar";
        int runs = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 3;
        System.out.printf("%-14s %-24s %8s %8s %8s%n", "procedure", "command", "least s", "median s", "most s");
        for (String file : FILES) {
            String path = Path.of("procedures", file + ".procedure").toString();
            row(file, "check", runs, jar, List.of(List.of("check", path)));
            row(file, "slips + order + retreat", runs, jar, List.of(
                    List.of("slips", path), List.of("order", path), List.of("retreat", path)));
        }
    }

    private static void row(String file, String name, int runs, String jar, List<List<String>> commands)
            throws IOException, InterruptedException {
        double[] seconds = new double[runs];
        for (int i = 0; i < runs; i++) {
            long start = System.nanoTime();
            for (List<String> command : commands) {
                List<String> all = new ArrayList<>(List.of(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-jar", jar));
                all.addAll(command);
                new ProcessBuilder(all)
                        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                        .redirectError(ProcessBuilder.Redirect.DISCARD)
                        .start()
                        .waitFor();
            }
            seconds[i] = (System.nanoTime() - start) / 1e9;
        }
        Arrays.sort(seconds);
        System.out.printf("%-14s %-24s %8.2f %8.2f %8.2f%n", file, name, seconds[0], seconds[runs / 2], seconds[runs - 1]);
    }
}
