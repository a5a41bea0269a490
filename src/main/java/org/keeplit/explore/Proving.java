package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.Predicate;
import org.keeplit.condition.Truth;
import org.keeplit.electric.Contact;
import org.keeplit.electric.Electric;
import org.keeplit.electric.Grid;
import org.keeplit.electric.GridBuilder;
import org.keeplit.electric.flow.FlowModelException;
import org.keeplit.electric.power.PowerException;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Mode;
import org.keeplit.network.Network;
import org.keeplit.outcome.Effort;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.Watcher;
import org.keeplit.procedure.Binding;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Bound;
import org.keeplit.procedure.Procedure;
import org.keeplit.procedure.Size;
import org.keeplit.procedure.Temporary;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Lowering;
import org.keeplit.program.Points;
import org.keeplit.program.Primitive;
import org.keeplit.program.Program;
import org.keeplit.program.StartValues;
import org.keeplit.program.Vertex;
import org.keeplit.text.Problem;
import org.keeplit.text.Problems;

/** The whole way from a procedure and a network to what an exploration finds. */
public final class Proving {
    private Proving() {}

    /**
     * Proves a procedure on a network.
     *
     * @param procedure the procedure
     * @param network the network
     * @param proof which objects its parameters stand for
     * @param limits how far to go
     * @param watcher is told how it gets on
     * @param problems collects what does not fit
     * @return what was found, or nothing if something does not fit
     */
    public static Optional<Outcome> prove(
            Procedure procedure,
            Network network,
            Procedure.Proof proof,
            Limits limits,
            Watcher watcher,
            Problems problems) {
        return prove(procedure, network, proof, Search.USUAL.with(limits.events()), limits, watcher, problems);
    }

    /**
     * Proves a procedure on a network, with what a search may save said.
     *
     * @param procedure the procedure
     * @param network the network
     * @param proof which objects its parameters stand for
     * @param search how the search saves work
     * @param limits how far to go
     * @param watcher is told how it gets on
     * @param problems collects what does not fit
     * @return what was found, or nothing if something does not fit
     */
    public static Optional<Outcome> prove(
            Procedure procedure,
            Network network,
            Procedure.Proof proof,
            Search search,
            Limits limits,
            Watcher watcher,
            Problems problems) {
        try {
            return explored(procedure, network, proof, search, limits, watcher, problems).map(Explored::outcome);
        } catch (Effort.Spent spent) {
            return Optional.of(Outcome.notBegun(spent.getMessage()));
        }
    }

    /**
     * Like {@link #prove(Procedure, Network, Procedure.Proof, Limits, Watcher, Problems)}, with what was found kept so that
     * more can be asked of it.
     *
     * @param procedure the procedure
     * @param network the network
     * @param proof which objects its parameters stand for
     * @param limits how far to go
     * @param watcher is told how it gets on
     * @param problems collects what does not fit
     * @return what was found, or nothing if something does not fit
     * @throws Effort.Spent if a limit was reached before the search began
     */
    public static Optional<Explored> explored(
            Procedure procedure,
            Network network,
            Procedure.Proof proof,
            Limits limits,
            Watcher watcher,
            Problems problems) {
        return explored(procedure, network, proof, Search.USUAL.with(limits.events()), limits, watcher, problems);
    }

    /**
     * Like {@link #prove(Procedure, Network, Procedure.Proof, Search, Limits, Watcher, Problems)}, with what was found kept.
     *
     * @param procedure the procedure
     * @param network the network
     * @param proof which objects its parameters stand for
     * @param search how the search saves work
     * @param limits how far to go
     * @param watcher is told how it gets on
     * @param problems collects what does not fit
     * @return what was found, or nothing if something does not fit
     * @throws Effort.Spent if a limit was reached before the search began
     */
    public static Optional<Explored> explored(
            Procedure procedure,
            Network network,
            Procedure.Proof proof,
            Search search,
            Limits limits,
            Watcher watcher,
            Problems problems) {
        long began = System.nanoTime();
        return using(
                procedure, network, proof, search, limits, began, watcher, problems, p -> explored(p, limits, began, watcher));
    }

    /**
     * Does something with a procedure that is ready to be explored.
     *
     * @param <T> what comes of it
     * @param procedure the procedure
     * @param network the network
     * @param proof which objects its parameters stand for
     * @param problems collects what does not fit: a start that is not at rest, a network without what a load flow needs
     * @param use what is done with it
     * @return what came of it, or nothing if something does not fit
     * @throws Effort.Spent if getting ready takes more than the usual limits allow
     */
    public static <T> Optional<T> using(
            Procedure procedure,
            Network network,
            Procedure.Proof proof,
            Problems problems,
            Function<Prepared, T> use) {
        return using(
                procedure, network, proof, Search.USUAL, Limits.USUAL, System.nanoTime(), Watcher.NOBODY, problems, use);
    }

