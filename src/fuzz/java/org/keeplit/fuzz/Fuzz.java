package org.keeplit.fuzz;

/** The entry of the fuzzer: the target by the system property {@code fuzz.target}. */
public final class Fuzz {
    private Fuzz() {}

    /** Tries one input. @param bytes the input */
    public static void fuzzerTestOneInput(byte[] bytes) {
        Targets.ALL.get(System.getProperty("fuzz.target", "procedure")).accept(bytes);
    }
}
