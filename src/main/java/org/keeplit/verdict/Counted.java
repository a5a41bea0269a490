package org.keeplit.verdict;

import java.util.Locale;

/** Says how many there are of something. */
final class Counted {
    private Counted() {}

    /** {@return the number with the word, whose plural ends in s} @param count how many @param one the word for one */
    static String of(long count, String one) {
        return String.format(Locale.ROOT, "%,d %s%s", count, one, count == 1 ? "" : "s");
    }
}
