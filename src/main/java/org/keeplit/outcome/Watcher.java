package org.keeplit.outcome;

/** Is told how a run gets on, and may stop it. */
public interface Watcher {
    /** Watches nothing. */
    Watcher NOBODY = (states, open) -> true;

    /**
     * Called once before a search.
     *
     * @param procedure the procedure's name
     * @param orders how many combinations of acts done and not done its orders allow; the states are at most this
     *     many for each way in which inspections may come out
     * @param stateBits how many bits a state takes
     */
    default void begins(String procedure, double orders, int stateBits) {}

    /**
     * Called once in some hundreds of states, so not at all in a search that is done before.
     *
     * @param states how many states were reached
     * @param open how many of them are still to be gone on from
     * @return whether to go on
     */
    boolean goOn(int states, int open);

    /** {@return whether what was not begun is not to be begun any more} */
    default boolean isStopped() {
        return false;
    }

    /** {@return whether every rule is to be explained in full at the state in which it was first put to the question} */
    default boolean wantsReasons() {
        return false;
    }
}
