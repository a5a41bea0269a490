package org.keeplit.electric.flow;

import static org.keeplit.electric.flow.FlowModel.GROUND;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

/** Builds the 13-node and the 34-node feeder from their data sheets. */
final class IeeeFeeder {
    private static final double FEET_A_MILE = 5280;
    private static final List<String> PAIRS = List.of("AB", "BC", "CA");

    final FlowModel model;
    /** Element index by name. */
    final Map<String, Integer> element = new HashMap<>();
    private final String folder;
    private final FlowModelBuilder builder = FlowModel.builder();
    private final Map<String, ComplexMatrix> impedance = new HashMap<>();
    private final Map<String, ComplexMatrix> shunt = new HashMap<>();
    private final Map<String, String> phases = new HashMap<>();
    private final Map<String, Double> lineToLine = new HashMap<>();

    /**
     * Reads and builds.
     *
     * @param folder "ieee13" or "ieee34"
     * @param sourceNode where the source stands
     * @param sourceVolts line to ground
     * @param sourceImpedance 3 by 3
     * @param shunts whether capacitor banks and line charging are there
     */
    private IeeeFeeder(
            String folder,
            String sourceNode,
            double sourceVolts,
            ComplexMatrix sourceImpedance,
            boolean shunts) {
        this.folder = folder;
        builder.source("source", builder.terminals(sourceNode, "ABC"), GROUND,
                SourceImpedance.balanced(sourceVolts, 0), sourceImpedance);
        readConfigurations(shunts);
        addRegulators();
        addLines();
        addSpotLoads();
        if (shunts) {
            addCapacitors();
        }
        model = builder.build();
        for (int e = 0; e < model.elements().size(); e++) {
            element.put(model.elements().get(e).name(), e);
        }
    }

    static IeeeFeeder thirteen() {
        return new IeeeFeeder("ieee13", "650", 4160 / Math.sqrt(3), ideal(), true);
    }

    static IeeeFeeder thirtyFour() {
        return new IeeeFeeder("ieee34", "800", 1.05 * 24900 / Math.sqrt(3), ideal(), true);
    }

    static IeeeFeeder thirteenWithoutShunts(ComplexMatrix sourceImpedance) {
        return new IeeeFeeder("ieee13", "650", 4160 / Math.sqrt(3), sourceImpedance, false);
    }

    static IeeeFeeder thirtyFourWithoutShunts(ComplexMatrix sourceImpedance) {
        return new IeeeFeeder("ieee34", "800", 24900 / Math.sqrt(3), sourceImpedance, false);
    }

    private static ComplexMatrix ideal() {
        return SourceImpedance.ofSequences(new Complex(0, 1e-6), new Complex(0, 1e-6));
    }

    int terminal(String node, String phase) {
        return model.terminals().indexOf(node + "." + phase);
    }

    double nominal(String node) {
        return volts(node) / Math.sqrt(3);
    }

    private double volts(String node) {
        return lineToLine.getOrDefault(node, folder.equals("ieee13") ? 4160.0 : 24900.0);
    }

    private void readConfigurations(boolean shunts) {
        Map<String, Complex[][]> z = new HashMap<>();
        Map<String, Complex[][]> y = new HashMap<>();
        for (Csv.Row row : Csv.read(folder + "/impedances.csv")) {
            String config = row.text("config");
            int i = row.text("element").charAt(0) - 'A';
            int j = row.text("element").charAt(1) - 'A';
            Complex ohms = new Complex(row.number("r_ohm_per_mile"), row.number("x_ohm_per_mile"));
            Complex siemens = new Complex(0, shunts ? row.number("b_microS_per_mile") * 1e-6 : 0);
            for (int turn = 0; turn < 2; turn++) {
                z.computeIfAbsent(config, key -> new Complex[3][3])[turn == 0 ? i : j][turn == 0 ? j : i] = ohms;
                y.computeIfAbsent(config, key -> new Complex[3][3])[turn == 0 ? i : j][turn == 0 ? j : i] = siemens;
            }
        }
        for (String config : z.keySet()) {
            int[] present = java.util.stream.IntStream.range(0, 3)
                    .filter(k -> !z.get(config)[k][k].isZero()).toArray();
            StringBuilder letters = new StringBuilder();
            for (int k : present) {
                letters.append((char) ('A' + k));
            }
            int n = present.length;
            phases.put(config, letters.toString());
            impedance.put(config, ComplexMatrix.of(n, n, (a, b) -> z.get(config)[present[a]][present[b]]));
            shunt.put(config, ComplexMatrix.of(n, n, (a, b) -> y.get(config)[present[a]][present[b]]));
        }
    }

    /** Each regulator stands between its node and a node of its own, as in the printed results. */
    private void addRegulators() {
        for (Csv.Row row : Csv.read(folder + "/published_regulator_taps.csv")) {
            String phase = row.text("phase");
            builder.regulator(row.text("regulator") + "." + phase,
                    builder.terminal(row.text("from_node") + "." + phase),
                    builder.terminal(row.text("regulator") + "." + phase), GROUND,
                    // The printed ratios are 1 + 0.00625 tap.
                    RegulatorKind.TYPE_A, new Complex(0, 1e-6), (int) row.number("tap"));
        }
    }

