package org.keeplit.language;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** What was probably meant: the nearest name by slips of the hand. */
final class Suggestions {
    // Longer words are compared by their beginning only, so that hostile input costs little.
    private static final int LONGEST = 60;
    // Nobody has more names in scope; hostile input may.
    private static final int MOST = 5000;

    private static final Pattern WITHOUT_THE = Pattern.compile(
            "(^|\\b(?:on|in|at|is|are|not|takes|puts) )(ground|pole|shop|same|line end|bushing end|tag off|first clamp"
                    + "|second clamp)\\b");

    private Suggestions() {}

    /**
     * The name nearest to what was written, if it is near enough.
     *
     * @param written what was written
     * @param names what could have been meant; of equally near ones the first counts
     * @return the nearest name
     */
    static Optional<String> nearest(String written, Iterable<String> names) {
        // A name with all its letters changed is another name.
        int enough = Math.min(written.length() - 1, Math.min(3, (written.length() + 2) / 3));
        String best = null;
        int least = enough + 1;
        int seen = 0;
        for (String name : names) {
            if (name.equalsIgnoreCase(written)) {
                return Optional.of(name);
            }
            if (seen++ < MOST) {
                int distance = distance(written, name, least - 1);
                if (distance < least) {
                    least = distance;
                    best = name;
                }
            }
        }
        return Optional.ofNullable(best);
    }

    /** {@return advice with the nearest name, or the empty string} */
    static Optional<String> didYouMean(String written, Iterable<String> names) {
        return nearest(written, names).map(name -> "did you mean " + name + "?");
    }

    /** {@return the names in a sentence: {@code a, b or c}, cut short when there are many} */
    static String list(Iterable<String> names, String last) {
        List<String> all = new ArrayList<>();
        names.forEach(all::add);
        if (all.size() > 12) {
            return String.join(", ", all.subList(0, 12)) + " and " + (all.size() - 12) + " more";
        }
        if (all.size() < 2) {
            return String.join("", all);
        }
        return String.join(", ", all.subList(0, all.size() - 1)) + " " + last + " " + all.get(all.size() - 1);
    }

    /** {@return words as people say them: the lexicon leaves out {@code the}, which is optional everywhere} */
    static String withThe(String words) {
        return WITHOUT_THE.matcher(words).replaceAll("$1the $2");
    }

    /** {@return a noun with its article} */
    static String a(String noun) {
        return ("aeiou".indexOf(noun.charAt(0)) >= 0 ? "an " : "a ") + noun;
    }

    /** {@return the distance of two words, however far they are} */
    static int distance(String a, String b) {
        return distance(a, b, LONGEST);
    }

    /**
     * The Damerau-Levenshtein distance in its restricted form.
     *
     * @param limit distances above it need not be told apart
     * @return the distance, or any number above the limit
     */
    private static int distance(String a, String b, int limit) {
        String left = a.substring(0, Math.min(LONGEST, a.length()));
        String right = b.substring(0, Math.min(LONGEST, b.length()));
        if (Math.abs(left.length() - right.length()) > limit) {
            return limit + 1;
        }
        int[][] cost = new int[left.length() + 1][right.length() + 1];
        for (int i = 0; i <= left.length(); i++) {
            int least = Integer.MAX_VALUE;
            for (int j = 0; j <= right.length(); j++) {
                cost[i][j] = i == 0 || j == 0 ? i + j : step(cost, left, right, i, j);
                least = Math.min(least, cost[i][j]);
            }
            if (least > limit) {
                return limit + 1;
            }
        }
        return cost[left.length()][right.length()];
    }

    private static int step(int[][] cost, String left, String right, int i, int j) {
        int change = left.charAt(i - 1) == right.charAt(j - 1) ? 0 : 1;
        int least = Math.min(Math.min(cost[i - 1][j], cost[i][j - 1]) + 1, cost[i - 1][j - 1] + change);
        boolean swapped = i > 1
                && j > 1
                && left.charAt(i - 1) == right.charAt(j - 2)
                && left.charAt(i - 2) == right.charAt(j - 1);
        return swapped ? Math.min(least, cost[i - 2][j - 2] + 1) : least;
    }
}
