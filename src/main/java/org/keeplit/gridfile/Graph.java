package org.keeplit.gridfile;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What hangs where: the nodes of each piece of equipment, and how far each node is from a source, so that load sides can be told. */
final class Graph {
    private final CimModel model;
    private final Ledger ledger;
    private final Names names = new Names();
    private final Map<CimObject, String> nodes = new LinkedHashMap<>();
    private final Map<CimObject, Integer> degree = new HashMap<>();
    private final Map<CimObject, Integer> distance = new HashMap<>();

    Graph(CimModel model, Ledger ledger) {
        this.model = model;
        this.ledger = ledger;
        for (CimObject terminal : model.all("Terminal")) {
            model.follow(terminal, "ConductingEquipment");
            node(terminal).ifPresent(n -> degree.merge(n, 1, Integer::sum));
        }
        spread();
    }

    /** {@return the node of a terminal, told as a mistake if there is none} */
    Optional<CimObject> node(CimObject terminal) {
        if (!model.says(terminal, "ConnectivityNode")) {
            model.mark("wrong-terminals", terminal, terminal + " is at no ConnectivityNode",
                    "models that know only topological nodes have lost their switches, and are not read");
        }
        return model.follow(terminal, "ConnectivityNode");
    }

    /** {@return the terminals of some equipment in their order} */
    List<CimObject> terminals(CimObject equipment) {
        List<CimObject> all = model.pointing(equipment, "Terminal", "ConductingEquipment");
        all.forEach(ledger::part);
        return all;
    }

    /** {@return the nodes of what must have so many terminals; empty, and told, if it has not} */
    Optional<List<CimObject>> nodes(CimObject equipment, int many) {
        List<CimObject> terminals = terminals(equipment);
        List<CimObject> at = new ArrayList<>();
        terminals.forEach(t -> node(t).ifPresent(at::add));
        if (terminals.size() != many) {
            model.mark("wrong-terminals", equipment, equipment + " has " + terminals.size() + (terminals.size() == 1 ? " terminal" : " terminals")
                    + ", and needs " + many, "each Terminal refers to its ConductingEquipment");
            return Optional.empty();
        }
        return at.size() == many ? Optional.of(at) : Optional.empty();
    }

    /** {@return the name of a node in the network text} */
    String name(CimObject node) {
        return nodes.computeIfAbsent(node, n -> {
            String name = names.of(n.name(), "n");
            ledger.element(n, name);
            return name;
        });
    }

    /** {@return a node that no file has} */
    String made(String wanted) {
        return names.of(wanted, "n");
    }

    /** {@return whether anything hangs at a node besides one terminal} */
    boolean isShared(CimObject node) {
        return degree.getOrDefault(node, 0) > 1;
    }

    /** {@return whether the second node is nearer to a source, so that the load side is at the first} */
    boolean isTurned(CimObject first, CimObject second) {
        return distance(second) < distance(first);
    }

    /** {@return how many pieces of equipment lie between a node and the nearest source; the largest number if none reaches it} */
    int distance(CimObject node) {
        return distance.getOrDefault(node, Integer.MAX_VALUE);
    }

    /** Counts pieces of equipment from the sources on, through what is normally closed. */
    private void spread() {
        Map<CimObject, List<CimObject>> beside = new HashMap<>();
        for (String type : model.types()) {
            if (type.equals("PowerTransformer") || type.equals("ACLineSegment") || SwitchTranslator.KINDS.containsKey(type)) {
                model.all(type).stream().filter(e -> !SwitchTranslator.isOpen(model, e)).forEach(e -> join(e, beside));
            }
        }
        // Clamps and cuts sit on their segment: from its ends to theirs.
        for (String type : List.of("Clamp", "Cut")) {
            for (CimObject mark : model.all(type)) {
                model.follow(mark, "ACLineSegment").ifPresent(segment -> {
                    List<CimObject> at = at(segment);
                    at.addAll(at(mark));
                    tie(at, beside);
                });
            }
        }
        Deque<CimObject> open = new ArrayDeque<>();
        for (CimObject source : model.all("EnergySource")) {
            for (CimObject node : at(source)) {
                if (distance.putIfAbsent(node, 0) == null) {
                    open.add(node);
                }
            }
        }
        while (!open.isEmpty()) {
            CimObject node = open.remove();
            for (CimObject next : beside.getOrDefault(node, List.of())) {
                if (distance.putIfAbsent(next, distance.get(node) + 1) == null) {
                    open.add(next);
                }
            }
        }
    }

    private List<CimObject> at(CimObject equipment) {
        List<CimObject> at = new ArrayList<>();
        for (CimObject terminal : model.pointing(equipment, "Terminal", "ConductingEquipment")) {
            model.follow(terminal, "ConnectivityNode").ifPresent(at::add);
        }
        return at;
    }

    private void join(CimObject equipment, Map<CimObject, List<CimObject>> beside) {
        tie(at(equipment), beside);
    }

    private static void tie(List<CimObject> at, Map<CimObject, List<CimObject>> beside) {
        for (CimObject one : at) {
            for (CimObject other : at) {
                if (one != other) {
                    beside.computeIfAbsent(one, n -> new ArrayList<>()).add(other);
                }
            }
        }
    }
}
