package org.keeplit.program;

import com.google.common.collect.ImmutableList;
import java.util.Optional;
import org.keeplit.network.Conductor;
import org.keeplit.network.Phases;
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

    /** {@return the phase on which it is done, if it is one; one act on all phases of something has none} */
    public Optional<Conductor> phase() {
        Phases all = Phases.NONE;
        for (Primitive primitive : primitives) {
            all = all.or(phases(primitive));
        }
        return all.size() == 1 ? Optional.of(all.list().get(0)) : Optional.empty();
    }

    private static Phases phases(Primitive primitive) {
        if (primitive instanceof Primitive.MovePole p) {
            return p.phases();
        } else if (primitive instanceof Primitive.MoveEnd p) {
            return Phases.of(p.phase());
        } else if (primitive instanceof Primitive.MoveClamp p) {
            return Phases.of(p.phase());
        } else if (primitive instanceof Primitive.Prove p) {
            return Phases.of(p.phase());
        } else if (primitive instanceof Primitive.TestDead p) {
            return Phases.of(p.vertex().conductor());
        } else if (primitive instanceof Primitive.SetMode p) {
            return p.on();
        } else if (primitive instanceof Primitive.RunToNeutral p) {
            return Phases.of(p.phase());
        } else if (primitive instanceof Primitive.Touch p) {
            return Phases.of(p.vertex().conductor());
        } else if (primitive instanceof Primitive.Pass p) {
            return Phases.of(p.phase());
        } else if (primitive instanceof Primitive.Look p) {
            return p.on();
        } else if (primitive instanceof Primitive.Carry p) {
            return p.phases();
        }
        return Phases.NONE;
    }
}
