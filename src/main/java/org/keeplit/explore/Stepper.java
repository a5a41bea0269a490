package org.keeplit.explore;

import com.google.common.base.Supplier;
import com.google.common.base.Suppliers;
import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Truth;
import org.keeplit.electric.Analysis;
import org.keeplit.outcome.CalledOutage;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.Harm;
import org.keeplit.outcome.TraceStep;
import org.keeplit.program.Act;
import org.keeplit.program.Field;
import org.keeplit.program.Orders;
import org.keeplit.program.Primitive;
import org.keeplit.program.Program;
import org.keeplit.rule.Rule;
import org.keeplit.unit.Dimension;

/**
 * Tries single acts, for those who choose themselves in which order they come. Everything means what it means in a check: what an
 * act breaks, what comes by itself, what is remembered. It belongs to one thread.
 */
public final class Stepper {
    private final Machine machine;
    private final Program program;
    private final Scene scene;
    private final Replaying replaying;
    private final Explaining explaining;
    private final Supplier<Silence> silence;
    private final Supplier<Independence> independence;
    private final long[] position;
    private final List<Node> endParts = new ArrayList<>();

    private Stepper(Machine machine) {
        this.machine = machine;
        this.program = machine.world().program();
        this.scene = machine.scene();
        this.replaying = new Replaying(machine);
        this.explaining = new Explaining(machine);
        machine.ends().forEach(node -> parts(node, endParts));
        this.position = Reads.positionOf(machine.world());
        this.independence = Suppliers.memoize(() -> new Independence(machine));
        this.silence = Suppliers.memoize(() -> new Silence(machine));
    }

    /**
     * Uses a stepper. Where a device comes to trip for which the program has no room, all is done anew with it.
     *
     * @param <T> what comes of it
     * @param prepared the program
     * @param use what is done; it may be done more than once
     * @return what came of it
     */
    public static <T> T with(Proving.Prepared prepared, Function<Stepper, T> use) {
        return Proving.armed(prepared, now -> use.apply(new Stepper(Machine.of(now))));
    }

    /**
     * What an act leads to.
     *
     * @param states the states at rest in which nothing was broken; more than one where something may come by itself
     * @param harms what goes wrong on some way, the first of it on each
     * @param count how many things go wrong, bindings of one rule counted each
     * @param asked the bits of a state that decide what goes wrong, as far as they are known
     * @param trouble what could not be worked out, so that nothing is known
     * @param worst the state with the first harm, as the act and what came by itself would make it even if it was refused
     */
    public record Tried(
            ImmutableList<long[]> states,
            ImmutableList<Harm> harms,
            int count,
            long[] asked,
            Optional<String> trouble,
            Supplier<Optional<long[]>> worst) {
        /** {@return whether nothing can go wrong} */
        public boolean isSafe() {
            return harms.isEmpty() && trouble.isEmpty();
        }
    }

    /** {@return the program} */
    public Program program() {
        return program;
    }

    /** {@return the state at the start, which may be changed} */
    public long[] start() {
        return program.layout().initial();
    }

    /** {@return what is wrong with the start, if anything} */
    public ImmutableList<Harm> atStart() {
        Tally tally = new Tally(machine.rules().size());
        Judging judging = new Judging(machine, scene.at(start()), tally);
        Judging.At here = new Judging.At(0, -1, 0, null);
        judging.rules(machine.inStates(), here);
        judging.rules(machine.atStart(), here);
        return harms(tally, start(), null);
    }

    /** {@return what may come next, in the order of the text; what is waited for and branches that were not found left out}
     * @param state a state */
    public List<Orders.Move> moves(long[] state) {
        scene.at(state);
        return machine.orders().moves(state).stream()
                .filter(move -> machine.isOpen(move, state) && !machine.waits(move, scene))
                .toList();
    }

    /** {@return whether nothing notices an act, so that it does not matter when it comes}
     * @param act its number */
    public boolean isSilent(int act) {
        return silence.get().of(act);
    }

    /**
     * {@return whether it does not matter which of two acts comes first, for anything that is judged}
     *
     * @param one an act's number
     * @param other another's
     */
    public boolean isIndependent(int one, int other) {
        return independence.get().of(one, other);
    }

    /** {@return whether all is done}
     * @param state a state */
    public boolean isOver(long[] state) {
        return machine.orders().moves(state).isEmpty();
    }

    /** {@return whether a move ends its step}
     * @param move one of the moves from a state
     * @param state that state */
    public boolean isLast(Orders.Move move, long[] state) {
        return machine.orders().isLast(move, state);
    }

    /** {@return whether a part is done, where the program is made of {@link org.keeplit.program.Parts}}
     * @param state a state
     * @param part a part's number */
    public boolean isDone(long[] state, int part) {
        return machine.orders().isDone(state, part);
    }

