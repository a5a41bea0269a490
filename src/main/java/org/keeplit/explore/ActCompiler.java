package org.keeplit.explore;

import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.keeplit.network.Base;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.LeadEnd;
import org.keeplit.network.Mode;
import org.keeplit.network.Phases;
import org.keeplit.network.Place;
import org.keeplit.network.Side;
import org.keeplit.network.Trait;
import org.keeplit.procedure.Action;
import org.keeplit.program.Act;
import org.keeplit.program.Field;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Primitive;
import org.keeplit.program.Units;
import org.keeplit.rule.Chance;

/** Turns an act into what the explorer runs: whether it can be done, what a person looks at, what it changes. */
final class ActCompiler {
    private final World world;
    private final AtomCompiler atoms;
    private final ConditionCompiler conditions;
    private final ProofNodes proofs;

    ActCompiler(World world, ConditionCompiler conditions) {
        this.world = world;
        this.atoms = new AtomCompiler(world);
        this.conditions = conditions;
        this.proofs = new ProofNodes(world, atoms);
    }

    /**
     * A compiled act.
     *
     * @param act the act
     * @param possible what must be so for it to be done at all
     * @param seen what a person must find; if not, the crew stops
     * @param awaited what a person waits for
     * @param ops what it changes
     * @param disturbance what makes a test for dead stale; null if nothing moves and no time passes
     */
    record Compiled(
            Act act, Node possible, Node seen, Node awaited, Op[] ops, Settling.Disturbance disturbance) {}

    Compiled compile(Act act) {
        List<Node> possible = new ArrayList<>();
        List<Node> seen = new ArrayList<>();
        List<Node> awaited = new ArrayList<>();
        List<Op> ops = new ArrayList<>();
        boolean disturbs = false;
        if (act.step().action() instanceof Action.Happen) {
            return chance(act);
        }
        possible.add(canAct(act));
        for (Primitive primitive : act.primitives()) {
            possible.add(possible(primitive));
            seen.add(seen(primitive));
            if (primitive instanceof Primitive.Await await) {
                awaited.add(conditions.compile(await.condition(), Environment.EMPTY));
            }
            ops(primitive, ops);
            disturbs |= disturbs(primitive);
        }
        for (String item : act.step().records()) {
            set(ops, new FieldKey.Recorded(item), 1);
        }
        Settling.Disturbance disturbance =
                disturbs ? new Settling.Disturbance(ImmutableSet.copyOf(Events.actors(act))) : null;
        return new Compiled(
                act, Node.all(possible), Node.all(seen), Node.all(awaited), ops.toArray(new Op[0]), disturbance);
    }

    /** Whoever has left does nothing, and whoever cannot be spoken with is told nothing and says nothing. */
    private Node canAct(Act act) {
        List<Node> all = new ArrayList<>();
        for (String actor : Events.actors(act)) {
            all.add(Node.not(atoms.is(new FieldKey.Where(actor), world.program().sites().size() + 1)));
            all.add(Node.not(atoms.is(new FieldKey.CutOff(actor), 1)));
        }
        if (act.primitives().stream().anyMatch(Primitive.Speak.class::isInstance)) {
            for (Field field : world.program().layout().fields()) {
                if (field.key() instanceof FieldKey.CutOff) {
                    all.add(new Nodes.FieldIs(field, 0));
                }
            }
        }
        return Node.all(all);
    }

    /** An event happens where it changes something, its condition may be so, and there is room for it. */
    private Compiled chance(Act act) {
        int number = world.chance(act);
        Chances.One one = world.chances().get(number);
        List<Node> possible = new ArrayList<>();
        List<Op> ops = new ArrayList<>();
        List<Field> places = world.happened();
        // Room is left as long as the last place is free.
        possible.add(new Nodes.FieldIs(places.get(places.size() - 1), 0));
        places.forEach(place -> possible.add(Node.not(new Nodes.FieldIs(place, number + 1))));
        List<Node> any = new ArrayList<>();
        for (Primitive primitive : act.primitives()) {
            any.add(changes(primitive));
            ops(primitive, ops);
        }
        // A clamp that is off does not come off; a pole that is open does not open. What still moves, moves.
        possible.add(Node.one(any));
        possible.add(Node.one(one.environments().stream().map(e -> may(one.chance(), e)).toList()));
        ops.add(new Op.Happen(places, number));
        return new Compiled(
                act,
                Node.all(possible),
                Node.Constant.TRUE,
                Node.Constant.TRUE,
                ops.toArray(new Op[0]),
                act.primitives().stream().anyMatch(this::disturbs) ? Settling.Disturbance.BY_ITSELF : null);
    }

