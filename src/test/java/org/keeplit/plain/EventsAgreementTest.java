package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.Tag;
import net.jqwik.api.lifecycle.AfterProperty;

/** Both evaluators on made cases with events, one or two at once. */
class EventsAgreementTest {
    private static final int MOST_STATES = 400;
    private int ran;
    private int broken;
    private int alone;
    private int byWay;
    private boolean failed;

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 200, seed = "20261125", shrinking = ShrinkingMode.OFF)
    void both(@ForAll("seeds") long seed) {
        compare(seed);
    }

    @Tag("long")
    @Property(tries = 1500, seed = "11", shrinking = ShrinkingMode.OFF)
    void bothInTheLongRun(@ForAll("seeds") long seed) {
        compare(seed);
    }

    private void compare(long seed) {
        failed = true;
        Draw draw = new Draw(seed);
        MadeCase plain = CaseMaker.make(draw, draw.chance(30));
        // Short, so that few are broken before an event has a chance.
        MadeCase made = plain.withParts(plain.parts().subList(0, Math.min(draw.between(2, 5), plain.parts().size())))
                .withRules(draw.chance(25) ? plain.books().subList(0, 1) : List.of(), rules(draw));
        MadeCase.Read read;
        try {
            read = made.read();
        } catch (IllegalArgumentException refused) {
            failed = false;
            return;
        }
        Comparison one = Comparison.of(read, MOST_STATES, draw.one(1, 1, 1, 2));
        assertEquals("", one.kind() == Comparison.Kind.DIFFERENT ? one.difference() : "", () -> "seed " + seed + "\n" + made);
        if (one.ran()) {
            ran++;
            // An event more never makes hold what is broken without it.
            Comparison without = Comparison.of(read, MOST_STATES, 0);
            Agreement.roots(without.fast()).forEach((name, length) -> assertTrue(
                    Agreement.roots(one.fast()).getOrDefault(name, Integer.MAX_VALUE) <= length,
                    () -> name + " is not found with events, seed " + seed));
            alone += one.fast().byEvent().isEmpty() ? 0 : 1;
            broken += one.holds() ? 0 : 1;
            byWay += one.fast().findings().stream()
                            .anyMatch(f -> f.trace().stream().anyMatch(t -> t.actor().equals("by chance")))
                    ? 1
                    : 0;
        }
        failed = false;
    }

    static List<String> rules(Draw draw) {
        List<String> all = new ArrayList<>(List.of(
                "event one\n" + event(draw),
                "event two\n" + event(draw)));
        for (String rule : draw.chance(30) ? new RuleMaker(draw).rules(1) : List.<String>of()) {
            all.add(rule.startsWith("rule") ? rule.replace("\nsays \"x\"", "\n" + even(draw) + "\nsays \"x\"") : rule);
        }
        // These are kept until an event comes between two acts, which is then no event alone.
        all.add("rule ready\nbefore breaking or making any contact K on phase P\nrequire "
                + draw.one("every load L is supplied", "every person W is on the ground", "no switching device D is proved open")
                + "\n" + even(draw) + "\nsays \"x\"\nbecause \"x\"");
        if (draw.chance(30)) {
            all.add("rule supplied\nalways every load L is supplied\n" + even(draw) + "\nsays \"x\"\nbecause \"x\"");
        }
        if (draw.chance(50)) {
            all.add("rule alone\nwhile any person W is aloft at any site S\nrequire at least two people V are on the ground or are aloft at S\n"
                    + even(draw) + "\nsays \"x\"\nbecause \"x\"");
        }
        return all;
    }

    private static String even(Draw draw) {
        return draw.one("even if one", "even if two", "even if one, two", "even if two, one");
    }

    private static String event(Draw draw) {
        return draw.one(
                "any switching device D and any phase P of D\nthen D " + draw.one("trips", "opens", "closes") + " on P",
                "any switching device D\nthen D trips",
                "any switching device D that is closed\nwhen D is not tagged\nthen D opens",
                "any bypass-jumper J and any phase P of J\nwhen J is installed on P\nthen J comes off on P",
                "any bypass-jumper J\nthen J comes off",
                "any ground-set G and any phase P of G\nthen G comes off on P",
                "any switching device D\nwhen reclosing of D is blocked\nthen reclosing of D becomes on",
                "any recloser D and any phase P of D\nthen reclosing of D becomes on on P",
                "any person W\nthen W leaves",
                "any person W that is at control\nthen W is out of reach",
                "any switching device D\nthen D fails to trip",
                "any line section M and any phase P of M\nthen M has a " + draw.one("passing", "lasting") + " fault on P",
                "any line section M\nthen M has a " + draw.one("passing", "lasting") + " fault",
                "any person W and any switching device D\nwhen D is open\nthen W leaves\nthen D closes",
                // Several bindings with which the same happens, each with something else to ask.
                "any person W and any switching device D\nwhen W is " + draw.one("on the ground", "on the load side") + "\nthen D opens",
                "any switching device D and any phase P of D\nwhen D is bypassed on P\nthen reclosing of D becomes on")
                + "\nsays \"it\"";
    }

    @AfterProperty
    void muchHappened() {
        if (failed) {
            return;
        }
        System.out.println(ran + " cases, " + broken + " broken, " + byWay + " with an event on the way, " + alone + " by the event alone");
        assertTrue(ran >= 80 && broken >= 30 && byWay >= 8 && alone >= 4, "too little happens");
    }
}
