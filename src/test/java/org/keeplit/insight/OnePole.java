package org.keeplit.insight;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.text.Source;

/** A bypass switch around a switch that feeds a mill, and another switch that feeds a hall: small enough to tell by hand what follows. */
final class OnePole {
    static final String NETWORK =
            """
            language 1
            network pole "One switch with its bypass"
            uses overhead
            system voltage 12.47 kV, frequency 60 Hz
            source bus at s-0, phases ABC, supply grid
            switch main from s-0 to s-1, phases ABC, at pole-1
            switch other from s-0 to s-2, phases ABC, at pole-2
            bypass-switch bridge from s-0 to s-1, phases ABC, %BUILD%, open, at pole-1
            load mill at s-1, phases ABC, 300 kW, 12 customers
            load hall at s-2, phases ABC, 300 kW, 5 customers
            """;

    private static final String RULES =
            """
            language 1
            rulebook supply revision 1
            rule supplied
              always every load L is supplied
              says "{L} loses supply"
              because "Test."
            """;

    private OnePole() {}

    /** {@return what is read of a procedure on the pole} @param build how the bypass switch is built */
    static Library ganged(String steps) {
        return read(NETWORK.replace("%BUILD%", "ganged"), "", steps, "");
    }

    /** {@return what is read of a procedure that keeps one more rule} */
    static Library withRule(String rule, String steps) {
        return read(NETWORK.replace("%BUILD%", "ganged"), RULES + rule, "", steps, "");
    }

    /**
     * Reads a procedure on the pole.
     *
     * @param network the network
     * @param starts lines of {@code starts with}
     * @param steps the steps
     * @param ends lines of {@code ends with}
     */
    static Library read(String network, String starts, String steps, String ends) {
        return read(network, RULES, starts, steps, ends);
    }

    private static Library read(String network, String rules, String starts, String steps, String ends) {
        String procedure =
                """
                language 1
                procedure P revision 1
                title "A test"
                keeps supply
                crew
                  op "Operator", in charge
                proved on pole
                """
                        + (starts.isEmpty() ? "" : "starts with\n" + starts)
                        + "stage \"All\"\n"
                        + steps
                        + (ends.isEmpty() ? "" : "ends with\n" + ends);
        return new Reader()
                .readSources(List.of(
                        new Source("overhead.equipment", file("shared/equipment/overhead.equipment")),
                        new Source("pole.network", network),
                        new Source("supply.rules", rules),
                        new Source("p.procedure", procedure)));
    }

    private static String file(String name) {
        try {
            return Files.readString(Path.of(name));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
