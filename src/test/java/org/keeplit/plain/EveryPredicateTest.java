package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.keeplit.condition.Predicate;

/** Every predicate is asked in many states and comes out true somewhere and false somewhere, in both evaluators. */
class EveryPredicateTest {
    private static final String D = "always for any switching device D, for every phase P of D, D ";
    private static final String ALL_D = "always for any switching device D, D ";
    private static final String POLE = "always for any recloser D, for every phase P of D, ";
    private static final String V = "always for any regulator V, for every phase P of V, V ";
    private static final String J = "always for any bypass-jumper J, for every phase P of J, J ";
    private static final String H = "always for any hold H, H ";
    private static final String W = "always for any person W, W ";
    private static final String X = "always for any point X, X ";
    private static final String K = "always for any contact K, K ";
    private static final String L = "always for any load L, L ";

    private record Asked(Predicate predicate, String yes, String no) {}

    private static Asked is(Predicate predicate, String head, String rest) {
        return new Asked(predicate, head + "is " + rest, head + "is not " + rest);
    }

    private static Asked does(Predicate predicate, String yes, String no) {
        return new Asked(predicate, yes, no);
    }

    private static final List<Asked> ALL = List.of(
            is(Predicate.OPEN, D, "open on P"),
            is(Predicate.CLOSED, D, "closed on P"),
            is(Predicate.ATTACHED, POLE + "the load lead of D ", "attached on P"),
            is(Predicate.DETACHED, POLE + "the load lead of D ", "off on P"),
            does(Predicate.MODE, POLE + "reclosing of D is on on P", POLE + "reclosing of D is not on on P"),
            is(Predicate.NEUTRAL, V, "at neutral on P"),
            is(Predicate.INSTALLED, J, "installed on P"),
            is(Predicate.IN_USE, J, "in use on P"),
            is(Predicate.RUNNING, "always for any temporary source E, for every phase P of E, E ", "running on P"),
            is(Predicate.PLACED, POLE + "D ", "on the pole on P"),
            does(Predicate.ALOFT, "always for any person W and any site S, W is aloft at S", "always for any person W and any site S, W is not aloft at S"),
            is(Predicate.ON_GROUND, W, "on the ground"),
            is(Predicate.ASKED, H, "asked for"),
            is(Predicate.IN_FORCE, H, "in force"),
            is(Predicate.OUT, H, "out"),
            is(Predicate.RELEASED, H, "released"),
            does(Predicate.COVERS, "always for any hold H and any site S, H covers S", "always for any hold H and any site S, H does not cover S"),
            is(Predicate.HELD_AT, "always for any hold H and any switching device D, H ", "held at D"),
            is(Predicate.HELD_BY, "always for any hold H and any person W, H ", "held by W"),
            does(Predicate.INCLUDES, "always for any hold H and any person W, H includes W", "always for any hold H and any person W, H does not include W"),
            is(Predicate.CLAMPED_TO, "always for any jumper J and any point X, J ", "clamped to X"),
            is(Predicate.TAGGED, ALL_D, "tagged"),
            is(Predicate.PROVED_DEAD, X, "proved dead"),
            is(Predicate.PROVED_OPEN, D, "proved open on P"),
            is(Predicate.PROVED_CLOSED, D, "proved closed on P"),
            is(Predicate.PROVED_CARRYING, D, "proved to carry current on P"),
            is(Predicate.PROVED_IN_PHASE, D, "proved in phase on P"),
            is(Predicate.PROVED_NEUTRAL, V, "proved at neutral on P"),
            does(Predicate.RECORDED, "always \"sheet\" is recorded", "always \"sheet\" is not recorded"),
            does(Predicate.FOUND, "always \"gasket\" is found \"wet\"", "always \"gasket\" is not found \"wet\""),
            does(Predicate.WAITED, "always for any capacitor bank C1, C1 has been dead for 5 min", "always for any capacitor bank C1, C1 has not been dead for 5 min"),
            is(Predicate.ENERGIZED, X, "energized"),
            is(Predicate.ALIVE, X, "alive"),
            is(Predicate.DEAD, X, "dead"),
            is(Predicate.GROUNDED, X, "grounded"),
            is(Predicate.GROUNDED_THROUGHOUT, X, "grounded on every phase there"),
            is(Predicate.TIED_TO_GROUND, X, "tied to a ground"),
            is(Predicate.BYPASSED, D, "bypassed on P"),
            is(Predicate.LOOPED, D, "looped on P"),
            does(Predicate.OPENING_DUTY, D + "has opening duty nothing on P", D + "does not have opening duty nothing on P"),
            does(Predicate.CLOSING_DUTY, D + "has closing duty nothing on P", D + "does not have closing duty nothing on P"),
            is(Predicate.FIT_TO_OPEN, K, "fit to open"),
            is(Predicate.FIT_TO_CLOSE, K, "fit to close"),
            is(Predicate.ISOLATED, ALL_D, "isolated"),
            is(Predicate.SUPPLIED, L, "supplied"),
            does(Predicate.OUTAGE_PLANNED, L + "has a planned outage", L + "does not have a planned outage"),
            does(Predicate.FEEDS, "always for any switching device D and any site S, D feeds S", "always for any switching device D and any site S, D does not feed S"),
            is(Predicate.LIVE_SITE, "always for any site S, S ", "live"),
            does(Predicate.HAS, ALL_D + "has trips", ALL_D + "does not have trips"),
            is(Predicate.CRITICAL, L, "critical"),
            does(Predicate.STANDS_AT, "always for any switching device D and any site S, D stands at S", "always for any switching device D and any site S, D does not stand at S"),
            is(Predicate.SAME, "always for any switching device D and any switching device E, D ", "the same as E"),
            does(Predicate.COUNTED, D + "has counted 1 on P", D + "has not counted 1 on P"),
            is(Predicate.SHORTED, X, "short-circuited"),
            is(Predicate.IN_CHARGE, W, "in charge"),
            is(Predicate.AT_CONTROL, W, "at control"),
            is(Predicate.OBSERVER, W, "the observer"),
            is(Predicate.GROUND_HAND, W, "a ground hand"),
            is(Predicate.ON_SIDE, W, "on the source side"),
            is(Predicate.QUALIFIED, W, "qualified"),
            is(Predicate.QUALIFIED_FOR, W, "qualified for \"stick work\""),
            // Nobody asks for the class outright: it is what a rule applies to, so that it is true of what breaks the rule.
            does(Predicate.IN_CLASS, "always for any load L, L is critical and L is not critical\napplies to below 5 kV",
                    "always for any load L, L is critical and L is not critical\napplies to 5 kV to 35 kV"),
            is(Predicate.PHASE_IN, "always for any switching device D, for every phase P of D, P ", "phase A"));

