package org.keeplit.explore;

import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.keeplit.condition.Truth;

/** The table of duties of DEVELOPERS.md, row by row, at switches that have one thing behind them each. */
class DutiesInRulesTest {
    private static final String NETWORK = QuestionsTest.NETWORK
            + """
            switch to-bank from s-1 to b-1, phases ABC, at a-1
            capacitor bank-2 at b-1, phases ABC, grounded wye, 300 kvar
            switch to-unit from s-1 to t-1, phases ABC, at a-2
            transformer unit from t-1 to t-2, phases ABC, delta to grounded wye, clock 1, rating 300 kVA, low voltage 480 V, impedance 4 %
            switch to-cable from s-1 to c-1, phases ABC, at a-3
            cable run from c-1 to c-2, phases ABC, length 0.3 km, conductor cable-1-0
            switch to-line from s-1 to n-1, phases ABC, at a-4
            line stub from n-1 to n-2, phases ABC, length 1 km, conductor acsr-336
            switch to-none from s-1 to m-1, phases ABC, at a-5
            switch to-load from s-1 to d-1, phases ABC, at a-6
            load shop at d-1, phases ABC, 30 kW, 10 kvar, 3 customers
            capacitor bank-3 at d-1, phases ABC, grounded wye, 300 kvar
            source other at o-0, phases ABC, supply another, fault level 100 MVA, reactance ratio 8
            switch tie from s-1 to o-0, phases ABC, open, at a-7
            switch ring from s-1 to s-2, phases ABC, open, at a-8
            """;

    private static void duty(String steps, String device, String duty) {
        QuestionsTest.after(NETWORK, steps, Truth.TRUE, device + " has " + duty);
    }

    /** What opens is what is behind it, the heaviest of several; closing it again brings load or none alive. */
    @Test
    void one_thing_behind_a_switch() {
        Map<String, String> behind = new LinkedHashMap<>();
        behind.put("to-bank", "capacitor bank");
        behind.put("to-unit", "transformer magnetizing");
        behind.put("to-cable", "cable charging");
        behind.put("to-line", "line charging");
        behind.put("to-none", "bushing charging");
        behind.put("to-load", "load break");
        behind.forEach((device, opening) -> {
            for (String other : behind.values()) {
                QuestionsTest.after(NETWORK, "", Truth.of(other.equals(opening)), device + " has opening duty " + other);
            }
            String open = "op opens " + device;
            duty(open, device, "opening duty nothing");
            duty("", device, "closing duty nothing");
            duty(open, device, device.equals("to-load") ? "closing duty energizing load" : "closing duty energizing");
        });
    }

    @Test
    void two_supplies_and_two_ways() {
        duty("", "tie", "closing duty joining two supplies");
        duty("", "ring", "closing duty parallel make");
        duty("op closes ring", "ring", "opening duty parallel break");
        // Once one of two ways is out the other carries all behind it.
        duty("op closes ring; op opens r", "ring", "opening duty parallel break");
        duty("op opens gang; op opens feeder", "tie", "closing duty energizing load");
        duty("op opens feeder; op opens gang", "gang", "closing duty nothing");
        duty("op opens feeder", "gang", "opening duty nothing");
    }

    @Test
    void a_ground_on_either_side() {
        String ground = "op opens gang; op applies G to the load-side line of gang, ground end first";
        duty(ground, "gang", "closing duty onto a ground");
        QuestionsTest.after(NETWORK, ground, Truth.FALSE, "gang has closing duty energizing load");
        // Both sides dead: nothing, whatever hangs there.
        duty(ground + "; op opens feeder", "gang", "closing duty nothing");
        String other = "op opens feeder; op opens gang; op applies G to the source-side line of gang, ground end first";
        duty(other, "feeder", "closing duty onto a ground");
    }

    /** A lead of phase A on phase B of its line, which a jumper keeps alive: one supply at two angles. */
    @Test
    void one_supply_at_two_angles() {
        String rolled = "op installs J around r on B, line to line; op opens r; op takes off the load lead of r at the line end on A; "
                + "op puts on the load lead of r at the line end on A%s";
        duty(rolled.formatted(", onto phase B"), "r", "closing duty cross-phase on A");
        duty(rolled.formatted(""), "r", "closing duty energizing load on A");
        duty(rolled.formatted(""), "r", "closing duty parallel make on B");
    }

    @Test
    void what_a_customer_may_feed_is_another_supply() {
        String network = NETWORK + "generator gas at m-1, phases ABC, 75 kW\n";
        QuestionsTest.after(network, "op opens to-none", Truth.TRUE, "to-none has closing duty joining two supplies");
        QuestionsTest.after(network, "op opens to-none; op opens feeder", Truth.FALSE, "to-none has closing duty joining two supplies");
        QuestionsTest.after(network, "op opens to-none", Truth.UNKNOWN, "the load-side line of to-none is dead", "the load-side line of to-none is alive");
    }
}
