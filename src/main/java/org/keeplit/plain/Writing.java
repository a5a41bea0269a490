package org.keeplit.plain;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Measure;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Term;
import org.keeplit.network.Conductor;
import org.keeplit.network.Effect;
import org.keeplit.network.Element;
import org.keeplit.network.Mode;
import org.keeplit.network.Phases;
import org.keeplit.network.Side;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.DeviceSet;
import org.keeplit.procedure.Person;

/** Writes blocks out as terms. */
final class Writing {
    private final Names names;
    private final Function<String, List<String>> feeding;
    private final List<Block.Step> steps = new ArrayList<>();
    private final WhereClampsAre whereClampsAre;
    private int acts;

    Writing(Names names, Map<String, String> clampsAtStart, Function<String, List<String>> feeding) {
        this.names = names;
        this.whereClampsAre = new WhereClampsAre(names, clampsAtStart);
        this.feeding = feeding;
    }

    List<Block.Step> steps() {
        return steps;
    }

    Process write(Block.Order order, List<Block> blocks) {
        List<Process> parts = new ArrayList<>();
        for (Block block : blocks) {
            parts.add(write(block));
        }
        return Process.of(order, parts);
    }

    private Process write(Block block) {
        if (block instanceof Block.Step step) {
            return step(step);
        } else if (block instanceof Block.Group group) {
            return write(group.order(), group.parts());
        } else if (block instanceof Block.Stage stage) {
            return write(Block.Order.IN_ORDER, stage.parts());
        } else if (block instanceof Block.Repeat repeat) {
            return repeat.exactly() ? exactly(repeat) : atMost(repeat, repeat.times());
        }
        Block.IfFound choice = (Block.IfFound) block;
        Process then = choice.then().isEmpty() ? goOn(block) : write(Block.Order.IN_ORDER, choice.then());
        Process otherwise =
                choice.otherwise().isEmpty() ? goOn(block) : write(Block.Order.IN_ORDER, choice.otherwise());
        return new Process.Branch(choice.item(), choice.outcome(), then, otherwise);
    }

    private Process exactly(Block.Repeat repeat) {
        List<Process> all = new ArrayList<>();
        for (int i = 0; i < repeat.times(); i++) {
            all.add(write(Block.Order.IN_ORDER, repeat.parts()));
        }
        return Process.of(Block.Order.IN_ORDER, all);
    }

    private Process atMost(Block.Repeat repeat, int times) {
        if (times == 0) {
            return Process.DONE;
        }
        Process once = write(Block.Order.IN_ORDER, repeat.parts());
        Process rest = atMost(repeat, times - 1);
        return new Process.Either(Process.of(Block.Order.IN_ORDER, List.of(once, rest)), goOn(repeat));
    }

    private Process goOn(Block block) {
        return step(Block.Step.unwritten(
                Optional.empty(), ImmutableList.of(), new Action.Do("goes on"), "goes on",
                block.span()));
    }

    private Process step(Block.Step step) {
        int number = steps.size();
        steps.add(step);
        List<List<Doing>> doings = doings(step);
        if (step.asOne().isPresent() || step.action() instanceof Action.Run) {
            List<Deed> all = new ArrayList<>();
            doings.forEach(ways -> all.addAll(ways.get(0).deeds()));
            doings = List.of(List.of(new Doing(doings.get(0).get(0).actors(), all)));
        }
        List<Process> left = new ArrayList<>();
        for (List<Doing> ways : doings) {
            List<PlainAct> all = new ArrayList<>();
            for (Doing doing : ways) {
                all.add(new PlainAct(acts++, number, step, doing.actors(), doing.deeds()));
            }
            left.add(new Process.Once(all));
        }
        return new Process.OfStep(number, false, orderOf(step.ordered()), pairs(step, left));
    }

    private static Block.Order orderOf(boolean inOrder) {
        return inOrder ? Block.Order.IN_ORDER : Block.Order.TOGETHER;
    }

    /** Both ends on a phase belong together: the phases have one order, the ends of each have another. */
    private static List<Process> pairs(Block.Step step, List<Process> acts) {
        Action a = step.action();
        boolean twoEnds = a instanceof Action.Install
                || a instanceof Action.Remove
                || a instanceof Action.ApplyGround
                || a instanceof Action.RemoveGround;
        if (!twoEnds || step.asOne().isPresent()) {
            return acts;
        }
        boolean endFirst = a instanceof Action.Install i && i.ordered()
                || a instanceof Action.Remove r && r.first().isPresent()
                || a instanceof Action.ApplyGround g && g.order() != Action.Order.EITHER
                || a instanceof Action.RemoveGround u && u.order() != Action.Order.EITHER;
        List<Process> pairs = new ArrayList<>();
        for (int i = 0; i + 1 < acts.size(); i += 2) {
            pairs.add(Process.of(orderOf(endFirst), acts.subList(i, i + 2)));
        }
        return pairs.isEmpty() ? acts : pairs;
    }

