package org.keeplit.electric.flow;

import org.keeplit.electric.complex.Complex;

/** Finds, in a solved feeder, the current that a row of the printed tables speaks of. */
final class PublishedCurrents {
    private final IeeeFeeder feeder;
    private final Phasors solved;

    PublishedCurrents(IeeeFeeder feeder, Phasors solved) {
        this.feeder = feeder;
        this.solved = solved;
    }

    /** The current towards the other node: away from this node for TO, arriving here for FROM. */
    Complex at(Csv.Row row) {
        boolean leaving = row.text("end").equals("TO");
        String here = row.text("at_node");
        String there = row.text("other_node");
        String phase = row.text("phase");
        String from = leaving ? here : there;
        String to = leaving ? there : here;
        if (to.startsWith("RG")) {
            return end(to + "." + phase, feeder.terminal(leaving ? from : to, phase), leaving);
        }
        if (from.startsWith("RG")) {
            from = to.equals("632") ? "650" : to.equals("850") ? "814" : "852";
        }
        // The printed tables put a node of no length behind the transformer.
        if (to.startsWith("XF")) {
            to = to.equals("XF10") ? "888" : "634";
            here = leaving ? here : to;
        } else if (from.startsWith("XF")) {
            from = from.equals("XF10") ? "832" : "633";
            return end(from + "-" + to + "." + (phase.charAt(0) - 'A' + 1), feeder.terminal(to, phase), false);
        }
        String name = from + "-" + to;
        int terminal = feeder.terminal(here, phase);
        if (feeder.element.containsKey(name + ".1")) {
            return end(name + "." + (phase.charAt(0) - 'A' + 1), terminal, leaving);
        }
        if (feeder.element.containsKey(name + "." + phase)) {
            return end(name + "." + phase, terminal, leaving);
        }
        if (!leaving && feeder.element.containsKey(name + ".rest")) {
            return end(name + ".rest", terminal, false).minus(loadAtEnd(name, to, phase));
        }
        return end(name, terminal, leaving);
    }

    private Complex end(String element, int terminal, boolean leaving) {
        int index = feeder.element.get(element);
        Element e = feeder.model.elements().get(index);
        for (int p = 0; p < e.positions(); p++) {
            if (e.terminal(p) == terminal) {
                Complex into = solved.current(index, p);
                return leaving ? into : into.negate();
            }
        }
        throw new IllegalArgumentException(element + " has no such end");
    }

    /** The tables count the lumped load at the far end as part of the section. */
    private Complex loadAtEnd(String name, String node, String phase) {
        int terminal = feeder.terminal(node, phase);
        Complex sum = Complex.ZERO;
        for (int e = 0; e < feeder.model.elements().size(); e++) {
            Element element = feeder.model.elements().get(e);
            for (int p = 0; element.name().startsWith("load " + name + " end.") && p < 2; p++) {
                if (element.terminal(p) == terminal) {
                    sum = sum.plus(solved.current(e, p));
                }
            }
        }
        return sum;
    }
}