    private static <T> Optional<T> using(
            Procedure procedure,
            Network network,
            Procedure.Proof proof,
            Search search,
            Limits limits,
            long began,
            Watcher watcher,
            Problems problems,
            Function<Prepared, T> use) {
        try {
            checkSize(procedure, limits);
            return Effort.within(limits, began, watcher, () -> prepare(procedure, network, proof, search, problems))
                    .map(use);
        } catch (NotAtRest trips) {
            problems.add(Problem.error(
                            "not-at-rest",
                            procedure.span(),
                            "at the start " + trips.getMessage() + " in " + network.name()
                                    + ", so it cannot be as the network says")
                    .help("look at its pickup, at the loads behind it and at what is open"));
            return Optional.empty();
        } catch (NoPickup unstated) {
            problems.add(Problem.error(
                            "no-pickup",
                            network.element(unstated.getMessage()).orElseThrow().span(),
                            "an event of a rulebook trips " + unstated.getMessage() + ", and its pickup is not stated")
                    .help("add its minimum trip, pickup or coil, so that its trips are known"));
            return Optional.empty();
        } catch (PowerException | FlowModelException missing) {
            // The figures that a rule compares are asked for only now, and the network does not have what they need.
            problems.add(Problem.error("no-load-flow", network.span(), missing.getMessage()));
            return Optional.empty();
        }
    }

    /** Says of what is too large to be written out that it is, before it is. */
    private static void checkSize(Procedure procedure, Limits limits) {
        long steps = Size.of(procedure);
        String told = steps == Long.MAX_VALUE ? "more steps than can be counted" : String.format(Locale.ROOT, "%,d steps", steps);
        if (steps > Effort.memory(limits) / Lowering.BYTES_OF_A_STEP) {
            throw new Effort.Spent("more than " + (Effort.memory(limits) >> 20) + " MiB, as it comes to " + told);
        }
    }

    /**
     * Explores. A device that comes to trip by itself needs room in the state for its poles; where the program has none
     * the search begins anew with it, so that what never trips costs nothing.
     *
     * @param prepared the program
     * @param limits how far to go
     * @param watcher is told how it gets on
     * @return what was found
     */
    public static Outcome explore(Prepared prepared, Limits limits, Watcher watcher) {
        return explored(prepared, limits, watcher).outcome();
    }

    /**
     * Explores what was prepared without events with as many of them as the limits allow: whoever says that something holds asks this.
     *
     * @param prepared the program, without events
     * @param limits how far to go
     * @param watcher is told how it gets on
     * @return what was found
     */
    public static Explored proved(Prepared prepared, Limits limits, Watcher watcher) {
        Search search = prepared.search().with(limits.events());
        return explored(
                Chances.in(new Prepared(prepared.program(), prepared.electric(), search, ImmutableList.of())), limits, watcher);
    }

    /**
     * Like {@link #explore}, but more can be asked of what was found.
     *
     * @param prepared the procedure where it is proved
     * @param limits when to stop
     * @param watcher is told how it gets on
     * @return what was found
     */
    public static Explored explored(Prepared prepared, Limits limits, Watcher watcher) {
        return explored(prepared, limits, System.nanoTime(), watcher);
    }

    private static Explored explored(Prepared prepared, Limits limits, long began, Watcher watcher) {
        return armed(
                prepared, now -> Explorer.explore(() -> Machine.of(now), now.search(), limits, began, watcher));
    }

    /** Does something, and does it anew with every device armed that comes to trip by itself. */
    static <T> T armed(Prepared prepared, Function<Prepared, T> use) {
        Prepared now = prepared;
        Set<String> armed = new TreeSet<>();
        while (true) {
            try {
                return use.apply(now);
            } catch (Reactions.Unarmed trips) {
                armed.addAll(trips.devices());
                now.program().reactions().forEach(r -> armed.add(r.device().name()));
                now = with(now, now.program().arming(armed));
            }
        }
    }

    /**
     * A program with its electrical side.
     *
     * @param program the program
     * @param electric the electrical side
     * @param search how the search saves work
     * @param chances the events that may happen, whose acts the program has
     */
    public record Prepared(Program program, Electric electric, Search search, ImmutableList<Chances.One> chances) {}

    /**
     * Does everything that comes before the search.
     *
     * @param procedure the procedure
     * @param network the network
     * @param proof which objects its parameters stand for
     * @param problems collects what does not fit
     * @return the program, or nothing if something does not fit
     */
    public static Optional<Prepared> prepare(
            Procedure procedure, Network network, Procedure.Proof proof, Problems problems) {
        return prepare(procedure, network, proof, Search.USUAL, problems);
    }

    private static Optional<Prepared> prepare(
            Procedure procedure, Network network, Procedure.Proof proof, Search search, Problems problems) {
        Problems mine = new Problems();
        Optional<Prepared> prepared =
                Binding.bind(procedure, network, proof, mine).flatMap(bound -> prepare(bound, search, mine));
        mine.sorted().forEach(problems::add);
        return mine.hasErrors() ? Optional.empty() : prepared;
    }

