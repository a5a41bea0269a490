package org.keeplit.program;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.keeplit.condition.Condition;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Term;
import org.keeplit.network.Conductor;
import org.keeplit.network.Effect;
import org.keeplit.network.Element;
import org.keeplit.network.Mode;
import org.keeplit.network.Phases;
import org.keeplit.network.Verb;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.Actions;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.DeviceSet;
import org.keeplit.program.Lowering.Atomic;
import org.keeplit.text.Problem;

/** Writes one step out as atomic acts. */
final class StepActs {
    private final Lowering lowering;
    private final Block.Step step;
    private final String actors;
    private final List<List<Atomic>> out = new ArrayList<>();

    StepActs(Lowering lowering, Block.Step step) {
        this.lowering = lowering;
        this.step = step;
        this.actors = step.actors().stream().map(Term::toString).collect(Collectors.joining(" and "));
    }

    /** {@return how many ends a step moves on each phase: both ends of a jumper or a ground, whose acts stand side by side} */
    static int ends(Action action) {
        return action instanceof Action.Install
                        || action instanceof Action.Remove
                        || action instanceof Action.ApplyGround
                        || action instanceof Action.RemoveGround
                ? 2
                : 1;
    }

    /** {@return whether the two ends on one phase move in the order that the step says} */
    static boolean isEndFirst(Action action) {
        if (action instanceof Action.Install install) {
            return install.ordered();
        } else if (action instanceof Action.Remove remove) {
            return remove.first().isPresent();
        } else if (action instanceof Action.ApplyGround ground) {
            return ground.order() != Action.Order.EITHER;
        }
        return action instanceof Action.RemoveGround ground && ground.order() != Action.Order.EITHER;
    }

    /** {@return the acts; where an act has several outcomes, the outcomes together} */
    List<List<Atomic>> atoms() {
        Action action = step.action();
        if (action instanceof Action.Operate operate) {
            List<String> devices = lowering.devices(operate.object());
            devices.forEach(device -> operate(operate, device));
            if (out.isEmpty() && operate.object() instanceof DeviceSet.Feeding && step.phases() instanceof PhaseTerm.Given given) {
                devices.stream().findFirst().ifPresent(d -> notThere(String.join(" and ", devices), given.phases(), Phases.NONE));
            }
        } else if (action instanceof Action.MoveLead move) {
            phases().forEach(phase -> moveLead(move, phase));
        } else if (action instanceof Action.Tag tag) {
            for (String device : lowering.devices(tag.device())) {
                said((tag.on() ? "tags " : "takes the tag off ") + device, new Primitive.MoveTag(device, tag.on()));
            }
        } else if (!new ClampActs(lowering, step, this).write(action) && !proving(action)) {
            other(action);
        }
        if (out.isEmpty()) {
            add(step.sentence(), new Primitive.Nothing());
        }
        return out;
    }

    void add(String text, Primitive primitive) {
        addBy(actors, text, primitive);
    }

    String actors() {
        return actors;
    }

    void addBy(String actor, String text, Primitive primitive) {
        out.add(List.of(Atomic.of(actor, text, primitive)));
    }

    private static String words(String what, Conductor phase) {
        return what + " on phase " + phase;
    }

    /** Adds an act whose words begin with a verb for one. */
    private void said(String text, Primitive primitive) {
        add(PrimitiveWords.agreeing(actors, text), primitive);
    }

    private void moveLead(Action.MoveLead move, Conductor phase) {
        Conductor onto = single(move.onto(), phase);
        String words = words(
                (move.on() ? "puts on" : "takes off") + " the " + move.side().word() + " lead of " + move.device()
                        + " at the " + move.end().word() + " end",
                phase);
        said(
                onto == phase ? words : words + ", onto phase " + onto,
                new Primitive.MoveEnd(
                        move.device().toString(), move.side(), phase, move.end(), move.on(), onto));
    }

