package org.keeplit.insight;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;

/**
 * Many feeders as text, each with a trunk of three phases and single-phase laterals behind cutouts, and the shipped job that changes a fuse
 * under a jumper, for any cutout: a sweep of as many sites as there are cutouts.
 */
public final class SweepCase {
    private static final int SITES_OF_A_FEEDER = 50;
    /** Nodes of the trunk for each lateral, then nodes of the lateral. */
    private static final int TRUNK = 3;

    private static final int LATERAL = 5;

    private SweepCase() {}

    /**
     * Writes the case: {@code flow} asks for a load flow of each state, {@code plain} of none.
     *
     * @param arguments a folder beside the shipped equipment and rules, then the number of sites
     * @throws IOException if a file cannot be read or written
     */
    public static void main(String[] arguments) throws IOException {
        Path folder = Path.of(arguments[0]);
        int sites = Integer.parseInt(arguments[1]);
        String job = job(Files.readString(Path.of("procedures/fuse.procedure")));
        for (String kind : new String[] {"flow", "plain"}) {
            boolean flow = kind.equals("flow");
            Path place = folder.resolve(kind);
            Files.createDirectories(place);
            Files.writeString(place.resolve("sweep.procedure"), flow ? job : ofConnectionOnly(job));
            Files.writeString(place.resolve("bare.equipment"), JUMPER);
            for (int feeder = 0; feeder * SITES_OF_A_FEEDER < sites; feeder++) {
                int cutouts = Math.min(SITES_OF_A_FEEDER, sites - feeder * SITES_OF_A_FEEDER);
                Files.writeString(place.resolve("feeder-" + feeder + ".network"), network("feeder-" + feeder, cutouts, flow));
            }
        }
    }

    /** {@return the first procedure of the shipped file, without a place where it is proved} */
    private static String job(String file) {
        return file.substring(0, file.indexOf("procedure FU-2")).replaceAll("(?m)^proved on .*\n", "");
    }

    /** {@return the job without a figure to judge: leads are lifted at up to so many volts, so they stay on} */
    private static String ofConnectionOnly(String job) {
        return job.replace(", ratings, protection", "")
                .replace("bypass-jumper J", "bare-jumper J")
                .replaceAll("(?m)^.* (takes off|puts on|lowers|raises|source bushing) .*\n( {6}.*\n)*", "");
    }

    /** A jumper that no volts limit. */
    private static final String JUMPER =
            """
            language 1
            equipment bare
            kind bare-jumper is a temporary conductor
              breaks  nothing, parallel break, bushing charging
              makes   nothing, parallel make, energizing
            """;

    /** {@return a feeder} @param flow whether its breaker trips by current, so that currents are asked for */
    private static String network(String name, int cutouts, boolean flow) {
        StringBuilder text = new StringBuilder(
                """
                language 1
                network %s
                uses overhead, bare
                system voltage 12.47 kV, frequency 60 Hz, fault resistance 20 ohm
                limits voltage 80 %% to 110 %%
                source bus at n-0, phases ABC, supply grid, fault level 140 MVA, reactance ratio 8
                breaker head from n-0 to t-0, phases ABC, ganged%s
                """
                        .formatted(name, flow ? ", pickup 480 A, ground pickup 120 A, clearing time 400 ms" : ""));
        Random draw = new Random(name.hashCode());
        int trunk = 0;
        for (int site = 0; site < cutouts; site++) {
            for (int i = 0; i < TRUNK; i++, trunk++) {
                text.append("line t-line-%d from t-%d to t-%d, phases ABC, length %d m, conductor acsr-336%n"
                        .formatted(trunk, trunk, trunk + 1, 40 + draw.nextInt(40)));
            }
            char phase = "ABC".charAt(site % 3);
            text.append("cutout-on-leads f-%d from t-%d to s-%d-0, phases %s, at pole-%d%n".formatted(site, trunk, site, phase, site));
            for (int i = 1; i < LATERAL; i++) {
                text.append("line s-line-%d-%d from s-%d-%d to s-%d-%d, phases %s, length 40 m, conductor acsr-4-0%n"
                        .formatted(site, i, site, i - 1, site, i, phase));
            }
            text.append("load u-%d at s-%d-%d, phases %s, grounded wye, %d kW, 5 kvar, 6 customers%n"
                    .formatted(site, site, LATERAL - 1, phase, 10 + draw.nextInt(20)));
        }
        return text.toString();
    }
}