    private static final Pattern MADE = Pattern.compile("made-(\\d+)");

    @Test
    void comesOutTrueAndFalse() {
        assertEquals(Set.of(Predicate.values()), Set.copyOf(ALL.stream().map(Asked::predicate).toList()));
        List<String> rules = new ArrayList<>();
        for (int i = 0; i < ALL.size(); i++) {
            rules.add("rule made-" + 2 * i + "\n" + ALL.get(i).yes() + "\nsays \"x\"\nbecause \"x\"");
            rules.add("rule made-" + (2 * i + 1) + "\n" + ALL.get(i).no() + "\nsays \"x\"\nbecause \"x\"");
        }
        Set<Integer> broken = new TreeSet<>();
        List<MadeCase> cases = new ArrayList<>(HandMade.all());
        for (long seed = 0; seed < 150; seed++) {
            cases.add(CaseMaker.makeWithSets(new Draw(seed)));
        }
        for (MadeCase made : cases) {
            Comparison one = Comparison.of(made.withRules(List.of(), rules).read(), 300);
            if (one.ran()) {
                assertEquals("", one.difference(), made::toString);
                one.plain().roots().keySet().forEach(r -> add(broken, r));
                one.plain().later().forEach(r -> add(broken, r.substring(r.indexOf("/") + 1)));
            }
        }
        List<String> never = new ArrayList<>();
        for (int i = 0; i < ALL.size(); i++) {
            if (!broken.contains(2 * i)) {
                never.add(ALL.get(i).predicate() + " is never false");
            } else if (!broken.contains(2 * i + 1)) {
                never.add(ALL.get(i).predicate() + " is never true");
            }
        }
        assertTrue(never.isEmpty(), never::toString);
    }

    private static void add(Set<Integer> broken, String rule) {
        Matcher matcher = MADE.matcher(rule);
        if (matcher.matches()) {
            broken.add(Integer.parseInt(matcher.group(1)));
        }
    }
}
