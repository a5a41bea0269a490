package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Truth;
import org.keeplit.electric.Electric;
import org.keeplit.network.Conductor;
import org.keeplit.outcome.RuleResult;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.Block;
import org.keeplit.program.Act;
import org.keeplit.program.Field;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Orders;
import org.keeplit.program.Pickups;
import org.keeplit.program.Program;
import org.keeplit.program.Reaction;
import org.keeplit.rule.Rule;
import org.keeplit.rule.Rulebook;

/** A program with its rules, compiled: what can be asked of each act and each state. */
final class Machine {
    private final World world;
    private final Orders orders;
    private final ImmutableList<Rule> rules;
    private final ImmutableList<String> rulebooks;
    private final ActCompiler.Compiled[] acts;
    private final List<RuleInstance> inStates = new ArrayList<>();
    private final ReadsInGroups readsInStates;
    private final List<RuleInstance> atStart = new ArrayList<>();
    private final List<RuleInstance> atEnd = new ArrayList<>();
    private final List<List<RuleInstance>> before = new ArrayList<>();
    private final List<List<RuleInstance>> after = new ArrayList<>();
    private final List<List<Node>> requires = new ArrayList<>();
    private final List<List<Node>> expects = new ArrayList<>();
    private final List<Node> ends;
    private final Settling settling;
    private final Reactions reactions;
    private final List<Map<Conductor, Op[]>> movedBy = new ArrayList<>();
    private final Memories memories;
    private final Remembering remembering;
    private final ConditionCompiler conditions;
    private final int[] instances;
    private final List<Orders.Move> byChance;
    private final List<Field> happened;
    /** Made when it is first asked for. */
    private RuleRemarks remarks;

    /** {@return a program with its events and with room for what its rules remember, compiled} @param prepared the program and how it is searched */
    static Machine of(Proving.Prepared prepared) {
        Map<FieldKey, int[]> places = new LinkedHashMap<>();
        for (int place = 0; !prepared.chances().isEmpty() && place < prepared.search().events(); place++) {
            places.put(new FieldKey.Happened(place), new int[] {prepared.chances().size() + 1, 0});
        }
        Program program = prepared.program();
        Program with = places.isEmpty() ? program : program.with(program.layout().extended(places));
        Electric electric = prepared.electric();
        Program remembering = Memories.extend(with, electric, prepared.chances());
        return new Machine(new World(remembering, electric, prepared.chances()), prepared.search().positions());
    }

    private Machine(World world, int positions) {
        this.world = world;
        this.orders = world.program().orders();
        this.byChance = world.chances().stream().map(c -> Orders.Move.atWill(c.act())).toList();
        this.happened = world.happened();
        this.conditions = new ConditionCompiler(world);
        this.memories = new Memories(world, conditions);
        conditions.remember(memories);
        Program program = world.program();
        ImmutableList.Builder<Rule> all = ImmutableList.builder();
        ImmutableList.Builder<String> books = ImmutableList.builder();
        for (Rulebook book : program.bound().procedure().keeps()) {
            for (Rule rule : book.rules()) {
                all.add(rule);
                books.add(book.name());
            }
        }
        this.rules = all.build();
        this.rulebooks = books.build();
        this.instances = new int[rules.size()];
        ActCompiler compiler = new ActCompiler(world, conditions);
        for (Reaction reaction : program.reactions()) {
            Map<Conductor, Op[]> ops = new EnumMap<>(Conductor.class);
            for (Conductor unit : Pickups.units(reaction.device())) {
                ops.put(unit, compiler.moving(reaction.device(), unit, reaction.closes()));
            }
            movedBy.add(ops);
        }
        this.acts = program.acts().stream().map(compiler::compile).toArray(ActCompiler.Compiled[]::new);
        compileRules();
        this.readsInStates = new ReadsInGroups(inStates, Reads.positionOf(world), positions);
        for (Block.Step step : program.steps()) {
            requires.add(compile(step.requires()));
            expects.add(compile(step.expects()));
        }
        this.ends = compile(program.bound().ends());
        this.settling = new Settling(world, new AtomCompiler(world));
        this.reactions = new Reactions(world, new AtomCompiler(world));
        this.remembering = new Remembering(world, memories, conditions);
    }

    private void compileRules() {
        RuleCompiler compiler = new RuleCompiler(world, conditions, memories);
        world.program().acts().forEach(act -> {
            before.add(new ArrayList<>());
            after.add(new ArrayList<>());
        });
        for (int i = 0; i < rules.size(); i++) {
            Rule rule = rules.get(i);
            switch (rule.form()) {
                case ALWAYS, WHILE -> count(i, inStates, compiler.inStates(i, rule));
                case BETWEEN -> count(i, inStates, compiler.between(i, rule, memories.moments()));
                case EVENTUALLY -> {
                    count(i, atEnd, compiler.eventually(i, rule, memories.moments()));
                    for (Act act : world.program().acts()) {
                        after.get(act.id()).addAll(compiler.atAct(i, rule, act));
                    }
                }
                case AT_START -> count(i, atStart, compiler.inStates(i, rule));
                case AT_END -> count(i, atEnd, compiler.inStates(i, rule));
                case BEFORE, AFTER -> {
                    for (Act act : world.program().acts()) {
                        List<List<RuleInstance>> at = rule.form() == Rule.Form.BEFORE ? before : after;
                        count(i, at.get(act.id()), compiler.atAct(i, rule, act));
                    }
                }
            }
        }
    }

    private void count(int rule, List<RuleInstance> into, List<RuleInstance> found) {
        into.addAll(found);
        instances[rule] += found.stream().mapToInt(i -> i.environments().size()).sum();
    }

