package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Mode;
import org.keeplit.network.Phases;
import org.keeplit.network.Trait;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Procedure;
import org.keeplit.program.Act;
import org.keeplit.program.Pickups;
import org.keeplit.program.Primitive;
import org.keeplit.program.Units;
import org.keeplit.rule.Chance;
import org.keeplit.rule.Rule;
import org.keeplit.rule.Rulebook;
import org.keeplit.rule.Template;

/**
 * The events of a run: for each that some rule is judged in spite of, one act for each thing that it may happen to. No order calls for
 * these acts.
 */
final class Chances {
    /**
     * One event, to one thing.
     *
     * @param chance the event
     * @param act the act that it is
     * @param environments what its variables stand for; several where the same happens, which may each ask for something else
     * @param tripping the devices that trip with it, and so may close again by themselves
     */
    record One(Chance chance, Act act, ImmutableList<Environment> environments, ImmutableSet<String> tripping) {}

    private final World world;
    private final ConditionCompiler conditions;
    private final int first;
    private final int firstStep;
    private final List<One> all = new ArrayList<>();
    private final List<Block.Step> steps = new ArrayList<>();
    private final Map<Object, Integer> known = new HashMap<>();
    private final Set<String> armed = new LinkedHashSet<>();

    private Chances(World world) {
        this.world = world;
        this.conditions = new ConditionCompiler(world);
        this.first = world.program().acts().size();
        this.firstStep = world.program().steps().size();
    }

    /** {@return a program with its events, or the same if no rule is judged in spite of any} */
    static Proving.Prepared in(Proving.Prepared prepared) {
        Procedure procedure = prepared.program().bound().procedure();
        Set<String> wanted = procedure.keeps().stream()
                .flatMap(book -> book.rules().stream())
                .map(Rule::evenIf)
                .flatMap(Set::stream)
                .collect(Collectors.toSet());
        if (wanted.isEmpty() || prepared.search().events() == 0) {
            return prepared;
        }
        Chances chances = new Chances(new World(prepared.program(), prepared.electric()));
        for (Rulebook book : procedure.keeps()) {
            book.chances().stream().filter(c -> wanted.contains(c.name())).forEach(chances::add);
        }
        return Proving.with(prepared, ImmutableList.copyOf(chances.all), chances.steps, chances.armed);
    }

    private void add(Chance chance) {
        for (Environment environment : conditions.environments(chance.binders(), Environment.EMPTY)) {
            List<List<Primitive>> ways = List.of(List.of());
            for (Chance.Effect effect : chance.effects()) {
                List<List<Primitive>> more = primitives(effect, environment);
                ways = ways.stream()
                        .flatMap(way -> more.stream().map(m -> {
                            List<Primitive> both = new ArrayList<>(way);
                            both.addAll(m);
                            return both;
                        }))
                        .toList();
            }
            ways.forEach(way -> add(chance, environment, ImmutableList.copyOf(way)));
        }
    }

    private void add(Chance chance, Environment environment, ImmutableList<Primitive> primitives) {
        if (primitives.isEmpty()) {
            return;
        }
        Integer same = known.putIfAbsent(List.of(chance.name(), primitives), all.size());
        if (same != null) {
            One one = all.get(same);
            ImmutableList<Environment> more = ImmutableList.<Environment>builder()
                    .addAll(one.environments())
                    .add(environment)
                    .build();
            all.set(same, new One(chance, one.act(), more, one.tripping()));
            return;
        }
        Block.Step step = Block.Step.unwritten(
                Optional.of(chance.name()), ImmutableList.of(), new Action.Happen(chance.name()), chance.name(),
                chance.span());
        steps.add(step);
        Act act = new Act(
                first + all.size(), step, firstStep + all.size(), "by chance", text(chance, environment), primitives);
        ImmutableSet<String> tripping = chance.effects().stream()
                .filter(e -> e.kind() == Chance.Kind.TRIPS)
                .map(e -> conditions.object(e.of(), environment).words())
                .collect(ImmutableSet.toImmutableSet());
        all.add(new One(chance, act, ImmutableList.of(environment), tripping));
    }

