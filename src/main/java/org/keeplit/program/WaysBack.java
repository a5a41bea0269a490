package org.keeplit.program;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.keeplit.network.Base;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Mode;
import org.keeplit.network.Phases;
import org.keeplit.network.Place;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Bound;
import org.keeplit.procedure.Permit;
import org.keeplit.procedure.Person;

/**
 * A program with the acts that take back what it does, and the proofs that these ask for. No order calls for them: who looks for a way
 * back tries them, see {@link Orders.Move#atWill}. Each is done by whoever does the act that it takes back.
 */
public final class WaysBack {
    private final Program program;
    private final Bound bound;
    private final List<Act> acts;
    private final List<Block.Step> steps;
    private final Set<Object> known = new HashSet<>();

    private WaysBack(Program program) {
        this.program = program;
        this.bound = program.bound();
        this.acts = new ArrayList<>(program.acts());
        this.steps = new ArrayList<>(program.steps());
        program.acts().forEach(act -> known.add(key(act.actor(), act.primitives())));
    }

    /** {@return the longer program; its own acts keep their numbers} @param program the program */
    public static Program of(Program program) {
        return new WaysBack(program).all();
    }

    private Program all() {
        for (Act act : program.acts()) {
            for (Primitive primitive : act.primitives()) {
                opposite(primitive).forEach(p -> add(act, act.actor(), p));
            }
        }
        for (Act act : program.acts()) {
            for (Primitive primitive : act.primitives()) {
                proofs(primitive).forEach(p -> add(act, act.actor(), p));
            }
        }
        bound.permits().forEach(this::speeches);
        return Assembly.again(program, program.plan(), acts, steps);
    }

    private static Object key(String actor, List<Primitive> primitives) {
        return List.of(actor, primitives);
    }

    /** Adds an act that is like another. @param like the act that says in which step it would stand */
    private void add(Act like, String actor, Primitive primitive) {
        String text = PrimitiveWords.agreeing(actor, PrimitiveWords.of(primitive, bound.network()).orElseThrow());
        if (!known.add(key(actor, List.of(primitive)))) {
            return;
        }
        Block.Step step = Block.Step.unwritten(
                Optional.empty(), like.step().actors(), new Action.Do(text), actor + " " + text,
                like.step().span());
        acts.add(new Act(acts.size(), step, steps.size(), actor, text, ImmutableList.of(primitive)));
        steps.add(step);
    }

    private List<Primitive> opposite(Primitive primitive) {
        if (primitive instanceof Primitive.MovePole p) {
            return List.of(new Primitive.MovePole(p.device(), p.phases(), !p.closed()));
        } else if (primitive instanceof Primitive.MoveEnd p) {
            return List.of(new Primitive.MoveEnd(p.device(), p.side(), p.phase(), p.end(), !p.on(), p.phase()));
        } else if (primitive instanceof Primitive.MoveClamp p) {
            if (p.spot() != null) {
                return List.of(new Primitive.MoveClamp(p.family(), p.phase(), p.clamp(), null));
            }
            FieldKey.Clamp clamp = new FieldKey.Clamp(p.family(), p.phase(), p.clamp());
            return program.spots().getOrDefault(clamp, ImmutableList.of()).stream()
                    .<Primitive>map(v -> new Primitive.MoveClamp(p.family(), p.phase(), p.clamp(), v))
                    .toList();
        } else if (primitive instanceof Primitive.SetMode p) {
            Mode mode = element(p.device()).kind().mode(p.mode()).orElseThrow();
            return mode.values().stream()
                    .filter(v -> !v.equals(p.value()))
                    .<Primitive>map(v -> new Primitive.SetMode(p.device(), p.on(), p.mode(), v))
                    .toList();
        } else if (primitive instanceof Primitive.Carry p) {
            Place other = p.place() == Place.POLE ? Place.LOWERED : Place.POLE;
            return List.of(new Primitive.Carry(p.device(), p.phases(), other));
        } else if (primitive instanceof Primitive.GoUp p) {
            return List.of(new Primitive.ComeDown(p.person()));
        } else if (primitive instanceof Primitive.ComeDown p) {
            return program.sites().stream().<Primitive>map(s -> new Primitive.GoUp(p.person(), s)).toList();
        } else if (primitive instanceof Primitive.MoveTag p) {
            return List.of(new Primitive.MoveTag(p.device(), !p.on()));
        }
        return List.of();
    }

    /** {@return what can be found out about the thing that moves} */
    private List<Primitive> proofs(Primitive primitive) {
        List<Primitive> all = new ArrayList<>();
        if (primitive instanceof Primitive.MovePole p) {
            prove(p.device(), p.phases(), all, Action.Proof.OPEN, Action.Proof.CLOSED, Action.Proof.IN_PHASE, Action.Proof.CARRYING);
        } else if (primitive instanceof Primitive.MoveEnd p) {
            prove(p.device(), Phases.of(p.phase()), all, Action.Proof.OPEN, Action.Proof.IN_PHASE);
        } else if (primitive instanceof Primitive.MoveClamp p) {
            Base base = bound.temporary(p.family()).orElseThrow().kind().base();
            if (base == Base.JUMPER) {
                prove(p.family(), Phases.of(p.phase()), all, Action.Proof.CARRYING);
            } else if (base == Base.GROUND && p.spot() != null && p.spot() != Vertex.EARTH) {
                all.add(new Primitive.TestDead(p.spot()));
            }
        } else if (primitive instanceof Primitive.RunToNeutral p) {
            prove(p.regulator(), Phases.of(p.phase()), all, Action.Proof.NEUTRAL);
        }
        return all;
    }

    private static void prove(String subject, Phases phases, List<Primitive> into, Action.Proof... proofs) {
        for (Action.Proof proof : proofs) {
            for (Conductor phase : phases) {
                into.add(new Primitive.Prove(proof, subject, phase));
            }
        }
    }

    /** A hold or clearance that was given back can be asked for again. */
    private void speeches(Permit permit) {
        Optional<Act> like = program.acts().stream()
                .filter(a -> a.primitives().stream()
                        .anyMatch(p -> p instanceof Primitive.Speak s && s.permit().equals(permit.name())))
                .findFirst();
        Optional<String> desk = bound.procedure().crew().stream()
                .filter(Person::desk)
                .map(Person::name)
                .findFirst();
        for (Action.Speech speech : Action.Speech.values()) {
            boolean ofDesk = speech == Action.Speech.ISSUE || speech == Action.Speech.CONFIRM;
            Optional<String> who = ofDesk ? desk : Optional.of(permit.holder().toString());
            if (like.isPresent() && who.isPresent()) {
                add(like.get(), who.get(), new Primitive.Speak(speech, permit.name()));
            }
        }
    }

    private Element element(String name) {
        return bound.network().element(name).orElseThrow();
    }
}
