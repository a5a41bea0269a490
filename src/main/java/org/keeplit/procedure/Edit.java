package org.keeplit.procedure;

import com.google.common.collect.ImmutableList;
import java.util.Optional;
import org.keeplit.network.Conductor;
import org.keeplit.text.Span;

/**
 * One change to a procedure. Teaching variants, slips and mending all speak in these; they are applied to the
 * steps of a bound procedure, after {@code for each phase} was written out.
 */
public sealed interface Edit {
    /** {@return where it was written} */
    Span span();

    /**
     * A step, or its part on one phase.
     *
     * @param label the step's label
     * @param phase the phase, if only that part is meant
     * @param span where it was written
     */
    record Ref(String label, Optional<Conductor> phase, Span span) {
        @Override
        public String toString() {
            return label + phase.map(p -> " on phase " + p).orElse("");
        }
    }

    /**
     * The step is left out.
     *
     * @param step which
     * @param span where it was written
     */
    record Without(Ref step, Span span) implements Edit {}

    /**
     * The step is done elsewhere.
     *
     * @param step which
     * @param before whether it goes before the anchor; otherwise after it
     * @param anchor the step that it goes next to
     * @param span where it was written
     */
    record Move(Ref step, boolean before, Ref anchor, Span span) implements Edit {}

    /**
     * Other steps are done in place of the step.
     *
     * @param step which
     * @param blocks what instead
     * @param span where it was written
     */
    record Replace(Ref step, ImmutableList<Block> blocks, Span span) implements Edit {}

    /**
     * The step is done on another phase.
     *
     * @param step which
     * @param instead the other phase
     * @param span where it was written
     */
    record OtherPhase(Ref step, Conductor instead, Span span) implements Edit {}

    /**
     * More steps are done.
     *
     * @param before whether they go before the anchor; otherwise after it
     * @param anchor the step that they go next to
     * @param blocks the steps
     * @param span where it was written
     */
    record Insert(boolean before, Ref anchor, ImmutableList<Block> blocks, Span span) implements Edit {}
}
