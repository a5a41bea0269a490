package org.keeplit.explore;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;

/** A feeder of so many nodes as text, with a recloser near its head that is bypassed, taken out and put back in 60 steps. */
public final class LargeCase {
    private LargeCase() {}

    /**
     * Writes the case into a folder beside the shipped equipment and rules.
     *
     * @param arguments the folder, then the number of nodes
     * @throws IOException if a file cannot be written
     */
    public static void main(String[] arguments) throws IOException {
        Path folder = Path.of(arguments[0]);
        Files.createDirectories(folder);
        Files.writeString(folder.resolve("large.network"), network(Integer.parseInt(arguments[1])));
        Files.writeString(folder.resolve("large.procedure"), procedure("no-interruption, ratings"));
        Files.writeString(folder.resolve("plain.procedure"), procedure("no-interruption").replace("LARGE", "PLAIN"));
    }

    /** {@return a network} @param nodes how many nodes it has */
    public static String network(int nodes) {
        StringBuilder text = new StringBuilder(
                """
                language 1
                network large
                uses overhead
                system voltage 12.47 kV, frequency 60 Hz
                limits voltage 80 % to 110 %
                source bus at n-0, phases ABC, supply grid, fault level 900 MVA, reactance ratio 8
                breaker head from n-0 to n-1, phases ABC, pickup 480 A, ground pickup 240 A
                recloser r from n-1 to n-2, phases ABC, single-phase units
                """);
        Random draw = new Random(1);
        int[] trunk = new int[nodes];
        int trunks = 1;
        trunk[0] = 2;
        for (int n = 3; n < nodes; n++) {
            boolean main = n % 8 == 3;
            int parent = main ? trunk[Math.max(0, trunks - 1 - draw.nextInt(40))] : n % 8 == 4 ? trunk[trunks - 1] : n - 1;
            char phase = "ABC".charAt((n - 3) / 8 % 3);
            String phases = main ? "ABC" : String.valueOf(phase);
            text.append("line l-%d from n-%d to n-%d, phases %s, length 20 m, conductor %s%n"
                    .formatted(n, parent, n, phases, main ? "acsr-556" : "acsr-4-0"));
            if (main) {
                trunk[trunks++] = n;
            } else if (n % 4 == 1) {
                text.append("load u-%d at n-%d, phases %s, %.3f kW, %.3f kvar, 1 customer%n"
                        .formatted(n, n, phases, 16_000.0 / nodes, 5_000.0 / nodes));
            }
        }
        return text.toString();
    }

    /** {@return the network with a bypass switch around the recloser, and without a device that trips: nothing in it asks for a load flow} */
    static String networkOfConnectionOnly(int nodes) {
        return network(nodes)
                .replace(", pickup 480 A, ground pickup 240 A", "")
                .replace("recloser r from", "bypass-switch j from n-1 to n-2, phases ABC, single-phase units, open, at r\nrecloser r from");
    }

    /** {@return the procedure with the bypass switch in place of jumpers} */
    static String procedureOfConnectionOnly() {
        return procedure("no-interruption")
                .replaceAll("east and west install J around r on (.), line to line", "east closes j on $1")
                .replace("east proves J carries", "east proves j carries")
                .replace("east removes J", "east opens j")
                .replaceAll("temporary\n.*\n", "");
    }

    /** {@return the procedure} @param keeps the rulebooks */
    public static String procedure(String keeps) {
        StringBuilder steps = new StringBuilder();
        for (int round = 0; round < 2; round++) {
            each(steps, "east proves r closed");
            each(steps, "east and west install J around r on %s, line to line");
            each(steps, "east proves J carries current");
            each(steps, "west opens r");
            each(steps, "west proves r open");
            each(steps, "west closes r");
            each(steps, "west proves r closed");
            each(steps, "east removes J");
            each(steps, "east does \"reads the amperes\"");
            each(steps, "west does \"reads the counter\"");
        }
        return """
                language 1
                procedure LARGE revision 1
                title "Out and back on a large feeder"
                keeps %s
                crew
                  east "Lineworker", on the source side, in charge
                  west "Lineworker", on the load side
                temporary
                  bypass-jumper J for each phase of r
                proved on large
                stage "All"
                """
                        .formatted(keeps)
                + steps;
    }

    private static void each(StringBuilder steps, String sentence) {
        boolean said = sentence.contains("%s") || sentence.contains("does");
        for (char phase : "ABC".toCharArray()) {
            steps.append("  ").append(said ? sentence.formatted(phase) : sentence + " on " + phase).append('\n');
        }
    }
}
