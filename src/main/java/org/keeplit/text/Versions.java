package org.keeplit.text;

/** The versions that everything tells about itself. The language's goes its own way. */
public final class Versions {
    /** The version of the program, by the rules of semantic versioning 2.0.0. */
    public static final String PROGRAM = "0.2.0";
    /** The version of the language that files begin with. */
    public static final int LANGUAGE = 1;

    private Versions() {}
}
