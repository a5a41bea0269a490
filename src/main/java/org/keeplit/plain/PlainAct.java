package org.keeplit.plain;

import java.util.List;
import org.keeplit.procedure.Block;

/**
 * One act.
 *
 * @param number tells acts with equal words apart
 * @param stepNumber the number of its step
 * @param step its step
 * @param actors who acts
 * @param deeds what is done
 */
record PlainAct(int number, int stepNumber, Block.Step step, List<String> actors, List<Deed> deeds) {
    @Override
    public boolean equals(Object other) {
        return other instanceof PlainAct that && number == that.number;
    }

    @Override
    public int hashCode() {
        return number;
    }

    @Override
    public String toString() {
        return number + " " + actors + " " + deeds;
    }
}
