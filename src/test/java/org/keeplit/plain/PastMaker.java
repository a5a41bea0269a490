package org.keeplit.plain;

/** Makes small rules that remember, count, ask for roles and use named conditions. */
final class PastMaker {
    /** What rules made here may use; it stands in front of them. */
    static final String DEFINITIONS =
            """
            parameter long-enough 5 min
            parameter crew-size 2
            define any switching device D is at rest: D is tagged or D is open
            define any switching device D is swept on any phase P: D is open on P or D is bypassed on P
            define any person W is settled at any site S: one of
              W is not aloft at S
              going aloft at S by W has happened since coming down by any person
            end""";

    private final Draw draw;

    PastMaker(Draw draw) {
        this.draw = draw;
    }

    String rule() {
        return switch (draw.below(8)) {
            case 0, 1 -> stretch();
            case 2 -> duty();
            case 3, 4 -> atActs();
            case 5 -> inStates();
            case 6 -> counts();
            default -> people();
        };
    }

    /** {@return a clause that makes a rule weigh less, or judged for fewer things} */
    String clause() {
        return draw.one(
                "severity caution", "severity advice", "severity stop", "applies to reclosers and disconnects",
                "applies to switching devices, above 600 V", "applies to 5 kV to 15 kV", "applies to below 5 kV",
                "applies to at d-2 and d-3");
    }

    private String device() {
        return draw.one(
                "D is open", "D is closed", "D is tagged", "D is not tagged", "D is at rest", "D is not at rest",
                "D is closed on A", "no person W is aloft at the site of D", "for every phase P of D, D is swept on P",
                "the load-side line of D is dead", "the load-side line of D is energized", "D is proved open",
                "D is isolated", "some hold H is out", "for at most one phase P of D, D is open on P");
    }

    private String moment() {
        return draw.one(
                "opening D", "closing D", "opening or closing D", "opening D on A", "closing any switching device",
                "opening any switching device by east", "tagging D", "untagging any switching device",
                "clamping any bypass-jumper", "unclamping any jumper on A", "breaking any contact",
                "making or breaking any contact on B", "lifting a lead of D", "landing a lead of any recloser",
                "grounding any point", "ungrounding any point on A", "testing any point", "testing the load-side line of D",
                "going aloft at the site of D", "going aloft", "coming down by east", "coming down",
                "briefing any person", "briefing any person by any person", "doing \"talks\"",
                "issuing any hold", "releasing any hold", "setting reclosing of D to blocked", "recording \"sheet\"",
                "inspecting \"gasket\"", "working on any point by any person", "running any regulator to neutral",
                "putting the ground end on with any ground-set", "raising any recloser").replace("by east", "by any person");
    }

    private String happened() {
        return moment() + draw.one(" has happened", " has happened", " has not happened")
                + draw.one("", " since " + moment(), " since " + moment());
    }

    private String head() {
        return draw.one(
                "opening any switching device D on phase P", "closing any switching device D on phase P",
                "opening or closing any switching device D", "tagging any switching device D",
                "lifting a lead of any recloser D on phase P", "setting reclosing of any switching device D to blocked");
    }

    private String stretch() {
        String from = draw.one(head(), head(), "the start");
        String to = from.equals("the start")
                ? draw.one("opening any switching device", "going aloft", "tagging any switching device", "breaking any contact")
                : draw.one(moment(), moment(), "the end");
        String body = from.equals("the start") ? draw.one("every person W is on the ground", "every load L is supplied",
                "every switching device D is closed", "opening any recloser has not happened") : draw.one(device(), happened());
        return "between " + from + " and " + to + "\nrequire " + body + draw.one("", "", "\nunless some hold H is in force");
    }

    private String duty() {
        return "after " + head() + " eventually " + draw.one(device(), moment())
                + draw.one("", "", "\nunless every load L is supplied");
    }

    private String atActs() {
        return draw.one("before ", "after ") + head() + "\nrequire "
                + draw.one(happened(), happened(), "since " + moment() + ", " + device(),
                        "since " + moment() + ", since " + moment() + ", " + device(),
                        "no person W is settled at the site of D");
    }

    private String inStates() {
        return draw.one(
                "always for any switching device D, one of\n" + happened() + "\n" + device() + "\nend",
                "always for any person W and any site S, W is settled at S",
                "while any switching device D is open\nrequire " + happened(),
                "never any switching device D is at rest\nunless since opening any switching device, every load L is supplied",
                "at the end for every switching device D, one of\n" + happened() + "\nsince " + moment() + ", " + device()
                        + "\nend",
                "always for any phase P, opening any switching device on P has not happened since grounding any point on P");
    }

    private String counts() {
        String many = draw.one("at least one", "at least two", "at most one", "at most 2", "exactly one", "exactly 3",
                "at least crew-size");
        return draw.one(
                "always " + many + " people W are on the ground",
                "always for " + many + " switching devices D, D is closed",
                "always for any switching device D, for " + many + " phases P of D, D is swept on P",
                "at the end " + many + " loads L are supplied",
                "always " + many + " points X that are not grounded are energized",
                "while any switching device D is open\nrequire for " + many + " phases P of D, the load-side line of D is dead on P",
                "always " + many + " capacitor banks C1 have been dead for long-enough");
    }

    private String people() {
        String who = draw.one(
                "W is in charge", "W is at control", "W is the observer", "W is not the observer", "W is a ground hand",
                "W is on the source side", "W is on the load side", "W is qualified", "W is not qualified",
                "W is qualified for \"stick work\"", "W is not at control");
        return draw.one(
                "before opening or closing any switching device D by any person W\nrequire briefing W has happened",
                "before clamping any jumper J by any person W\nrequire briefing W has happened since unclamping J",
                "before opening any switching device D by any person W\nrequire " + who,
                "before issuing or releasing any hold H by any person W\nrequire " + who + " and H is held by W",
                "while any person W is aloft at any site S\nrequire " + who,
                "always at most one person W that is qualified is aloft at any site S".replace("any site S", "the site of D")
                        .replace("always ", "always for any switching device D, "),
                "before clamping or unclamping any jumper J by any person W\nrequire " + who);
    }
}
