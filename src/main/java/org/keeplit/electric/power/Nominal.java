package org.keeplit.electric.power;

import java.util.HashMap;
import java.util.Map;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Network;

/** The nominal voltage of every node: the system's, and behind transformers their low voltage. */
public final class Nominal {
    /** Line to line, when a network does not say: the commonest class in the open test feeders. */
    private static final double USUAL = 12_470;

    private final Map<String, Double> volts = new HashMap<>();

    /** Works them out. @param network the network */
    public Nominal(Network network) {
        double system = network.system().containsKey("voltage")
                ? network.system().get("voltage").si()
                : USUAL;
        boolean changed = true;
        network.all(Element.Transformer.class)
                .filter(t -> t.figures().containsKey("low voltage"))
                .forEach(t -> volts.put(t.to(), t.figures().get("low voltage").si()));
        while (changed) {
            changed = false;
            for (Element element : network.elements()) {
                if (element instanceof Element.Branch branch && !(element instanceof Element.Transformer)) {
                    changed |= spread(branch.from(), branch.to()) | spread(branch.to(), branch.from());
                }
            }
        }
        network.nodes().keySet().forEach(node -> volts.putIfAbsent(node, system));
    }

    private boolean spread(String from, String to) {
        return volts.containsKey(from) && volts.putIfAbsent(to, volts.get(from)) == null;
    }

    /** {@return the nominal voltage to ground of a conductor, in volt} @param node its node @param conductor a phase or a leg */
    public double toGround(String node, Conductor conductor) {
        return lineToLine(node) / (conductor.isLeg() ? 2 : Math.sqrt(3));
    }

    /** {@return the nominal voltage of a node, line to line, leg to leg, in volt} @param node the node */
    public double lineToLine(String node) {
        return volts.get(node);
    }
}