    /** {@return what an event asks for with what its variables stand for} */
    private Node may(Chance chance, Environment environment) {
        List<Node> all = new ArrayList<>();
        chance.when().ifPresent(c -> all.add(conditions.compile(c, environment)));
        chance.binders().forEach(b -> b.such().ifPresent(c -> all.add(conditions.compile(c, environment))));
        return Node.all(all);
    }

    /** {@return whether something that happens would change anything} */
    private Node changes(Primitive primitive) {
        if (primitive instanceof Primitive.SetMode set) {
            Mode mode = element(set.device()).kind().mode(set.mode()).orElseThrow();
            return Node.not(atoms.is(
                    new FieldKey.Mode(set.device(), set.phase(), set.mode()), mode.values().indexOf(set.value())));
        } else if (primitive instanceof Primitive.Leave leave) {
            return Node.not(atoms.is(new FieldKey.Where(leave.person()), world.program().sites().size() + 1));
        } else if (primitive instanceof Primitive.CutOff cut) {
            return atoms.is(new FieldKey.CutOff(cut.person()), 0);
        } else if (primitive instanceof Primitive.FailToTrip fails) {
            return atoms.is(new FieldKey.Failed(fails.device()), 0);
        } else if (primitive instanceof Primitive.Fault fault) {
            return Node.one(world.places(fault).stream()
                    .map(vertex -> Node.not(new Nodes.Alive(vertex, Nodes.Voltage.DEAD)))
                    .toList());
        }
        return possible(primitive);
    }

    /** {@return what one pole's moving by itself changes} */
    Op[] moving(Element.Device device, Conductor unit, boolean closes) {
        Phases phases = device.ganged() ? device.phases() : Phases.of(unit);
        List<Op> ops = new ArrayList<>();
        movePole(new Primitive.MovePole(device.name(), phases, closes), ops);
        return ops.toArray(new Op[0]);
    }

    /** A test for dead holds until anything but a ground moves. */
    private boolean disturbs(Primitive primitive) {
        if (primitive instanceof Primitive.MoveClamp move) {
            return world.bound().temporary(move.family()).orElseThrow().kind().base()
                    != Base.GROUND;
        }
        return primitive instanceof Primitive.MovePole
                || primitive instanceof Primitive.MoveEnd
                || primitive instanceof Primitive.GoUp
                || primitive instanceof Primitive.ComeDown
                || primitive instanceof Primitive.Pass
                || primitive instanceof Primitive.Await;
    }

    private Node possible(Primitive primitive) {
        if (primitive instanceof Primitive.MovePole move) {
            Conductor unit = Units.pole(element(move.device()), move.phases().list().get(0));
            return atoms.is(new FieldKey.Pole(move.device(), unit), move.closed() ? 0 : 1);
        } else if (primitive instanceof Primitive.MoveEnd move) {
            // At its bushing a lead can be worked on wherever the unit is; at the line only with the unit up there.
            Node stands = move.end() == LeadEnd.BUSHING
                    ? Node.Constant.TRUE
                    : atoms.is(
                            new FieldKey.Placed(move.device(), Units.pole(element(move.device()), move.phase())),
                            Place.POLE.ordinal());
            Node off = atoms.is(new FieldKey.End(move.device(), move.side(), move.phase(), move.end()), 0);
            return Node.all(List.of(stands, move.on() ? off : Node.not(off)));
        } else if (primitive instanceof Primitive.MoveClamp move) {
            Node off = atoms.is(new FieldKey.Clamp(move.family(), move.phase(), move.clamp()), 0);
            return move.spot() == null ? Node.not(off) : off;
        } else if (primitive instanceof Primitive.RunToNeutral run) {
            return canStep(run.regulator(), run.phase());
        } else if (primitive instanceof Primitive.Carry carry) {
            return canCarry(carry);
        } else if (primitive instanceof Primitive.GoUp go) {
            int site = world.program().sites().indexOf(go.site()) + 1;
            return Node.not(atoms.is(new FieldKey.Where(go.person()), site));
        } else if (primitive instanceof Primitive.ComeDown come) {
            return Node.not(atoms.is(new FieldKey.Where(come.person()), 0));
        } else if (primitive instanceof Primitive.Speak speak) {
            return canSay(speak);
        } else if (primitive instanceof Primitive.MoveTag tag) {
            return atoms.is(new FieldKey.Tagged(tag.device()), tag.on() ? 0 : 1);
        }
        return Node.Constant.TRUE;
    }