    private List<Node> compile(List<Condition> all) {
        return all.stream().map(c -> conditions.compile(c, Environment.EMPTY)).toList();
    }

    World world() {
        return world;
    }

    /** {@return the orders in which the acts may come} */
    Orders orders() {
        return orders;
    }

    ConditionCompiler conditions() {
        return conditions;
    }

    ImmutableList<Rule> rules() {
        return rules;
    }

    String rulebook(int rule) {
        return rulebooks.get(rule);
    }

    /** {@return how many bits of a state a rule takes to remember what it asks for} */
    int memoryBits(int rule) {
        return memories.bits(rule);
    }

    /** {@return what can be said of a rule before any state is looked at} */
    Optional<RuleResult.Remark> remark(int rule) {
        if (remarks == null) {
            remarks = new RuleRemarks(List.of(List.of(inStates, atStart, atEnd), before, after));
        }
        return remarks.of(rule, instances[rule]);
    }

    int instances(int rule) {
        return instances[rule];
    }

    List<RuleInstance> inStates() {
        return inStates;
    }

    /** {@return what the rules in states read of a state} */
    ReadsInGroups readsInStates() {
        return readsInStates;
    }

    List<RuleInstance> atStart() {
        return atStart;
    }

    List<RuleInstance> atEnd() {
        return atEnd;
    }

    List<RuleInstance> before(int act) {
        return before.get(act);
    }

    List<RuleInstance> after(int act) {
        return after.get(act);
    }

    /** {@return the rules after an act that it brings up where it leaves a state} @param left looks at that state */
    List<RuleInstance> after(int act, Scene left) {
        List<RuleInstance> all = after.get(act);
        for (RuleInstance instance : all) {
            if (!instance.moment().equals(Node.Constant.TRUE)) {
                return all.stream().filter(i -> i.moment().eval(left) == Truth.TRUE).toList();
            }
        }
        return all;
    }

    List<Node> requires(int step) {
        return requires.get(step);
    }

    List<Node> expects(int step) {
        return expects.get(step);
    }

    List<Node> ends() {
        return ends;
    }

    ActCompiler.Compiled act(int id) {
        return acts[id];
    }

    /** {@return a scene of its own, for one thread} */
    Scene scene() {
        return new Scene(world);
    }

    /** {@return the events, each as an act that may come whenever it is possible} */
    List<Orders.Move> byChance() {
        return byChance;
    }

    /** {@return whether an event has happened in a state} */
    boolean isAfterEvent(long[] state) {
        return !happened.isEmpty() && happened.get(0).get(state) != 0;
    }

    /** {@return which events happened in a state, in a form of their own} */
    List<Integer> eventsIn(long[] state) {
        return happened.stream().map(place -> place.get(state)).toList();
    }

    /** {@return what an act is that nobody does: what tripped with it may close again} */
    Reactions.Since beginning(Act act) {
        return act.step().action() instanceof Action.Happen
                ? Reactions.Since.of(act, world.chances().get(world.chance(act)).tripping())
                : Reactions.Since.NOTHING;
    }

    /** {@return whether the branches that a move belongs to are those that were found} */
    boolean isOpen(Orders.Move move, long[] state) {
        for (Orders.Guard guard : move.guards()) {
            int found = world.program().layout().value(state, guard.item());
            if ((found == guard.outcome() + 1) != guard.wanted()) {
                return false;
            }
        }
        return true;
    }

    /** {@return whether an act waits for what is not so in the state at which a scene looks} */
    boolean waits(Orders.Move move, Scene scene) {
        return acts[move.act().id()].awaited().eval(scene) != Truth.TRUE;
    }

    /** {@return what takes what is remembered from state to state} */
    Remembering remembering() {
        return remembering;
    }

    /** Works an act's effect out into a copy of the state; the scene looks at the result afterwards. */
    long[] apply(Orders.Move move, Scene scene) {
        ActCompiler.Compiled act = acts[move.act().id()];
        long[] next = scene.state().clone();
        int[] came = remembering.isIdle() ? null : remembering.moments(act.act().id(), scene);
        var electricBefore = settling.isIdle() ? null : scene.analysis();
        for (Op op : act.ops()) {
            op.apply(next);
        }
        orders.apply(move, next);
        scene.at(next);
        if (!settling.isIdle()) {
            settling.settle(electricBefore, scene, act.disturbance());
        }
        if (came != null) {
            remembering.advance(came, scene);
        }
        return next;
    }

    /** {@return what follows an act by itself without anything moving} */
    Settling settling() {
        return settling;
    }

    /** {@return what devices do by themselves} */
    Reactions reactions() {
        return reactions;
    }

    /** Works out in a copy of the state what some poles' moving by itself changes; the scene looks at it afterwards. */
    long[] react(Reaction reaction, List<Conductor> moved, Scene scene) {
        long[] next = scene.state().clone();
        var electricBefore = settling.isIdle() ? null : scene.analysis();
        Map<Conductor, Op[]> ops = movedBy.get(reaction.id());
        for (Conductor unit : moved) {
            for (Op op : ops.get(unit)) {
                op.apply(next);
            }
        }
        scene.at(next);
        if (!settling.isIdle()) {
            settling.settle(electricBefore, scene, Settling.Disturbance.BY_ITSELF);
        }
        if (!remembering.isIdle()) {
            remembering.advance(remembering.noMoment(), scene);
        }
        return next;
    }

    /** {@return whether a person who looks stops, goes on, or may do either} */
    Truth seen(int act, Scene scene) {
        return acts[act].seen().eval(scene);
    }
}
