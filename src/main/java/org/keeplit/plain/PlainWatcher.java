package org.keeplit.plain;

import java.util.function.UnaryOperator;

/** Is told of every state that the plain evaluator meets. */
public interface PlainWatcher {
    /** Wants to know of none. */
    PlainWatcher NOBODY = state -> true;

    /** The search begins. @param valueOf gives the value, in words, that a fact has at the start */
    default void begins(UnaryOperator<String> valueOf) {}

    /** A state is met that was not met before. @param state the state @return whether to go on */
    boolean met(PlainState state);

    /** A load flow without a solution was met: nothing more is known on that way. */
    default void unsolved() {}
}
