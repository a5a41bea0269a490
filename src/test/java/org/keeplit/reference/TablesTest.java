package org.keeplit.reference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.NoSuchElementException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.keeplit.reference.ApproachDistances.Exposure;
import org.keeplit.reference.ApproachDistances.Method;

/** Spot values: 29 CFR 1910.269 tables; ANSI/NETA MTS-2019 table 100.1; IEEE 18 and IEC 60871-1 for discharge. */
class TablesTest {
    @ParameterizedTest
    @CsvSource({"0.48,0.33,0.33", "4.16,0.63,0.63", "12.47,0.65,0.68", "15,0.65,0.68", "24.9,0.77,0.89", "34.5,0.77,0.89", "46,0.84,0.98", "69,1.00,1.20"})
    void theTableOfTheRegulation(double kilovolts, double ground, double phase) {
        assertEquals(ground, ApproachDistances.metres(kilovolts, Exposure.PHASE_TO_GROUND, 0, Method.TABLE), 1e-9);
        assertEquals(phase, ApproachDistances.metres(kilovolts, Exposure.PHASE_TO_PHASE, 0, Method.TABLE), 1e-9);
    }

    /** Up to 900 m both ways are one: M + D is what the table prints. */
    @ParameterizedTest
    @ValueSource(doubles = {0.48, 4.16, 12.47, 24.9, 46, 69})
    void theFormulaChecksTheTable(double kilovolts) {
        for (Exposure exposure : Exposure.values()) {
            assertEquals(
                    ApproachDistances.metres(kilovolts, exposure, 900, Method.TABLE),
                    ApproachDistances.metres(kilovolts, exposure, 900, Method.FORMULA),
                    1e-9);
        }
    }

    @Test
    void highUpTheTwoWaysDiffer() {
        assertEquals(0.652, ApproachDistances.metres(15, Exposure.PHASE_TO_GROUND, 1500, Method.FORMULA), 5e-4);
        assertEquals(0.683, ApproachDistances.metres(15, Exposure.PHASE_TO_GROUND, 1500, Method.TABLE), 5e-4);
        assertEquals(0.946, ApproachDistances.metres(36, Exposure.PHASE_TO_PHASE, 3000, Method.FORMULA), 5e-4);
        assertEquals(1.068, ApproachDistances.metres(36, Exposure.PHASE_TO_PHASE, 3000, Method.TABLE), 5e-4);
        assertEquals(1.02, ApproachDistances.altitudeFactor(901));
        assertEquals(1.44, ApproachDistances.altitudeFactor(6000));
    }

    @Test
    void outsideTheTablesNothingIsClaimed() {
        assertThrows(
                NoSuchElementException.class,
                () -> ApproachDistances.metres(115, Exposure.PHASE_TO_GROUND, 0, Method.TABLE));
        assertThrows(
                NoSuchElementException.class,
                () -> ApproachDistances.metres(0.24, Exposure.PHASE_TO_GROUND, 0, Method.TABLE));
        assertThrows(NoSuchElementException.class, () -> ApproachDistances.altitudeFactor(6001));
    }

    @Test
    void insulationByRating() {
        assertEquals(new Insulation(15000, 2500, 5000), Insulation.of(14400));
        assertEquals(new Insulation(15000, 2500, 5000), Insulation.of(15000));
        assertEquals(25, Insulation.of(240).megohms());
        assertEquals(10000, Insulation.of(25000).megohms());
        assertEquals(100000, Insulation.of(69000).megohms());
    }

    /** From 7.2 kV, 10,182 V at the peak: 1,214 V left after 2 minutes and 3,516 V after 1; about 870 V after 5 minutes by the other standard. */
    @Test
    void fiveMinutesAreNotEnoughForEveryUnit() {
        Discharge ieee = Discharge.all().get(0);
        assertEquals(50, ieee.left(10182, 5), 1e-9);
        assertEquals(1214, ieee.left(10182, 2), 2);
        assertEquals(3516, ieee.left(10182, 1), 3);
        assertEquals(870, Discharge.all().get(1).left(10182, 5), 5);
    }
}