    /**
     * Tries an act.
     *
     * @param state a state in which nothing is broken
     * @param move one of its moves
     * @return what it leads to
     */
    public Tried attempt(long[] state, Orders.Move move) {
        Tally tally = new Tally(machine.rules().size());
        Judging judging = new Judging(machine, scene.at(state), tally);
        List<long[]> states = new ArrayList<>();
        Trying trying = trying(judging, states);
        trying.attempt(move, state, new Judging.At(0, move.act().id(), 1, null));
        ImmutableList<Harm> harms = harms(tally, state, move);
        long[] asked = harms.isEmpty() ? new long[0] : asked(tally, move.act());
        return new Tried(
                ImmutableList.copyOf(states), harms, tally.count(), asked, tally.trouble(),
                Suppliers.memoize(() -> first(tally).map(b -> replaying.after(state, move, b.at().reactions()))));
    }

    /** {@return what goes wrong first} */
    private static Optional<Judging.Break> first(Tally tally) {
        return tally.roots().values().stream()
                .map(Tally.Root::nearest)
                .filter(b -> b.severity() == Rule.Severity.STOP)
                .min(Comparator.comparing(b -> b.at().length()));
    }

    /** {@return the loads that have supply on a phase in one state and not in another}
     * @param before the one
     * @param after the other */
    public ImmutableList<TraceStep.Lost> lost(long[] before, long[] after) {
        Analysis was = scene.at(before).analysis();
        return Supply.lost(machine.world(), was, scene.at(after).analysis());
    }

    private long[] asked(Tally tally, Act act) {
        Reads reads = new Reads(position);
        for (Tally.Root root : tally.roots().values()) {
            Judging.Break b = root.nearest();
            switch (b.kind()) {
                case RULE -> b.instance().reads(reads);
                case REQUIREMENT -> machine.requires(act.stepNumber()).get(b.part()).reads(reads);
                case EXPECTATION -> machine.expects(act.stepNumber()).get(b.part()).reads(reads);
                case STOP -> machine.act(act.id()).seen().reads(reads);
                case CANNOT -> machine.act(act.id()).possible().reads(reads);
                case FLASH -> reads.position();
                case ENDING, STUCK -> { }
            }
        }
        return reads.bits();
    }

    /** {@return the bits of a state that an act may change, what is remembered of it included}
     * @param act its number */
    public long[] writes(int act) {
        long[] bits = new long[program.layout().words()];
        for (Op op : machine.act(act).ops()) {
            op.field().mark(bits);
        }
        machine.remembering().writes(act, bits);
        return bits;
    }

    /** {@return a state without how far the orders have come}
     * @param state a state */
    public long[] withoutOrders(long[] state) {
        return program.layout().withoutOrders(state);
    }

    /** {@return how everything stands in a state}
     * @param state a state */
    public Standing standing(long[] state) {
        return new Standing(machine.world(), scene.at(state));
    }

    /** {@return what people see change between two states, in words, with where voltage comes and goes}
     * @param before a state
     * @param after another */
    public ImmutableList<String> changes(long[] before, long[] after) {
        Analysis was = scene.at(before).analysis();
        Analysis is = scene.at(after).analysis();
        return ImmutableList.<String>builder()
                .addAll(new StateWords(program).changes(before, after))
                .addAll(LevelWords.changes(machine.world().grid(), was, is))
                .build();
    }

    /**
     * What a figure must be, as an act that measures asks.
     *
     * @param comparison how it is compared
     * @param limit what with, in the load case that asks for the most, in SI units; not a number where that is not known
     * @param dimension what it measures
     */
    public record Bound(Condition.Comparison comparison, double limit, Dimension dimension) {
        /** {@return whether a figure is within it, or nobody knows}
         * @param figure the figure, in SI units */
        public boolean allows(double figure) {
            return Double.isNaN(limit) || switch (comparison) {
                case AT_MOST -> figure <= limit;
                case AT_LEAST -> figure >= limit;
                case BELOW -> figure < limit;
                case ABOVE -> figure > limit;
            };
        }
    }

    /** {@return what an act that looks must find of figures, in a state}
     * @param act the act
     * @param state the state */
    public ImmutableList<Bound> bounds(Act act, long[] state) {
        ImmutableList.Builder<Bound> all = ImmutableList.builder();
        scene.at(state);
        act.primitives().stream()
                .filter(Primitive.Look.class::isInstance)
                .forEach(p -> bounds(((Primitive.Look) p).condition(), all));
        return all.build();
    }

