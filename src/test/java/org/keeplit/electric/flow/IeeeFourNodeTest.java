package org.keeplit.electric.flow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.keeplit.electric.flow.FlowModel.GROUND;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

/** The 4-node feeder with every printed transformer connection (IEEE PES, 2006). */
class IeeeFourNodeTest {
    /** Ohm per mile, four wires reduced to three (configuration of a grounded wye side). */
    private static final ComplexMatrix FOUR_WIRE = matrix(
            0.4576, 1.0780, 0.1559, 0.5017, 0.1535, 0.3849, 0.4666, 1.0482, 0.1580, 0.4236, 0.4615, 1.0651);
    /** Ohm per mile, three wires (configuration of a delta side). */
    private static final ComplexMatrix THREE_WIRE = matrix(
            0.4013, 1.4133, 0.0953, 0.8515, 0.0953, 0.7266, 0.4013, 1.4133, 0.0953, 0.7802, 0.4013, 1.4133);

    private static ComplexMatrix matrix(double... v) {
        int[][] at = {{0, 1, 2}, {1, 3, 4}, {2, 4, 5}};
        return ComplexMatrix.of(3, 3, (i, j) -> new Complex(v[2 * at[i][j]], v[2 * at[i][j] + 1]));
    }

    /**
     * Misprints: 10083.8 A for 1083.8, where the other connections agree; the angles of the rest
     * against the sheet's own neighbours (the grounded bank beside the ungrounded one, whose
     * secondary voltages are the same): a decimal, a sign, a last digit.
     */
    private static final Map<String, Polar> MISPRINTS = Map.of(
            "stepdown_unbalanced Gr Y -D Current 3-4 Ia", new Polar(1083.8, -71.0),
            "stepdown_balanced Y - D Node-2 V1", new Polar(7112, -0.3),
            "stepdown_balanced Y - D Node-3 V1", new Polar(3906, -3.5),
            "stepdown_balanced Y - D Node 2 Van", new Polar(7116, -0.3),
            "stepup_balanced Open Gr.Y-D Node-2 V1", new Polar(7001, 0.3),
            "stepup_unbalanced Y - D Current 3-4 Ib", new Polar(124.2, -117.2));

    /** One case of the sheet. */
    private static final class Feeder {
        final FlowModel model;
        final boolean primaryWye;
        final boolean secondaryWye;
        final int[] two;
        final int[] three;
        final int[] four;
        final int primaryLine;
        final int secondaryLine;

        Feeder(String connection, boolean stepUp, boolean balanced) {
            FlowModelBuilder builder = FlowModel.builder();
            primaryWye = !connection.startsWith("D");
            secondaryWye = connection.endsWith("Gr Y");
            double high = 12470;
            double low = stepUp ? 24900 : 4160;
            int[] one = builder.terminals("1", "ABC");
            two = builder.terminals("2", "ABC");
            three = builder.terminals("3", "ABC");
            four = builder.terminals("4", "ABC");
            builder.source("source", one, GROUND, SourceImpedance.balanced(high / Math.sqrt(3), 0),
                    SourceImpedance.ofSequences(new Complex(0, 1e-6), new Complex(0, 1e-6)));
            primaryLine = builder.line("1-2", one, two, primaryWye ? FOUR_WIRE : THREE_WIRE, 2000 / 5280.0);
            secondaryLine = builder.line("3-4", three, four, secondaryWye ? FOUR_WIRE : THREE_WIRE, 2500 / 5280.0);
            addBank(builder, connection, stepUp, high, low);
            // The sheet's loads on the open bank are two thirds of those on the closed ones.
            addLoads(builder, low, balanced, connection.startsWith("Open") ? 2.0 / 3 : 1);
            model = builder.build();
        }

        private void addBank(
                FlowModelBuilder builder, String connection, boolean stepUp, double high, double low) {
            Complex impedance = new Complex(0.01, 0.06);
            if (connection.startsWith("Open")) {
                addOpenBank(builder, stepUp, high / Math.sqrt(3), low, impedance);
                return;
            }
            // The American standard: the low side lags the high side by 30 degrees.
            WindingConnection primary = primaryWye ? WindingConnection.WYE
                    : secondaryWye && !stepUp ? WindingConnection.DELTA_BACKWARD : WindingConnection.DELTA_FORWARD;
            WindingConnection secondary = secondaryWye ? WindingConnection.WYE
                    : primaryWye && stepUp ? WindingConnection.DELTA_BACKWARD : WindingConnection.DELTA_FORWARD;
            int neutral = connection.startsWith("Y") ? builder.terminal("2.N") : GROUND;
            TransformerBank.add(builder, "bank",
                    new TransformerBank.Side(two, neutral, primary, high),
                    new TransformerBank.Side(three, GROUND, secondary, low), 6000, impedance);
        }

