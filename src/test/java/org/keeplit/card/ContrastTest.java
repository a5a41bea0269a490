package org.keeplit.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
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

    /** Rules of the style sheets that set a ground set a colour, too; every pair, and every colour alone on white, can be read. */
    @Test
    void everyColourOfPagesForAScreenCanBeRead() throws IOException {
        int pairs = 0;
        for (String file : List.of("page/screen.css", "report/report.css", "drill/drill.css", "log/sheet.css")) {
            String css = Files.readString(Path.of("src/main/resources/org/keeplit", file));
            Matcher rules = Pattern.compile("([^{}]+)\\{([^{}]*)\\}").matcher(css);
            while (rules.find()) {
                Optional<String> colour = colour("(?:^|;)color", rules.group(2));
                Optional<String> ground = colour("background", rules.group(2));
                if (ground.isPresent()) {
                    assertTrue(colour.isPresent(), file + ": " + rules.group());
                }
                if (colour.isPresent()) {
                    double contrast = contrast(colour.get(), ground.orElse("#ffffff"));
                    assertTrue(contrast >= 4.5, file + ": " + rules.group() + " " + contrast);
                    pairs++;
                }
            }
        }
        assertTrue(pairs >= 8, pairs + " pairs");
    }

    private static Optional<String> colour(String property, String rule) {
        Matcher found = Pattern.compile(property + ":\\s*(#[0-9a-f]{6})").matcher(rule);
        return found.find() ? Optional.of(found.group(1)) : Optional.empty();
    }
}