    private void bounds(Condition condition, ImmutableList.Builder<Bound> into) {
        if (condition instanceof Condition.All all) {
            all.parts().forEach(part -> bounds(part, into));
        } else if (condition instanceof Condition.Compare compare) {
            FigureCompiler figures = machine.conditions().figures();
            for (FigureCompiler.OnPhases phase : figures.phases(compare, Environment.EMPTY)) {
                Amount right = figures.amount(compare.right(), Environment.EMPTY, phase.right());
                double limit = right.value(scene, 0);
                for (int i = 1; i < scene.loadCases(); i++) {
                    double other = right.value(scene, i);
                    limit = compare.comparison().isUpper() ? Math.min(limit, other) : Math.max(limit, other);
                }
                into.add(new Bound(compare.comparison(), limit, compare.left().dimension()));
            }
        }
    }

    /** {@return a bound condition in words}
     * @param condition the condition */
    public static String words(Condition condition) {
        return new ConditionWords(Environment.EMPTY).say(condition);
    }

    /** {@return what a called outage takes}
     * @param state a state */
    public CalledOutage outage(long[] state) {
        return CallingOutage.of(machine.world(), scene.at(state));
    }

    private Trying trying(Judging judging, List<long[]> states) {
        return new Trying(machine, scene, judging, new Trying.Reached() {
            @Override
            public Trying.Met met(long[] state) {
                return Trying.Met.NEVER;
            }

            @Override
            public void keep(long[] state, Judging.At at) {
                if (at.because() == null && scene.trouble() == null) {
                    states.add(state);
                }
            }
        });
    }

    /** {@return what is wrong with ending in a state}
     * @param state a state */
    public ImmutableList<Harm> atEnd(long[] state) {
        Tally tally = new Tally(machine.rules().size());
        Judging judging = new Judging(machine, scene.at(state), tally);
        Judging.At at = new Judging.At(0, -1, 0, null);
        judging.rules(machine.atEnd(), at);
        judging.stated(Finding.Kind.ENDING, machine.ends(), at);
        return harms(tally, state, null);
    }

    /** {@return how many rules about the end are broken in a state, each binding counted, whatever the text says of the end}
     * @param state a state */
    public int brokenAtEnd(long[] state) {
        Tally tally = new Tally(machine.rules().size());
        Judging judging = new Judging(machine, scene.at(state), tally);
        judging.rules(machine.atEnd(), new Judging.At(0, -1, 0, null));
        return tally.count();
    }

    /**
     * How much of what the text says of the end is not so.
     *
     * @param all how many parts of it
     * @param fields how many of them say of one field each how it stands, no field counted twice
     */
    public record Unmet(int all, int fields) {}

    /** {@return how much of what the text says of the end is not so in a state}
     * @param state a state */
    public Unmet unmet(long[] state) {
        scene.at(state);
        int all = 0;
        Set<Field> fields = new HashSet<>();
        for (Node part : endParts) {
            if (part.eval(scene) != Truth.TRUE) {
                all++;
                if (part instanceof Nodes.FieldIs is) {
                    fields.add(is.field());
                }
            }
        }
        return new Unmet(all, fields.size());
    }

    /** {@return the fields of which the text says how they stand at the end} */
    public Set<Field> endFields() {
        return endParts.stream()
                .filter(Nodes.FieldIs.class::isInstance)
                .map(part -> ((Nodes.FieldIs) part).field())
                .collect(ImmutableSet.toImmutableSet());
    }

    private static void parts(Node node, List<Node> into) {
        if (node instanceof Node.All all) {
            all.parts().forEach(part -> parts(part, into));
        } else {
            into.add(node);
        }
    }

    /** @param move the act; null where it is about a state alone */
    private ImmutableList<Harm> harms(Tally tally, long[] state, Orders.Move move) {
        Optional<Act> act = Optional.ofNullable(move).map(Orders.Move::act);
        return tally.roots().values().stream()
                .map(Tally.Root::nearest)
                .filter(b -> b.severity() == Rule.Severity.STOP)
                .sorted(Comparator.comparing(b -> b.at().length()))
                .map(b -> new Harm(
                        b.kind(),
                        Optional.ofNullable(b.instance()).map(RuleInstance::rule),
                        b.unknown(),
                        // Most are never told: whoever tries many acts wants to know only that something goes wrong.
                        Suppliers.memoize(() -> sentence(b, state, move)),
                        act.map(Act::stepName).orElse(""),
                        BreakWords.phase(b, act)))
                .collect(ImmutableList.toImmutableList());
    }

    private String sentence(Judging.Break broken, long[] state, Orders.Move move) {
        boolean here = move == null || broken.isJudgedBefore();
        scene.at(here ? state : replaying.after(state, move, broken.at().reactions()));
        return BreakWords.sentence(explaining, broken, Optional.ofNullable(move).map(Orders.Move::act), scene);
    }
}
