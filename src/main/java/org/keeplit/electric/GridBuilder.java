package org.keeplit.electric;

import com.google.common.collect.ImmutableListMultimap;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.keeplit.network.Base;
import org.keeplit.network.Conductor;
import org.keeplit.network.Connection;
import org.keeplit.network.Element;
import org.keeplit.network.LeadEnd;
import org.keeplit.network.Network;
import org.keeplit.network.Phases;
import org.keeplit.network.Side;
import org.keeplit.network.Trait;
import org.keeplit.procedure.Temporary;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Vertex;

/** Builds the electrical graph of a network. */
public final class GridBuilder {
    private final Network network;
    private final List<Vertex> vertices = new ArrayList<>();
    private final Map<Vertex, Integer> numbers = new LinkedHashMap<>();
    private final List<Contact> contacts = new ArrayList<>();
    private final List<Grid.Wire> wires = new ArrayList<>();
    private final List<Coupler> couplers = new ArrayList<>();
    private final List<int[]> softPairs = new ArrayList<>();
    private final ImmutableListMultimap.Builder<String, Integer> siteVertices = ImmutableListMultimap.builder();
    private final List<Grid.Machine> machines = new ArrayList<>();
    private int starPoints;

    /**
     * Begins a graph.
     *
     * @param network the network
     */
    public GridBuilder(Network network) {
        this.network = network;
        vertex(Vertex.EARTH);
        network.nodes().forEach((node, phases) -> phases.forEach(c -> vertex(new Vertex.AtNode(node, c))));
        network.all(Element.Device.class).forEach(this::device);
        network.all(Element.Line.class).forEach(line -> wire(line, true, null));
        network.all(Element.Regulator.class).forEach(regulator -> {
            wire(regulator, false, regulator);
            standsAt(regulator.site(), regulator);
        });
    }

    /**
     * Adds a piece of temporary equipment.
     *
     * @param family the family that it belongs to
     * @param phase the phase that it was brought for
     * @param site where it is used
     * @param spots for each of its two clamps the places where it may be, in the order of the clamp's field
     * @return this builder
     */
    public GridBuilder temporary(Temporary family, Conductor phase, String site, List<List<Vertex>> spots) {
        int body = vertex(new Vertex.Temporary(family.name(), phase));
        if (family.kind().base() == Base.MOBILE) {
            machines.add(new Grid.Machine(vertex(new Vertex.Machine(family.name(), phase)), family, phase));
        }
        Contact.Part part = family.kind().base() == Base.GROUND ? Contact.Part.GROUND : Contact.Part.CLAMP;
        for (int clamp = 1; clamp <= 2; clamp++) {
            FieldKey key = new FieldKey.Clamp(family.name(), phase, clamp);
            List<Vertex> places = spots.get(clamp - 1);
            for (int i = 0; i < places.size(); i++) {
                int at = vertex(places.get(i));
                contacts.add(new Contact(
                        contacts.size(), at, body, key, i + 1, part, family.name(), phase, site, family.kind()));
            }
        }
        return this;
    }

    /**
     * Lets the line end of a lead go on another phase of its line, as when leads are rolled.
     *
     * @param key the lead's end
     * @param onto the other phase
     * @return this builder
     */
    public GridBuilder rolled(FieldKey.End key, Conductor onto) {
        Element.Device device = (Element.Device) network.element(key.device()).orElseThrow();
        int lead = vertex(new Vertex.Lead(key.device(), key.side(), key.phase()));
        contacts.add(new Contact(
                contacts.size(),
                at(device.node(key.side()), onto),
                lead,
                key,
                key.value(onto),
                Contact.Part.LEAD,
                device.name(),
                key.phase(),
                device.site(),
                device.kind()));
        return this;
    }

    /** {@return the finished graph} */
    public Grid build() {
        // Star points are numbered after everything that has a name.
        network.all(Element.Transformer.class).forEach(this::transformer);
        network.all(Element.Load.class).forEach(load -> {
            boolean couples = load.connection().couples() || load.motor();
            couple(load.node(), load.phases(), couples);
        });
        network.all(Element.Capacitor.class)
                .forEach(bank -> couple(bank.node(), bank.phases(), bank.connection().couples()));
        return new Grid(this);
    }

    private int vertex(Vertex vertex) {
        return numbers.computeIfAbsent(vertex, v -> {
            vertices.add(v);
            return vertices.size() - 1;
        });
    }

    private int at(String node, Conductor conductor) {
        return vertex(new Vertex.AtNode(node, conductor));
    }

    private void wire(Element.Branch branch, boolean plain, Element.Regulator regulator) {
        for (Conductor phase : branch.phases()) {
            wires.add(new Grid.Wire(at(branch.from(), phase), at(branch.to(), phase), plain, regulator, phase));
        }
    }

    private void standsAt(String site, Element.Branch branch) {
        for (Conductor phase : branch.phases()) {
            siteVertices.put(site, at(branch.from(), phase));
            siteVertices.put(site, at(branch.to(), phase));
        }
    }

