package org.keeplit.plain;

import java.util.HashMap;
import java.util.Map;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Network;

/** Nominal voltages, line to line: the system's, and the low voltage behind a transformer. */
final class PlainNominal {
    private static final double USUAL = 12_470;

    private final Map<String, Double> known = new HashMap<>();
    private final double system;

    PlainNominal(Network network) {
        this.system = network.system().containsKey("voltage")
                ? network.system().get("voltage").si()
                : USUAL;
        network.all(Element.Transformer.class).forEach(t -> {
            if (t.figures().containsKey("low voltage")) {
                known.put(t.to(), t.figures().get("low voltage").si());
            }
        });
        // What is not a transformer has one voltage on both its sides.
        int before;
        do {
            before = known.size();
            network.all(Element.Branch.class)
                    .filter(b -> !(b instanceof Element.Transformer))
                    .forEach(b -> {
                        if (known.containsKey(b.from())) {
                            known.putIfAbsent(b.to(), known.get(b.from()));
                        } else if (known.containsKey(b.to())) {
                            known.put(b.from(), known.get(b.to()));
                        }
                    });
        } while (known.size() > before);
    }

    double toGround(String node, Conductor conductor) {
        // Each leg has half of what is from leg to leg.
        return conductor == Conductor.X1 || conductor == Conductor.X3 ? at(node) / 2 : at(node) / Math.sqrt(3);
    }

    double at(String node) {
        return known.getOrDefault(node, system);
    }
}
