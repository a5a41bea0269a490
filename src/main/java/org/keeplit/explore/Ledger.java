package org.keeplit.explore;

import java.util.List;

/** Takes down what comes of judging. */
interface Ledger {
    /** {@return whether the case of a rule has come up} @param rule its number */
    boolean isExercised(int rule);

    /** The case of a rule comes up. */
    void exercised(RuleInstance instance, Judging.At at);

    /** The first so many of some rules were judged. */
    void judged(List<RuleInstance> instances, int count);

    /** Something is broken. @param key what tells it from other violations, of which the nearest is kept */
    void broken(Judging.Break found, ViolationKey key);

    /** Events break a rule by themselves. */
    void byEvent(Judging.Break found);

    /** A figure could not be worked out, so that nothing more is known of what follows. */
    void trouble(String what);
}
