package org.keeplit.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.keeplit.card.picture.Look;

/** Contrast as WCAG 2.2 defines it (relative luminance of sRGB; success criterion 1.4.3: at least 4.5 for text). */
class ContrastTest {
    private static double channel(int eight) {
        double c = eight / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }

    private static double luminance(String colour) {
        int rgb = Integer.parseInt(colour.substring(1), 16);
        return 0.2126 * channel(rgb >> 16) + 0.7152 * channel(rgb >> 8 & 255) + 0.0722 * channel(rgb & 255);
    }

    private static double contrast(String one, String other) {
        double a = luminance(one);
        double b = luminance(other);
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    @Test
    void theFormulaGivesWhatTheGuidelinesSay() {
        assertEquals(21, contrast("#000000", "#ffffff"), 1e-9);
        // The lightest grey that passes on white, as the guidelines' explanations name it (from memory).
        assertTrue(contrast("#767676", "#ffffff") >= 4.5);
        assertTrue(contrast("#777777", "#ffffff") < 4.5);
    }

    @Test
    void everyColourCanBeReadOnWhite() {
        assertTrue(contrast(CardStyle.INK, CardStyle.GROUND) >= 7);
        assertTrue(contrast(CardStyle.FAINT, CardStyle.GROUND) >= 4.5);
        for (Look look : Look.values()) {
            assertTrue(contrast(look.colour(), CardStyle.GROUND) >= 4.5, look.toString());
        }
    }

    @Test
    void thePatternAloneTellsHowAConductorStands() {
        assertEquals(Look.values().length, Arrays.stream(Look.values()).map(Look::dashes).distinct().count());
        assertEquals(Look.values().length, Arrays.stream(Look.values()).map(Look::word).distinct().count());
    }
}
