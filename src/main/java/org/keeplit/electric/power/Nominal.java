package org.keeplit.electric.power;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.keeplit.network.Conductor;
import org.keeplit.network.Connection;
import org.keeplit.network.Element;
import org.keeplit.network.Network;

/**
 * The nominal voltage of every node: the system's, and behind transformers their low voltage; and whether its system is
 * grounded: by a source, or by a grounded wye whose bank has no ungrounded wye on the other side.
 */
public final class Nominal {
    /** Line to line, when a network does not say: the commonest class in the open test feeders. */
    private static final double USUAL = 12_470;

    private final Map<String, Double> volts = new HashMap<>();
    private final Set<String> grounded = new HashSet<>();

    /** Works them out. @param network the network */
    public Nominal(Network network) {
        double system = network.system().containsKey("voltage")
                ? network.system().get("voltage").si()
                : USUAL;
        boolean changed = true;
        network.all(Element.Transformer.class)
                .filter(t -> t.figures().containsKey("low voltage"))
                .forEach(t -> volts.put(t.to(), t.figures().get("low voltage").si()));
        network.all(Element.Source.class).forEach(source -> grounded.add(source.node()));
        network.all(Element.Transformer.class).forEach(this::grounds);
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

    /** Without a path for it on the other side, the star point of a winding carries no current to ground. */
    private void grounds(Element.Transformer bank) {
        if (bank.primary() == Connection.GROUNDED_WYE && bank.secondary() != Connection.WYE) {
            grounded.add(bank.from());
        }
        if (bank.secondary() == Connection.GROUNDED_WYE && bank.primary() != Connection.WYE) {
            grounded.add(bank.to());
        }
    }

    private boolean spread(String from, String to) {
        boolean more = grounded.contains(from) && grounded.add(to);
        return more | (volts.containsKey(from) && volts.putIfAbsent(to, volts.get(from)) == null);
    }

    /** {@return whether the system of a node is grounded, every contact taken as closed} @param node the node */
    boolean grounded(String node) {
        return grounded.contains(node);
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