    private static String text(Chance chance, Environment environment) {
        StringBuilder text = new StringBuilder();
        for (Template.Part part : chance.says().parts()) {
            text.append(part instanceof Template.Gap gap
                    ? environment.get(gap.variable()).words()
                    : ((Template.Text) part).text());
        }
        return text.toString();
    }

    /** {@return the ways in which something can happen; none where what it happens to does not have the phase} */
    private List<List<Primitive>> primitives(Chance.Effect effect, Environment environment) {
        Obj object = conditions.object(effect.of(), environment);
        Phases has = effect.kind() == Chance.Kind.LEAVES || effect.kind() == Chance.Kind.OUT_OF_REACH
                ? Phases.NONE
                : world.phasesOf(object);
        List<Conductor> phases = has.list().stream()
                .filter(Conductor::isPhase)
                .filter(p -> environment.covers(effect.phase(), p))
                .toList();
        return switch (effect.kind()) {
            case TRIPS -> moving((Element.Device) ((Obj.Of) object).element(), phases, false, true);
            case OPENS -> moving((Element.Device) ((Obj.Of) object).element(), phases, false, false);
            case CLOSES -> moving((Element.Device) ((Obj.Of) object).element(), phases, true, false);
            case FAILS -> List.of(List.of(new Primitive.FailToTrip(object.words())));
            case COMES_OFF -> comingOff((Obj.Family) object, phases);
            case BECOMES -> becoming(((Obj.Of) object).element(), effect, phases);
            case LEAVES -> List.of(List.of(new Primitive.Leave(object.words())));
            case OUT_OF_REACH -> List.of(List.of(new Primitive.CutOff(object.words())));
            case FAULT_PASSES -> faulted(object, phases, false);
            case FAULT_STAYS -> faulted(object, phases, true);
        };
    }

    private List<List<Primitive>> moving(Element.Device device, List<Conductor> phases, boolean closes, boolean trips) {
        if (phases.isEmpty() || trips && !device.kind().has(Trait.TRIPS)) {
            return List.of();
        }
        if (trips) {
            if (!Pickups.trips(device)) {
                throw new NoPickup(device.name());
            }
            armed.add(device.name());
        }
        List<Primitive> all = new ArrayList<>();
        for (Conductor unit : Pickups.units(device)) {
            Phases moved = device.ganged() ? device.phases() : Phases.of(unit);
            if (device.ganged() || phases.contains(unit)) {
                all.add(new Primitive.MovePole(device.name(), moved, closes));
            }
        }
        return List.of(all);
    }

    private static List<List<Primitive>> comingOff(Obj.Family family, List<Conductor> phases) {
        List<List<Primitive>> ways = List.of(List.of());
        for (Conductor phase : phases) {
            List<List<Primitive>> more = new ArrayList<>();
            for (List<Primitive> way : ways) {
                for (int clamp = 1; clamp <= 2; clamp++) {
                    List<Primitive> longer = new ArrayList<>(way);
                    longer.add(new Primitive.MoveClamp(family.temporary().name(), phase, clamp, null));
                    more.add(longer);
                }
            }
            ways = more;
        }
        return phases.isEmpty() ? List.of() : ways;
    }

    private static List<List<Primitive>> becoming(Element element, Chance.Effect effect, List<Conductor> phases) {
        Optional<Mode> mode = element.kind().mode(effect.words().get(0));
        if (mode.isEmpty() || !mode.get().values().contains(effect.words().get(1))) {
            return List.of();
        }
        Set<Primitive> all = new LinkedHashSet<>();
        for (Conductor phase : phases) {
            all.add(Primitive.SetMode.of(element, mode.get(), phase, effect.words().get(1)));
        }
        return all.isEmpty() ? List.of() : List.of(List.copyOf(all));
    }

    private List<List<Primitive>> faulted(Obj line, List<Conductor> phases, boolean stays) {
        if (phases.isEmpty()) {
            return List.of();
        }
        Phases all = Phases.NONE;
        for (Conductor phase : phases) {
            all = all.or(Phases.of(phase));
        }
        return List.of(List.of(new Primitive.Fault(line.words(), all, stays)));
    }
}
