package org.keeplit.card.picture;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.keeplit.network.Element;
import org.keeplit.network.Network;

/** A network as trees from its sources along what is normally closed. Places are nodes that lines join; pieces stand between places. */
final class FeederTree {
    private final Network network;
    private final Map<String, Place> placeOf = new HashMap<>();
    private final Map<String, List<Element.Branch>> at = new HashMap<>();
    private final List<Root> roots = new ArrayList<>();
    private final Set<Element.Branch> seen = new HashSet<>();

    /** A source and the place that it feeds. */
    record Root(Element.Source source, Place place) {}

    /** A piece on the way from a source. @param near its node towards the source @param far the other one @param to the place beyond it */
    record Piece(Element.Branch branch, String near, String far, Place to) {}

    /** Nodes that lines join. */
    static final class Place {
        private final List<String> nodes = new ArrayList<>();
        private final List<Piece> pieces = new ArrayList<>();
        private final List<Element.Device> ties = new ArrayList<>();

        /** {@return the pieces beyond it, in the order of the network} */
        List<Piece> pieces() {
            return pieces;
        }

        /** {@return the open devices that join it to another place} */
        List<Element.Device> ties() {
            return ties;
        }
    }

    /** What hangs somewhere. */
    record Count(int loads, int customers, int banks, int generators) {
        Count and(Count other) {
            return new Count(loads + other.loads, customers + other.customers, banks + other.banks, generators + other.generators);
        }

        boolean isNothing() {
            return loads + banks + generators == 0;
        }

        String words() {
            List<String> all = new ArrayList<>();
            all.add(loads == 1 ? "1 load" : loads + " loads");
            all.add(customers == 1 ? "1 customer" : customers + " customers");
            if (banks > 0) {
                all.add(banks == 1 ? "1 capacitor bank" : banks + " capacitor banks");
            }
            if (generators > 0) {
                all.add(generators == 1 ? "1 generator" : generators + " generators");
            }
            return String.join(", ", all);
        }
    }

    private FeederTree(Network network) {
        this.network = network;
        network.all(Element.Branch.class).forEach(b -> {
            at.computeIfAbsent(b.from(), k -> new ArrayList<>()).add(b);
            at.computeIfAbsent(b.to(), k -> new ArrayList<>()).add(b);
        });
    }

    static FeederTree of(Network network) {
        FeederTree tree = new FeederTree(network);
        network.all(Element.Source.class).forEach(source -> {
            if (!tree.placeOf.containsKey(source.node())) {
                tree.roots.add(new Root(source, tree.grow(source.node())));
            }
        });
        network.all(Element.Device.class).filter(d -> d.closed().isEmpty()).forEach(tree::tie);
        return tree;
    }

    List<Root> roots() {
        return roots;
    }

    private Place grow(String first) {
        Place root = place(first);
        ArrayDeque<Place> open = new ArrayDeque<>(List.of(root));
        while (!open.isEmpty()) {
            Place here = open.poll();
            for (String node : here.nodes) {
                for (Element.Branch branch : at.getOrDefault(node, List.of())) {
                    String far = branch.from().equals(node) ? branch.to() : branch.from();
                    boolean closed = !(branch instanceof Element.Device device) || !device.closed().isEmpty();
                    if (closed && !(branch instanceof Element.Line) && seen.add(branch) && !placeOf.containsKey(far)) {
                        Place next = place(far);
                        here.pieces.add(new Piece(branch, node, far, next));
                        open.add(next);
                    }
                }
            }
        }
        return root;
    }

    /** {@return all nodes that lines join to one} */
    private Place place(String first) {
        Place place = new Place();
        ArrayDeque<String> open = new ArrayDeque<>(List.of(first));
        placeOf.put(first, place);
        while (!open.isEmpty()) {
            String node = open.poll();
            place.nodes.add(node);
            for (Element.Branch branch : at.getOrDefault(node, List.of())) {
                String far = branch.from().equals(node) ? branch.to() : branch.from();
                if (branch instanceof Element.Line && placeOf.putIfAbsent(far, place) == null) {
                    open.add(far);
                }
            }
        }
        return place;
    }

    private void tie(Element.Device device) {
        Place one = placeOf.get(device.from());
        Place other = placeOf.get(device.to());
        if (one != null && other != null && one != other) {
            one.ties.add(device);
            other.ties.add(device);
        }
    }

    /** {@return whether an open device only bridges something that is folded} @param folded what is */
    boolean isFolded(Element.Device tie, List<Piece> folded) {
        return folded.stream().anyMatch(piece -> isBeyond(placeOf.get(tie.from()), piece.to) || isBeyond(placeOf.get(tie.to()), piece.to));
    }

    private static boolean isBeyond(Place wanted, Place from) {
        return wanted == from || from.pieces.stream().anyMatch(piece -> isBeyond(wanted, piece.to));
    }

    /** {@return what hangs on a place itself} */
    Count own(Place place) {
        Set<String> nodes = new HashSet<>(place.nodes);
        return network.all(Element.Shunt.class)
                .filter(s -> nodes.contains(s.node()))
                .map(s -> new Count(
                        s instanceof Element.Load ? 1 : 0,
                        s instanceof Element.Load load ? load.customers() : 0,
                        s instanceof Element.Capacitor ? 1 : 0,
                        s instanceof Element.Generator ? 1 : 0))
                .reduce(new Count(0, 0, 0, 0), Count::and);
    }

    /** {@return what hangs on a place and everywhere beyond it} */
    Count all(Place place) {
        Count all = own(place);
        for (Piece piece : place.pieces) {
            all = all.and(all(piece.to));
        }
        return all;
    }
}
