package org.keeplit.plain;

import java.util.ArrayList;
import java.util.List;

/** Makes small rules over everything that can be asked. */
final class RuleMaker {
    private final Draw draw;

    RuleMaker(Draw draw) {
        this.draw = draw;
    }

    List<String> rules(int most) {
        List<String> all = new ArrayList<>();
        int count = draw.between(1, most);
        PastMaker past = new PastMaker(draw);
        all.add(PastMaker.DEFINITIONS);
        for (int i = 0; i < count; i++) {
            String rule = draw.chance(55) ? past.rule() : rule();
            String clause = draw.chance(20) ? past.clause() + "\n" : "";
            all.add("rule made-" + (i + 1) + "\n" + rule + "\n" + clause + "says \"x\"\nbecause \"x\"");
        }
        return all;
    }

    private String rule() {
        return switch (draw.below(10)) {
            case 0, 1, 2 -> stateRule("always ");
            case 3 -> "never any person W is aloft at any site S\nunless " + draw.one("S is not live", "W is on the ground",
                    "some hold H is out and covers S", "some switching device D feeds S");
            case 4 -> draw.chance(25)
                    ? "while any regulator V is at neutral\nrequire " + draw.one("V is isolated", "V is not looped", "control of V is manual")
                    : "while any switching device D is " + draw.one("open", "tagged", "isolated", "proved open")
                    + "\nrequire " + device();
            case 5 -> "at the " + draw.one("start", "end") + "\nrequire for every switching device D, " + device();
            default -> actRule();
        };
    }

    private String stateRule(String head) {
        return switch (draw.below(9)) {
            case 0, 1 -> head + "for any switching device D, for every phase P of D, one of\n" + deviceOn() + "\n"
                    + deviceOn() + "\nend";
            case 2 -> head + "for any regulator V, for every phase P of V, one of\n" + regulatorOn() + "\n" + regulatorOn()
                    + "\nend";
            case 3 -> head + "every load L " + draw.one("is supplied", "is critical", "has a planned outage",
                    "is not critical") + "\nunless L is " + draw.one("critical", "supplied", "not critical");
            case 4 -> head + "for any point X, one of\n" + point() + "\n" + point() + "\nend";
            case 5 -> head + "for any bypass-jumper J, for every phase P of J, one of\n" + jumperOn() + "\n" + jumperOn()
                    + "\nend";
            case 6 -> head + "for any recloser D, for every phase P of D, one of\n" + poleOn() + "\n" + poleOn() + "\nend";
            case 7 -> head + "for any contact K, one of\n" + contact() + "\n" + contact() + "\nend";
            default -> head + "for any switching device D and any switching device E, one of\nD is the same as E\n"
                    + device() + "\n" + device().replace("D ", "E ").replace(" of D", " of E") + "\nend";
        };
    }

    private String actRule() {
        String when = draw.one("before ", "after ");
        return when + switch (draw.below(9)) {
            case 0, 1 -> draw.one("opening", "closing", "opening or closing") + " any switching device D on phase P\nrequire "
                    + draw.one(deviceOn(), device());
            case 2 -> draw.one("breaking", "making") + " any contact K on phase P\nrequire " + contact();
            case 3 -> draw.one("lifting a lead of", "landing a lead of", "raising", "lowering")
                    + " any recloser D on phase P\nrequire " + poleOn();
            case 4 -> draw.one("clamping", "unclamping", "clamping or unclamping")
                    + " any bypass-jumper J on phase P\nrequire " + jumperOn();
            case 5 -> draw.one("grounding", "ungrounding", "testing", "working on") + " any point X on phase P\nrequire "
                    + point().replace("X is", "X is").concat(draw.one("", " on P"));
            case 6 -> draw.one("issuing", "repeating", "confirming", "releasing", "asking for")
                    + " any hold H\nrequire " + permit();
            case 7 -> draw.one(
                    "setting reclosing of any switching device D to blocked\nrequire " + device(),
                    "setting control of any regulator V to automatic\nrequire for every phase P of V, " + regulatorOn(),
                    "running any regulator V to neutral\nrequire V is not looped",
                    "tagging any switching device D\nrequire " + device(),
                    "untagging any switching device D\nrequire " + device());
            default -> draw.one("going aloft at any site S by any person W", "going aloft at any site S by any person W")
                    + "\nrequire "
                    + draw.one("S is not live", "some hold H is in force and covers S", "W is aloft at S",
                            "for every switching device D that feeds S, reclosing of D is blocked",
                            "for every switching device D that stands at S, D is open");
        };
    }

