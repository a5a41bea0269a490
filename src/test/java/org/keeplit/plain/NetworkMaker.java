package org.keeplit.plain;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Makes small networks: a tree of everything that there is, then ties, loops and what hangs on the nodes. */
final class NetworkMaker {
    private final Draw draw;
    private final List<MadeElement> elements = new ArrayList<>();
    private final Map<String, String> nodes = new LinkedHashMap<>();
    /** Nodes behind a transformer bank: another voltage, so nothing ties them to the rest. */
    private final Map<String, Integer> zone = new LinkedHashMap<>();
    private final boolean trips;
    private int zones;

    private NetworkMaker(Draw draw, boolean trips) {
        this.draw = draw;
        this.trips = trips;
    }

    /** {@return the lines of a network} */
    static List<MadeElement> make(Draw draw) {
        return make(draw, false);
    }

    /** {@return the lines of a network} @param trips whether devices state currents at which they trip */
    static List<MadeElement> make(Draw draw, boolean trips) {
        return new NetworkMaker(draw, trips).make();
    }

    private List<MadeElement> make() {
        String first = node("ABC", 0);
        elements.add(new MadeElement("source", "s-1", first, null, "ABC", List.of("supply alpha")));
        if (draw.chance(60)) {
            device(draw.one("breaker", "recloser", "switch"), first, "ABC");
        }
        int branches = draw.between(1, 6);
        for (int i = 0; i < branches && nodes.size() < 13; i++) {
            grow();
        }
        if (draw.chance(45)) {
            secondSource();
        }
        if (draw.chance(50)) {
            loop();
        }
        int hanging = draw.between(1, 4);
        for (int i = 0; i < hanging; i++) {
            hang();
        }
        // From the network itself, so that what is drawn after it stays as it was where no centre tap is added.
        Draw more = new Draw(elements.toString().hashCode());
        if (more.chance(10)) {
            centreTap(more);
        }
        return List.copyOf(elements);
    }

    /** A centre-tapped unit with a switch on its legs and what hangs behind it. */
    private void centreTap(Draw more) {
        List<String> all = nodes.keySet().stream().filter(n -> zone.get(n) == 0).toList();
        String from = more.one(all);
        List<String> pairs = List.of("A", "B", "C", "AB", "BC", "CA").stream()
                .filter(p -> p.chars().allMatch(c -> nodes.get(from).indexOf(c) >= 0))
                .toList();
        elements.add(new MadeElement(
                "transformer", name("t"), from, "low", more.one(pairs), List.of("centre-tapped")));
        String house = "low";
        if (more.chance(70)) {
            house = "house";
            elements.add(new MadeElement(
                    more.one("disconnect", "switch"), name("d"), "low", house, "X1X3", more.chance(15) ? List.of("open") : List.of()));
        }
        if (more.chance(70)) {
            elements.add(leg(more.one("X1", "X3"), house, "grounded wye"));
        }
        if (more.chance(60)) {
            elements.add(leg("X1X3", house, more.one("delta", "delta", "ungrounded wye", "grounded wye")));
        }
        if (more.chance(15)) {
            elements.add(new MadeElement("generator", name("g"), house, null, more.one("X1", "X1X3"), List.of("20 kW")));
        }
    }

    private MadeElement leg(String phases, String node, String way) {
        return new MadeElement(
                "load", name("u"), node, null, phases, List.of("10 kW", "1 customer", way, "constant impedance"));
    }

    private String node(String phases, int inZone) {
        String name = "n-" + (nodes.size() + 1);
        nodes.put(name, phases);
        zone.put(name, inZone);
        return name;
    }

    private String name(String letter) {
        return letter + "-" + (elements.size() + 1);
    }

    private String fewer(String phases) {
        if (phases.length() == 1 || draw.chance(45)) {
            return phases;
        }
        int wanted = draw.chance(60) ? 1 : 2;
        List<Character> letters = draw.shuffled(phases.chars().mapToObj(c -> (char) c).toList());
        return letters.subList(0, Math.min(wanted, letters.size())).stream()
                .sorted()
                .map(String::valueOf)
                .collect(Collectors.joining());
    }