    /** A motor drive steps only by hand and only with its supply on. */
    private Node canStep(String regulator, Conductor phase) {
        List<Node> all = new ArrayList<>();
        Element element = element(regulator);
        element.kind().mode(Mode.CONTROL).ifPresent(mode -> all.add(Node.not(
                atoms.is(new FieldKey.Mode(regulator, Units.mode(element, mode, phase), mode.name()), 0))));
        element.kind()
                .mode(Mode.CONTROL_POWER)
                .ifPresent(mode -> all.add(
                        atoms.is(new FieldKey.Mode(regulator, Units.mode(element, mode, phase), mode.name()), 0)));
        return Node.all(all);
    }

    /** A unit moves only when its leads are off at one end or the other, and never to where it is. */
    private Node canCarry(Primitive.Carry carry) {
        List<Node> all = new ArrayList<>();
        Element element = element(carry.device());
        for (Conductor phase : carry.phases()) {
            Conductor unit = Units.pole(element, phase);
            all.add(Node.not(atoms.is(
                    new FieldKey.Placed(carry.device(), unit), carry.place().ordinal())));
            if (element.kind().has(Trait.LEADS)) {
                for (Side side : Side.values()) {
                    all.add(Node.not(Node.all(List.of(
                            atoms.is(new FieldKey.End(carry.device(), side, phase, LeadEnd.LINE), 1),
                            atoms.is(new FieldKey.End(carry.device(), side, phase, LeadEnd.BUSHING), 1)))));
                }
            }
        }
        return Node.all(all);
    }

    private Node canSay(Primitive.Speak speak) {
        FieldKey key = new FieldKey.Permitted(speak.permit());
        return switch (speak.speech()) {
            case ASK -> Node.one(List.of(
                    atoms.is(key, FieldKey.Permitted.NONE), atoms.is(key, FieldKey.Permitted.RELEASED)));
            case ISSUE -> Node.one(
                    List.of(atoms.is(key, FieldKey.Permitted.NONE), atoms.is(key, FieldKey.Permitted.ASKED)));
            case REPEAT -> atoms.is(key, FieldKey.Permitted.ISSUED);
            case CONFIRM -> atoms.is(key, FieldKey.Permitted.REPEATED);
            case RELEASE -> Node.one(List.of(
                    atoms.is(key, FieldKey.Permitted.ISSUED),
                    atoms.is(key, FieldKey.Permitted.REPEATED),
                    atoms.is(key, FieldKey.Permitted.IN_FORCE)));
        };
    }

    private Node seen(Primitive primitive) {
        if (primitive instanceof Primitive.Look look) {
            return conditions.compile(look.condition(), Environment.EMPTY);
        } else if (primitive instanceof Primitive.Prove prove) {
            return proofs.of(prove.proof(), prove.subject(), prove.phase());
        } else if (primitive instanceof Primitive.TestDead test) {
            return world.grid()
                    .number(test.vertex())
                    .<Node>map(v -> new Nodes.Alive(v, Nodes.Voltage.DEAD))
                    .orElse(Node.Constant.TRUE);
        }
        return Node.Constant.TRUE;
    }

    private void ops(Primitive primitive, List<Op> ops) {
        if (primitive instanceof Primitive.MovePole move) {
            movePole(move, ops);
        } else if (primitive instanceof Primitive.MoveEnd move) {
            FieldKey.End key = new FieldKey.End(move.device(), move.side(), move.phase(), move.end());
            set(ops, key, move.on() ? key.value(move.onto()) : 0);
            doubt(ops, move.device(), move.phase(), Action.Proof.CARRYING, Action.Proof.IN_PHASE);
        } else if (primitive instanceof Primitive.MoveClamp move) {
            FieldKey.Clamp key = new FieldKey.Clamp(move.family(), move.phase(), move.clamp());
            int value = move.spot() == null
                    ? 0
                    : world.program().spots().get(key).indexOf(move.spot()) + 1;
            set(ops, key, value);
            doubt(ops, move.family(), move.phase(), Action.Proof.CARRYING);
        } else if (primitive instanceof Primitive.SetMode mode) {
            Mode kind = element(mode.device()).kind().mode(mode.mode()).orElseThrow();
            set(
                    ops,
                    new FieldKey.Mode(mode.device(), mode.phase(), mode.mode()),
                    kind.values().indexOf(mode.value()));
        } else if (primitive instanceof Primitive.RunToNeutral run) {
            set(ops, new FieldKey.Tap(run.regulator(), run.phase()), FieldKey.Tap.NEUTRAL);
            doubt(ops, run.regulator(), run.phase(), Action.Proof.NEUTRAL);
        } else if (primitive instanceof Primitive.Carry carry) {
            for (Conductor phase : carry.phases()) {
                Conductor unit = Units.pole(element(carry.device()), phase);
                set(ops, new FieldKey.Placed(carry.device(), unit), carry.place().ordinal());
            }
        } else if (primitive instanceof Primitive.GoUp go) {
            set(
                    ops,
                    new FieldKey.Where(go.person()),
                    world.program().sites().indexOf(go.site()) + 1);
        } else if (primitive instanceof Primitive.ComeDown come) {
            set(ops, new FieldKey.Where(come.person()), 0);
        } else if (primitive instanceof Primitive.Leave leave) {
            set(ops, new FieldKey.Where(leave.person()), world.program().sites().size() + 1);
        } else if (primitive instanceof Primitive.CutOff cut) {
            set(ops, new FieldKey.CutOff(cut.person()), 1);
        } else if (primitive instanceof Primitive.FailToTrip fails) {
            set(ops, new FieldKey.Failed(fails.device()), 1);
        } else {
            opsOnFacts(primitive, ops);
        }
    }

