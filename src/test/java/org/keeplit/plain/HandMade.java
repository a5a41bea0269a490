package org.keeplit.plain;

import java.util.List;

/** Cases that chance hardly ever makes. */
final class HandMade {
    private HandMade() {}

    static List<MadeCase> all() {
        return List.of(carryingUnit(), provedNeutral(), groundedSite(), rolledLeads(), phasedTie(), staleTest(), tapAnywhere(), untestedGround(), staleBriefing());
    }

    /** A regulator run to neutral and proved there. */
    static MadeCase provedNeutral() {
        return new MadeCase(
                List.of(
                        new MadeElement("source", "s-1", "n-1", null, "A", List.of("supply alpha")),
                        new MadeElement("regulator", "v-2", "n-1", "n-2", "A", List.of("control manual")),
                        new MadeElement("switch", "d-3", "n-2", "n-3", "A", List.of())),
                List.of(),
                List.of(),
                List.of(Part.step("west runs v-2 to neutral"), Part.step("west proves v-2 at neutral")),
                List.of(),
                List.of("regulators"),
                List.of());
    }

    /** A closed unit with load behind it, proved to carry it. */
    static MadeCase carryingUnit() {
        return new MadeCase(
                List.of(
                        new MadeElement("source", "s-1", "n-1", null, "ABC", List.of("supply alpha")),
                        new MadeElement("recloser", "d-2", "n-1", "n-2", "ABC", List.of("ganged")),
                        new MadeElement("load", "u-3", "n-2", null, "ABC", List.of("10 kW", "3 customers"))),
                List.of(),
                List.of(),
                List.of(Part.step("east proves d-2 carries current")),
                List.of(),
                List.of("live-line"),
                List.of());
    }

    /** A structure with all its conductors tested dead and grounded, and what else is rare; chance hardly ever makes one. */
    static MadeCase groundedSite() {
        return new MadeCase(
                List.of(
                        new MadeElement("source", "s-1", "n-1", null, "A", List.of("supply alpha")),
                        new MadeElement("disconnect", "d-2", "n-1", "n-2", "A", List.of("open")),
                        new MadeElement("disconnect", "d-3", "n-2", "n-3", "A", List.of()),
                        new MadeElement("capacitor", "c-4", "n-2", null, "A", List.of("100 kvar", "grounded wye"))),
                List.of(
                        "temporary",
                        "ground-set G for each phase of d-3",
                        "ground-set F for each phase of d-3",
                        "hold H for d-3, held at d-2, by foreman"),
                List.of("given H is in force"),
                List.of(
                        Part.step("foreman releases H"),
                        Part.step("west waits 5 min with c-4 dead"),
                        Part.step("west tests the source-side line of d-3 dead"),
                        Part.step("west tests the load-side line of d-3 dead"),
                        Part.step("west applies G to the source-side line of d-3, ground end first"),
                        Part.step("west applies F to the load-side line of d-3, ground end first")),
                List.of(),
                List.of("de-energized"),
                List.of());
    }

    /** Two leads change places while the unit is open: every phase is energized, and motors turn backwards. */
    static MadeCase rolledLeads() {
        return new MadeCase(
                List.of(
                        new MadeElement("source", "s-1", "n-1", null, "ABC", List.of("supply alpha")),
                        new MadeElement("recloser", "d-2", "n-1", "n-2", "ABC", List.of("ganged", "open")),
                        new MadeElement("load", "u-3", "n-2", null, "ABC", List.of("10 kW", "3 customers"))),
                List.of(),
                List.of(),
                List.of(
                        Part.step("east takes off the source lead of d-2 at the line end on A"),
                        Part.step("east takes off the source lead of d-2 at the line end on B"),
                        Part.step("east puts on the source lead of d-2 at the line end on A, onto phase B"),
                        Part.step("east puts on the source lead of d-2 at the line end on B, onto phase A"),
                        Part.step("west closes d-2")),
                List.of(),
                List.of(),
                List.of("rule made-1\nat the end every load L is supplied\nsays \"x\"\nbecause \"x\""));
    }

    /** An open tie between two places of one supply, phased. */
    static MadeCase phasedTie() {
        return new MadeCase(
                List.of(
                        new MadeElement("source", "s-1", "n-1", null, "ABC", List.of("supply alpha")),
                        new MadeElement("line", "l-2", "n-1", "n-2", "ABC", List.of("length 1 km")),
                        new MadeElement("tie", "d-3", "n-1", "n-2", "ABC", List.of("open"))),
                List.of(),
                List.of(),
                List.of(Part.step("east proves d-3 in phase")),
                List.of(),
                List.of("tagging"),
                List.of());
    }

    /** Somebody climbs between the test for dead and the ground. */
    static MadeCase staleTest() {
        return new MadeCase(
                List.of(
                        new MadeElement("source", "s-1", "n-1", null, "A", List.of("supply alpha")),
                        new MadeElement("disconnect", "d-2", "n-1", "n-2", "A", List.of("open"))),
                List.of("temporary", "ground-set G for each phase of d-2"),
                List.of(),
                List.of(
                        Part.step("west tests the load-side line of d-2 dead"),
                        Part.step("west goes aloft at d-2"),
                        Part.step("west applies G to the load-side line of d-2, ground end first")),
                List.of(),
                List.of("de-energized"),
                List.of("rule made-1\nbefore grounding any point X on phase P\nrequire X is proved dead\nsays \"x\"\nbecause"
                        + " \"x\""));
    }

    /** A regulator whose tap may stand anywhere, so that it is not known whether a rule is to be judged at all. */
    static MadeCase tapAnywhere() {
        return new MadeCase(
                List.of(
                        new MadeElement("source", "s-1", "n-1", null, "A", List.of("supply alpha")),
                        new MadeElement("regulator", "v-2", "n-1", "n-2", "A", List.of("at pole-2"))),
                List.of(),
                List.of(),
                List.of(Part.step("west does \"looks\"")),
                List.of(),
                List.of("good-housekeeping"),
                List.of("rule made-1\nwhile any regulator V is at neutral\nrequire V is not isolated\nsays \"x\"\nbecause \"x\""));
    }

    /** A ground goes on, untested, where a customer's generator may run. */
    static MadeCase untestedGround() {
        return new MadeCase(
                List.of(
                        new MadeElement("source", "s-1", "n-1", null, "A", List.of("supply alpha")),
                        new MadeElement("disconnect", "d-2", "n-1", "n-2", "A", List.of("open")),
                        new MadeElement("generator", "g-3", "n-2", null, "A", List.of("10 kW"))),
                List.of("temporary", "ground-set G for each phase of d-2"),
                List.of(),
                List.of(Part.step("west applies G to the load-side line of d-2, ground end first")),
                List.of(),
                List.of("no-interruption"),
                List.of());
    }

    /** The crew is briefed, the job changes, and work goes on. */
    static MadeCase staleBriefing() {
        return new MadeCase(
                List.of(
                        new MadeElement("source", "s-1", "n-1", null, "A", List.of("supply alpha")),
                        new MadeElement("disconnect", "d-2", "n-1", "n-2", "A", List.of())),
                List.of(),
                List.of(),
                List.of(
                        Part.step("foreman briefs west"),
                        Part.step("west opens d-2"),
                        Part.step("west closes d-2"),
                        Part.step("west opens d-2")),
                List.of(),
                List.of("good-housekeeping"),
                List.of("rule made-1\nbefore opening any switching device D by any person W\nrequire briefing W has happened"
                        + " since closing D\nsays \"x\"\nbecause \"x\""));
    }
}
