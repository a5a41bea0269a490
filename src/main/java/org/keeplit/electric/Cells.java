package org.keeplit.electric;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Predicate;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.OpeningDuty;
import org.keeplit.network.Trait;
import org.keeplit.program.Vertex;

/**
 * The graph with every region that nothing can split drawn together into one cell. Done once, before the search:
 * a look at the state then costs by the contacts that can move, not by the size of the network.
 */
public final class Cells {
    private final Grid grid;
    private final int[] cellOf;
    private final int count;
    private final List<Contact> kept;
    private final int[] keptIndex;
    private final boolean[] keptStartsClosed;

    /** The cells at the ends of each kept contact. */
    final int[] keptFrom;

    final int[] keptTo;
    /** For each cell its source: the number of an identity, {@link Status#NONE} or {@link Status#CLASH}. */
    final int[] source;
    /** For each cell whether a customer's generator is there. */
    final boolean[] generator;
    /** For each cell what hangs there, as bits of {@link OpeningDuty} ordinals. */
    final int[] content;
    /** The transformer banks, their ends as cells. */
    final List<Coupler> couplers = new ArrayList<>();
    /** Pairs of cells that are coupled without supply. */
    final List<int[]> soft = new ArrayList<>();

    private final Identities identities;

    private Cells(Grid grid, Identities identities, Predicate<Contact> keep, Predicate<Contact> closedAtStart) {
        this.grid = grid;
        this.identities = identities;
        this.kept = new ArrayList<>();
        this.keptIndex = new int[grid.contacts().size()];
        UnionFind union = new UnionFind(grid.vertexCount());
        grid.wires().forEach(wire -> union.join(wire.a(), wire.b()));
        for (Contact contact : grid.contacts()) {
            boolean closed = closedAtStart.test(contact);
            keptIndex[contact.id()] = -1;
            if (keep.test(contact) || !closed) {
                keptIndex[contact.id()] = kept.size();
                kept.add(contact);
            } else {
                union.join(contact.a(), contact.b());
            }
        }
        this.keptStartsClosed = new boolean[kept.size()];
        for (int i = 0; i < kept.size(); i++) {
            keptStartsClosed[i] = closedAtStart.test(kept.get(i));
        }
        this.cellOf = union.numbered();
        this.count = union.count();
        this.keptFrom = kept.stream().mapToInt(c -> cellOf[c.a()]).toArray();
        this.keptTo = kept.stream().mapToInt(c -> cellOf[c.b()]).toArray();
        this.source = new int[count];
        Arrays.fill(source, Status.NONE);
        this.generator = new boolean[count];
        this.content = new int[count];
        fill();
    }

    /**
     * Draws a grid together.
     *
     * @param grid the grid
     * @param identities the supplies
     * @param keep whether a contact may move or must stay visible
     * @param closedAtStart whether a contact is closed at the start; those that are open stay visible too
     * @return the cells
     */
    public static Cells of(
            Grid grid, Identities identities, Predicate<Contact> keep, Predicate<Contact> closedAtStart) {
        return new Cells(grid, identities, keep, closedAtStart);
    }

    private void fill() {
        grid.network().all(Element.Source.class).forEach(this::source);
        for (Grid.Machine machine : grid.machines()) {
            source[cellOf[machine.vertex()]] = identities.of(machine.family().name(), machine.phase().clock());
        }
        grid.network().all(Element.Generator.class).forEach(g -> {
            for (Conductor phase : g.phases()) {
                generator[at(g.node(), phase)] = true;
            }
        });
        grid.network().all(Element.Line.class).forEach(line -> {
            OpeningDuty duty = line.kind().has(Trait.CABLE) ? OpeningDuty.CABLE : OpeningDuty.LINE;
            for (Conductor phase : line.phases()) {
                mark(at(line.from(), phase), duty);
            }
        });
        grid.network().all(Element.Load.class).forEach(l -> mark(l.node(), l.phases(), OpeningDuty.LOAD));
        grid.network().all(Element.Capacitor.class).forEach(c -> mark(c.node(), c.phases(), OpeningDuty.CAPACITOR));
        for (Coupler coupler : grid.couplers()) {
            for (int vertex : coupler.from()) {
                mark(cellOf[vertex], OpeningDuty.TRANSFORMER);
            }
            couplers.add(new Coupler(
                    coupler.transformer(),
                    cells(coupler.primary()),
                    cells(coupler.secondary()),
                    cells(coupler.from()),
                    cells(coupler.to()),
                    coupler.base(),
                    coupler.hours()));
        }
        for (int[] pair : grid.softPairs()) {
            int a = cellOf[pair[0]];
            int b = cellOf[pair[1]];
            if (a != b && soft.stream().noneMatch(p -> p[0] == a && p[1] == b)) {
                soft.add(new int[] {a, b});
            }
        }
    }

    private void source(Element.Source element) {
        for (Conductor phase : element.phases()) {
            if (phase.isPhase()) {
                int cell = at(element.node(), phase);
                int identity = identities.of(element.supply(), phase.clock());
                source[cell] = source[cell] == Status.NONE || source[cell] == identity ? identity : Status.CLASH;
            }
        }
    }

    private void mark(String node, Iterable<Conductor> phases, OpeningDuty duty) {
        for (Conductor phase : phases) {
            mark(at(node, phase), duty);
        }
    }

    private void mark(int cell, OpeningDuty duty) {
        content[cell] |= 1 << duty.ordinal();
    }

    private int at(String node, Conductor phase) {
        return cellOf[grid.number(new Vertex.AtNode(node, phase)).orElseThrow()];
    }

    private int[] cells(int[] vertices) {
        int[] cells = new int[vertices.length];
        for (int i = 0; i < cells.length; i++) {
            cells[i] = vertices[i] < 0 ? -1 : cellOf[vertices[i]];
        }
        return cells;
    }

    private int[][] cells(int[][] windings) {
        int[][] cells = new int[windings.length][];
        for (int i = 0; i < cells.length; i++) {
            cells[i] = cells(windings[i]);
        }
        return cells;
    }

    /** {@return the grid} */
    public Grid grid() {
        return grid;
    }

    /** {@return how many cells there are} */
    public int count() {
        return count;
    }

    /** {@return the cell of a vertex} @param vertex its number */
    public int cell(int vertex) {
        return cellOf[vertex];
    }

    /** {@return the contacts that stayed visible; a set of closed contacts is a set of bits over this list} */
    public List<Contact> kept() {
        return kept;
    }

    /** {@return the place of a contact in {@link #kept}, or -1 if it was drawn together} @param contact its number */
    public int index(int contact) {
        return keptIndex[contact];
    }

    /** {@return whether a kept contact is closed at the start} @param index its place in {@link #kept} */
    public boolean startsClosed(int index) {
        return keptStartsClosed[index];
    }

    /** {@return the supplies} */
    public Identities identities() {
        return identities;
    }
}
