package org.keeplit.electric;

/**
 * What connectivity says of one set of closed contacts. Immutable once solved; everything is per cell of the
 * {@link Cells} it was solved on.
 */
public final class Status {
    /** No identity. */
    static final int NONE = -1;
    /** Two identities meet. */
    static final int CLASH = -2;

    private final int[] component;
    private final byte[] level;
    private final int[] identity;
    private final boolean[] tied;
    private final boolean clash;

    Status(int[] component, byte[] level, int[] identity, boolean[] tied, boolean clash) {
        this.component = component;
        this.level = level;
        this.identity = identity;
        this.tied = tied;
        this.clash = clash;
    }

    /** {@return the component of a cell; equal numbers mean joined} @param cell the cell */
    public int component(int cell) {
        return component[cell];
    }

    /** {@return whether two cells are joined} @param one a cell @param other a cell */
    public boolean joined(int one, int other) {
        return component[one] == component[other];
    }

    /** {@return how alive a cell is} @param cell the cell */
    public Level level(int cell) {
        return LEVELS[level[component[cell]]];
    }

    /** {@return the identity of what energizes a cell, {@code NONE} or {@code CLASH}} @param cell the cell */
    int identity(int cell) {
        return identity[component[cell]];
    }

    /** {@return whether anything that conducts joins the cell to an applied ground} @param cell the cell */
    public boolean tiedToGround(int cell) {
        return tied[component[cell]];
    }

    /** {@return whether two voltages, or a voltage and a ground, meet in the cell} @param cell the cell */
    public boolean shorted(int cell) {
        int at = component[cell];
        return identity[at] == CLASH || tied[at] && LEVELS[level[at]].isAlive();
    }

    /** {@return whether two voltages, or a voltage and a ground, meet anywhere} */
    public boolean shortedAnywhere() {
        return clash;
    }

    private static final Level[] LEVELS = Level.values();
}