    private void grow() {
        List<String> all = List.copyOf(nodes.keySet());
        String parent = draw.chance(50) ? all.get(all.size() - 1) : draw.one(all);
        String phases = trips && draw.chance(85) ? nodes.get(parent) : fewer(nodes.get(parent));
        switch (draw.below(12)) {
            case 0, 1, 2 -> line(parent, node(phases, zone.get(parent)), phases);
            case 3 -> regulator(parent, phases);
            case 4 -> transformer(parent, phases);
            case 5, 6, 7 -> reclosingPole(parent, phases);
            default -> device(
                    draw.one("switch", "disconnect", "cutout", "load-break-cutout", "sectionalizer", "bypass-switch",
                            "breaker", "electronic-recloser", "common-disconnect"),
                    parent,
                    phases);
        }
    }

    private void line(String from, String to, String phases) {
        elements.add(new MadeElement(draw.chance(85) ? "line" : "cable", name("l"), from, to, phases, List.of("length 1 km")));
    }

    private String device(String kind, String from, String phases) {
        String to = node(phases, zone.get(from));
        device(kind, from, to, phases, draw.chance(12), null);
        return to;
    }

    private void device(String kind, String from, String to, String phases, boolean open, String site) {
        List<String> more = new ArrayList<>();
        if (phases.length() > 1 && List.of("recloser", "sectionalizer", "bypass-switch").contains(kind)) {
            more.add(draw.chance(60) ? "single-phase units" : "ganged");
        }
        if (open) {
            more.add("open");
        }
        if (site != null) {
            more.add("at " + site);
        }
        if (List.of("breaker", "recloser", "electronic-recloser").contains(kind) && draw.chance(20)) {
            more.add("reclosing blocked");
        }
        if (trips && List.of("breaker", "recloser", "electronic-recloser").contains(kind)) {
            pickups(more);
        }
        elements.add(new MadeElement(kind, name("d"), from, to, phases, more));
    }

    /** A load of 10 kW draws half an ampere a phase, or more where it has fewer phases. */
    private void pickups(List<String> more) {
        if (draw.chance(70)) {
            more.add(draw.one("pickup ", "minimum trip ") + draw.one("0.7 A", "1.2 A", "2 A", "4 A"));
        }
        if (draw.chance(60)) {
            more.add("ground pickup " + draw.one("0.2 A", "0.3 A", "0.45 A", "0.8 A"));
        }
        if (draw.chance(20)) {
            more.add("pickup tolerance " + draw.one("0 %", "2 %", "40 %"));
        }
    }

    /** A recloser with, perhaps, a bypass switch around it and a disconnect on one side. */
    private void reclosingPole(String parent, String phases) {
        String site = "pole-" + nodes.size();
        String kind = draw.chance(80) ? "recloser" : "electronic-recloser";
        String from = parent;
        if (draw.chance(20)) {
            from = node(phases, zone.get(parent));
            device("disconnect", parent, from, phases, false, site);
        }
        String to = node(phases, zone.get(parent));
        device(kind, from, to, phases, draw.chance(15), site);
        if (draw.chance(25)) {
            device("bypass-switch", parent, to, phases, draw.chance(80), site);
        }
        if (nodes.size() < 12 && draw.chance(60)) {
            line(to, node(phases, zone.get(parent)), phases);
        }
    }

    /** A regulator, perhaps with its disconnects and the bypass around it. */
    private void regulator(String parent, String phases) {
        String site = "vault-" + nodes.size();
        boolean full = draw.chance(60);
        String from = parent;
        if (full) {
            from = node(phases, zone.get(parent));
            device("disconnect", parent, from, phases, false, site);
        }
        String out = node(phases, zone.get(parent));
        elements.add(new MadeElement("regulator", name("v"), from, out, phases, List.of("at " + site)));
        if (full) {
            String to = node(phases, zone.get(parent));
            device("disconnect", out, to, phases, false, site);
            device("bypass-switch", parent, to, phases, draw.chance(85), site);
        }
    }

