package org.keeplit.card;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.Optional;
import org.keeplit.network.Conductor;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Bound;
import org.keeplit.program.Primitive;
import org.keeplit.program.Vertex;

/** To what a primitive is done. */
final class StepObjects {
    private StepObjects() {}

    /** {@return to what it is done, in words} */
    static Optional<String> of(Primitive primitive) {
        if (primitive instanceof Primitive.MovePole p) {
            return Optional.of(p.device() + " on phase " + p.phases());
        } else if (primitive instanceof Primitive.MoveEnd p) {
            return Optional.of("the " + p.side().word() + " lead of " + p.device() + " on phase " + p.phase());
        } else if (primitive instanceof Primitive.MoveClamp p) {
            return Optional.of(p.family() + " for phase " + p.phase());
        } else if (primitive instanceof Primitive.SetMode p) {
            return Optional.of(p.device());
        } else if (primitive instanceof Primitive.RunToNeutral p) {
            return Optional.of(p.regulator() + " on phase " + p.phase());
        } else if (primitive instanceof Primitive.Carry p) {
            return Optional.of(p.device() + " on phase " + p.phases());
        } else if (primitive instanceof Primitive.GoUp p) {
            return Optional.of(p.site());
        } else if (primitive instanceof Primitive.Speak p) {
            return Optional.of(p.permit());
        } else if (primitive instanceof Primitive.MoveTag p) {
            return Optional.of(p.device());
        } else if (primitive instanceof Primitive.Prove p) {
            return Optional.of(p.subject() + " on phase " + p.phase());
        } else if (primitive instanceof Primitive.TestDead p) {
            return Optional.of(p.vertex().toString());
        } else if (primitive instanceof Primitive.Touch p) {
            return Optional.of(p.vertex().toString());
        } else if (primitive instanceof Primitive.Pass p) {
            return Optional.of(p.capacitor() + " on phase " + p.phase());
        }
        return Optional.empty();
    }

    /** {@return whether a picture of the site shows what it does} */
    static boolean shows(Primitive primitive) {
        return primitive instanceof Primitive.MovePole
                || primitive instanceof Primitive.MoveEnd
                || primitive instanceof Primitive.MoveClamp
                || primitive instanceof Primitive.Carry;
    }

    /** {@return the phases on which such a picture changes} */
    static ImmutableSet<Conductor> phases(Primitive primitive) {
        if (primitive instanceof Primitive.MovePole p) {
            return ImmutableSet.copyOf(p.phases().list());
        } else if (primitive instanceof Primitive.MoveEnd p) {
            return ImmutableSet.of(p.phase(), p.onto());
        } else if (primitive instanceof Primitive.Carry p) {
            return ImmutableSet.copyOf(p.phases().list());
        } else if (primitive instanceof Primitive.MoveClamp p) {
            return p.spot() == null || !p.spot().conductor().isPhase()
                    ? ImmutableSet.of(p.phase())
                    : ImmutableSet.of(p.phase(), p.spot().conductor());
        }
        return ImmutableSet.of();
    }

    /** {@return the network's devices that such a picture is of} */
    static ImmutableSet<String> devices(Primitive primitive, Bound bound) {
        if (primitive instanceof Primitive.MovePole p) {
            return ImmutableSet.of(p.device());
        } else if (primitive instanceof Primitive.MoveEnd p) {
            return ImmutableSet.of(p.device());
        } else if (primitive instanceof Primitive.Carry p) {
            return ImmutableSet.of(p.device());
        } else if (primitive instanceof Primitive.MoveClamp p) {
            ImmutableSet.Builder<String> all = ImmutableSet.builder();
            bound.temporary(p.family()).ifPresent(t -> all.add(t.of().toString()));
            if (p.spot() instanceof Vertex.Lead lead) {
                all.add(lead.device());
            } else if (p.spot() instanceof Vertex.Bushing bushing) {
                all.add(bushing.device());
            }
            return all.build();
        }
        return ImmutableSet.of();
    }

    /** {@return what a step writes down by being a record itself} */
    static ImmutableList<String> written(Block.Step step) {
        return step.action() instanceof Action.Record record ? ImmutableList.of(record.item()) : ImmutableList.of();
    }
}
