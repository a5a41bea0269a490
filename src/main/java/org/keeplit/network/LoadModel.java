package org.keeplit.network;

/** How the power of a load follows its voltage. */
public enum LoadModel {
    /** Its power stays the same. */
    POWER("power"),
    /** Its current stays the same. */
    CURRENT("current"),
    /** Its impedance stays the same. */
    IMPEDANCE("impedance");

    private final String word;

    LoadModel(String word) {
        this.word = word;
    }

    /** {@return the word that files use after {@code constant}} */
    public String word() {
        return word;
    }
}
