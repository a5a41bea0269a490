package org.keeplit.gridfile;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;
import org.keeplit.network.Conductor;

/** What a line section is per length, as attributes of a network text. Ohm and siemens per metre inside. */
final class Impedances {
    /**
     * What was made of it.
     *
     * @param kind the kind of line
     * @param attributes its impedance
     * @param ampacity the least that its wires carry for good, in amperes; 0 if they do not say
     */
    record Made(String kind, List<String> attributes, double ampacity) {}

    private final Work work;
    private final CimModel model;
    private final WireConstants wires;
    /** What many segments share is worked out once. */
    private final Map<String, Made> known = new HashMap<>();

    Impedances(Work work, double hertz) {
        this.work = work;
        this.model = work.model();
        this.wires = new WireConstants(work, hertz);
    }

    /** {@return of a segment} @param parts its ACLineSegmentPhases @param phases the conductors in their order @param length in metres */
    Made of(CimObject segment, List<CimObject> parts, List<Conductor> phases, double length) {
        Optional<CimObject> perLength = model.follow(segment, "PerLengthImpedance");
        if (perLength.isPresent()) {
            CimObject one = perLength.get();
            String key = one.id() + phases;
            Made made = known.get(key);
            if (made == null) {
                made = one.type().equals("PerLengthSequenceImpedance") ? sequence(one, phases, 1, "ch") : matrix(one, phases);
                known.put(key, made);
            }
            return made;
        }
        Optional<CimObject> spacing = wires.spacing(segment);
        if (spacing.isPresent()) {
            String key = wires.key(spacing.get(), parts, phases);
            Made made = known.get(key);
            if (made == null) {
                made = strung(segment, spacing.get(), parts, phases);
                known.put(key, made);
            }
            return made;
        }
        if (model.says(segment, "x") || model.says(segment, "r")) {
            return sequence(segment, phases, length, "ch");
        }
        model.mark("missing-figure", segment, segment + " states no impedance", "it needs r and x, a PerLengthImpedance, or a spacing and the wires that hang there");
        return new Made(work.kind("ACLineSegment", "line"), List.of(), 0);
    }

    /** Of sequence figures: positive and zero. @param length by which whole figures are divided */
    private Made sequence(CimObject one, List<Conductor> phases, double length, String charging) {
        work.ledger().part(one);
        List<String> all = new ArrayList<>();
        double r = model.number(one, "r", 0) / length;
        double x = model.number(one, "x", 0) / length;
        all.add("resistance " + perKm(r));
        all.add("reactance " + perKm(x));
        if (model.says(one, "r0") && model.says(one, "x0") && phases.stream().noneMatch(Conductor::isLeg)) {
            all.add("zero resistance " + perKm(model.number(one, "r0", 0) / length));
            all.add("zero reactance " + perKm(model.number(one, "x0", 0) / length));
        }
        double b = model.number(one, "b" + charging, 0) / length;
        if (b > 0) {
            all.add("susceptance " + Work.number(b * 1e9) + " uS per km");
        }
        return new Made(work.kind("ACLineSegment", "line"), all, 0);
    }

