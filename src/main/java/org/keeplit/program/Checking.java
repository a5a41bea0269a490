package org.keeplit.program;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.keeplit.condition.Condition;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Predicate;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Mode;
import org.keeplit.network.Phases;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Permit;
import org.keeplit.procedure.Person;
import org.keeplit.text.Span;

/** Programs in which somebody looks whether an act was done as it should be. */
public final class Checking {
    private final Program program;
    private final Act act;
    private final Span span;

    private Checking(Program program, Act act) {
        this.program = program;
        this.act = act;
        this.span = act.step().span();
    }

    /**
     * A look at what an act should have done.
     *
     * @param actor who looks: somebody else, if there is anybody
     * @param text what is looked at, in words
     * @param primitives the looks
     */
    public record Check(String actor, String text, ImmutableList<Primitive> primitives) {}

    /** {@return the looks that could show whether an act was done as it should be, the cheapest first} @param program the program @param act the act */
    public static List<Check> of(Program program, Act act) {
        return new Checking(program, act).all();
    }

    /**
     * A program in which a look comes before a step.
     *
     * @param program the program; its acts keep their numbers
     * @param check the look
     * @param step the number of the step before which it comes; at the end, if it is none of the program's
     * @return the longer program
     */
    public static Program with(Program program, Check check, int step) {
        List<Act> acts = new ArrayList<>(program.acts());
        List<Block.Step> steps = new ArrayList<>(program.steps());
        Block.Step like = program.steps().get(Math.max(0, Math.min(step, program.steps().size() - 1)));
        Block.Step looking = Block.Step.unwritten(
                Optional.empty(), ImmutableList.of(), new Action.Do(check.text()), check.actor() + " " + check.text(),
                like.span());
        Act look = new Act(acts.size(), looking, steps.size(), check.actor(), check.text(), check.primitives());
        acts.add(look);
        steps.add(looking);
        Plan.Leaf leaf = new Plan.Leaf(PlanEdit.leaves(program.plan()), ImmutableList.of(look));
        Plan before = before(program.plan(), step, leaf);
        Plan plan = before.equals(program.plan())
                ? PlanEdit.order(Block.Order.IN_ORDER, List.of(program.plan(), leaf))
                : before;
        return Assembly.again(program, plan, acts, steps);
    }

    private static Plan before(Plan plan, int step, Plan.Leaf look) {
        if (plan instanceof Plan.Node node) {
            if (node.step() == step) {
                return PlanEdit.order(Block.Order.IN_ORDER, List.of(look, node));
            }
            ImmutableList.Builder<Plan> parts = ImmutableList.builder();
            node.parts().forEach(part -> parts.add(before(part, step, look)));
            return new Plan.Node(node.order(), parts.build(), node.step());
        } else if (plan instanceof Plan.Choice choice) {
            return new Plan.Choice(
                    choice.item(),
                    choice.outcome(),
                    before(choice.then(), step, look),
                    before(choice.otherwise(), step, look));
        } else if (plan instanceof Plan.Either either) {
            return new Plan.Either(before(either.body(), step, look), before(either.skip(), step, look));
        }
        return plan;
    }

    private List<Check> all() {
        List<Check> checks = new ArrayList<>();
        for (Primitive primitive : act.primitives()) {
            looks(primitive, checks);
        }
        return checks;
    }