    private void device(Element.Device device) {
        standsAt(device.site(), device);
        for (Conductor phase : device.phases()) {
            Conductor unit = device.ganged() ? device.phases().list().get(0) : phase;
            int from = at(device.from(), phase);
            int to = at(device.to(), phase);
            if (device.kind().has(Trait.LEADS)) {
                from = lead(device, Side.SOURCE, phase, from);
                to = lead(device, Side.LOAD, phase, to);
            }
            add(device, phase, from, to, new FieldKey.Pole(device.name(), unit), Contact.Part.POLE);
        }
    }

    /** Adds a lead with its two ends and its bushing; {@return the bushing's vertex}. */
    private int lead(Element.Device device, Side side, Conductor phase, int line) {
        int lead = vertex(new Vertex.Lead(device.name(), side, phase));
        int bushing = vertex(new Vertex.Bushing(device.name(), side, phase));
        add(device, phase, line, lead, new FieldKey.End(device.name(), side, phase, LeadEnd.LINE), Contact.Part.LEAD);
        add(
                device,
                phase,
                lead,
                bushing,
                new FieldKey.End(device.name(), side, phase, LeadEnd.BUSHING),
                Contact.Part.LEAD);
        return bushing;
    }

    private void add(Element.Device device, Conductor phase, int a, int b, FieldKey key, Contact.Part part) {
        contacts.add(new Contact(
                contacts.size(), a, b, key, 1, part, device.name(), phase, device.site(), device.kind()));
    }

    private void couple(String node, Phases phases, boolean couples) {
        if (!couples) {
            return;
        }
        List<Conductor> list = phases.list();
        for (int i = 0; i < list.size(); i++) {
            for (int j = i + 1; j < list.size(); j++) {
                if (list.get(i).isPhase() && list.get(j).isPhase()) {
                    softPairs.add(new int[] {at(node, list.get(i)), at(node, list.get(j))});
                }
            }
        }
    }

    private void transformer(Element.Transformer transformer) {
        List<Conductor> phases =
                transformer.phases().list().stream().filter(Conductor::isPhase).toList();
        if (transformer.centreTapped()) {
            centreTapped(transformer);
            return;
        }
        int[] from = phases.stream().mapToInt(p -> at(transformer.from(), p)).toArray();
        // Two units in open delta still serve three phases; the third follows from the other two.
        List<Conductor> served = phases.size() == 2 && transformer.windings().size() == 2
                ? transformer.secondaryPhases().list()
                : phases;
        int[] to = served.stream().mapToInt(p -> at(transformer.to(), p)).toArray();
        int[] base = served.stream().mapToInt(p -> Math.max(0, phases.indexOf(p))).toArray();
        int[] hours = new int[to.length];
        for (int i = 0; i < to.length; i++) {
            hours[i] = served.get(i).clock() - phases.get(base[i]).clock();
        }
        couplers.add(new Coupler(
                transformer,
                windings(transformer.primary(), from, deltaEnds(transformer, true)),
                windings(transformer.secondary(), to, deltaEnds(transformer, false)),
                from,
                to,
                base,
                hours));
    }

    /** Both legs share one core with the primary; each takes its angle from the primary's first end, the second opposite. */
    private void centreTapped(Element.Transformer transformer) {
        int[] from = transformer.ends().stream().mapToInt(p -> at(transformer.from(), p)).toArray();
        int[] legs = Phases.LEGS.list().stream().mapToInt(p -> at(transformer.to(), p)).toArray();
        couplers.add(new Coupler(
                transformer,
                new int[][] {from.length == 2 ? from : new int[] {from[0], -1}},
                new int[][] {legs},
                from,
                legs,
                new int[] {0, 0},
                Phases.LEGS.list().stream().mapToInt(Conductor::clock).toArray()));
    }

    private int[][] windings(Connection connection, int[] ends, int[] deltaEnds) {
        if (connection == Connection.DELTA && ends.length == 2) {
            return new int[][] {{ends[0], ends[1]}};
        }
        int star = connection == Connection.WYE ? vertices.size() + starPoints++ : -1;
        int[][] windings = new int[ends.length][];
        for (int i = 0; i < ends.length; i++) {
            windings[i] = connection == Connection.DELTA
                    ? new int[] {ends[(i + deltaEnds[0]) % ends.length], ends[(i + deltaEnds[1]) % ends.length]}
                    : new int[] {ends[i], star};
        }
        return windings;
    }

    /**
     * Between which phases a delta's winding lies that shares its core with winding i of a wye: the clock says it. An
     * angle of 30 degrees between the two sides is that between a phase and its voltage to the next or the one before.
     */
    private static int[] deltaEnds(Element.Transformer transformer, boolean primary) {
        int lag = primary ? transformer.clock() : 12 - transformer.clock();
        return switch (Math.floorMod(lag, 6)) {
            case 1 -> new int[] {0, 2};
            case 3 -> new int[] {1, 2};
            default -> new int[] {0, 1};
        };
    }

    Network network() {
        return network;
    }

    List<Vertex> vertices() {
        return vertices;
    }

    List<Contact> contacts() {
        return contacts;
    }

    List<Grid.Wire> wires() {
        return wires;
    }

    List<Coupler> couplers() {
        return couplers;
    }

    List<Grid.Machine> machines() {
        return machines;
    }

    List<int[]> softPairs() {
        return softPairs;
    }

    int vertexCount() {
        return vertices.size() + starPoints;
    }

    ImmutableListMultimap<String, Integer> siteVertices() {
        return siteVertices.build();
    }
}
