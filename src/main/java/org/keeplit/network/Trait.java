package org.keeplit.network;

/** Yes-or-no facts about a kind of equipment. */
public enum Trait {
    /** It may be built as single-phase units, each pole alone. */
    SINGLE_PHASE_UNITS("single-phase units"),
    /** It may be built with poles that move together. */
    GANGED("ganged"),
    /** It has a detachable lead on each side. */
    LEADS("leads"),
    /** It opens by itself on overcurrent. */
    TRIPS("trips"),
    /** After a trip it closes by itself, unless its mode {@code reclosing} says otherwise. */
    RECLOSES("recloses"),
    /** It closes by itself when one of its sides loses supply, unless its mode {@code scheme} says otherwise. */
    RESTORES("closes on loss of supply"),
    /** Its control may open or close it at any time, unless its mode {@code control} says otherwise. */
    SELF_SWITCHING("switches by itself"),
    /** Its open gap counts as isolation. */
    ISOLATES("isolates"),
    /** It counts its operations. */
    COUNTS("counts operations"),
    /** It can be taken off its pole and put back. */
    REMOVABLE("removable"),
    /** It may open by itself under load, so that a path through it is not a solid bypass. */
    FUSIBLE("fusible"),
    /** It is cable, not bare conductor. */
    CABLE("cable");

    private final String phrase;

    Trait(String phrase) {
        this.phrase = phrase;
    }

    /** {@return the words that files use} */
    public String phrase() {
        return phrase;
    }
}