    private void opsOnFacts(Primitive primitive, List<Op> ops) {
        if (primitive instanceof Primitive.Speak speak) {
            set(ops, new FieldKey.Permitted(speak.permit()), said(speak.speech()));
        } else if (primitive instanceof Primitive.MoveTag tag) {
            set(ops, new FieldKey.Tagged(tag.device()), tag.on() ? 1 : 0);
        } else if (primitive instanceof Primitive.Prove prove) {
            set(ops, new FieldKey.Proved(prove.proof().name(), prove.subject(), prove.phase()), 1);
            if (prove.proof() == Action.Proof.NEUTRAL) {
                set(ops, new FieldKey.Tap(prove.subject(), prove.phase()), FieldKey.Tap.NEUTRAL);
            }
        } else if (primitive instanceof Primitive.TestDead test) {
            set(ops, Units.provedDead(test.vertex()), 1);
        } else if (primitive instanceof Primitive.Write write) {
            set(ops, new FieldKey.Recorded(write.item()), 1);
        } else if (primitive instanceof Primitive.ComeOut out) {
            set(ops, new FieldKey.Found(out.item()), out.outcome() + 1);
        } else if (primitive instanceof Primitive.Pass pass) {
            world.program()
                    .layout()
                    .field(new FieldKey.Waited(pass.capacitor(), pass.phase()))
                    .ifPresent(f -> ops.add(new Op.Add(f, pass.seconds() / 60)));
        }
    }

    private static int said(Action.Speech speech) {
        return switch (speech) {
            case ASK -> FieldKey.Permitted.ASKED;
            case ISSUE -> FieldKey.Permitted.ISSUED;
            case REPEAT -> FieldKey.Permitted.REPEATED;
            case CONFIRM -> FieldKey.Permitted.IN_FORCE;
            case RELEASE -> FieldKey.Permitted.RELEASED;
        };
    }

    private void movePole(Primitive.MovePole move, List<Op> ops) {
        Element element = element(move.device());
        for (Conductor phase : move.phases()) {
            Conductor unit = Units.pole(element, phase);
            set(ops, new FieldKey.Pole(move.device(), unit), move.closed() ? 1 : 0);
            doubt(
                    ops,
                    move.device(),
                    phase,
                    Action.Proof.OPEN,
                    Action.Proof.CLOSED,
                    Action.Proof.CARRYING,
                    Action.Proof.IN_PHASE);
            if (unit == phase && !move.closed()) {
                world.program()
                        .layout()
                        .field(new FieldKey.Count(move.device(), unit))
                        .ifPresent(f -> ops.add(new Op.Add(f, 1)));
            }
        }
    }

    private void set(List<Op> ops, FieldKey key, int value) {
        Optional<Field> field = world.program().layout().field(key);
        field.ifPresent(f -> ops.add(new Op.Set(f, value)));
    }

    /** What was proved of something that moves is proved no longer. */
    private void doubt(List<Op> ops, String subject, Conductor phase, Action.Proof... proofs) {
        for (Action.Proof proof : proofs) {
            set(ops, new FieldKey.Proved(proof.name(), subject, phase), 0);
        }
    }

    private Element element(String name) {
        return world.bound().network().element(name).orElseThrow();
    }
}