    private void transformer(String from, String phases) {
        String[] ways = {"grounded wye", "ungrounded wye", "delta"};
        // Two windings in delta or in a floating star are no bank that a load flow knows.
        boolean plain = phases.length() == 1 || trips && phases.length() == 2;
        String primary = plain ? ways[0] : draw.one(ways);
        String secondary = plain ? ways[0] : draw.one(ways);
        List<String> more = new ArrayList<>(List.of(primary + " to " + secondary));
        if (primary.equals("delta") != secondary.equals("delta")) {
            more.add("clock " + draw.one(1, 11));
        }
        elements.add(new MadeElement("transformer", name("t"), from, node(phases, ++zones), phases, more));
    }

    private void secondSource() {
        String node = node("ABC", 0);
        elements.add(new MadeElement(
                "source", "s-2", node, null, "ABC", List.of("supply " + draw.one("alpha", "beta", "beta"))));
        if (draw.chance(50)) {
            node = device(draw.one("breaker", "recloser"), node, "ABC");
        }
        tie(node, draw.chance(93));
    }

    private void loop() {
        tie(draw.one(List.copyOf(nodes.keySet())), draw.chance(60));
    }

    private void tie(String from, boolean open) {
        List<String> others = nodes.keySet().stream()
                .filter(n -> !n.equals(from) && zone.get(n).equals(zone.get(from)) && !common(n, from).isEmpty())
                .toList();
        if (!others.isEmpty()) {
            String to = draw.one(others);
            String kind = trips && open
                    ? draw.one("loop-tie", "loop-tie", "tie")
                    : draw.one("tie", "tie", "switch", "recloser", "electronic-recloser", "disconnect", "cutout");
            device(kind, from, to, common(from, to), open, null);
        }
    }

    private String common(String one, String other) {
        return nodes.get(one).chars()
                .filter(c -> nodes.get(other).indexOf(c) >= 0)
                .mapToObj(c -> String.valueOf((char) c))
                .collect(Collectors.joining());
    }

    private void hang() {
        List<String> all = List.copyOf(nodes.keySet());
        String node = draw.chance(60) ? all.get(all.size() - 1) : draw.one(all);
        // Where a residual trips something, it must be small to begin with.
        String phases = trips && draw.chance(85) ? nodes.get(node) : fewer(nodes.get(node));
        String way = phases.length() == 1 ? "grounded wye" : draw.one("grounded wye", "ungrounded wye", "delta");
        int what = draw.below(10);
        if (what < 7) {
            List<String> more = new ArrayList<>(List.of("10 kW", draw.between(1, 30) + " customers", way));
            if (way.equals("ungrounded wye") || zone.get(node) > 0) {
                // Constant powers on a floating star have no one answer: any small unbalance moves the star far.
                more.add("constant impedance");
            }
            if (phases.length() > 1 && draw.chance(15)) {
                more.add("motor");
            }
            if (draw.chance(15)) {
                more.add("critical \"dairy\"");
            }
            elements.add(new MadeElement("load", name("u"), node, null, phases, more));
        } else if (what < 9 && trips && draw.chance(60)) {
            String to = node(phases, zone.get(node));
            device("controlled-capacitor-switch", node, to, phases, draw.chance(50), null);
            elements.add(new MadeElement("capacitor", name("c"), to, null, phases, List.of("100 kvar", way)));
        } else if (what < 9) {
            elements.add(new MadeElement("capacitor", name("c"), node, null, phases, List.of("100 kvar", way)));
        } else {
            elements.add(new MadeElement("generator", name("g"), node, null, phases, List.of("20 kW")));
        }
    }
}
