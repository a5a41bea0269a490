package org.keeplit.language;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.keeplit.text.Problem;

/** Reads the duties that a condition lists: {@code nothing, line charging or load break}. */
final class DutyReader {
    private DutyReader() {}

    /** {@return the duties listed here, by commas and {@code or}} */
    static List<String> read(Cursor cursor, List<String> known) {
        List<String> all = new ArrayList<>();
        all.add(duty(cursor, known).orElseThrow(() -> new Misread(unknownDuty(cursor, known))));
        while (true) {
            int back = cursor.index();
            boolean listed = cursor.take(",");
            listed |= cursor.take("or");
            Optional<String> next = listed ? duty(cursor, known) : Optional.empty();
            if (next.isEmpty()) {
                if (listed && isMisspelt(cursor, known)) {
                    throw new Misread(unknownDuty(cursor, known));
                }
                cursor.moveTo(back);
                return all;
            }
            all.add(next.get());
        }
    }

    /** {@return whether the words after a comma are nearly a duty, not the beginning of something else} */
    private static boolean isMisspelt(Cursor cursor, List<String> known) {
        return nearestDuty(cursor, known).isPresent();
    }

    private static Optional<String> nearestDuty(Cursor cursor, List<String> known) {
        for (int length = 2; length > 0; length--) {
            if (cursor.peek(length - 1) != null) {
                Optional<String> near =
                        Suggestions.nearest(Vocabulary.join(cursor.rest().subList(0, length)), known);
                if (near.isPresent()) {
                    return near;
                }
            }
        }
        return Optional.empty();
    }

    private static Problem unknownDuty(Cursor cursor, List<String> known) {
        String written = Cursor.clip(cursor.need("a duty").getText());
        return cursor.problem(Code.UNKNOWN_WORD, "no duty starts with “" + written + "”")
                .help(nearestDuty(cursor, known)
                        .map(near -> "did you mean " + near + "?")
                        .orElse("there is " + Suggestions.list(known, "and")));
    }

    /** {@return the duty named here, the longest that fits: one duty's words may begin with another's} */
    private static Optional<String> duty(Cursor cursor, List<String> known) {
        return known.stream()
                .sorted(Comparator.comparing(String::length).reversed())
                .filter(phrase -> cursor.take(phrase.split(" ")))
                .findFirst();
    }
}
