package org.keeplit.plain;

import java.util.ArrayDeque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.keeplit.network.Conductor;
import org.keeplit.network.Connection;
import org.keeplit.network.Element;
import org.keeplit.network.Network;

/** Nominal voltages, line to line: the system's, and the low voltage behind a transformer. */
final class PlainNominal {
    private static final double USUAL = 12_470;

    private final Map<String, Double> known = new HashMap<>();
    private final double system;
    private final Network network;

    PlainNominal(Network network) {
        this.network = network;
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

    /** {@return whether a walk from a node, not through transformers, meets what holds the system to ground} */
    boolean grounds(String node) {
        Set<String> met = new HashSet<>(Set.of(node));
        ArrayDeque<String> open = new ArrayDeque<>(met);
        while (!open.isEmpty()) {
            String here = open.poll();
            if (network.all(Element.Source.class).anyMatch(s -> s.node().equals(here))) {
                return true;
            }
            for (Element.Branch branch : network.all(Element.Branch.class).toList()) {
                boolean high = branch.from().equals(here);
                if (!high && !branch.to().equals(here)) {
                    continue;
                }
                if (branch instanceof Element.Transformer t) {
                    Connection own = high ? t.primary() : t.secondary();
                    Connection other = high ? t.secondary() : t.primary();
                    if (own == Connection.GROUNDED_WYE && other != Connection.WYE) {
                        return true;
                    }
                } else {
                    String there = high ? branch.to() : branch.from();
                    if (met.add(there)) {
                        open.add(there);
                    }
                }
            }
        }
        return false;
    }
}