    /** {@return the phase that was said, or the step's own} */
    static Conductor single(Optional<PhaseTerm> said, Conductor own) {
        return said.filter(PhaseTerm.Given.class::isInstance)
                .map(p -> ((PhaseTerm.Given) p).phases().list().get(0))
                .orElse(own);
    }

    List<Conductor> phases() {
        Optional<Term> object = Actions.object(step.action());
        Phases all = object.map(lowering.bound()::phasesOf).orElse(Phases.NONE);
        if (step.phases() instanceof PhaseTerm.Given given) {
            Phases common = given.phases().and(all);
            if (common.isEmpty()) {
                notThere(object.map(Term::toString).orElse("it"), given.phases(), all);
            }
            return common.list();
        }
        return all.list();
    }

    private void notThere(String object, Phases said, Phases has) {
        lowering.problems().add(Problem.error(
                "phase-not-there", step.span(), object + " has no phase " + said + (has.isEmpty() ? "" : ": it has " + has)));
    }

    private void operate(Action.Operate operate, String device) {
        Element element = lowering.element(device);
        boolean ganged = element instanceof Element.Device d && d.ganged();
        Phases all = step.phases() instanceof PhaseTerm.Given given
                ? given.phases().and(element.phases())
                : element.phases();
        String words = (step.actors().size() > 1 ? operate.verb().several() : operate.verb().one()).with(device);
        // The words are the procedure's; what they do is what the kind says that the network uses.
        Optional<Verb> verb = element.kind().verb(operate.verb());
        if (verb.isEmpty()) {
            lowering.problems().add(Problem.error(
                    "verb-not-of-kind",
                    step.span(),
                    device + " is of the kind " + element.kind().name() + ", and the equipment that "
                            + lowering.bound().network().name() + " uses has no verb “" + operate.verb().one().with("X") + "” for it"));
            return;
        }
        if (all.isEmpty() && operate.object() instanceof DeviceSet.One) {
            notThere(device, ((PhaseTerm.Given) step.phases()).phases(), element.phases());
        }
        Set<List<Primitive>> seen = new LinkedHashSet<>();
        for (Conductor phase : all) {
            List<Primitive> primitives = new ArrayList<>();
            for (Effect effect : verb.get().effects()) {
                primitives.add(effect(effect, element, phase, ganged));
            }
            // A ganged set, or one setting for all phases, is one act however many phases were named.
            if (seen.add(primitives)) {
                boolean alone = ganged || isCommon(element, verb.get()) || element.phases().size() == 1;
                String text = alone ? words : words(words, phase);
                out.add(List.of(new Atomic(actors, text, ImmutableList.copyOf(primitives))));
            }
        }
    }

    private static boolean isCommon(Element element, Verb verb) {
        return verb.effects().stream().allMatch(e -> e instanceof Effect.SetMode set
                && element.kind().mode(set.mode()).map(m -> !m.each()).orElse(false));
    }

    private Primitive effect(Effect effect, Element element, Conductor phase, boolean ganged) {
        Phases unit = ganged ? element.phases() : Phases.of(phase);
        if (effect instanceof Effect.Pole pole) {
            return new Primitive.MovePole(element.name(), unit, pole.closed());
        } else if (effect instanceof Effect.SetMode set) {
            Mode mode = element.kind()
                    .mode(set.mode())
                    .orElseThrow(() -> new IllegalStateException(element.kind().name() + " has no " + set.mode()));
            return Primitive.SetMode.of(element, mode, phase, set.value());
        } else if (effect instanceof Effect.Carry carry) {
            return new Primitive.Carry(element.name(), unit, carry.place());
        }
        return new Primitive.RunToNeutral(element.name(), phase);
    }

