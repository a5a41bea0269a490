package org.keeplit.electric;

import java.util.BitSet;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Predicate;
import java.util.function.Supplier;

/**
 * Answers electrical questions about sets of closed contacts on one grid, each set worked out once.
 *
 * <p>Safe for several threads at once.
 */
public final class Electric {
    /** How many sets are kept before all are forgotten; a procedure on one pole has some hundreds. */
    private static final int KEPT = 50_000;

    private final Cells cells;
    private final Predicate<Contact> closedAtStart;
    private final Map<BitSet, Analysis> known = new ConcurrentHashMap<>();
    private final Map<Class<?>, Object> beside = new HashMap<>();
    private Electric whole;
    private final AtomicInteger solved = new AtomicInteger();

    /**
     * Prepares a grid.
     *
     * @param grid the grid
     * @param moves whether some act, reaction or event may move a contact
     * @param closedAtStart whether a contact is closed at the start
     */
    public Electric(Grid grid, Predicate<Contact> moves, Predicate<Contact> closedAtStart) {
        // Reclosing devices bound the region that each of them feeds, so their poles stay visible.
        this(
                Cells.of(
                        grid,
                        new Identities(grid),
                        c -> moves.test(c) || c.part() == Contact.Part.POLE && c.kind().recloses(),
                        closedAtStart),
                closedAtStart);
    }

    private Electric(Cells cells, Predicate<Contact> closedAtStart) {
        this.cells = cells;
        this.closedAtStart = closedAtStart;
    }

    /** {@return the cells that the sets of closed contacts speak of} */
    public Cells cells() {
        return cells;
    }

    /** {@return the set of kept contacts that are closed at the start} */
    public BitSet startSet() {
        BitSet closed = new BitSet();
        for (int i = 0; i < cells.kept().size(); i++) {
            closed.set(i, cells.startsClosed(i));
        }
        return closed;
    }

    /**
     * What follows from a set of closed contacts.
     *
     * @param closed the set, over {@link Cells#kept}; not changed and not kept
     * @return what follows
     */
    public Analysis at(BitSet closed) {
        Analysis analysis = known.get(closed);
        if (analysis == null) {
            if (known.size() >= KEPT) {
                // Whatever is asked again is worked out again, to the same answer.
                known.clear();
            }
            BitSet mine = (BitSet) closed.clone();
            Analysis own = new Analysis(this, mine, StatusSolver.solve(cells, mine));
            // Another thread may have worked out the same meanwhile; it counts once.
            analysis = known.putIfAbsent(mine, own);
            if (analysis == null) {
                analysis = own;
                solved.incrementAndGet();
            }
        }
        return analysis;
    }

    /** Gives back the memory of what was worked out; whatever is asked again is worked out again. */
    public void forget() {
        known.clear();
    }

    /**
     * Something that is worked out from the same grid and the same start, and kept beside this as long as it is used.
     *
     * @param <T> what
     * @param type its class; one of each is kept
     * @param make makes it, when it is first asked for
     * @return the one that is kept
     */
    public synchronized <T> T beside(Class<T> type, Supplier<T> make) {
        return type.cast(beside.computeIfAbsent(type, t -> make.get()));
    }

    /** {@return what is kept beside this of a type, if anything} @param <T> what @param type its class */
    public synchronized <T> Optional<T> beside(Class<T> type) {
        return Optional.ofNullable(type.cast(beside.get(type)));
    }

    /** {@return how many sets were worked out, one that was forgotten and asked again counted twice} */
    public int size() {
        return solved.get();
    }

    /** {@return the same grid with nothing drawn together, for questions about contacts that nothing moves} */
    synchronized Electric whole() {
        if (whole == null) {
            whole = new Electric(Cells.of(cells.grid(), cells.identities(), c -> true, closedAtStart), closedAtStart);
        }
        return whole;
    }

    /** {@return a set over this grid's kept contacts as a set over all of its contacts} */
    BitSet wholeSet(BitSet closed) {
        BitSet all = new BitSet();
        for (Contact contact : cells.grid().contacts()) {
            int index = cells.index(contact.id());
            all.set(whole().cells.index(contact.id()), index < 0 ? closedAtStart.test(contact) : closed.get(index));
        }
        return all;
    }
}