    private String device() {
        return draw.one(
                "D is open", "D is closed", "D is tagged", "D is not tagged", "D is isolated", "D is not isolated",
                "D has leads", "D does not have ganged", "reclosing of D is blocked", "reclosing of D is on",
                "D is on the pole", "D is not on the pole", "D has counted 1", "D has counted 2",
                "D is proved open", "D is proved closed", "D is not proved closed", "D is proved in phase",
                "D is proved to carry current", "D is bypassed", "D is not bypassed", "D is looped",
                "the load-side line of D is energized", "the source-side line of D is alive",
                "the load-side line of D is dead", "the load-side line of D is grounded",
                "the load-side line of D is tied to a ground", "the load-side line of D is not energized",
                "D feeds the site of D", "some hold H is held at D", "no clearance K is held at D",
                "some switching device F that is open feeds the site of D", "some capacitor bank C1 has been dead for 5 min",
                "\"sheet\" is recorded", "\"gasket\" is not found \"wet\"", "the site of D is live",
                "no person W is aloft at the site of D", "every person W is on the ground",
                "some person W that is on the ground is aloft at the site of D", "D has opening duty nothing or load break",
                "D has closing duty nothing, energizing or parallel make");
    }

    private String deviceOn() {
        return draw.one(
                "D is open on P", "D is closed on P", "D is bypassed on P", "D is not bypassed on P", "D is looped on P",
                "D is not looped on P", "D has opening duty nothing on P", "D has opening duty parallel break on P",
                "D has opening duty fault break or load break on P",
                "D has opening duty bushing charging, line charging, cable charging or transformer magnetizing on P",
                "D has opening duty capacitor bank or parallel break on P", "D has closing duty nothing on P",
                "D has closing duty parallel make or unequal parallel on P",
                "D has closing duty joining two supplies or cross-phase on P", "D has closing duty onto a ground on P",
                "D has closing duty energizing or energizing load on P", "D is proved open on P",
                "D is proved carrying on P".replace("carrying", "to carry current"), "D has counted 1 on P",
                "the load-side line of D is energized on P", "the source-side line of D is dead on P",
                "the load-side line of D is short-circuited on P", "the load-side line of D is not short-circuited on P",
                "the source-side line of D is grounded on P", "the load-side line of D is not alive on P",
                "P is phase A", "P is not phase A or B".replace(" or B", ""), deviceFigure(), deviceFigure());
    }

    private String deviceFigure() {
        return draw.one(
                "the recovery voltage across D on P is below 3 kV", "the recovery voltage across D on P is below 5 V",
                "the closing current through D on P is at most 3 A", "the closing current through D on P is at most 500 A",
                "the angle across D on P is at most 20 degrees", "the fault current through D on P is at least 2 kA",
                "the trapped voltage behind D on P is at most 50 V",
                "the smallest fault current through D beyond D is at least 2 kA",
                "the cold-load current through D on P is at most 20 A", "the inrush current through D on P is at most 100 A",
                "for every breaker F, the smallest ground fault current through F beyond D is at least 300 A",
                "the current through D on P is at most the pickup of D");
    }

    private String poleOn() {
        return draw.one(
                "the source lead of D is attached on P", "the load lead of D is off on P",
                "the load bushing of D is dead on P", "the source bushing of D is energized on P",
                "the source bushing of D is not dead on P", "the load lead of D is alive on P",
                "the source bushing of D is proved dead on P", "D is on the pole on P", "D is on the ground on P",
                "the load bushing of D is grounded on P", "reclosing of D is blocked on P", "D is open on P",
                "D is in the shop on P");
    }

    private String regulatorOn() {
        return draw.one(
                "V is at neutral on P", "V is not at neutral on P", "V is proved at neutral on P", "V is bypassed on P",
                "V is not bypassed on P", "V is looped on P", "control of V is manual", "control-power of V is on",
                "V is isolated", "V is not isolated");
    }

    private String jumperOn() {
        return draw.one(
                "J is installed on P", "J is not installed on P", "J is in use on P", "J is not in use on P",
                "J is proved to carry current on P", "J is not proved to carry current on P", "J is installed",
                "no switching device D that stands at the site of J is closed", "J is in use");
    }

    private String contact() {
        return draw.one(
                "K is fit to open", "K is fit to close", "K is not fit to open", "K is not fit to close",
                "K has opening duty nothing", "K has closing duty nothing", "K has opening duty parallel break or load break",
                "K has closing duty energizing or parallel make", "K has closing duty onto a ground or cross-phase",
                "K has opening duty bushing charging or fault break", "the current through K is at most 1 A",
                "the recovery voltage across K is at most 20 V", "the closing current through K is at most 1 A",
                "the voltage across K is at most 100 V", "the trapped voltage behind K is at most 1 kV");
    }

    private String point() {
        return draw.one(
                "X is energized", "X is alive", "X is dead", "X is grounded", "X is tied to a ground",
                "X is short-circuited", "X is not short-circuited", "X is proved dead", "X is not proved dead",
                "X is not grounded", "X is grounded on every phase there", "X is not energized", "the trapped voltage at X is at most 1 kV");
    }

    private String permit() {
        return draw.one(
                "H is asked for", "H is in force", "H is out", "H is not out", "H is released", "H is not released",
                "some person W that is on the ground holds H".replace(" that is on the ground holds H", " is on the ground"),
                "H is not asked for");
    }
}