    private record Doing(List<String> actors, List<Deed> deeds) {}

    private List<List<Doing>> doings(Block.Step step) {
        List<String> actors = step.actors().stream().map(Term::toString).toList();
        List<List<Doing>> all = new ArrayList<>();
        if (step.action() instanceof Action.Inspect inspect) {
            List<Doing> ways = new ArrayList<>();
            for (String outcome : inspect.outcomes()) {
                ways.add(new Doing(actors, List.of(new Deed.Find(inspect.item(), outcome))));
            }
            all.add(ways);
        } else if (step.action() instanceof Action.GoAloft go) {
            String site = names.site(go.at() instanceof Term.SiteOf of ? of.of().toString() : go.at().toString());
            actors.forEach(p -> all.add(List.of(new Doing(List.of(p), List.of(new Deed.Climb(p, site))))));
        } else if (step.action() instanceof Action.ComeDown) {
            actors.forEach(p -> all.add(List.of(new Doing(List.of(p), List.of(new Deed.Descend(p))))));
        } else if (step.action() instanceof Action.Operate operate) {
            for (String device : devices(operate.object())) {
                operate(operate, device, step.phases()).forEach(d -> all.add(List.of(new Doing(actors, d))));
            }
        } else if (step.action() instanceof Action.Tag tag) {
            devices(tag.device())
                    .forEach(d -> all.add(List.of(new Doing(actors, List.of(new Deed.Tie(d, tag.on()))))));
        } else if (step.action() instanceof Action.Install install) {
            for (Conductor phase : phases(step, install.jumper())) {
                all.add(List.of(new Doing(
                        holder(step, install.first(), actors), List.of(on(install.jumper(), phase, 1, install.first())))));
                all.add(List.of(new Doing(
                        holder(step, install.second(), actors),
                        List.of(on(install.jumper(), phase, 2, install.second())))));
            }
        } else {
            deeds(step).forEach(d -> all.add(List.of(new Doing(actors, List.of(d)))));
        }
        if (all.isEmpty()) {
            all.add(List.of(new Doing(actors, List.of(new Deed.Talkless()))));
        }
        return all;
    }

    List<String> devices(DeviceSet set) {
        if (set instanceof DeviceSet.One one) {
            return List.of(one.device().toString());
        }
        String of = ((DeviceSet.Feeding) set).of().toString();
        return feeding.apply(names.site(of)).stream().filter(d -> !d.equals(of)).toList();
    }

    private List<String> holder(Block.Step step, Action.Spot spot, List<String> actors) {
        if (step.actors().size() != 2 || !(spot.point() instanceof Term.LineOf line)) {
            return actors;
        }
        for (Person person : names.bound().procedure().crew()) {
            Optional<Side> side = person.side();
            if (actors.contains(person.name()) && side.isPresent() && side.get() == line.side()) {
                return List.of(person.name());
            }
        }
        return actors;
    }

    private List<Conductor> phases(Block.Step step, Term object) {
        Phases has = names.bound().phasesOf(object);
        return step.phases() instanceof PhaseTerm.Given given
                ? given.phases().and(has).list()
                : has.list();
    }

    private Deed on(Term jumper, Conductor phase, int clamp, Action.Spot spot) {
        Conductor there = spot.phase().map(p -> only(p, phase)).orElse(phase);
        return new Deed.ClampOn(jumper.toString(), phase, clamp, names.vertex(spot.point(), there), there);
    }

    private static Conductor only(PhaseTerm said, Conductor own) {
        return said instanceof PhaseTerm.Given given ? given.phases().list().get(0) : own;
    }

    private List<List<Deed>> operate(Action.Operate operate, String device, PhaseTerm said) {
        Element element = names.element(device);
        boolean ganged = element instanceof Element.Device d && d.ganged();
        Phases phases = said instanceof PhaseTerm.Given given
                ? given.phases().and(element.phases())
                : element.phases();
        List<List<Deed>> all = new ArrayList<>();
        for (Conductor phase : phases) {
            List<Deed> deeds = new ArrayList<>();
            for (Effect effect : element.kind().verb(operate.verb()).orElseThrow().effects()) {
                deeds.add(deed(effect, element, phase, ganged));
            }
            if (!all.contains(deeds)) {
                all.add(deeds);
            }
        }
        return all;
    }

