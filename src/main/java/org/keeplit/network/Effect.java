package org.keeplit.network;

/** What a verb that a kind declares does to one unit of that kind: data over a few primitives. */
public sealed interface Effect {
    /**
     * The pole opens or closes.
     *
     * @param closed whether it ends closed
     */
    record Pole(boolean closed) implements Effect {}

    /**
     * A mode takes a value.
     *
     * @param mode its name
     * @param value its new value
     */
    record SetMode(String mode, String value) implements Effect {}

    /** A regulator runs to neutral. */
    record ToNeutral() implements Effect {}

    /**
     * The device goes to a place.
     *
     * @param place where it ends
     */
    record Carry(Place place) implements Effect {}
}
