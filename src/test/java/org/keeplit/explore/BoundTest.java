package org.keeplit.explore;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.keeplit.condition.Condition.Comparison;
import org.keeplit.unit.Dimension;

/** What somebody reads off a meter is held against the limit that the step states; what just equals it counts as the words say. */
class BoundTest {
    @ParameterizedTest
    @CsvSource({"AT_MOST, true, true, false", "BELOW, true, false, false", "AT_LEAST, false, true, true", "ABOVE, false, false, true"})
    void allows(Comparison comparison, boolean less, boolean equal, boolean more) {
        Stepper.Bound bound = new Stepper.Bound(comparison, 20, Dimension.VOLTAGE);
        assertEquals(less, bound.allows(19.9));
        assertEquals(equal, bound.allows(20));
        assertEquals(more, bound.allows(20.1));
    }

    @Test
    void whatNobodyKnowsIsNoLimit() {
        for (Comparison comparison : Comparison.values()) {
            assertTrue(new Stepper.Bound(comparison, Double.NaN, Dimension.VOLTAGE).allows(1e9));
        }
    }
}
