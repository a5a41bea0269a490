package org.keeplit.program;

import com.google.common.collect.ImmutableList;
import org.keeplit.procedure.Block;

/**
 * One atomic act.
 *
 * @param id its number in the program
 * @param step the step that it belongs to
 * @param stepNumber the number of that step in the program, from 0
 * @param actor who does it
 * @param text the act in words
 * @param primitives what it does; more than one only when the writer says that they are one
 */
public record Act(
        int id, Block.Step step, int stepNumber, String actor, String text, ImmutableList<Primitive> primitives) {

    /** {@return the name by which variants and reports know its step} */
    public String stepName() {
        return step.label().orElse(step.sentence());
    }
}
