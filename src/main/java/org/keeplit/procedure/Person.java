package org.keeplit.procedure;

import com.google.common.collect.ImmutableSet;
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
 * @param observer whether the person only watches
 * @param groundHand whether the person helps from the ground
 * @param qualified whether the person is qualified, for something or at all
 * @param qualifications what the person is qualified for, in the words of the crew list
 * @param span where declared
 */
public record Person(
        String name,
        String title,
        boolean desk,
        boolean inCharge,
        Optional<Side> side,
        boolean observer,
        boolean groundHand,
        boolean qualified,
        ImmutableSet<String> qualifications,
        Span span) {}
