package org.keeplit.electric;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableListMultimap;
import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Optional;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Network;
import org.keeplit.procedure.Temporary;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Vertex;

/**
 * The electrical graph of a network with its temporary equipment: vertices, wires that nothing can open, contacts,
 * and what couples phases.
 */
public final class Grid {
    private final Network network;
    private final ImmutableList<Vertex> vertices;
    private final ImmutableMap<Vertex, Integer> numbers;
    private final ImmutableList<Contact> contacts;
    private final ImmutableListMultimap<FieldKey, Contact> byKey;
    private final ImmutableListMultimap<String, Contact> byOwner;
    private final ImmutableListMultimap<String, Integer> bySite;
    private final List<Wire> wires;
    private final List<Coupler> couplers;
    private final List<int[]> softPairs;
    private final ImmutableList<Machine> machines;
    private final int vertexCount;

    /**
     * A joint that nothing can open.
     *
     * @param a one vertex
     * @param b the other
     * @param plain whether it is plain conductor; a regulator is not
     * @param regulator the regulator that it is, or null
     * @param phase its phase
     */
    record Wire(int a, int b, boolean plain, Element.Regulator regulator, Conductor phase) {}

    /**
     * One phase of a temporary source, behind its output switch: always at its voltage.
     *
     * @param vertex where
     * @param family the source
     * @param phase the phase
     */
    public record Machine(int vertex, Temporary family, Conductor phase) {}

    Grid(GridBuilder builder) {
        this.network = builder.network();
        this.vertices = ImmutableList.copyOf(builder.vertices());
        ImmutableMap.Builder<Vertex, Integer> numbering = ImmutableMap.builder();
        for (int i = 0; i < vertices.size(); i++) {
            numbering.put(vertices.get(i), i);
        }
        this.numbers = numbering.buildOrThrow();
        this.contacts = ImmutableList.copyOf(builder.contacts());
        this.wires = List.copyOf(builder.wires());
        this.couplers = List.copyOf(builder.couplers());
        this.softPairs = List.copyOf(builder.softPairs());
        this.machines = ImmutableList.copyOf(builder.machines());
        this.vertexCount = builder.vertexCount();
        ImmutableListMultimap.Builder<FieldKey, Contact> keys = ImmutableListMultimap.builder();
        ImmutableListMultimap.Builder<String, Contact> owners = ImmutableListMultimap.builder();
        for (Contact contact : contacts) {
            keys.put(contact.key(), contact);
            owners.put(contact.owner(), contact);
        }
        this.byKey = keys.build();
        this.byOwner = owners.build();
        this.bySite = builder.siteVertices();
    }

    /** {@return the network} */
    public Network network() {
        return network;
    }

    /** {@return the vertices that have names, by number; the star points of windings come after them} */
    public ImmutableList<Vertex> vertices() {
        return vertices;
    }

    /** {@return how many vertices there are, star points included} */
    public int vertexCount() {
        return vertexCount;
    }

    /** {@return the number of a vertex, or nothing if the network has no such place} @param vertex the vertex */
    public Optional<Integer> number(Vertex vertex) {
        return Optional.ofNullable(numbers.get(vertex));
    }

    /** {@return all contacts, by number} */
    public ImmutableList<Contact> contacts() {
        return contacts;
    }

    /** {@return the contacts that a field moves} @param key the field */
    public ImmutableList<Contact> contacts(FieldKey key) {
        return byKey.get(key);
    }

    /** {@return the contacts of a device or a family of temporary equipment} @param owner its name */
    public ImmutableList<Contact> contactsOf(String owner) {
        return byOwner.get(owner);
    }

    /** {@return the conductors at a structure: the numbers of the line vertices of what stands there} @param site the site */
    public ImmutableList<Integer> siteVertices(String site) {
        return bySite.get(site);
    }

    /** {@return the temporary sources, phase by phase} */
    public ImmutableList<Machine> machines() {
        return machines;
    }

    List<Wire> wires() {
        return wires;
    }

    List<Coupler> couplers() {
        return couplers;
    }

    /** {@return pairs of vertices that a phase-coupling load, motor or bank joins without supplying} */
    List<int[]> softPairs() {
        return softPairs;
    }
}
