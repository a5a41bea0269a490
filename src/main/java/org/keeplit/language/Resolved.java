package org.keeplit.language;

import java.util.Optional;

/**
 * What the resolving of an item came to.
 *
 * @param thing what could be built; when it is not sound, only good for finding the mistakes of what refers to it
 * @param sound whether nothing in it, and nothing that it refers to, has a mistake
 * @param <T> what it is
 */
record Resolved<T>(Optional<T> thing, boolean sound) {
    /** {@return a result of which nothing could be built} */
    static <T> Resolved<T> nothing() {
        return new Resolved<>(Optional.empty(), false);
    }

    static <T> Resolved<T> of(T thing, boolean sound) {
        return new Resolved<>(Optional.of(thing), sound);
    }

    /** {@return the thing if it is sound} */
    Optional<T> ifSound() {
        return sound ? thing : Optional.empty();
    }
}
