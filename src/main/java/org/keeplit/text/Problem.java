package org.keeplit.text;

import java.util.Comparator;
import java.util.Optional;

/**
 * A mistake in the input, told to the person who wrote it.
 *
 * @param code a stable code such as {@code unknown-device}; each has a page of explanation
 * @param severity whether it stops the run
 * @param span where
 * @param message one plain sentence on what is wrong
 * @param help what was probably meant, if anything can be said
 * @param related another place that the mistake contradicts, with a word on it
 */
public record Problem(
        String code, Severity severity, Span span, String message, Optional<String> help, Optional<Related> related) {

    /** How much a problem matters. */
    public enum Severity {
        /** The file cannot be used. */
        ERROR,
        /** The file can be used, but probably does not say what was meant. */
        WARNING
    }

    /**
     * A second place.
     *
     * @param span where
     * @param note what is there
     */
    public record Related(Span span, String note) {}

    /** The order in which problems are shown: by file, line, column, then code and message. */
    public static final Comparator<Problem> ORDER = Comparator.comparing((Problem p) -> p.span.source().name())
            .thenComparing(p -> p.span.line())
            .thenComparing(p -> p.span.column())
            .thenComparing(Problem::code)
            .thenComparing(Problem::message);

    /**
     * {@return an error without help}
     *
     * @param code its code
     * @param span where
     * @param message what
     */
    public static Problem error(String code, Span span, String message) {
        return new Problem(code, Severity.ERROR, span, message, Optional.empty(), Optional.empty());
    }

    /**
     * {@return a warning without help}
     *
     * @param code its code
     * @param span where
     * @param message what
     */
    public static Problem warning(String code, Span span, String message) {
        return new Problem(code, Severity.WARNING, span, message, Optional.empty(), Optional.empty());
    }

    /**
     * {@return this problem with advice}
     *
     * @param advice what was probably meant
     */
    public Problem help(String advice) {
        return new Problem(code, severity, span, message, Optional.of(advice), related);
    }

    /**
     * {@return this problem with a second place}
     *
     * @param where the place
     * @param note what is there
     */
    public Problem related(Span where, String note) {
        return new Problem(code, severity, span, message, help, Optional.of(new Related(where, note)));
    }
}
