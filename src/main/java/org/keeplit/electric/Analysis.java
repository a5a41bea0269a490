package org.keeplit.electric;

import com.google.common.collect.ImmutableSet;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.keeplit.condition.Truth;
import org.keeplit.network.ClosingDuty;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.OpeningDuty;
import org.keeplit.network.Side;
import org.keeplit.network.Trait;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Vertex;

/** What follows from one set of closed contacts. Answers are worked out when first asked for, and kept; several threads may ask at once. */
public final class Analysis {
    private final Electric electric;
    private final BitSet closed;
    private final Status status;
    private volatile Answers answers;
    private volatile Status plain;

    /** What was asked beyond the levels. Of most sets nothing is, so that it is made when something is. */
    private static final class Answers {
        private final Map<Integer, OpeningDuty> opening = new ConcurrentHashMap<>();
        private final Map<Integer, ClosingDuty> closing = new ConcurrentHashMap<>();
        private final Map<Asked, ImmutableSet<String>> feeding = new ConcurrentHashMap<>();
        private final Map<String, Truth> isolated = new ConcurrentHashMap<>();
        private final Map<Looped, Boolean> looped = new ConcurrentHashMap<>();
    }

    private Answers answers() {
        Answers now = answers;
        if (now == null) {
            synchronized (this) {
                now = answers == null ? new Answers() : answers;
                answers = now;
            }
        }
        return now;
    }

    Analysis(Electric electric, BitSet closed, Status status) {
        this.electric = electric;
        this.closed = closed;
        this.status = status;
    }

    /** {@return the components, levels and grounds} */
    public Status status() {
        return status;
    }

    /** {@return how alive a vertex is} @param vertex its number */
    public Level level(int vertex) {
        return status.level(cell(vertex));
    }

    /** {@return whether two voltages, or a voltage and a ground, meet at a vertex} @param vertex its number */
    public boolean shorted(int vertex) {
        return status.shorted(cell(vertex));
    }

    /** {@return whether anything that conducts joins a vertex to an applied ground} @param vertex its number */
    public boolean tiedToGround(int vertex) {
        return status.tiedToGround(cell(vertex));
    }

    /** {@return whether a contact is closed} @param contact the contact */
    public boolean isClosed(Contact contact) {
        int index = electric.cells().index(contact.id());
        return index < 0 || closed.get(index);
    }

    private int cell(int vertex) {
        return electric.cells().cell(vertex);
    }

    /**
     * Whether plain conductor joins a vertex to an applied ground, so that the ground protects people there.
     *
     * @param vertex its number
     * @return whether it does
     */
    public boolean groundedForPeople(int vertex) {
        Electric whole = electric.whole();
        if (plain == null) {
            // Poles, fuses, coils and windings are left out: only conductor carries a ground to a person.
            plain = PlainGround.solve(whole.cells().grid(), electric.wholeSet(closed), whole.cells());
        }
        return plain.tiedToGround(vertex);
    }

    /**
     * Whether a load is supplied.
     *
     * @param cells the cells of its phases A, B and C, or of its two legs; -1 for one that it does not use
     * @return true when all that it uses is energized, three phases are in sequence and two legs opposite; unknown when
     *     only a generator that may run feeds it
     */
    public Truth supplied(int[] cells) {
        Truth all = Truth.TRUE;
        for (int cell : cells) {
            if (cell >= 0) {
                all = all.and(switch (status.level(cell)) {
                    case ENERGIZED -> Truth.of(!status.shorted(cell));
                    case MAY_BE -> Truth.UNKNOWN;
                    default -> Truth.FALSE;
                });
            }
        }
        return all == Truth.TRUE ? Truth.of(inSequence(cells)) : all;
    }

    /** Motors turn backwards when two phases changed places, though every lamp burns. */
    private boolean inSequence(int[] cells) {
        for (int cell : cells) {
            if (cell < 0) {
                return true;
            }
        }
        int a = Identities.clock(status.identity(cells[0]));
        int b = Identities.clock(status.identity(cells[1]));
        if (cells.length == 2) {
            return Math.floorMod(b - a, 12) == 6;
        }
        int c = Identities.clock(status.identity(cells[2]));
        return Math.floorMod(b - a, 12) == 4 && Math.floorMod(c - b, 12) == 4;
    }

    private int number(Vertex vertex) {
        return electric.cells().grid().number(vertex).orElseThrow();
    }

    /** {@return the set that is left when all contacts of a field stand open} */
    private Analysis with(FieldKey key, int value) {
        BitSet next = (BitSet) closed.clone();
        for (Contact contact : electric.cells().grid().contacts(key)) {
            int index = electric.cells().index(contact.id());
            if (index < 0) {
                return wholly().with(key, value);
            }
            next.set(index, contact.value() == value);
        }
        return electric.at(next);
    }

    /**
     * What follows once a contact is open or closed, together with whatever moves with it.
     *
     * @param contact the contact
     * @param closed whether it is closed then
     * @return what follows; by vertex, since it may be worked out on other cells
     */
    public Analysis switched(Contact contact, boolean closed) {
        return with(contact.key(), closed ? contact.value() : 0);
    }