    private static Optional<Prepared> prepare(Bound bound, Search search, Problems problems) {
        StartValues start = StartValues.of(bound, problems);
        if (problems.hasErrors()) {
            return Optional.empty();
        }
        Predicate<Contact> closed = contact -> start.value(contact.key()) == contact.value();
        Electric normal = new Electric(grid(bound, null), c -> false, closed);
        ImmutableSet<String> mayClose = mayClose(bound.network(), start);
        Optional<Program> program = Lowering.lower(
                bound,
                start,
                site -> normal.at(normal.startSet()).feeding(site, mayClose).asList(),
                search.numbered(),
                problems);
        if (program.isEmpty()) {
            return Optional.empty();
        }
        Electric electric = electric(program.get(), search);
        checkStart(program.get(), electric, problems);
        return Optional.of(Chances.in(new Prepared(program.get(), electric, search, ImmutableList.of())));
    }

    /**
     * The same start with another program on it, made from this one.
     *
     * @param prepared the start
     * @param program the other program
     * @return it, with its electrical side; the same one where the other program moves nothing else
     */
    public static Prepared with(Prepared prepared, Program program) {
        boolean same = program.spots().equals(prepared.program().spots())
                && program.layout().fields().stream()
                        .allMatch(f -> prepared.program().layout().field(f.key()).isPresent());
        if (same) {
            return new Prepared(program, prepared.electric(), prepared.search(), prepared.chances());
        }
        return new Prepared(program, electric(program, prepared.search()), prepared.search(), prepared.chances());
    }

    /** {@return a program with events} @param steps the steps of their acts @param armed devices that trip with them */
    static Prepared with(
            Prepared prepared, ImmutableList<Chances.One> chances, List<Block.Step> steps, Set<String> armed) {
        Program program = prepared.program().with(chances.stream().map(Chances.One::act).toList(), steps, armed);
        return new Prepared(program, electric(program, prepared.search()), prepared.search(), chances);
    }

    private static Electric electric(Program program, Search search) {
        StartValues start = program.start();
        return new Electric(
                grid(program.bound(), program),
                c -> !search.contracts() || program.layout().field(c.key()).isPresent(),
                c -> start.value(c.key()) == c.value());
    }

    /** {@return the devices that somebody may close from elsewhere at the start} */
    private static ImmutableSet<String> mayClose(Network network, StartValues start) {
        return network.all(Element.Device.class)
                .filter(d -> d.kind().mode(Mode.REMOTE).isPresent())
                .filter(d -> start.value(new FieldKey.Mode(d.name(), d.phases().list().get(0), Mode.REMOTE)) == 0)
                .map(Element.Device::name)
                .collect(ImmutableSet.toImmutableSet());
    }

    /** {@return the grid, with the places of temporary equipment that the program knows of} */
    private static Grid grid(Bound bound, Program program) {
        GridBuilder builder = new GridBuilder(bound.network());
        for (Temporary temporary : bound.temporaries()) {
            String site = Points.siteOf(bound, temporary.name());
            for (Conductor phase : bound.phasesOf(temporary.of())) {
                List<List<Vertex>> spots = new ArrayList<>();
                for (int clamp = 1; clamp <= 2; clamp++) {
                    FieldKey.Clamp key = new FieldKey.Clamp(temporary.name(), phase, clamp);
                    spots.add(program == null
                            ? List.of()
                            : program.spots().getOrDefault(key, ImmutableList.of()));
                }
                builder.temporary(temporary, phase, site, spots);
            }
        }
        if (program != null) {
            rolled(program, builder);
        }
        return builder.build();
    }

    private static void rolled(Program program, GridBuilder builder) {
        program.acts().stream()
                .flatMap(act -> act.primitives().stream())
                .filter(p -> p instanceof Primitive.MoveEnd move && move.onto() != move.phase())
                .map(p -> (Primitive.MoveEnd) p)
                .distinct()
                .forEach(move -> builder.rolled(
                        new FieldKey.End(move.device(), move.side(), move.phase(), move.end()), move.onto()));
    }

    /** Lines of {@code starts with} that do not say {@code given} are checked against the network. */
    private static void checkStart(Program program, Electric electric, Problems problems) {
        World world = new World(program, electric);
        ConditionCompiler conditions = new ConditionCompiler(world);
        Scene scene = new Scene(world).at(program.layout().initial());
        for (Procedure.Start line : program.bound().starts()) {
            Truth truth = conditions.compile(line.condition(), Environment.EMPTY).eval(scene);
            if (truth != Truth.TRUE) {
                problems.add(Problem.error(
                                "start-not-so",
                                line.span(),
                                "this is not so in " + program.bound().network().name() + " at the start"
                                        + (truth == Truth.UNKNOWN ? ", as far as the model can know" : ""))
                        .help("write given before it to start from there, or choose another device"));
            }
        }
    }
}
