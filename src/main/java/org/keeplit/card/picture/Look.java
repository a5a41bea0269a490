package org.keeplit.card.picture;

import java.util.Optional;
import org.keeplit.electric.Level;
import org.keeplit.explore.Standing;
import org.keeplit.program.Vertex;

/** How a conductor is drawn. The pattern and the word tell it; the colour only repeats it. */
public enum Look {
    /** A source feeds it, or it is fed backwards. */
    LIVE("live", "", "#a11212"),
    /** No source can put voltage on it, and no ground is on it. */
    DEAD("dead", "7 4", "#1f1f1f"),
    /** Dead, and joined to an applied ground. */
    GROUNDED("grounded", "1.5 3", "#0b5d3b"),
    /** A customer's generator may feed it: treat as live. */
    UNKNOWN("may be live", "9 3 2 3", "#5b2a86");

    private final String word;
    private final String dashes;
    private final String colour;

    Look(String word, String dashes, String colour) {
        this.word = word;
        this.dashes = dashes;
        this.colour = colour;
    }

    /** {@return the word beside it} */
    public String word() {
        return word;
    }

    /** {@return its dashes and gaps in the picture's units; empty for a solid line} */
    public String dashes() {
        return dashes;
    }

    /** {@return its colour on white, {@code #rrggbb}} */
    public String colour() {
        return colour;
    }

    /** {@return how a place is drawn; nothing if the run has no such place} @param standing how everything stands @param vertex the place */
    public static Optional<Look> of(Standing standing, Vertex vertex) {
        return standing.level(vertex).map(level -> of(level, standing.isTiedToGround(vertex)));
    }

    /** {@return how a conductor is drawn} @param level how alive it is @param tied whether a ground is on it */
    public static Look of(Level level, boolean tied) {
        if (level.isAlive()) {
            return LIVE;
        } else if (level == Level.MAY_BE) {
            return UNKNOWN;
        }
        return tied ? GROUNDED : DEAD;
    }
}
