package org.keeplit.network;

/** Where a removable device is. */
public enum Place {
    /** In its place on the pole. */
    POLE("on the pole"),
    /** On the ground beside the pole or on the truck. */
    LOWERED("on the ground"),
    /** In the workshop. */
    SHOP("in the shop");

    private final String phrase;

    Place(String phrase) {
        this.phrase = phrase;
    }

    /** {@return the words that files use} */
    public String phrase() {
        return phrase;
    }
}
