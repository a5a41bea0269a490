package org.keeplit.command;

/** The command line's entry point. */
public final class Main {
    private Main() {}

    /**
     * Runs the program.
     *
     * @param arguments the command line
     */
    public static void main(String[] arguments) {
        System.exit(2);
    }
}
