package org.keeplit.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** A folder as a user has it: the project's equipment, and a rulebook with examples. */
final class Workspace {
    static final String RULES =
            """
            language 1
            rulebook stick-work revision 1

            rule looked-at
              before opening any switching device D on phase P
              require one of
                D is proved closed on P
                D is looped on P
              end
                unless some load L has a planned outage
              says "{D} would open on phase {P} and nobody looked at it"
              because "A switch that hangs opens halfway."

            rule nobody-up
              severity caution
              at the end for every person W, W is on the ground
              says "somebody is left aloft"
              because "They are forgotten there."
              citation "a made source (1)"
            """;

    static final String EXAMPLES =
            """
            language 1
            examples stick-work for stick-work
            on network spur

            example "Looked at first" of rule looked-at
              do
                west proves gang closed
                west opens gang
                  requires gang is closed
              must hold

            example "Opened at once" of rule looked-at
              do
                opening: west opens gang
              must fail on looked-at at opening
                with D as gang
                because gang is closed
                says "gang would open on phase A and nobody looked at it"

            example "Up and down" of rule nobody-up
              do
                west goes aloft at gang
                west comes down
              must hold

            network spur "A spur"
            uses overhead
            system voltage 12.47 kV, frequency 60 Hz
            source bus at s-0, phases ABC, supply grid, fault level 100 MVA, reactance ratio 8
            breaker feeder from s-0 to s-1, phases ABC, pickup 480 A, ground pickup 240 A
            switch gang from s-1 to s-3, phases ABC
            load mill at s-3, phases ABC, 300 kW, 100 kvar, 12 customers
            """;

    private Workspace() {}

    /** Fills a folder. @param examples the text of its examples */
    static void fill(Path folder, String rules, String examples) throws IOException {
        Files.createDirectories(folder.resolve("shared"));
        Files.copy(
                Path.of("shared/equipment/overhead.equipment"), folder.resolve("shared/overhead.equipment"), StandardCopyOption.REPLACE_EXISTING);
        Files.writeString(folder.resolve("shared/stick-work.rules"), rules);
        Files.writeString(folder.resolve("shared/stick-work.examples"), examples);
    }
}
