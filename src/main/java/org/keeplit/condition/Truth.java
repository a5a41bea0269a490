package org.keeplit.condition;

/** Three-valued truth, ordered by Kleene: false, unknown, true. */
public enum Truth {
    /** It is not so. */
    FALSE,
    /** The model cannot know, for example because a customer's generator may run. */
    UNKNOWN,
    /** It is so. */
    TRUE;

    /** {@return true or false} @param value which */
    public static Truth of(boolean value) {
        return value ? TRUE : FALSE;
    }

    /** {@return the least of both} @param other the other */
    public Truth and(Truth other) {
        return compareTo(other) <= 0 ? this : other;
    }

    /** {@return the greatest of both} @param other the other */
    public Truth or(Truth other) {
        return compareTo(other) >= 0 ? this : other;
    }

    /** {@return the opposite; unknown stays unknown} */
    public Truth not() {
        return this == TRUE ? FALSE : this == FALSE ? TRUE : UNKNOWN;
    }
}
