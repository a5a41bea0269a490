package org.keeplit.insight;

/** Where a way is to lead. */
interface Goal {
    /** {@return how many things that stand, hang or are connected are not yet as they should be} */
    int far(long[] state);

    /** {@return how many settings, tags, people, holds and clearances are not yet as they should be} */
    int rest(long[] state);

    /** {@return how many acts it takes at least} */
    int atLeast(long[] state);

    /** {@return whether it is reached} */
    boolean isReached(long[] state);
}
