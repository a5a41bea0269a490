package org.keeplit.page;

import org.keeplit.outcome.Outcome;

/** What was proved of exactly the text that the hash on a page is of. */
public enum Proof {
    /** It holds in every order. */
    HOLDS("The proof holds for exactly this text."),
    /** Something is broken. */
    BROKEN("NOT PROVED: THIS PROCEDURE BREAKS A RULE. NOT FOR USE."),
    /** A limit was reached first. */
    UNDECIDED("NOT PROVED: A LIMIT WAS REACHED. NOT FOR USE."),
    /** No rule that stops came up. */
    NOT_PROVED("NOT PROVED: NO RULE THAT STOPS CAME UP. NOT FOR USE.");

    private final String words;

    Proof(String words) {
        this.words = words;
    }

    /** {@return what was proved} @param outcome what an exploration found */
    public static Proof of(Outcome outcome) {
        return switch (outcome.answer()) {
            case HOLDS -> HOLDS;
            case BROKEN -> BROKEN;
            case UNDECIDED -> UNDECIDED;
            case NOT_PROVED -> NOT_PROVED;
        };
    }

    /** {@return the words on every sheet} */
    public String words() {
        return words;
    }
}
