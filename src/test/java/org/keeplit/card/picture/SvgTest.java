package org.keeplit.card.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import org.junit.jupiter.api.Test;
import org.keeplit.electric.Level;

/** Drawings are well escaped, and every level has its look. */
class SvgTest {
    @Test
    void aDeviceNamedLikeMarkupIsText() {
        Svg svg = new Svg();
        svg.text(0, 0, Svg.Anchor.START, false, "<script>\"&'");
        String whole = svg.whole(10, 10, "<script>");
        assertFalse(whole.contains("<script"));
        assertTrue(whole.contains("<title>&lt;script&gt;</title>"), whole);
        assertTrue(whole.contains("&lt;script&gt;&quot;&amp;&apos;</text>"), whole);
    }

    /** What may be alive is never drawn as dead or grounded. */
    @Test
    void everyLevelHasItsLook() {
        for (Level level : Level.values()) {
            for (boolean tied : new boolean[] {false, true}) {
                Look look = Look.of(level, tied);
                if (level == Level.DEAD) {
                    assertEquals(tied ? Look.GROUNDED : Look.DEAD, look);
                } else {
                    assertTrue(Set.of(Look.LIVE, Look.UNKNOWN).contains(look), level + " " + tied);
                }
            }
        }
    }
}
