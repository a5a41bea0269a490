package org.keeplit.verdict;

/** How words are marked on a terminal; every mark is readable without it. */
public enum Style {
    /** No marks. */
    PLAIN,
    /** Colours of an ANSI terminal. */
    COLOR;

    String good(String text) {
        return paint("32", text);
    }

    String bad(String text) {
        return paint("1;31", text);
    }

    String warning(String text) {
        return paint("33", text);
    }

    String strong(String text) {
        return paint("1", text);
    }

    private String paint(String code, String text) {
        return this == PLAIN ? text : "\u001b[" + code + "m" + text + "\u001b[0m";
    }
}
