package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.keeplit.electric.Contact;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Phases;
import org.keeplit.network.Trait;
import org.keeplit.program.Vertex;

/** Finds the things on the shortest way between two places, to show what supplies or bypasses. */
final class Ways {
    private final World world;

    /** A joint between two vertices. @param name the thing that it is @param contact the contact, or null */
    private record Joint(int a, int b, String name, Contact contact, Element element) {}

    private final List<Joint> joints = new ArrayList<>();

    Ways(World world) {
        this.world = world;
        for (Contact contact : world.grid().contacts()) {
            joints.add(new Joint(contact.a(), contact.b(), contact.owner(), contact, null));
        }
        world.bound().network().all(Element.Line.class).forEach(this::branch);
        world.bound().network().all(Element.Regulator.class).forEach(this::branch);
        world.bound().network().all(Element.Transformer.class).forEach(this::branch);
    }

    private void branch(Element.Branch branch) {
        boolean tapped = branch instanceof Element.Transformer t && t.centreTapped();
        for (Conductor phase : tapped ? Phases.LEGS : branch.phases()) {
            // A leg takes its voltage from the winding's first end.
            Conductor above = tapped ? ((Element.Transformer) branch).ends().get(0) : phase;
            var from = world.grid().number(new Vertex.AtNode(branch.from(), above));
            var to = world.grid().number(new Vertex.AtNode(branch.to(), phase));
            if (from.isPresent() && to.isPresent()) {
                joints.add(new Joint(from.get(), to.get(), branch.name(), null, branch));
            }
        }
    }

    /** {@return the things from the nearest source to a load, on its first phase} */
    ImmutableList<String> supply(Element.Load load, Scene scene) {
        Vertex at = new Vertex.AtNode(load.node(), load.phases().list().get(0));
        return world.grid().number(at).map(v -> supply(v, scene)).orElse(ImmutableList.of());
    }

    /** {@return the things from the nearest source to a place} */
    ImmutableList<String> supply(int vertex, Scene scene) {
        Map<Integer, String> sources = new HashMap<>();
        world.bound().network().all(Element.Source.class).forEach(source -> {
            for (Conductor phase : source.phases()) {
                world.grid()
                        .number(new Vertex.AtNode(source.node(), phase))
                        .ifPresent(v -> sources.putIfAbsent(v, source.name()));
            }
        });
        world.grid().machines().forEach(m -> sources.put(m.vertex(), m.family().name()));
        List<String> way = way(vertex, sources.keySet(), joint -> conducts(joint, scene), sources);
        Collections.reverse(way);
        return ImmutableList.copyOf(way);
    }

    /** {@return the things from one side of a branch to the other with its own contacts out} @param onSite only what
     *     stands there and neither trips nor melts */
    ImmutableList<String> around(Element.Branch branch, Conductor phase, boolean onSite, Scene scene) {
        int from = world.grid().number(new Vertex.AtNode(branch.from(), phase)).orElseThrow();
        int to = world.grid().number(new Vertex.AtNode(branch.to(), phase)).orElseThrow();
        String site = world.siteOf(new Obj.Of(branch));
        Predicate<Joint> counts = joint -> !joint.name.equals(branch.name())
                && !(joint.element instanceof Element.Transformer)
                && conducts(joint, scene)
                && (!onSite || stands(joint, site));
        return ImmutableList.copyOf(way(from, Set.of(to), counts, Map.of()));
    }

    private static boolean conducts(Joint joint, Scene scene) {
        return joint.contact == null || scene.analysis().isClosed(joint.contact);
    }

    private static boolean stands(Joint joint, String site) {
        if (joint.contact == null) {
            return joint.element instanceof Element.Regulator regulator && regulator.site().equals(site);
        }
        return joint.contact.site().equals(site)
                && joint.contact.part() != Contact.Part.GROUND
                && (joint.contact.part() == Contact.Part.CLAMP
                        || !joint.contact.kind().has(Trait.TRIPS) && !joint.contact.kind().has(Trait.FUSIBLE));
    }

    /** {@return the names on the way, each once where one follows itself; the end's own name last, if it has one} */
    private List<String> way(int from, Set<Integer> ends, Predicate<Joint> counts, Map<Integer, String> endNames) {
        Map<Integer, List<Joint>> at = new HashMap<>();
        for (Joint joint : joints) {
            if (counts.test(joint)) {
                at.computeIfAbsent(joint.a, v -> new ArrayList<>()).add(joint);
                at.computeIfAbsent(joint.b, v -> new ArrayList<>()).add(joint);
            }
        }
        Map<Integer, Joint> came = new HashMap<>();
        Set<Integer> seen = new HashSet<>(Set.of(from));
        Deque<Integer> open = new ArrayDeque<>(List.of(from));
        while (!open.isEmpty()) {
            int here = open.poll();
            if (ends.contains(here)) {
                return names(from, here, came, endNames);
            }
            for (Joint joint : at.getOrDefault(here, List.of())) {
                int next = joint.a == here ? joint.b : joint.a;
                if (seen.add(next)) {
                    came.put(next, joint);
                    open.add(next);
                }
            }
        }
        return new ArrayList<>();
    }

    private static List<String> names(int from, int to, Map<Integer, Joint> came, Map<Integer, String> endNames) {
        List<String> names = new ArrayList<>();
        if (endNames.containsKey(to)) {
            names.add(endNames.get(to));
        }
        int here = to;
        while (here != from) {
            Joint joint = came.get(here);
            if (names.isEmpty() || !names.get(names.size() - 1).equals(joint.name)) {
                names.add(joint.name);
            }
            here = joint.a == here ? joint.b : joint.a;
        }
        Collections.reverse(names);
        return names;
    }
}
