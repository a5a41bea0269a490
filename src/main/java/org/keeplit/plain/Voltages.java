package org.keeplit.plain;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.keeplit.network.Conductor;
import org.keeplit.network.Connection;
import org.keeplit.network.Element;
import org.keeplit.network.Network;
import org.keeplit.network.Phases;

/** Which places are alive when some joints are closed: flood fill, then rounds of spreading until nothing changes. */
final class Voltages {
    static final int DEAD = 0;
    static final int MAY_BE = 1;
    static final int BACKFED = 2;
    static final int ENERGIZED = 3;
    private static final String CLASH = "clash";

    private final Network network;
    private final Map<String, Integer> group = new HashMap<>();
    private final List<Integer> level = new ArrayList<>();
    private final List<String> identity = new ArrayList<>();
    private final List<Boolean> earthed = new ArrayList<>();
    private final Map<String, List<String>> neighbours = new HashMap<>();
    private boolean moved;

    Voltages(Network network, List<Joint> joints, Predicate<Joint> closed) {
        this.network = network;
        for (Joint joint : joints) {
            if (closed.test(joint)) {
                neighbours.computeIfAbsent(joint.a(), k -> new ArrayList<>()).add(joint.b());
                neighbours.computeIfAbsent(joint.b(), k -> new ArrayList<>()).add(joint.a());
            }
        }
        earthed.set(group(Names.EARTH), true);
        network.all(Element.Source.class).forEach(this::source);
        for (Joint joint : joints) {
            if (joint.a().startsWith("machine/")) {
                // A set that was brought is a supply of its own.
                String set = joint.a().substring("machine/".length(), joint.a().lastIndexOf('/'));
                energize(joint.a(), set + "@" + joint.phase().clock());
            }
        }
        network.all(Element.Generator.class)
                .forEach(g -> g.phases().forEach(p -> lift(Names.node(g.node(), p), MAY_BE)));
        do {
            moved = false;
            round();
        } while (moved);
    }

    /** {@return the number of what a place is joined to; found by flood fill when first asked for} */
    int group(String place) {
        Integer known = group.get(place);
        if (known != null) {
            return known;
        }
        int number = level.size();
        level.add(DEAD);
        identity.add(null);
        earthed.add(false);
        ArrayDeque<String> open = new ArrayDeque<>(List.of(place));
        group.put(place, number);
        while (!open.isEmpty()) {
            for (String next : neighbours.getOrDefault(open.poll(), List.of())) {
                if (group.putIfAbsent(next, number) == null) {
                    open.add(next);
                }
            }
        }
        return number;
    }

    int level(String place) {
        return level.get(group(place));
    }

    String identity(String place) {
        return identity.get(group(place));
    }

    boolean isEarthed(String place) {
        return earthed.get(group(place));
    }

    boolean isShorted(String place) {
        return CLASH.equals(identity(place)) || isEarthed(place) && level(place) >= BACKFED;
    }

    boolean joined(String one, String other) {
        return group(one) == group(other);
    }

    boolean anythingShorted() {
        for (int i = 0; i < level.size(); i++) {
            if (CLASH.equals(identity.get(i)) || earthed.get(i) && level.get(i) >= BACKFED) {
                return true;
            }
        }
        return false;
    }

    /** {@return the clock hour of what energizes a place} */
    int hour(String place) {
        String by = identity(place);
        return by == null || by.equals(CLASH) ? -1 : Integer.parseInt(by.substring(by.lastIndexOf('@') + 1));
    }

    private void source(Element.Source source) {
        for (Conductor p : source.phases()) {
            if (p != Conductor.N) {
                energize(Names.node(source.node(), p), source.supply() + "@" + p.clock());
            }
        }
    }

    private void energize(String place, String by) {
        int at = group(place);
        if (level.get(at) != ENERGIZED) {
            level.set(at, ENERGIZED);
            moved = true;
        }
        String now = identity.get(at);
        if (now == null) {
            identity.set(at, by);
            moved = true;
        } else if (!now.equals(by) && !now.equals(CLASH)) {
            identity.set(at, CLASH);
            moved = true;
        }
    }

    private void lift(String place, int to) {
        int at = group(place);
        if (!earthed.get(at) && level.get(at) < to) {
            level.set(at, to);
            moved = true;
        }
    }

    private void round() {
        network.all(Element.Load.class).forEach(l -> {
            if (l.motor() || l.connection() != Connection.GROUNDED_WYE) {
                spread(places(l.node(), l.phases().list()));
            }
        });
        network.all(Element.Capacitor.class).forEach(c -> {
            if (c.connection() != Connection.GROUNDED_WYE) {
                spread(places(c.node(), c.phases().list()));
            }
        });
        network.all(Element.Transformer.class).forEach(this::transformer);
    }

    private static List<String> places(String node, List<Conductor> phases) {
        return phases.stream()
                .filter(p -> p != Conductor.N)
                .map(p -> Names.node(node, p))
                .toList();
    }

    /** What one place has, the others get, but never as supply. */
    private void spread(List<String> places) {
        int most = 0;
        for (String place : places) {
            most = Math.max(most, Math.min(level(place), BACKFED));
        }
        for (String place : places) {
            lift(place, most);
        }
    }

