package org.keeplit.explore;

/** Something trips by itself at the start, so that the start cannot be as the input says. */
final class NotAtRest extends RuntimeException {
    private static final long serialVersionUID = 1;

    NotAtRest(String what) {
        super(what);
    }
}