    /** {@return whether two vertices are joined by what conducts} @param one a vertex's number @param other another's */
    public boolean joined(int one, int other) {
        return status.joined(cell(one), cell(other));
    }

    /** {@return the clock angle of the supply at a vertex in hours, A 0, B 4, C 8; -1 where no one supply is} @param vertex its number */
    public int hour(int vertex) {
        int identity = status.identity(cell(vertex));
        return status.level(cell(vertex)) == Level.ENERGIZED && identity >= 0 ? Identities.clock(identity) : -1;
    }

    /** {@return the same set on the grid with nothing drawn together} */
    private Analysis wholly() {
        return electric.whole().at(electric.wholeSet(closed));
    }

    /**
     * What opening a contact would ask of it, together with whatever moves with it.
     *
     * @param contact the contact
     * @return exactly one duty; nothing if it is open already
     */
    public OpeningDuty openingDuty(Contact contact) {
        OpeningDuty duty = answers().opening.get(contact.id());
        if (duty == null) {
            duty = Duties.opening(electric.cells(), this, contact, () -> with(contact.key(), 0));
            answers().opening.put(contact.id(), duty);
        }
        return duty;
    }

    /**
     * What closing a contact would ask of it, together with whatever moves with it.
     *
     * @param contact the contact
     * @return exactly one duty; nothing if it is closed already. A regulator between the sides is not looked at
     *     here, see {@link SiteGraph#unequal}
     */
    public ClosingDuty closingDuty(Contact contact) {
        ClosingDuty duty = answers().closing.get(contact.id());
        if (duty == null) {
            duty = Duties.closing(electric.cells(), this, contact, () -> with(contact.key(), contact.value()));
            answers().closing.put(contact.id(), duty);
        }
        return duty;
    }

    /**
     * Whether a branch's two sides stay joined, at the same angle, when all of its own contacts are taken out.
     *
     * @param branch a device or a regulator
     * @param phase the phase
     * @return whether they do, by whatever path
     */
    public boolean looped(Element.Branch branch, Conductor phase) {
        return answers().looped.computeIfAbsent(new Looped(branch.name(), phase), n -> findLooped(branch, phase));
    }

    private record Looped(String branch, Conductor phase) {}

    private boolean findLooped(Element.Branch branch, Conductor phase) {
        Grid grid = electric.cells().grid();
        List<Contact> own = grid.contactsOf(branch.name());
        if (own.stream().anyMatch(c -> electric.cells().index(c.id()) < 0)) {
            return wholly().findLooped(branch, phase);
        }
        BitSet without = (BitSet) closed.clone();
        own.forEach(c -> without.clear(electric.cells().index(c.id())));
        Status rest = electric.at(without).status;
        int from = cell(number(new Vertex.AtNode(branch.from(), phase)));
        int to = cell(number(new Vertex.AtNode(branch.to(), phase)));
        return !own.isEmpty() && rest.joined(from, to);
    }

    /**
     * The reclosing devices that feed a structure: take all of them out, take what is then joined to the
     * structure, and of those on its border the ones that reach a source the other way. A device that stands at
     * the structure feeds it as long as it is closed.
     *
     * @param site the structure
     * @param mayClose the open devices that may be closed from somewhere else, so that they count as closed
     * @return their names, in the order of the network
     */
    public ImmutableSet<String> feeding(String site, ImmutableSet<String> mayClose) {
        return answers().feeding.computeIfAbsent(
                new Asked(site, mayClose), a -> Feeding.of(electric.cells(), closed, site, mayClose::contains));
    }

    private record Asked(String site, ImmutableSet<String> mayClose) {}

    /**
     * Whether every path from a device or a regulator to anything alive has an open that counts as isolation.
     *
     * @param branch the device or regulator
     * @return unknown when only a generator that may run could reach it
     */
    public Truth isolated(Element.Branch branch) {
        return answers().isolated.computeIfAbsent(branch.name(), n -> findIsolated(branch));
    }

    private Truth findIsolated(Element.Branch branch) {
        Grid grid = electric.cells().grid();
        BitSet joined = (BitSet) closed.clone();
        for (int i = 0; i < electric.cells().kept().size(); i++) {
            Contact contact = electric.cells().kept().get(i);
            if (contact.part() == Contact.Part.POLE && !contact.kind().has(Trait.ISOLATES)) {
                joined.set(i);
            }
        }
        Analysis reach = electric.at(joined);
        Truth all = Truth.TRUE;
        for (Conductor phase : branch.phases()) {
            for (Side side : Side.values()) {
                Vertex bushing = new Vertex.Bushing(branch.name(), side, phase);
                int vertex = grid.number(bushing)
                        .orElseGet(() -> number(new Vertex.AtNode(branch.node(side), phase)));
                all = all.and(dead(reach.level(vertex)));
            }
        }
        return all;
    }

    /** {@return whether a level means that nothing can put voltage there} @param level the level */
    public static Truth dead(Level level) {
        return level == Level.DEAD ? Truth.TRUE : level == Level.MAY_BE ? Truth.UNKNOWN : Truth.FALSE;
    }

    Cells cells() {
        return electric.cells();
    }

    /** {@return the closed contacts, over the cells' kept list; a copy} */
    public BitSet closed() {
        return (BitSet) closed.clone();
    }
}
