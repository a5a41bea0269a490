package org.keeplit.electric.flow;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

/** What makes a model impossible to compute, collected as sentences that name the element. */
final class ModelChecks {
    /** Published matrices are rounded; beyond this part of the largest entry it is no rounding. */
    private static final double SYMMETRY = 1e-3;

    private static final double SMALLEST = FlowModelBuilder.SMALLEST_IMPEDANCE;

    private final List<String> problems = new ArrayList<>();

    /** Notes a problem unless the condition holds; gives the condition. */
    boolean require(boolean condition, String sentence, Object... values) {
        if (!condition) {
            problems.add(String.format(Locale.ROOT, sentence, values));
        }
        return condition;
    }

    void throwIfAny() {
        if (!problems.isEmpty()) {
            throw new FlowModelException(problems);
        }
    }

    boolean symmetric(String kind, String name, String what, ComplexMatrix matrix) {
        return require(matrix.isFinite(), "%s \"%s\" has %s that is no number.", kind, name, what)
                && require(
                        matrix.isSymmetric(SYMMETRY),
                        "%s \"%s\" has %s that differs between two conductors taken either way round.",
                        kind, name, what);
    }

    boolean impedance(String kind, String name, ComplexMatrix matrix) {
        if (!symmetric(kind, name, "an impedance", matrix)) {
            return false;
        }
        boolean good = true;
        for (int k = 0; k < matrix.rows(); k++) {
            good &= require(
                    matrix.at(k, k).abs() >= SMALLEST,
                    "%s \"%s\" has no impedance on conductor %s.", kind, name, k + 1);
        }
        return good && require(isInvertible(matrix), "%s \"%s\" has a singular impedance matrix.", kind, name);
    }

    private static boolean isInvertible(ComplexMatrix matrix) {
        try {
            return matrix.inverse().isFinite();
        } catch (ArithmeticException singular) {
            return false;
        }
    }

    boolean branch(String kind, String name, int from, int to, Complex impedance) {
        return require(impedance.isFinite(), "%s \"%s\" has an impedance that is no number.", kind, name)
                && require(impedance.abs() >= SMALLEST, "%s \"%s\" has no impedance.", kind, name)
                        & distinct(kind, name, from, to);
    }

    boolean distinct(String kind, String name, int from, int to) {
        return require(from != to, "%s \"%s\" begins and ends at the same terminal.", kind, name);
    }

    boolean load(String name, double ratedVolts, double lowestVoltage, LoadPower[] powers, int cases) {
        boolean good = require(
                        powers.length == cases,
                        "Load \"%s\" has %s powers for %s load cases.", name, powers.length, cases)
                & require(
                        ratedVolts > 0 && Double.isFinite(ratedVolts),
                        "Load \"%s\" has the rated voltage %s.", name, ratedVolts)
                & require(
                        lowestVoltage > 0 && lowestVoltage <= 1,
                        "Load \"%s\" is to keep its power down to %s of its rated voltage; it must be a part"
                                + " above 0.",
                        name, lowestVoltage);
        for (LoadPower power : powers) {
            good &= require(power.isFinite(), "Load \"%s\" has a power that is no number.", name);
        }
        return good;
    }

    boolean windings(String name, Winding[] windings) {
        boolean good = require(
                windings.length >= 2, "Transformer \"%s\" has %s winding, and needs two.", name, windings.length);
        for (int k = 0; k < windings.length; k++) {
            Winding w = windings[k];
            good &= require(
                    w.ratedVolts() > 0 && Double.isFinite(w.ratedVolts()),
                    "Winding %s of transformer \"%s\" has the rated voltage %s.", k + 1, name, w.ratedVolts());
            good &= require(
                    w.leakage().isFinite() && w.leakage().abs() >= SMALLEST,
                    "Winding %s of transformer \"%s\" has no leakage impedance.", k + 1, name);
            good &= require(
                    w.from() != w.to(),
                    "Winding %s of transformer \"%s\" is not connected: both its ends are the same terminal.",
                    k + 1, name);
        }
        return good;
    }

    /** Terminals that nothing uses, and regulators that hang on nothing. */
    void connections(List<Element> elements, List<String> terminals) {
        if (elements.contains(null)) {
            return;
        }
        int[] uses = new int[terminals.size()];
        for (Element element : elements) {
            distinctTerminals(element).forEach(t -> uses[t]++);
        }
        for (int t = 0; t < uses.length; t++) {
            require(uses[t] > 0, "Terminal \"%s\" belongs to no element.", terminals.get(t));
        }
        for (Element element : elements) {
            if (element instanceof Regulator) {
                for (int side = 0; side < 2; side++) {
                    int t = element.terminal(side);
                    require(
                            t == FlowModel.GROUND || uses[t] > 1,
                            "Regulator \"%s\" is isolated: nothing else is connected to its %s terminal \"%s\".",
                            element.name(), side == 0 ? "source" : "load", t < 0 ? "" : terminals.get(t));
                }
            }
        }
        require(
                elements.stream().anyMatch(Source.class::isInstance),
                "The model has no source, so that everything in it is dead.");
    }

    private static Set<Integer> distinctTerminals(Element element) {
        Set<Integer> distinct = new LinkedHashSet<>();
        for (int p = 0; p < element.positions(); p++) {
            if (element.terminal(p) != FlowModel.GROUND) {
                distinct.add(element.terminal(p));
            }
        }
        return distinct;
    }
}
