package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.keeplit.language.Library;
import org.keeplit.procedure.Procedure;

/** A set that was brought energizes what is dead and meets what is not; both evaluators say so and give its figures. */
class MobileGeneratorTest {
    /** A set of 45 kVA and 20 % at 480 V, 277 V to ground, has 3 times 0.2 times 277.1² / 45 kVA = 1.024 ohm a phase. */
    private static final String NETWORK = """
            language 1
            network net
            uses overhead
            system voltage 480 V, frequency 60 Hz
            load case light 40 %
            source bus at s-0, phases ABC, supply grid, fault level 5 MVA
            disconnect main from s-0 to s-1, phases ABC, single-phase units
            load hall at s-1, phases ABC, constant impedance, A 9 kW, B 9 kW, C 9 kW, 1 customer
            load yard at s-1, phases AB, delta, constant impedance, AB 2 kW 0 kvar, 1 customer
            """;

    private static Map<String, Integer> roots(String steps, String rule) {
        String procedure = """
                language 1
                procedure p revision 1
                title "x"
                keeps test
                crew
                  op "Operator", in charge
                temporary
                  mobile-generator E for each phase of main
                  ground-set G for each phase of main
                proved on net
                planned outage of hall, yard
                stage "x"
                """
                + steps.lines().map(s -> "  " + s + "\n").reduce("", String::concat);
        String rules = "language 1\nrulebook test revision 1\nrule asked\n  " + rule + "\n  says \"x\"\n  because \"x\"\n";
        Library library = FiguresAgreementTest.read(NETWORK, procedure, rules);
        Procedure p = library.procedures().get("p");
        return Agreement.check(p, library.networks().get("net"), p.proofs().get(0), steps + rule).plain().roots();
    }

    private static boolean kept(String steps, String rule) {
        Map<String, Integer> roots = roots(steps, rule);
        assertTrue(roots.keySet().stream().allMatch("asked"::equals), () -> "more than was asked: " + roots);
        return roots.isEmpty();
    }

    private static final String OVER = "op opens main\nop connects E to the load-side line of main\nop starts E\n";

    @Test
    void itSuppliesADeadIsland() {
        assertTrue(kept(OVER, "at the end every load L is supplied"));
        assertFalse(kept(OVER.replace("op starts E\n", ""), "at the end every load L is supplied"));
        assertTrue(kept(OVER, "at the end for every temporary source E, E is running and is energized"));
        assertTrue(kept(OVER + "op stops E\n", "at the end for every disconnect D, the load-side line of D is dead"));
    }

    /** One cable forgotten: what hangs between two phases puts voltage on the third, and nobody there is supplied. */
    @Test
    void aForgottenCableLeavesAPhaseFedBackwards() {
        String steps = OVER.replace("line of main\n", "line of main on BC\n");
        assertTrue(kept(steps, "at the end for every disconnect D, the load-side line of D is alive on A"));
        assertFalse(kept(steps, "at the end for every disconnect D, the load-side line of D is energized on A"));
    }

    @Test
    void itMeetsTheLineWhereBothAreOn() {
        assertFalse(kept(
                "op connects E to the load-side line of main\nop starts E\n",
                "before making any contact K on phase P\n  require K does not have closing duty joining two supplies on P"));
        assertFalse(kept(OVER + "op closes main on A\n", "before closing any disconnect D on phase P\n  require D does not have closing duty joining two supplies on P"));
        assertTrue(kept(OVER + "op stops E\nop closes main\n", "before closing any disconnect D on phase P\n  require D does not have closing duty joining two supplies on P"));
    }

    @Test
    void itFeedsAGroundThatWasLeftOn() {
        String steps = "op opens main\nop connects E to the load-side line of main\nop applies G to the load-side line of main on A, ground end first\nop starts E\n";
        assertFalse(kept(steps, "before making any contact K on phase P\n  require K does not have closing duty onto a ground on P"));
    }

    /**
     * By hand: on phase C of the island only 9 kW at 277 V hang, 8.533 ohm; behind 1.024 ohm of reactance that is 277.1 V
     * times 8.533 / |8.533 + j 1.024|, or 275.15 V less 0.06 V in two contacts, and 32.24 A. A bolted fault there draws 277.1 V / 1.024 ohm = 270.6 A.
     */
    @Test
    void itsFiguresAreThoseOfItsReactance() {
        String volts = "at the end for every disconnect D, the voltage at the load-side line of D on C is %s %s V";
        assertTrue(kept(OVER, volts.formatted("above", "275.0")));
        assertTrue(kept(OVER, volts.formatted("below", "276.9")));
        assertFalse(kept(OVER, volts.formatted("below", "275.3")), "in light load it is higher");
        assertTrue(kept(OVER, "at the end for every temporary source E, the current through E on C is at most 32.3 A"));
        assertFalse(kept(OVER, "at the end for every temporary source E, the current through E on C is at most 32.2 A"));
        String fault = "at the end for every disconnect D, the fault current at the load-side line of D on C is %s %s A";
        assertTrue(kept(OVER, fault.formatted("at most", "270.8")));
        assertTrue(kept(OVER, fault.formatted("at least", "270.4")));
    }
}
