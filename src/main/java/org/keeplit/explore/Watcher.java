package org.keeplit.explore;

/** Is told how a run gets on, and may stop it. */
public interface Watcher {
    /** Watches nothing. */
    Watcher NOBODY = (states, open) -> true;

    /**
     * Called every few thousand states.
     *
     * @param states how many states were reached
     * @param open how many of them are still to be gone on from
     * @return whether to go on
     */
    boolean goOn(int states, int open);
}
