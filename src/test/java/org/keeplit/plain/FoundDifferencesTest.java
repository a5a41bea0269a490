package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Small cases on which the evaluators once differed, or both were wrong. */
class FoundDifferencesTest {
    private static final List<MadeElement> ONE_SWITCH = List.of(
            new MadeElement("source", "s-1", "n-1", null, "ABC", List.of("supply alpha")),
            new MadeElement("switch", "d-2", "n-1", "n-2", "ABC", List.of()));

    private static Map<String, Integer> roots(List<MadeElement> elements, List<String> rules, Part... parts) {
        List<String> books = rules.isEmpty() ? List.of("tagging") : List.of();
        MadeCase made = new MadeCase(elements, List.of(), List.of(), List.of(parts), List.of(), books, rules);
        Comparison one = Comparison.of(made.read(), 1000);
        assertEquals("", one.difference());
        return one.plain().roots();
    }

    private static String rule(String body) {
        return "rule made-1\n" + body + "\nsays \"x\"\nbecause \"x\"";
    }

    @Test
    void aPhaseIsOneOfThoseSaid() {
        String all = rule("always for any switching device D, for every phase P of D, P is phase ABC");
        String one = rule("always for any switching device D, for every phase P of D, P is phase A");
        String none = rule("always for any switching device D, for no phase P of D, P is not phase ABC");
        Part nothing = Part.step("east does \"nothing\"");
        assertEquals(Map.of(), roots(ONE_SWITCH, List.of(all), nothing));
        assertEquals(Map.of("made-1", 0), roots(ONE_SWITCH, List.of(one), nothing));
        assertEquals(Map.of(), roots(ONE_SWITCH, List.of(none), nothing));
    }

    @Test
    void whatAStepRecordsBesideCanBeAskedFor() {
        assertEquals(
                Map.of(),
                roots(
                        ONE_SWITCH,
                        List.of(),
                        Part.step("east does \"looks\"", "records \"sheet\""),
                        Part.step("east checks \"sheet\" is recorded")));
    }

    @Test
    void anOpenDeviceUnderRemoteControlFeedsAtTheStart() {
        List<MadeElement> elements = List.of(
                new MadeElement("source", "s-1", "n-1", null, "ABC", List.of("supply alpha")),
                new MadeElement("electronic-recloser", "d-2", "n-1", "n-2", "A", List.of("open")),
                new MadeElement("recloser", "d-3", "n-2", "n-3", "A", List.of()));
        assertEquals(
                Map.of(),
                roots(
                        elements,
                        List.of(),
                        Part.step("desk tags every device that feeds d-3"),
                        Part.step("east checks d-2 is tagged")));
    }

    @Test
    void nothingBeyondADeviceMeansNoCurrentThroughIt() {
        List<MadeElement> elements = List.of(
                new MadeElement("source", "s-1", "n-1", null, "A", List.of("supply alpha")),
                new MadeElement("switch", "d-2", "n-1", "n-2", "A", List.of()),
                new MadeElement("transformer", "t-3", "n-1", "n-3", "A", List.of("grounded wye to grounded wye")));
        assertEquals(Map.of("stop 0", 1), roots(elements, List.of(), Part.step("east proves d-2 carries current")));
    }

    @Test
    void leadsThatChangedPlacesSupplyNobody() {
        Comparison one = Comparison.of(HandMade.rolledLeads().read(), 1000);
        assertEquals("", one.difference());
        assertEquals(Map.of("made-1", 5), one.plain().roots());
    }

    /** Constant power to ground, where nothing else is grounded, left the star point drifting without end. */
    @Test
    void aGeneratorOnASystemWithoutAGroundHasALoadFlow() {
        List<MadeElement> elements = List.of(
                new MadeElement("source", "s-1", "n-1", null, "ABC", List.of("supply alpha")),
                new MadeElement("transformer", "t-3", "n-1", "n-3", "ABC", List.of("grounded wye to ungrounded wye")),
                new MadeElement("electronic-recloser", "d-4", "n-3", "n-4", "ABC", List.of("pickup 1.2 A", "ground pickup 0.8 A")),
                new MadeElement("cable", "l-5", "n-4", "n-5", "ABC", List.of("length 1 km")),
                new MadeElement("switch", "d-6", "n-5", "n-6", "ABC", List.of()),
                new MadeElement("line", "l-9", "n-6", "n-9", "ABC", List.of("length 1 km")),
                new MadeElement("generator", "g-14", "n-3", null, "ABC", List.of("20 kW")));
        String carries = rule("always for any switching device D and any phase P of D, the current through D on P is at most 20 A");
        assertEquals(Map.of(), roots(elements, List.of(carries), Part.step("east does \"nothing\"")));
    }
}