    private void looks(Primitive primitive, List<Check> into) {
        if (primitive instanceof Primitive.MovePole p) {
            Action.Proof proof = p.closed() ? Action.Proof.CLOSED : Action.Proof.OPEN;
            ImmutableList.Builder<Primitive> all = ImmutableList.builder();
            p.phases().forEach(phase -> all.add(new Primitive.Prove(proof, p.device(), phase)));
            String words = p.device() + (p.closed() ? " closed" : " open") + " on phase " + p.phases();
            into.add(new Check(other(), "proves " + words, all.build()));
        } else if (primitive instanceof Primitive.MoveClamp p) {
            boolean on = p.spot() != null;
            ask(on ? Predicate.INSTALLED : Predicate.IN_USE, name(p.family()), p.phase(), List.of(), on, into);
        } else if (primitive instanceof Primitive.MoveEnd p) {
            Term lead = new Term.LeadOf(name(p.device()), p.side(), span);
            ask(p.on() ? Predicate.ATTACHED : Predicate.DETACHED, lead, p.phase(), List.of(), true, into);
        } else if (primitive instanceof Primitive.SetMode p) {
            Conductor unit = isEach(p) ? p.phase() : null;
            ask(Predicate.MODE, name(p.device()), unit, List.of(p.mode(), p.value()), true, into);
        } else if (primitive instanceof Primitive.MoveTag p) {
            ask(Predicate.TAGGED, name(p.device()), null, List.of(), p.on(), into);
        } else if (primitive instanceof Primitive.Speak p) {
            Predicate asked = p.speech() == Action.Speech.RELEASE ? Predicate.RELEASED : Predicate.IN_FORCE;
            ask(asked, name(p.permit()), null, List.of(), true, into);
        } else if (primitive instanceof Primitive.ComeDown p) {
            ask(Predicate.ON_GROUND, name(p.person()), null, List.of(), true, into);
        } else if (primitive instanceof Primitive.Prove p) {
            ask(proved(p.proof()), name(p.subject()), p.phase(), List.of(), true, into);
        }
    }

    /** {@return whether each unit has the setting for itself} */
    private boolean isEach(Primitive.SetMode set) {
        Element element = program.bound().network().element(set.device()).orElseThrow();
        boolean ganged = element instanceof Element.Device device && device.ganged();
        return !ganged && element.kind().mode(set.mode()).map(Mode::each).orElse(false);
    }

    private static Predicate proved(Action.Proof proof) {
        return switch (proof) {
            case OPEN -> Predicate.PROVED_OPEN;
            case CLOSED -> Predicate.PROVED_CLOSED;
            case CARRYING -> Predicate.PROVED_CARRYING;
            case IN_PHASE -> Predicate.PROVED_IN_PHASE;
            case NEUTRAL -> Predicate.PROVED_NEUTRAL;
        };
    }

    private void ask(
            Predicate predicate, Term term, Conductor phase, List<String> words, boolean so, List<Check> into) {
        PhaseTerm on = phase == null ? PhaseTerm.ALL : new PhaseTerm.Given(Phases.of(phase));
        Condition atom =
                new Condition.Atom(predicate, ImmutableList.of(term), on, ImmutableList.copyOf(words), span);
        Condition asked = so ? atom : new Condition.Not(atom, span);
        String state = predicate == Predicate.MODE
                ? words.get(0) + " of " + term + " is " + words.get(1)
                : term + " " + (so ? predicate.words() : predicate.words().replaceFirst("^is ", "is not "));
        String text = "checks that " + state + (phase == null ? "" : " on phase " + phase);
        into.add(new Check(other(), text, ImmutableList.of(new Primitive.Look(asked, Phases.NONE))));
    }

    /** {@return somebody of the crew who does not do the act himself} */
    private String other() {
        List<String> own = List.of(act.actor().split(" and "));
        return program.bound().procedure().crew().stream()
                .filter(p -> !p.desk() && !own.contains(p.name()))
                .map(Person::name)
                .findFirst()
                .orElse(act.actor());
    }

    private Term name(String text) {
        Type type = program.bound()
                .temporary(text)
                .map(t -> Type.valueOf(t.kind().base().name()))
                .or(() -> program.bound().permit(text).map(Permit::type))
                .or(() -> program.bound().network().element(text).map(Checking::type))
                .orElse(Type.PERSON);
        return new Term.Name(text, type, span);
    }

    private static Type type(Element element) {
        return element instanceof Element.Regulator
                ? Type.REGULATOR
                : element instanceof Element.Capacitor ? Type.CAPACITOR : Type.DEVICE;
    }
}
