package org.keeplit.language;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.keeplit.network.Equipment;
import org.keeplit.network.Kind;
import org.keeplit.text.Source;
import org.keeplit.unit.Quantity;

/** The shipped figures of conductors and grounds against the tables that they come from. */
class EquipmentFiguresTest {
    private static final double OHM_PER_MILE = 1 / 1609.344;
    private static final double FOOT = 0.3048;
    private static final double INCH = 0.0254;

    private final Equipment overhead = read();

    private static Equipment read() {
        try {
            Source source = new Source("overhead.equipment", Files.readString(Path.of("shared/equipment/overhead.equipment")));
            Library library = new Reader().readSources(List.of(source));
            assertEquals(List.of(), library.problems());
            return library.equipment().get("overhead");
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    /**
     * IEEE PES distribution test feeder conductor data, resistance at 50 C, as carried in public sample files of an open
     * distribution simulator; the ampacity of 556.5 kcmil is from memory.
     */
    @ParameterizedTest
    @CsvSource({
        "acsr-556, 0.186, 0.0311,  0.927, 730",
        "acsr-336, 0.306, 0.0244,  0.721, 530",
        "acsr-4-0, 0.592, 0.00814, 0.563, 340",
        "acsr-2,   1.690, 0.00418, 0.316, 180",
    })
    void conductors(String name, double ohmPerMile, double radiusFeet, double diameterInches, double amperes) {
        Map<String, Quantity> figures = overhead.conductors().get(name);
        assertEquals(ohmPerMile * OHM_PER_MILE, figures.get("resistance").si(), 1e-9);
        assertEquals(radiusFeet * FOOT, figures.get("radius").si(), 1e-9);
        assertEquals(diameterInches * INCH, figures.get("diameter").si(), 0.1e-3);
        assertEquals(amperes, figures.get("ampacity").si(), 1e-9);
    }

    /**
     * ASTM F855 symmetrical withstand, as a published grounding handbook has it (tables 8-1; seen second-hand): kA for 15 and for 30
     * cycles at 60 Hz. The I²t that the rules go by for longer faults stays within a seventh of the 30-cycle column.
     */
    @ParameterizedTest
    @CsvSource({"no-2, 14, 10", "1-0, 21, 15", "2-0, 27, 20", "3-0, 34, 25", "4-0, 43, 30", "250, 54, 39", "350, 74, 54"})
    void groundSets(String cable, double fifteen, double thirty) {
        Kind set = overhead.kinds().get("ground-set-" + cable);
        assertEquals(fifteen * 1000, set.ratings().get("short-time").si(), 1e-9);
        assertEquals(15 / 60.0, set.ratings().get("short-time duration").si(), 1e-9);
        assertEquals(thirty, fifteen * Math.sqrt(0.5), thirty / 7);
    }

    /** The floor of 29 CFR 1910.269 (n)(4)(ii) is No. 2 copper; the thinner set is there to be refused. */
    @Test
    void theSetBelowTheFloorStandsLessThanNumberTwo() {
        double less = overhead.kinds().get("ground-set-no-6").ratings().get("short-time").si();
        assertEquals(14_000 * 26.24 / 66.36, less, 100);
    }
}
