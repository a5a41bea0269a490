package org.keeplit.electric.flow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.keeplit.electric.complex.Complex;

/** The 13-node and 34-node feeders against the printed results, taps held as printed. */
class IeeeRadialFeedersTest {
    private static FlowSolution solve(IeeeFeeder feeder) {
        return feeder.model.solver().solve(feeder.model.baseState()).solution().orElseThrow();
    }

    private static void compareVoltages(IeeeFeeder feeder, String folder, double perUnit, double degrees) {
        FlowSolution solution = solve(feeder);
        int rows = 0;
        for (Csv.Row row : Csv.read(folder + "/published_voltages.csv")) {
            String node = switch (row.text("node")) {
                case "XFXFM1" -> "634";
                case "XF10" -> "888";
                default -> row.text("node");
            };
            Complex voltage = solution.voltage(feeder.terminal(node, row.text("phase")));
            String place = row.text("node") + "." + row.text("phase");
            assertEquals(row.number("vmag_pu"), voltage.abs() / feeder.nominal(node), perUnit, place);
            assertEquals(row.number("vang_deg"), voltage.degrees(), degrees, place);
            rows++;
        }
        assertTrue(rows >= 30, "rows compared: " + rows);
    }

    /** Within a part of the printed amperes, or the last printed digits where there are few. */
    private static void compareCurrents(IeeeFeeder feeder, String folder, double part, double amperes) {
        PublishedCurrents currents = new PublishedCurrents(feeder, solve(feeder));
        int rows = 0;
        for (Csv.Row row : Csv.read(folder + "/published_currents.csv")) {
            double printed = row.number("amp");
            String place = row.text("at_node") + " " + row.text("end") + " " + row.text("other_node") + " "
                    + row.text("phase");
            assertEquals(printed, currents.at(row).abs(), Math.max(part * printed, amperes), place);
            rows++;
        }
        assertTrue(rows > 60, "rows compared: " + rows);
    }

    @Test
    void voltagesOfThe13NodeFeeder() {
        compareVoltages(IeeeFeeder.thirteen(), "ieee13", 0.0005, 0.05);
    }

    @Test
    void voltagesOfThe34NodeFeeder() {
        compareVoltages(IeeeFeeder.thirtyFour(), "ieee34", 0.002, 0.05);
    }

    @Test
    void currentsOfThe13NodeFeeder() {
        compareCurrents(IeeeFeeder.thirteen(), "ieee13", 0.003, 0.01);
    }

    @Test
    void currentsOfThe34NodeFeeder() {
        compareCurrents(IeeeFeeder.thirtyFour(), "ieee34", 0.003, 0.01);
    }

    private static double printedLoss(String folder) {
        return Csv.read(folder + "/published_segment_losses_kw.csv").stream()
                .mapToDouble(row -> row.number("total_kw") * 1000)
                .sum();
    }

    @Test
    void totalsOfThe13NodeFeeder() {
        FlowSolution solution = solve(IeeeFeeder.thirteen());
        assertEquals(3_466_000, solution.loadPower().re(), 1000);
        assertEquals(2_102_000, solution.loadPower().im(), 1000);
        double printed = printedLoss("ieee13");
        assertEquals(printed, solution.losses().re(), 0.005 * printed);
    }

    @Test
    void totalsOfThe34NodeFeeder() {
        FlowSolution solution = solve(IeeeFeeder.thirtyFour());
        // 1769 kW is the sum of the solved loads as printed; 1044 kvar is the sheet's nominal sum.
        assertEquals(1_769_000, solution.loadPower().re(), 1500);
        double printed = printedLoss("ieee34");
        assertEquals(printed, solution.losses().re(), 0.005 * printed);
    }

    @Test
    void segmentLossesOfThe13NodeFeeder() {
        IeeeFeeder feeder = IeeeFeeder.thirteen();
        FlowSolution solution = solve(feeder);
        for (Csv.Row row : Csv.read("ieee13/published_segment_losses_kw.csv")) {
            String from = row.text("from").equals("RG60") ? "650" : row.text("from");
            String to = row.text("to").equals("XFXFM1") ? "634" : row.text("to");
            double computed = 0;
            for (var entry : feeder.element.entrySet()) {
                String name = entry.getKey();
                if (name.equals(from + "-" + to) || name.startsWith(from + "-" + to + ".")) {
                    computed += solution.power(entry.getValue()).re();
                }
            }
            double printed = row.number("total_kw") * 1000;
            assertEquals(printed, computed, Math.max(0.005 * printed, 1), from + "-" + to);
        }
    }
}
