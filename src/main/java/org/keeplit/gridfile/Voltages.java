package org.keeplit.gridfile;

import java.util.HashMap;
import java.util.Map;

/** Nominal voltages: that of the sources for the whole network, and what equipment says of its own. */
final class Voltages {
    private final CimModel model;
    private final Map<CimObject, Double> atNode = new HashMap<>();
    private final double system;

    Voltages(Work work) {
        this.model = work.model();
        double first = 0;
        for (CimObject source : model.all("EnergySource")) {
            double volts = model.number(source, "nominalVoltage", 0);
            if (first == 0) {
                first = volts;
            } else if (volts != first) {
                work.ledger().note(source, "its nominal voltage, " + Work.number(volts) + " V, is not that of the first source, and a network text has one: lines and"
                        + " devices near it are taken at " + Work.number(first) + " V");
            }
        }
        system = first > 0 ? first : 12_470;
        // Whatever hangs at a node tells the node's voltage.
        for (CimObject terminal : model.all("Terminal")) {
            model.follow(terminal, "ConnectivityNode").ifPresent(node -> model.follow(terminal, "ConductingEquipment")
                    .ifPresent(equipment -> base(equipment).ifPresent(v -> atNode.putIfAbsent(node, v))));
        }
        for (String type : new String[] {"TransformerTankEnd", "PowerTransformerEnd"}) {
            for (CimObject end : model.all(type)) {
                model.follow(end, "Terminal").flatMap(t -> model.follow(t, "ConnectivityNode"))
                        .ifPresent(node -> base(end).ifPresent(v -> atNode.put(node, v)));
            }
        }
    }

    private java.util.Optional<Double> base(CimObject object) {
        return model.follow(object, "BaseVoltage").map(b -> {
            double volts = model.number(b, "nominalVoltage", 0);
            return volts > 0 ? volts : null;
        });
    }

    /** {@return that of the whole network, phase to phase, in volts} */
    double system() {
        return system;
    }

    /** {@return of a node, in volts} @param node the node @param equipment what hangs there */
    double of(CimObject node, CimObject equipment) {
        return base(equipment).orElse(atNode.getOrDefault(node, system));
    }

    /** {@return of a node, in volts; 0 if nothing there says} */
    double of(CimObject node) {
        return atNode.getOrDefault(node, 0.0);
    }
}