    private void transformer(Element.Transformer t) {
        if (t.centreTapped()) {
            centreTapped(t, taken(t));
            return;
        }
        List<String> primary = places(t.from(), t.phases().list());
        List<Conductor> served = served(t);
        boolean openDelta = served.size() > primary.size();
        List<String> secondary = places(t.to(), served);
        List<List<String>> front = windings(t.name() + "/1", t.primary(), primary, t.clock());
        List<List<String>> back = windings(t.name() + "/2", t.secondary(), secondary, -t.clock());
        Set<Integer> full = new HashSet<>();
        for (int w = 0; w < front.size(); w++) {
            if (front.get(w).stream().filter(e -> !e.startsWith(t.name() + "/")).allMatch(e -> level(e) == ENERGIZED)) {
                full.add(w);
            }
        }
        boolean allOrNothing = t.primary() == Connection.WYE
                || t.primary() == Connection.DELTA && t.secondary() == Connection.DELTA;
        boolean all = full.size() == front.size();
        for (int i = 0; i < secondary.size(); i++) {
            boolean fed = allOrNothing || front.size() != secondary.size() ? all : full.contains(i);
            if (openDelta) {
                third(t, served.get(i), secondary.get(i), all);
                continue;
            }
            String end = front.size() == secondary.size() ? front.get(i).get(0) : primary.get(i);
            String by = identity(end);
            if (fed && by != null && !by.equals(CLASH)) {
                int ahead = end.equals(primary.get(i)) ? 0 : 4;
                int hour = Math.floorMod(hour(end) + t.clock() - ahead, 12);
                energize(secondary.get(i), by.substring(0, by.lastIndexOf('@') + 1) + hour);
            }
        }
        for (int w = 0; w < front.size(); w++) {
            List<String> coupled = new ArrayList<>(front.get(w));
            coupled.addAll(back.get(Math.min(w, back.size() - 1)));
            spread(coupled);
        }
    }

    /** {@return where a single unit takes its voltage: from one phase to the next as they rotate, so from C to A} */
    static List<String> taken(Element.Transformer t) {
        List<String> all = new ArrayList<>(places(t.from(), t.phases().list()));
        if (t.phases().toString().startsWith("AC")) {
            Collections.swap(all, 0, 1);
        }
        return all;
    }

    private void centreTapped(Element.Transformer t, List<String> primary) {
        List<String> all = new ArrayList<>(primary);
        String by = identity(primary.get(0));
        for (Conductor leg : List.of(Conductor.X1, Conductor.X3)) {
            String place = Names.node(t.to(), leg);
            all.add(place);
            if (primary.stream().allMatch(p -> level(p) == ENERGIZED) && by != null && !by.equals(CLASH)) {
                int hour = (hour(primary.get(0)) + t.clock() + (leg == Conductor.X3 ? 6 : 0)) % 12;
                energize(place, by.substring(0, by.lastIndexOf('@') + 1) + hour);
            }
        }
        spread(all);
    }

    /** {@return the phases on the secondary side: two units in open delta serve all three} */
    static List<Conductor> served(Element.Transformer t) {
        if (t.centreTapped()) {
            return List.of(Conductor.X1, Conductor.X3);
        }
        boolean openDelta =
                t.phases().and(Phases.ABC).size() == 2 && t.windings().size() == 2 && t.secondary() == Connection.DELTA;
        return openDelta ? Phases.ABC.list() : t.phases().list();
    }

    /** Two units serve three phases when both are alive; the phase that has no unit takes its angle from the first. */
    private void third(Element.Transformer t, Conductor phase, String place, boolean alive) {
        Conductor from = t.phases().contains(phase) ? phase : t.phases().list().get(0);
        String end = Names.node(t.from(), from);
        String by = identity(end);
        if (alive && by != null && !by.equals(CLASH)) {
            int hour = Math.floorMod(hour(end) + t.clock() + phase.clock() - from.clock(), 12);
            energize(place, by.substring(0, by.lastIndexOf('@') + 1) + hour);
        }
    }

    /** {@return the ends of each winding that are not earth} @param lag how far the other side lags this one */
    private static List<List<String>> windings(String star, Connection connection, List<String> ends, int lag) {
        List<List<String>> all = new ArrayList<>();
        if (connection == Connection.DELTA && ends.size() == 2) {
            return List.of(ends);
        }
        int count = ends.size();
        for (int i = 0; i < count; i++) {
            String own = ends.get(i);
            String next = ends.get((i + 1) % count);
            String before = ends.get((i + count - 1) % count);
            all.add(switch (connection) {
                case GROUNDED_WYE -> List.of(own);
                case WYE -> List.of(own, star);
                case DELTA -> isHours(lag, 1, 7)
                        ? List.of(own, before)
                        : isHours(lag, 3, 9) ? List.of(next, before) : List.of(own, next);
            });
        }
        return all;
    }

    private static boolean isHours(int lag, int one, int other) {
        int hours = Math.floorMod(lag, 12);
        return hours == one || hours == other;
    }
}
