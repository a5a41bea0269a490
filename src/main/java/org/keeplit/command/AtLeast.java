package org.keeplit.command;

import picocli.CommandLine;

/** Reads a limit: a whole number of which less would be no limit but a mistake. */
abstract class AtLeast implements CommandLine.ITypeConverter<Integer> {
    private final int least;

    private AtLeast(int least) {
        this.least = least;
    }

    /** 1 or more. */
    static final class One extends AtLeast {
        One() {
            super(1);
        }
    }

    /** 0 or more. */
    static final class Nothing extends AtLeast {
        Nothing() {
            super(0);
        }
    }

    @Override
    public Integer convert(String value) {
        try {
            int number = Integer.parseInt(value);
            if (number >= least) {
                return number;
            }
        } catch (NumberFormatException e) {
            // Told like a number that is too small.
        }
        throw new CommandLine.TypeConversionException("it takes a whole number, " + least + " or more, not “" + value + "”");
    }
}
