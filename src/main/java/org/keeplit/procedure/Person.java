package org.keeplit.procedure;

import com.google.common.collect.ImmutableList;
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
        Span span) {
    static final String IN_CHARGE = "in charge";

    /**
     * {@return what the crew list says of this person and does not say of another, in its words}
     *
     * @param other who stands in for this person
     */
    public ImmutableList<String> lackingIn(Person other) {
        ImmutableList.Builder<String> all = ImmutableList.builder();
        lacking(desk, other.desk, "at control", all);
        lacking(inCharge, other.inCharge, IN_CHARGE, all);
        lacking(observer, other.observer, "the observer", all);
        lacking(groundHand, other.groundHand, "a ground hand", all);
        lacking(qualified, other.qualified, "qualified", all);
        side.filter(s -> !other.side.equals(side)).ifPresent(s -> all.add("on the " + s.word() + " side"));
        qualifications.stream().filter(q -> !other.qualifications.contains(q)).forEach(q -> all.add("qualified for \"" + q + "\""));
        return all.build();
    }

    private static void lacking(boolean here, boolean there, String words, ImmutableList.Builder<String> into) {
        if (here && !there) {
            into.add(words);
        }
    }
}