    /** The node that a line from this node to that one really starts at: behind the regulator. */
    private String start(String from, String to) {
        return Csv.read(folder + "/published_regulator_taps.csv").stream()
                .filter(row -> row.text("from_node").equals(from) && row.text("to_node").equals(to))
                .map(row -> row.text("regulator")).findFirst().orElse(from);
    }

    private void addLines() {
        for (Csv.Row row : Csv.read(folder + "/lines.csv")) {
            String from = row.text("from");
            String to = row.text("to");
            String name = from + "-" + to;
            String config = row.text("config");
            if (config.equals("XFM-1")) {
                addTransformer(from, to);
            } else if (config.equals("Switch")) {
                for (String phase : List.of("A", "B", "C")) {
                    // The printed loss of 0.008 kW at 299 A is about a tenth of a milliohm.
                    builder.contact(name + "." + phase, builder.terminal(from + "." + phase),
                            builder.terminal(to + "." + phase), new Complex(9e-5, 0), true);
                }
            } else {
                addSection(name, start(from, to), to, config, row.number("length_ft") / FEET_A_MILE);
            }
        }
    }

    private void addSection(String name, String from, String to, String config, double miles) {
        String letters = phases.get(config);
        int[] sending = builder.terminals(from, letters);
        int[] receiving = builder.terminals(to, letters);
        List<Csv.Row> loads = Csv.read(folder + "/distributed_loads.csv").stream()
                .filter(row -> (row.text("from") + "-" + row.text("to")).equals(name)).toList();
        if (loads.isEmpty()) {
            builder.line(name, sending, receiving, impedance.get(config), shunt.get(config), miles);
            return;
        }
        int[] quarter = builder.terminals(name, letters);
        DistributedLoad.section(
                builder, name, sending, quarter, receiving, impedance.get(config), shunt.get(config), miles);
        addLoad(loads.get(0), name, volts(to), DistributedLoad.AT_QUARTER, name + " quarter");
        addLoad(loads.get(0), to, volts(to), DistributedLoad.AT_END, name + " end");
    }

    private void addTransformer(String from, String to) {
        Csv.Row row = Csv.read(folder + "/transformers.csv").get(1);
        double high = Double.parseDouble(row.text("kv_high").split(" ")[0]) * 1000;
        double low = Double.parseDouble(row.text("kv_low").split(" ")[0]) * 1000;
        lineToLine.put(to, low);
        if (folder.equals("ieee34")) {
            lineToLine.put("890", low);
        }
        TransformerBank.add(builder, from + "-" + to,
                new TransformerBank.Side(builder.terminals(from, "ABC"), GROUND, WindingConnection.WYE, high),
                new TransformerBank.Side(builder.terminals(to, "ABC"), GROUND, WindingConnection.WYE, low),
                row.number("kva"), new Complex(row.number("r_pct") / 100, row.number("x_pct") / 100));
    }

    private void addSpotLoads() {
        for (Csv.Row row : Csv.read(folder + "/spot_loads.csv")) {
            addLoad(row, row.text("node"), volts(row.text("node")), 1, row.text("node"));
        }
    }

    private void addLoad(Csv.Row row, String node, double lineVolts, double part, String name) {
        boolean delta = row.text("model").startsWith("D");
        for (int k = 0; k < 3; k++) {
            Complex power = new Complex(row.number("ph" + (k + 1) + "_kw"), row.number("ph" + (k + 1) + "_kvar"))
                    .times(1000 * part);
            if (power.isZero()) {
                continue;
            }
            String pair = delta ? PAIRS.get(k) : String.valueOf((char) ('A' + k));
            LoadPower load = switch (row.text("model").substring(2)) {
                case "PQ" -> LoadPower.constantPower(power);
                case "I" -> LoadPower.constantCurrent(power);
                default -> LoadPower.constantImpedance(power);
            };
            builder.load("load " + name + "." + pair, builder.terminal(node + "." + pair.charAt(0)),
                    delta ? builder.terminal(node + "." + pair.charAt(1)) : GROUND,
                    delta ? lineVolts : lineVolts / Math.sqrt(3), load);
        }
    }

    private void addCapacitors() {
        for (Csv.Row row : Csv.read(folder + "/capacitors.csv")) {
            for (String phase : List.of("a", "b", "c")) {
                double vars = 1000 * row.number(phase + "_kvar");
                if (vars > 0) {
                    String letter = phase.toUpperCase(java.util.Locale.ROOT);
                    builder.capacitor("capacitor " + row.text("node") + "." + letter,
                            builder.terminal(row.text("node") + "." + letter), GROUND,
                            volts(row.text("node")) / Math.sqrt(3), vars);
                }
            }
        }
    }
}