        /** Two units of a third of the bank's rating each, on phases A and B. */
        private void addOpenBank(
                FlowModelBuilder builder, boolean stepUp, double primaryVolts, double low, Complex perUnit) {
            double va = 2_000_000;
            Complex first = perUnit.times(0.5 * primaryVolts * primaryVolts / va);
            Complex second = perUnit.times(0.5 * low * low / va);
            int[][] pairs = stepUp ? new int[][] {{0, 2}, {1, 0}} : new int[][] {{0, 1}, {1, 2}};
            for (int k = 0; k < 2; k++) {
                builder.transformer("bank." + (k + 1), new Winding(two[k], GROUND, primaryVolts, first),
                        new Winding(three[pairs[k][0]], three[pairs[k][1]], low, second));
            }
        }

        private void addLoads(FlowModelBuilder builder, double low, boolean balanced, double part) {
            double[][] unbalancedKva = {{1275, 790.17}, {1800, 871.78}, {2375, 780.63}};
            LoadPower[] powers = new LoadPower[3];
            for (int k = 0; k < 3; k++) {
                Complex power = balanced
                        ? new Complex(1_800_000, 871_780)
                        : new Complex(unbalancedKva[k][0], unbalancedKva[k][1]).times(1000);
                powers[k] = LoadPower.constantPower(power.times(part));
            }
            if (secondaryWye) {
                LoadGroup.wye(builder, "load", four, GROUND, low, powers);
            } else {
                LoadGroup.delta(builder, "load", four, low, powers);
            }
        }

        Complex voltage(FlowSolution solution, int[] node, boolean toGround, int k) {
            return toGround
                    ? solution.voltage(node[k])
                    : solution.voltageBetween(node[k], node[(k + 1) % 3]);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"stepdown_balanced", "stepdown_unbalanced", "stepup_balanced", "stepup_unbalanced"})
    void agreesWithThePrintedTables(String sheet) {
        for (String connection :
                List.of("Gr Y - Gr Y", "Gr Y -D", "Y - D", "D - Gr Y", "D - D", "Open Gr.Y-D")) {
            compare(sheet, connection);
        }
    }

    private static void compare(String sheet, String connection) {
        Feeder feeder = new Feeder(connection, sheet.startsWith("stepup"), sheet.endsWith("_balanced"));
        FlowSolution solution =
                feeder.model.solver().solve(feeder.model.baseState()).solution().orElseThrow();
        int rows = 0;
        for (Csv.Row row : Csv.read("ieee4/published.csv")) {
            if (!row.text("case").equals(sheet) || !row.text("connection").equals(connection)
                    || row.text("mag").isEmpty()) {
                continue;
            }
            String place = connection + " " + row.text("location") + " " + row.text("quantity");
            Complex computed = quantity(feeder, solution, row);
            Polar printed = MISPRINTS.getOrDefault(
                    sheet + " " + place, new Polar(row.number("mag"), row.number("ang_deg")));
            // One unit of the last digit printed; a few currents are printed without decimals.
            double digit = row.text("location").startsWith("Current") ? 0.35 : 1.05;
            assertEquals(printed.magnitude(), computed.abs(), digit, sheet + " " + place);
            assertEquals(printed.degrees(), computed.degrees(), 0.1, sheet + " " + place + " angle");
            rows++;
        }
        assertTrue(rows >= 14, connection + ": rows compared " + rows);
    }

    /** A magnitude and an angle, not a phasor's parts. */
    private record Polar(double magnitude, double degrees) {}

    private static Complex quantity(Feeder feeder, FlowSolution solution, Csv.Row row) {
        String quantity = row.text("quantity");
        int k = "123abc".indexOf(quantity.charAt(1)) % 3;
        return switch (row.text("location")) {
            case "Node-2" -> feeder.voltage(solution, feeder.two, feeder.primaryWye, k);
            case "Node-3" -> feeder.voltage(solution, feeder.three, feeder.secondaryWye, k);
            case "Node-4" -> feeder.voltage(solution, feeder.four, feeder.secondaryWye, k);
            case "Current 1-2" -> solution.current(feeder.primaryLine, k);
            case "Current 3-4" -> solution.current(feeder.secondaryLine, k);
            // "Node 2", without the dash: the ungrounded neutral.
            default -> neutralVoltage(feeder, solution, quantity);
        };
    }

    private static Complex neutralVoltage(Feeder feeder, FlowSolution solution, String quantity) {
        int neutral = feeder.model.terminals().indexOf("2.N");
        return quantity.equals("Vng")
                ? solution.voltage(neutral)
                : solution.voltageBetween(feeder.two["abc".indexOf(quantity.charAt(1))], neutral);
    }
}
