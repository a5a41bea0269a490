package org.keeplit.procedure;

import java.util.Optional;
import org.keeplit.network.Side;
import org.keeplit.text.Span;

/**
 * A member of the crew.
 *
 * @param name the name that steps use
 * @param title what the person is, in words
 * @param desk whether the person sits at control, away from the site
 * @param inCharge whether the person is in charge of the crew
 * @param side the side of the work on which the person stands, if that was said
 * @param span where declared
 */
public record Person(
        String name, String title, boolean desk, boolean inCharge, Optional<Side> side, Span span) {}
