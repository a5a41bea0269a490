package org.keeplit.electric.power;

import static org.keeplit.electric.power.Assembly.SQRT3;
import static org.keeplit.electric.power.Assembly.figure;
import static org.keeplit.electric.power.Assembly.need;

import java.util.Map;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.flow.CentreTapped;
import org.keeplit.electric.flow.FlowModel;
import org.keeplit.electric.flow.Winding;
import org.keeplit.network.Conductor;
import org.keeplit.network.Connection;
import org.keeplit.network.Element;
import org.keeplit.network.Phases;
import org.keeplit.program.Vertex;
import org.keeplit.unit.Quantity;

/** Adds transformers to a model, unit by unit. */
final class Banks {
    /** When a transformer states no ratio of reactance to resistance. */
    private static final double USUAL_TRANSFORMER_RATIO = 5;

    private final Assembly assembly;

    Banks(Assembly assembly) {
        this.assembly = assembly;
    }

    void add(Element.Transformer transformer) {
        double kva = need(transformer, "rating") / 1000;
        double low = need(transformer, "low voltage");
        double high = assembly.nominal.lineToLine(transformer.from());
        Complex perUnit = leakage(transformer);
        double unit = kva * 1000 / transformer.windings().size();
        if (transformer.centreTapped()) {
            centreTapped(transformer, high, low, perUnit);
            return;
        }
        Clock clock = Clock.of(transformer);
        for (Conductor start : transformer.windings()) {
            assembly.builder.transformer(
                    transformer.name() + " from phase " + start,
                    winding(transformer, true, clock.primary(start), high, perUnit, unit),
                    winding(transformer, false, clock.secondary(start), low, perUnit, unit));
        }
    }

    /** {@return the leakage impedance in parts of the rating's base: as stated in parts, or from its magnitude} */
    private static Complex leakage(Element.Transformer transformer) {
        Map<String, Quantity> figures = transformer.figures();
        if (figures.containsKey("reactance") && figures.containsKey("resistance")) {
            return new Complex(need(transformer, "resistance"), need(transformer, "reactance"));
        }
        double whole = need(transformer, "impedance");
        double usual = figures.containsKey("reactance")
                ? Math.sqrt(Math.max(0, whole * whole - Math.pow(need(transformer, "reactance"), 2)))
                : whole / Math.hypot(1, figure(figures, "reactance ratio", USUAL_TRANSFORMER_RATIO));
        double resistance = figure(figures, "resistance", usual);
        return new Complex(resistance, Math.sqrt(Math.max(0, whole * whole - resistance * resistance)));
    }

    private void centreTapped(Element.Transformer transformer, double high, double low, Complex perUnit) {
        int[] primary =
                transformer.ends().stream().mapToInt(p -> assembly.at(transformer.from(), p)).toArray();
        int[] legs = assembly.at(transformer.to(), Phases.LEGS);
        CentreTapped.add(
                assembly.builder,
                transformer.name(),
                primary.length == 2 ? primary : new int[] {primary[0], FlowModel.GROUND},
                new int[] {legs[0], FlowModel.GROUND, legs[1]},
                primary.length == 2 ? high : high / SQRT3,
                low / 2,
                need(transformer, "rating") / 1000,
                perUnit);
    }

    /** One unit's winding on one side, with half of the unit's impedance. @param ends its phases; null for the neutral */
    private Winding winding(
            Element.Transformer transformer,
            boolean primary,
            Conductor[] ends,
            double lineToLine,
            Complex perUnit,
            double voltAmperes) {
        Connection connection = primary ? transformer.primary() : transformer.secondary();
        String node = primary ? transformer.from() : transformer.to();
        String star = transformer.name() + (primary ? " primary neutral" : " secondary neutral");
        double volts = connection == Connection.DELTA ? lineToLine : lineToLine / SQRT3;
        int[] at = new int[2];
        for (int i = 0; i < 2; i++) {
            if (ends[i] != null && assembly.grid.number(new Vertex.AtNode(node, ends[i])).isEmpty()) {
                throw new PowerException(transformer.kind().name() + " " + transformer.name() + " has a winding to phase "
                        + ends[i] + " of " + node + ", which has no such phase; one unit between two phases is written single-phase");
            }
            at[i] = ends[i] != null
                    ? assembly.at(node, ends[i])
                    : connection == Connection.WYE ? assembly.builder.terminal(star) : FlowModel.GROUND;
        }
        return new Winding(at[0], at[1], volts, perUnit.times(0.5 * volts * volts / voltAmperes));
    }
}
