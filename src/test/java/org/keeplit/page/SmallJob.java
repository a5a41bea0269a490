package org.keeplit.page;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.text.Source;

/** A job at one pole: a disconnect with a bypass switch beside it, a line and a load. Names are such that markup shows if it is not escaped. */
public final class SmallJob {
    private static final String NETWORK = """
            language 1
            network pole "<b>One</b> switch"
            uses overhead
            system voltage 12.47 kV, frequency 60 Hz
            source bus at s-0, phases ABC, supply grid, fault level 140 MVA, reactance ratio 8
            disconnect main from s-0 to s-1, phases ABC, continuous 50 A, at pole-1
            bypass-switch bridge from s-0 to s-1, phases ABC, ganged, continuous 40 A, open, at pole-1
            line l-1 from s-1 to s-2, phases ABC, length 1 km, conductor acsr-336
            load mill at s-2, phases ABC, grounded wye, 300 kW, 30 kvar, 12 customers
            """;

    private static final String RULES = """
            language 1
            rulebook supply revision 1
            rule supplied
              always every load L is supplied
              says "{L} loses supply"
              because "Test."
            rule within
              always for any switching device D, for every phase P of D, the current through D on P is at most the continuous rating of D
              says "{D} carries too much"
              because "Test."
            rule bridged
              before opening any switching device D on phase P
              require D is bypassed on P
              says "{D} opens with no bridge on phase {P}"
              because "Test <i>only</i>."
            """;

    private SmallJob() {}

    /** {@return the job} @param steps its steps, each line indented by two */
    public static Library of(String steps) {
        Library library = new Reader().readSources(sources(steps));
        assertEquals(List.of(), library.problems());
        return library;
    }

    /** Writes the files of the job. @param folder where @param steps its steps, each line indented by two */
    public static void write(Path folder, String steps) throws IOException {
        for (Source source : sources(steps)) {
            Files.writeString(folder.resolve(source.name()), source.content());
        }
    }

    private static List<Source> sources(String steps) {
        String procedure = """
                language 1
                procedure P revision 1
                title "A title"
                keeps supply
                crew
                  op "<script>alert(1)</script>", in charge
                  hand "Lineworker", on the load side
                  desk "Operator", at control
                proved on pole
                stage "All"
                %s""".formatted(steps);
        try {
            return List.of(
                    new Source("overhead.equipment", Files.readString(Path.of("shared/equipment/overhead.equipment"))),
                    new Source("pole.network", NETWORK),
                    new Source("supply.rules", RULES),
                    new Source("p.procedure", procedure));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }
}
