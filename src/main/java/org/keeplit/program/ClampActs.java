package org.keeplit.program;

import java.util.Optional;
import org.keeplit.condition.Term;
import org.keeplit.network.Base;
import org.keeplit.network.Conductor;
import org.keeplit.network.Side;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Person;
import org.keeplit.text.Problem;

/** Writes the steps that move clamps out as acts: one for each end of a jumper or a ground. */
final class ClampActs {
    private final Lowering lowering;
    private final Block.Step step;
    private final StepActs acts;

    ClampActs(Lowering lowering, Block.Step step, StepActs acts) {
        this.lowering = lowering;
        this.step = step;
        this.acts = acts;
    }

    /** {@return whether the action moves clamps; if so its acts are written} */
    boolean write(Action action) {
        if (action instanceof Action.Install install) {
            for (Conductor phase : acts.phases()) {
                String family = install.jumper().toString();
                clampOn(family, phase, 1, install.first(), clampActor(install.first()));
                clampOn(family, phase, 2, install.second(), clampActor(install.second()));
            }
        } else if (action instanceof Action.Remove remove) {
            acts.phases().forEach(phase -> remove(remove, phase));
        } else if (action instanceof Action.Clamp clamp) {
            for (Conductor phase : acts.phases()) {
                clampOn(clamp.jumper().toString(), phase, clamp.clamp(), clamp.spot(), acts.actors());
            }
        } else if (action instanceof Action.Unclamp unclamp) {
            for (Conductor phase : acts.phases()) {
                clampOff(unclamp.jumper().toString(), phase, unclamp.clamp());
            }
        } else if (action instanceof Action.Run run) {
            acts.phases().forEach(phase -> run(run, phase));
        } else if (action instanceof Action.ApplyGround ground) {
            for (Conductor phase : acts.phases()) {
                Vertex at = Points.vertex(lowering.bound(), ground.point(), phase);
                ends(ground.ground().toString(), phase, ground.order(), true, at);
            }
        } else if (action instanceof Action.RemoveGround ground) {
            for (Conductor phase : acts.phases()) {
                ends(ground.ground().toString(), phase, ground.order(), false, null);
            }
        } else {
            return false;
        }
        return true;
    }

    /** Two people who install a jumper stand on the two sides: each has the clamp of the own side. */
    private String clampActor(Action.Spot spot) {
        if (step.actors().size() == 2 && spot.point() instanceof Term.LineOf line) {
            for (Term actor : step.actors()) {
                if (sideOf(actor.toString()).equals(Optional.of(line.side()))) {
                    return actor.toString();
                }
            }
        }
        return acts.actors();
    }

    private Optional<Side> sideOf(String person) {
        return lowering.bound().procedure().crew().stream()
                .filter(p -> p.name().equals(person))
                .findFirst()
                .flatMap(Person::side);
    }

    private void clampOn(String family, Conductor phase, int clamp, Action.Spot spot, String actor) {
        Vertex vertex = Points.vertex(lowering.bound(), spot.point(), StepActs.single(spot.phase(), phase));
        lowering.spot(new FieldKey.Clamp(family, phase, clamp), vertex);
        String what = isOf(family, Base.MOBILE)
                ? "connects " + family + " for phase " + phase + " to " + vertex
                : "puts the " + (clamp == 1 ? "first" : "second") + " clamp of " + family + " for phase " + phase
                        + " on " + vertex;
        acts.addBy(
                actor,
                what,
                new Primitive.MoveClamp(family, phase, clamp, vertex));
    }

    private void clampOff(String family, Conductor phase, int clamp) {
        acts.add(
                isOf(family, Base.MOBILE)
                        ? "disconnects " + family + " for phase " + phase
                        : "takes the " + (clamp == 1 ? "first" : "second") + " clamp of " + family + " for phase " + phase
                                + " off",
                new Primitive.MoveClamp(family, phase, clamp, null));
    }

    /** The output switch is one for all phases; its acts are drawn together into one. */
    private void run(Action.Run run, Conductor phase) {
        String family = run.source().toString();
        Vertex machine = new Vertex.Machine(family, phase);
        if (run.on()) {
            lowering.spot(new FieldKey.Clamp(family, phase, 1), machine);
        }
        acts.add(
                (run.on() ? "starts " : "stops ") + family,
                new Primitive.MoveClamp(family, phase, 1, run.on() ? machine : null));
    }

    private boolean isOf(String family, Base base) {
        return lowering.bound().temporary(family).filter(t -> t.kind().base() == base).isPresent();
    }

    private void remove(Action.Remove remove, Conductor phase) {
        String family = remove.jumper().toString();
        int first = 1;
        if (remove.first().isPresent()) {
            Side side = remove.first().get();
            Optional<Integer> clamp = lowering.sides().clampOn(family, phase, side);
            if (clamp.isEmpty()) {
                lowering.problems().add(Problem.error(
                                "which-clamp",
                                step.span(),
                                "it is not known which clamp of " + family + " sits on the " + side.word() + " side on phase " + phase)
                        .help("write one step for each clamp: takes the first clamp of " + family + " off"));
            }
            first = clamp.orElse(1);
        }
        end(family, phase, first);
        end(family, phase, 3 - first);
    }

    private void ends(String family, Conductor phase, Action.Order order, boolean on, Vertex at) {
        int first = order == Action.Order.LINE_END ? 2 : 1;
        for (int clamp : new int[] {first, 3 - first}) {
            if (at == null && !on) {
                end(family, phase, clamp);
            } else {
                Vertex vertex = clamp == 1 ? Vertex.EARTH : at;
                lowering.spot(new FieldKey.Clamp(family, phase, clamp), vertex);
                acts.add(
                        "puts the " + (clamp == 1 ? "ground" : "line") + " end of " + family + " for phase " + phase
                                + " on " + vertex,
                        new Primitive.MoveClamp(family, phase, clamp, vertex));
            }
        }
    }

    private void end(String family, Conductor phase, int clamp) {
        if (isOf(family, Base.GROUND)) {
            acts.add(
                    "takes the " + (clamp == 1 ? "ground" : "line") + " end of " + family + " for phase " + phase
                            + " off",
                    new Primitive.MoveClamp(family, phase, clamp, null));
        } else {
            clampOff(family, phase, clamp);
        }
    }
}
