package org.keeplit.language;

import java.util.Locale;
import org.keeplit.text.Problem;
import org.keeplit.text.Span;

/** The stable codes of the mistakes that this room tells. Each has a page in {@code problems.txt}. */
enum Code {
    BAD_NUMBER,
    BAD_TEMPLATE,
    BAD_UTF_8,
    BAD_VARIABLE,
    BAD_VERB,
    CIRCULAR,
    CLAMPS_UNSAID,
    CLAUSE_ALONE,
    DUPLICATE,
    EMPTY_FILE,
    EMPTY_FOLDER,
    EMPTY_GROUP,
    FILE_TOO_LARGE,
    FOLDER_NAMED_AS_FILE,
    LANGUAGE,
    LEFT_OVER,
    LINE_TOO_LONG,
    LOOK_ALIKE,
    MISSING_ARGUMENT,
    MISSING_ATTRIBUTE,
    MISSING_COMMA,
    MISSING_END,
    MISSING_FILE,
    MISSING_IMPEDANCE,
    MISSING_LINE,
    MISSING_QUOTE,
    MISSING_UNIT,
    MIXED_AND_OR,
    NAME_CASE,
    NAMED_ALREADY,
    NO_ACTOR,
    NO_HEAD,
    NO_MEMORY,
    NO_REASON,
    NO_SOURCE,
    NOT_ALONG,
    NOT_PER_PHASE,
    NOTHING_APPLIES,
    PHASE_NOT_BROUGHT,
    RESERVED,
    STRANGE_CHARACTER,
    STRAY_END,
    TOO_DEEP,
    TOO_MANY,
    SKIPPED,
    TWO_READINGS,
    UNEXPECTED,
    UNFINISHED,
    UNKNOWN_ACTOR,
    UNKNOWN_ATTRIBUTE,
    UNKNOWN_COMPARISON,
    UNKNOWN_CONDUCTOR,
    UNKNOWN_EVENT,
    UNKNOWN_FIGURE,
    UNKNOWN_FILE_KIND,
    UNKNOWN_KIND,
    UNKNOWN_LINE,
    UNKNOWN_MODE,
    UNKNOWN_MOMENT,
    UNKNOWN_NAME,
    UNKNOWN_NOUN,
    UNKNOWN_PARAMETER,
    UNKNOWN_PHASE,
    UNKNOWN_PREDICATE,
    UNKNOWN_REFERENCE,
    UNKNOWN_RULE,
    UNKNOWN_SEVERITY,
    UNKNOWN_SPACING,
    UNKNOWN_STEP,
    UNKNOWN_UNIT,
    UNKNOWN_VERB,
    UNKNOWN_WORD,
    UNREACHED,
    UNREADABLE,
    VERB_NOT_OF_KIND,
    WHO_HOLDS_WHICH,
    WRONG_BUILD,
    WRONG_DIMENSION,
    WRONG_PLACE,
    WRONG_SORT;

    /** {@return the code as people see it, such as {@code unknown-name}} */
    String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** {@return an error with this code} @param span where @param message one plain sentence */
    Problem at(Span span, String message) {
        return Problem.error(id(), span, message);
    }

    /** {@return a warning with this code} @param span where @param message one plain sentence */
    Problem warn(Span span, String message) {
        return Problem.warning(id(), span, message);
    }
}
