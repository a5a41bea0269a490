package org.keeplit.network;

/** The families that every kind of equipment belongs to; they fix its anatomy. */
public enum Base {
    /** Holds its node at a voltage. */
    SOURCE("source"),
    /** Joins two nodes and cannot be opened. */
    LINE("line section"),
    /** Couples the conductors of two nodes by windings. */
    TRANSFORMER("transformer"),
    /** A series element with taps and a control. */
    REGULATOR("regulator"),
    /** Hangs on a node and stores charge. */
    CAPACITOR("capacitor bank"),
    /** Hangs on a node and serves customers. */
    LOAD("load"),
    /** Hangs on a node and may feed it. */
    GENERATOR("generator"),
    /** Joins two nodes by poles that open and close. */
    SWITCH("switching device"),
    /** Brought to the site: joins two points by two clamps. */
    JUMPER("temporary conductor"),
    /** Brought to the site: joins a point to earth. */
    GROUND("protective ground"),
    /** Brought to the site: a generating set that holds what it is connected to at a voltage while it runs. */
    MOBILE("temporary source");

    private final String phrase;

    Base(String phrase) {
        this.phrase = phrase;
    }

    /** {@return the words that files use} */
    public String phrase() {
        return phrase;
    }

    /** {@return whether it is brought to the site and taken away again} */
    public boolean isTemporary() {
        return this == JUMPER || this == GROUND || this == MOBILE;
    }
}