    private Made matrix(CimObject one, List<Conductor> phases) {
        work.ledger().part(one);
        int n = phases.size();
        Complex[][] z = new Complex[n][n];
        double[][] b = new double[n][n];
        for (CimObject entry : model.pointing(one, "PhaseImpedanceData", "PhaseImpedance")) {
            work.ledger().part(entry);
            int row = (int) model.number(entry, "row", 0) - 1;
            int column = (int) model.number(entry, "column", 0) - 1;
            if (row < 0 || column < 0 || row >= n || column >= n) {
                model.mark("bad-figure", entry, entry + " of " + one + " is in row " + (row + 1) + ", column " + (column + 1)
                        + ", and lines of " + n + " conductors use it", "each line has as many ACLineSegmentPhases as its matrix has rows");
                continue;
            }
            z[row][column] = z[column][row] = new Complex(model.number(entry, "r", 0), model.number(entry, "x", 0));
            b[row][column] = b[column][row] = model.number(entry, "b", 0);
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                if (z[i][j] == null) {
                    model.mark("missing-figure", one, one + " has no PhaseImpedanceData for row " + (i + 1) + " and column " + (j + 1),
                            "lines of " + n + " conductors use it");
                    return new Made(work.kind("ACLineSegment", "line"), List.of(), 0);
                }
            }
        }
        return new Made(work.kind("ACLineSegment", "line"),
                attributes(one, phases, ComplexMatrix.of(n, n, (i, j) -> z[i][j]), ComplexMatrix.of(n, n, (i, j) -> new Complex(0, b[i][j]))), 0);
    }

    private Made strung(CimObject segment, CimObject spacing, List<CimObject> parts, List<Conductor> phases) {
        Optional<WireConstants.Strung> strung = wires.of(segment, spacing, parts, phases);
        if (strung.isEmpty()) {
            return new Made(work.kind("ACLineSegment", "line"), List.of(), 0);
        }
        WireConstants.Strung s = strung.get();
        List<Conductor> live = phases.stream().filter(p -> p != Conductor.N).toList();
        return new Made(s.cable() ? work.kind("cable", "cable") : work.kind("ACLineSegment", "line"),
                attributes(segment, live, s.impedance(), s.shunt()), s.ampacity());
    }

    /** {@return a matrix as attributes} @param z ohm per metre @param y siemens per metre; both in the order of the conductors */
    private List<String> attributes(CimObject at, List<Conductor> conductors, ComplexMatrix z, ComplexMatrix y) {
        int[] stay = IntStream.range(0, conductors.size()).filter(i -> conductors.get(i) != Conductor.N).toArray();
        int[] go = IntStream.range(0, conductors.size()).filter(i -> conductors.get(i) == Conductor.N).toArray();
        ComplexMatrix kept = z.pick(stay, stay);
        if (go.length > 0) {
            work.ledger().note(at, "its neutral is taken as grounded all along (Kron reduction), since a network text has no neutral wire of its own");
            kept = kept.plus(z.pick(stay, go).times(z.pick(go, go).solve(z.pick(go, stay))).times(-1));
        }
        ComplexMatrix shunt = y.pick(stay, stay);
        List<Conductor> live = conductors.stream().filter(p -> p != Conductor.N).toList();
        List<String> all = new ArrayList<>();
        if (live.stream().anyMatch(Conductor::isLeg)) {
            legs(at, live, kept, all);
            return all;
        }
        for (int i = 0; i < live.size(); i++) {
            for (int j = i; j < live.size(); j++) {
                Complex entry = kept.at(i, j);
                all.add("impedance " + pair(live.get(i), live.get(j)) + " " + Work.number(entry.re() * 1000) + " " + Work.number(entry.im() * 1000) + " ohm per km");
            }
        }
        if (anyOf(shunt)) {
            for (int i = 0; i < live.size(); i++) {
                for (int j = i; j < live.size(); j++) {
                    all.add("susceptance " + pair(live.get(i), live.get(j)) + " " + Work.number(shunt.im(i, j) * 1e9) + " uS per km");
                }
            }
        }
        return all;
    }

    /** Legs have no matrix in a network text: each has what a current out on one and back on the other finds. */
    private void legs(CimObject at, List<Conductor> live, ComplexMatrix z, List<String> all) {
        Complex each = live.size() < 2 ? z.at(0, 0) : z.at(0, 0).plus(z.at(1, 1)).times(0.5).minus(z.at(0, 1));
        if (live.size() > 1) {
            work.ledger().note(at, "its matrix becomes one figure for each leg, that of a current out on one and back on the other");
        }
        all.add("resistance " + perKm(each.re()));
        all.add("reactance " + perKm(each.im()));
    }

    private static boolean anyOf(ComplexMatrix shunt) {
        for (int i = 0; i < shunt.rows(); i++) {
            if (shunt.im(i, i) != 0) {
                return true;
            }
        }
        return false;
    }

    private static String pair(Conductor one, Conductor other) {
        return one.compareTo(other) <= 0 ? "" + one + other : "" + other + one;
    }

    private static String perKm(double perMetre) {
        return Work.number(perMetre * 1000) + " ohm per km";
    }
}