    private static Deed deed(Effect effect, Element element, Conductor phase, boolean ganged) {
        Phases unit = ganged ? element.phases() : Phases.of(phase);
        if (effect instanceof Effect.Pole pole) {
            return new Deed.Switch(element.name(), unit, pole.closed());
        } else if (effect instanceof Effect.SetMode set) {
            boolean each = element.kind().mode(set.mode()).map(Mode::each).orElse(false) && !ganged;
            Conductor kept = each ? phase : element.phases().list().get(0);
            return new Deed.Adjust(element.name(), kept, set.mode(), set.value());
        } else if (effect instanceof Effect.Carry carry) {
            return new Deed.Bring(element.name(), unit, carry.place());
        }
        return new Deed.Neutral(element.name(), phase);
    }

    private List<Deed> deeds(Block.Step step) {
        Action action = step.action();
        List<Deed> all = new ArrayList<>();
        if (action instanceof Action.MoveLead m) {
            for (Conductor p : phases(step, m.device())) {
                String device = m.device().toString();
                Conductor onto = m.onto().map(t -> only(t, p)).orElse(p);
                all.add(
                        m.on()
                                ? new Deed.LeadMove(device, m.side(), p, m.end(), onto)
                                : new Deed.LeadOff(device, m.side(), p, m.end()));
            }
        } else if (action instanceof Action.Remove r) {
            phases(step, r.jumper()).forEach(p -> {
                int first = r.first().map(side -> whereClampsAre.clampOn(r.jumper().toString(), p, side)).orElse(1);
                off(r.jumper(), p, first, all);
            });
        } else if (action instanceof Action.Clamp c) {
            phases(step, c.jumper()).forEach(p -> all.add(on(c.jumper(), p, c.clamp(), c.spot())));
        } else if (action instanceof Action.Unclamp c) {
            phases(step, c.jumper())
                    .forEach(p -> all.add(new Deed.ClampOff(c.jumper().toString(), p, c.clamp())));
        } else if (action instanceof Action.Run r) {
            String set = r.source().toString();
            phases(step, r.source())
                    .forEach(p -> all.add(
                            r.on()
                                    ? new Deed.ClampOn(set, p, 1, Names.machine(set, p), p)
                                    : new Deed.ClampOff(set, p, 1)));
        } else if (action instanceof Action.ApplyGround g) {
            phases(step, g.ground()).forEach(p -> ground(g, p, all));
        } else if (action instanceof Action.RemoveGround g) {
            phases(step, g.ground()).forEach(p -> off(g.ground(), p, g.order() == Action.Order.LINE_END ? 2 : 1, all));
        } else if (action instanceof Action.Prove v) {
            phases(step, v.of()).forEach(p -> all.add(new Deed.Prove(v.proof(), v.of().toString(), p)));
        } else if (action instanceof Action.TestDead t) {
            phases(step, t.point()).forEach(p -> all.add(new Deed.Test(names.vertex(t.point(), p), p)));
        } else if (action instanceof Action.Work w) {
            phases(step, w.point()).forEach(p -> all.add(new Deed.Touch(names.vertex(w.point(), p), p)));
        } else if (action instanceof Action.WaitDead w) {
            int seconds = (int) Math.round(w.time().si());
            phases(step, w.of()).forEach(p -> all.add(new Deed.Pause(w.of().toString(), p, seconds)));
        } else if (action instanceof Action.Speak s) {
            all.add(new Deed.Talk(s.speech(), s.permit().toString()));
        } else if (action instanceof Action.Check c) {
            all.add(new Deed.See(c.condition()));
        } else if (action instanceof Action.MeasureFigure m) {
            if (m.figure().measure() == Measure.RESIDUAL) {
                all.add(see(m.limit()));
            } else {
                phases(step, m.figure().of()).forEach(p -> all.add(see(m.limitOn(p))));
            }
        } else if (action instanceof Action.WaitUntil w) {
            all.add(new Deed.Hold(w.condition()));
        } else if (action instanceof Action.Record r) {
            all.add(new Deed.Note(r.item()));
        }
        return all;
    }

    private static Deed see(Optional<Condition> limit) {
        return limit.isPresent() ? new Deed.See(limit.get()) : new Deed.Talkless();
    }

    private static void off(Term family, Conductor phase, int first, List<Deed> all) {
        all.add(new Deed.ClampOff(family.toString(), phase, first));
        all.add(new Deed.ClampOff(family.toString(), phase, 3 - first));
    }

    private void ground(Action.ApplyGround ground, Conductor phase, List<Deed> all) {
        Deed earth = new Deed.ClampOn(ground.ground().toString(), phase, 1, Names.EARTH, Conductor.N);
        Deed line = new Deed.ClampOn(
                ground.ground().toString(), phase, 2, names.vertex(ground.point(), phase), phase);
        boolean earthFirst = ground.order() != Action.Order.LINE_END;
        all.add(earthFirst ? earth : line);
        all.add(earthFirst ? line : earth);
    }
}
