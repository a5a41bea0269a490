package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.keeplit.text.Problem;
import org.keeplit.text.Source;
import org.keeplit.text.Span;

/**
 * Writes a file in its one canonical form: each line set in by what it belongs to, one space between words, two before what stands in a
 * column. Words, comments and their order stay as they are; so do the line ends, as the first one is. A file whose lines cannot be told
 * apart for certain, because a quote or an {@code end} is missing, is refused.
 */
public final class Formatter {
    private Formatter() {}

    /**
     * What came of a file.
     *
     * @param text the canonical text; nothing if the file was refused
     * @param problems why it was refused
     */
    public record Formatted(Optional<String> text, ImmutableList<Problem> problems) {}

    /**
     * {@return the canonical form of a file}
     *
     * @param source the file; its name tells its kind
     */
    public static Formatted format(Source source) {
        Optional<FileKind> kind = FileKind.of(source.name());
        if (kind.isEmpty()) {
            return new Formatted(Optional.empty(), ImmutableList.of(FileKind.unknown(Span.ofFile(source))));
        }
        ImmutableList<Problem> errors = errors(kind.get(), source);
        if (!errors.isEmpty()) {
            return new Formatted(Optional.empty(), errors);
        }
        String text = new Writing(source, places(kind.get(), source)).text();
        // A line that is set in or padded may become longer than any that is read.
        ImmutableList<Problem> longer = errors(kind.get(), new Source(source.name(), text));
        return longer.isEmpty() ? new Formatted(Optional.of(text), ImmutableList.of()) : new Formatted(Optional.empty(), longer);
    }

    // Each of these reads the words of the whole file; by themselves, so that they are there only once at a time.

    private static ImmutableList<Problem> errors(FileKind kind, Source source) {
        return new Draft(kind, source).report().problems().stream()
                .filter(p -> p.severity() == Problem.Severity.ERROR)
                .collect(ImmutableList.toImmutableList());
    }

    private static List<Indents.Place> places(FileKind kind, Source source) {
        return new Indents(kind).of(new LineReader(source, new Report(source)).read());
    }

    /** Writes the lines of one file. */
    private static final class Writing {
        private final List<Indents.Place> places;
        private final List<WrittenLine> written = new ArrayList<>();
        private final String lineEnd;

        Writing(Source source, List<Indents.Place> places) {
            this.places = places;
            int first = source.content().indexOf('\n');
            this.lineEnd = first > 0 && source.content().charAt(first - 1) == '\r' ? "\r\n" : "\n";
            source.content().lines().forEach(line -> written.add(WrittenLine.of(line)));
        }

        String text() {
            Indents.Place[] placeOf = new Indents.Place[written.size()];
            places.forEach(place -> placeOf[place.number() - 1] = place);
            List<String> codes = new Columns(written, placeOf).codes();
            StringBuilder out = new StringBuilder();
            boolean gap = false;
            for (int i = 0; i < written.size(); i++) {
                WrittenLine line = written.get(i);
                if (line.isBlank()) {
                    gap = !out.isEmpty();
                    continue;
                }
                out.append(gap ? lineEnd : "");
                gap = false;
                int depth = placeOf[i] != null ? placeOf[i].depth() : depthOfComment(i, placeOf);
                out.append("  ".repeat(depth)).append(codes.get(i));
                if (!line.comment().isEmpty()) {
                    out.append(codes.get(i).isEmpty() ? "" : "  ").append(line.comment());
                }
                out.append(lineEnd);
            }
            return out.toString();
        }

        /**
         * A comment belongs to the line below it; before an {@code end} it belongs to what is inside. Where nothing follows at once, it
         * belongs to the line above.
         */
        private int depthOfComment(int at, Indents.Place[] placeOf) {
            int below = at + 1;
            while (below < placeOf.length && placeOf[below] == null && !written.get(below).isBlank()) {
                below++;
            }
            int above = at - 1;
            while (above >= 0 && placeOf[above] == null && !written.get(above).isBlank()) {
                above--;
            }
            boolean followed = below < placeOf.length && placeOf[below] != null;
            if (!followed && above >= 0 && placeOf[above] != null) {
                return placeOf[above].depth();
            }
            for (int i = below; i < placeOf.length; i++) {
                if (placeOf[i] != null) {
                    return placeOf[i].depth() + (placeOf[i].closes() ? 1 : 0);
                }
            }
            return 0;
        }
    }
}