    private boolean proving(Action action) {
        if (action instanceof Action.Prove prove) {
            for (Conductor phase : phases()) {
                said(
                        words("proves " + prove.of() + " " + PrimitiveWords.proof(prove.proof()), phase),
                        new Primitive.Prove(prove.proof(), prove.of().toString(), phase));
            }
        } else if (action instanceof Action.TestDead test) {
            for (Conductor phase : phases()) {
                Vertex vertex = Points.vertex(lowering.bound(), test.point(), phase);
                said("tests " + vertex + " dead", new Primitive.TestDead(vertex));
            }
        } else if (action instanceof Action.MeasureFigure measure
                && measure.figure().measure().perPhase()) {
            for (Conductor phase : phases()) {
                said(words("measures " + measure.figure(), phase), look(measure.limitOn(phase), Phases.of(phase)));
            }
        } else if (action instanceof Action.Work work) {
            for (Conductor phase : phases()) {
                Vertex vertex = Points.vertex(lowering.bound(), work.point(), phase);
                said("works on " + vertex + ": " + work.words(), new Primitive.Touch(vertex));
            }
        } else if (action instanceof Action.WaitDead wait) {
            for (Conductor phase : phases()) {
                said(
                        words("waits " + wait.time() + " with " + wait.of() + " dead", phase),
                        new Primitive.Pass(
                                wait.of().toString(),
                                phase,
                                (int) Math.round(wait.time().si())));
            }
        } else {
            return false;
        }
        return true;
    }

    /** {@return a look at a limit; what is only to be known changes nothing} */
    private static Primitive look(Optional<Condition> limit, Phases on) {
        return limit.<Primitive>map(l -> new Primitive.Look(l, on)).orElseGet(Primitive.Nothing::new);
    }

    private void other(Action action) {
        if (action instanceof Action.GoAloft go) {
            String site = Points.site(lowering.bound(), go.at());
            lowering.site(site);
            for (Term actor : step.actors()) {
                addBy(actor.toString(), "goes aloft at " + site, new Primitive.GoUp(actor.toString(), site));
            }
        } else if (action instanceof Action.ComeDown) {
            for (Term actor : step.actors()) {
                addBy(actor.toString(), "comes down", new Primitive.ComeDown(actor.toString()));
            }
        } else if (action instanceof Action.Speak speak) {
            said(
                    PrimitiveWords.speech(speak.speech()) + " " + speak.permit(),
                    new Primitive.Speak(speak.speech(), speak.permit().toString()));
        } else if (action instanceof Action.Check check) {
            add(withoutActors(), new Primitive.Look(check.condition(), Phases.NONE));
        } else if (action instanceof Action.MeasureFigure measure) {
            said("measures " + measure.figure(), look(measure.limit(), Phases.NONE));
        } else if (action instanceof Action.WaitUntil wait) {
            add(withoutActors(), new Primitive.Await(wait.condition()));
        } else if (action instanceof Action.Record write) {
            said("records \"" + write.item() + "\"", new Primitive.Write(write.item()));
        } else if (action instanceof Action.Inspect inspect) {
            List<Atomic> all = new ArrayList<>();
            for (int i = 0; i < inspect.outcomes().size(); i++) {
                String outcome = inspect.outcomes().get(i);
                all.add(Atomic.of(
                        actors,
                        PrimitiveWords.agreeing(actors, "inspects") + " \"" + inspect.item() + "\" and finds \"" + outcome + "\"",
                        new Primitive.ComeOut(inspect.item(), i, outcome)));
            }
            out.add(all);
        } else if (action instanceof Action.Brief brief) {
            // What is remembered of a briefing is a matter of the rules that ask for it.
            String people = brief.people().stream().map(Term::toString).collect(Collectors.joining(" and "));
            said("briefs " + people, new Primitive.Nothing());
        } else if (action instanceof Action.Do words) {
            add(words.words(), new Primitive.Nothing());
        } else {
            throw new IllegalStateException("an action of an unknown shape: " + action);
        }
    }

    /** {@return the sentence less the people who begin it, for acts whose words are the writer's own} */
    private String withoutActors() {
        String sentence = step.sentence();
        return sentence.startsWith(actors + " ") ? sentence.substring(actors.length() + 1) : sentence;
    }
}
