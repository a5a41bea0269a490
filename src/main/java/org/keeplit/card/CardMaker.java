package org.keeplit.card;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.keeplit.card.picture.FeederPicture;
import org.keeplit.card.picture.NetworkPicture;
import org.keeplit.card.picture.SitePicture;
import org.keeplit.card.picture.WorkSite;
import org.keeplit.condition.Condition;
import org.keeplit.explore.Proving;
import org.keeplit.explore.Standing;
import org.keeplit.explore.Stepper;
import org.keeplit.insight.AsWritten;
import org.keeplit.insight.Ordering;
import org.keeplit.insight.Retreats;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.OrderTable;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.RetreatTable;
import org.keeplit.outcome.RuleResult;
import org.keeplit.outcome.Watcher;
import org.keeplit.page.InputHash;
import org.keeplit.page.Proof;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Instance;
import org.keeplit.procedure.Person;
import org.keeplit.program.Act;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Parts;
import org.keeplit.program.Primitive;
import org.keeplit.program.Program;
import org.keeplit.rule.Rule;
import org.keeplit.verdict.Basis;

/** Makes the cards of a procedure from what is proved of it. */
public final class CardMaker {
    /** How many acts of a way back are told. */
    private static final int TOLD = 3;
    /** Up to how many acts stand in a title. */
    private static final int TITLED = 2;

    private final Program program;
    private final ImmutableList<Parts.Part> parts;
    private final AsWritten run;
    private final OrderTable order;
    private final RetreatTable retreat;
    private final Speeches speeches;
    private final ImmutableList<Element.Branch> site;

    private CardMaker(Program program, AsWritten run, OrderTable order, RetreatTable retreat) {
        this.program = program;
        this.parts = Parts.of(program).all();
        this.run = run;
        this.order = order;
        this.retreat = retreat;
        this.speeches = new Speeches(program);
        this.site = WorkSite.of(program);
    }

    /**
     * Makes the cards.
     *
     * @param instance the procedure, where it is proved and from which start
     * @param prepared the same, ready to be explored
     * @param limits how many states are looked at
     * @param watcher is told how it gets on
     * @return the cards; of what does not hold, marked so, without order and ways back
     */
    public static CardSet of(Instance instance, Proving.Prepared prepared, Limits limits, Watcher watcher) {
        Outcome outcome = Proving.proved(prepared, limits, watcher).outcome();
        Proof proof = Proof.of(outcome);
        CardMaker maker = new CardMaker(
                prepared.program(),
                AsWritten.of(prepared),
                Ordering.pairs(instance, prepared, limits, watcher),
                Retreats.of(instance, prepared, limits, watcher));
        return maker.set(instance, proof, outcome);
    }

    /** {@return every picture of the cards of a procedure, with nothing proved} @param prepared the procedure, ready to be explored */
    static ImmutableList<String> pictures(Proving.Prepared prepared) {
        CardMaker maker = new CardMaker(prepared.program(), AsWritten.of(prepared), null, null);
        ImmutableList.Builder<String> all = ImmutableList.builder();
        maker.feeder().ifPresent(all::add);
        maker.atStart().ifPresent(all::add);
        all.add(NetworkPicture.of(maker.run.start()));
        for (Parts.Part part : maker.parts) {
            if (part.number() < maker.run.steps().size()) {
                all.addAll(maker.pictures(part, maker.run.steps().get(part.number())));
            }
        }
        return all.build();
    }

    private Optional<String> feeder() {
        return site.stream().findFirst().map(device -> FeederPicture.of(device, run.start()));
    }

    private Optional<String> atStart() {
        return site.isEmpty() ? Optional.empty() : Optional.of(SitePicture.of(site, run.start(), run.start(), "The work site at the start"));
    }

    private CardSet set(Instance instance, Proof proof, Outcome outcome) {
        List<StepCard> cards = new ArrayList<>();
        for (Parts.Part part : parts) {
            cards.add(card(part));
        }
        Set<String> hazards = new LinkedHashSet<>();
        outcome.rules().stream()
                .filter(r -> r.verdict() != RuleResult.Verdict.NOT_EXERCISED && r.rule().severity() == Rule.Severity.STOP)
                .forEach(r -> hazards.add(r.rule().name().replace('-', ' ') + ": " + r.rule().because()));
        return new CardSet(
                instance,
                proof,
                Basis.of(instance, outcome),
                InputHash.of(instance),
                Approach.of(instance.network()),
                retreat.outage(),
                ImmutableList.copyOf(hazards),
                sources(),
                ImmutableList.copyOf(cards),
                feeder(),
                NetworkPicture.of(run.start()),
                atStart());
    }

    private StepCard card(Parts.Part part) {
        int number = part.number();
        Optional<AsWritten.Done> done =
                number < run.steps().size() ? Optional.of(run.steps().get(number)) : Optional.empty();
        List<Block.Step> steps = part.acts().stream().map(Act::step).distinct().toList();
        return new StepCard(
                number + 1,
                title(part),
                part.line(),
                distinct(steps.stream().flatMap(s -> s.actors().stream()).map(Object::toString)),
                what(part),
                distinct(part.acts().stream().flatMap(act -> act.primitives().stream()).flatMap(p -> StepObjects.of(p).stream())),
                conditions(steps.stream().flatMap(s -> s.requires().stream())),
                conditions(steps.stream().flatMap(s -> s.expects().stream())),
                done.map(AsWritten.Done::changes).orElse(ImmutableList.of()),
                distinct(steps.stream().flatMap(s -> Stream.concat(s.records().stream(), StepObjects.written(s).stream()))),
                distinct(steps.stream().flatMap(s -> s.cautions().stream())),
                steps.stream().flatMap(s -> s.because().stream()).findFirst(),
                distinct(part.acts().stream().flatMap(act -> speeches.of(act).stream())),
                follows(number),
                back(number),
                StepTools.of(program.bound(), part.acts()),
                StepTools.data(
                        program.bound().network(), part.acts(),
                        steps.stream().flatMap(s -> Stream.concat(s.records().stream(), StepObjects.written(s).stream())).toList()),
                StepTools.isNear(program.bound(), part.acts(), done.map(d -> aloft(part, d)).orElse(ImmutableSet.of())),
                done.map(d -> pictures(part, d)).orElse(ImmutableList.of()));
    }

    /** {@return the step's label with its phase; of a step without one its acts, with the names of this place} */
    private static String title(Parts.Part part) {
        Act first = part.acts().get(0);
        if (first.step().label().isPresent()) {
            return part.name();
        }
        List<String> acts = what(part);
        return acts.size() <= TITLED ? String.join("; ", acts) : acts.get(0) + ", and " + (acts.size() - 1) + " acts more";
    }

    /** {@return what is done, an act a line; of a look what it may find, and of a branch when it is taken} */
    private static ImmutableList<String> what(Parts.Part part) {
        return distinct(part.acts().stream()
                .filter(act -> !act.step().actors().isEmpty())
                .map(act -> {
                    String when = part.when().getOrDefault(act.stepNumber(), "");
                    return (when.isEmpty() ? "" : when + ": ") + act.actor() + " " + said(act);
                }));
    }

    private static String said(Act act) {
        return act.step().action() instanceof Action.Inspect look
                ? act.text().replaceFirst(" and finds \".*\"$", "") + ": " + String.join(", or ", look.outcomes()) + "?"
                : act.text();
    }

    /** {@return who is up before or after a step} */
    private Set<String> aloft(Parts.Part part, AsWritten.Done done) {
        Standing before = before(part);
        return program.bound().procedure().crew().stream()
                .map(Person::name)
                .filter(name -> before.value(new FieldKey.Where(name)) > 0 || done.after().value(new FieldKey.Where(name)) > 0)
                .collect(ImmutableSet.toImmutableSet());
    }

    private Standing before(Parts.Part part) {
        return part.number() == 0 ? run.start() : run.steps().get(part.number() - 1).after();
    }

    private static ImmutableList<String> distinct(Stream<String> all) {
        return all.distinct().collect(ImmutableList.toImmutableList());
    }

    private static ImmutableList<String> conditions(Stream<Condition> all) {
        return distinct(all.map(Stepper::words));
    }

    private ImmutableList<StepCard.Earlier> follows(int number) {
        if (!order.holds()) {
            return ImmutableList.of();
        }
        return order.directBefore(number).stream()
                .map(pair -> new StepCard.Earlier(
                        pair.before() + 1,
                        title(parts.get(pair.before())),
                        pair.harm().map(harm -> harm.sentence()).orElse("what it needs is not so before"),
                        pair.kind() == OrderTable.Kind.AS_WRITTEN))
                .collect(ImmutableList.toImmutableList());
    }

    private Optional<StepCard.WayBack> back(int number) {
        return retreat.stops().stream()
                .filter(stop -> stop.part().number() == number)
                .findFirst()
                .map(stop -> new StepCard.WayBack(
                        stop.way().map(List::size).orElse(0),
                        stop.way().orElse(ImmutableList.of()).stream()
                                .limit(TOLD)
                                .map(act -> act.actor() + " " + act.text())
                                .collect(ImmutableList.toImmutableList()),
                        stop.longest(),
                        stop.none() > 0,
                        stop.none() > 0 && stop.proved()));
    }

    /** {@return the phases of the site that a step changes, before it and after it, where it changes what a picture shows} */
    private ImmutableList<String> pictures(Parts.Part part, AsWritten.Done done) {
        List<Primitive> shown = part.acts().stream().flatMap(a -> a.primitives().stream()).filter(StepObjects::shows).toList();
        if (shown.isEmpty()) {
            return ImmutableList.of();
        }
        Standing before = before(part);
        Set<String> names = new LinkedHashSet<>();
        shown.forEach(p -> names.addAll(StepObjects.devices(p, program.bound())));
        List<Element.Branch> touched = names.stream()
                .flatMap(name -> program.bound().network().element(name).stream())
                .filter(Element.Branch.class::isInstance)
                .map(Element.Branch.class::cast)
                .toList();
        if (touched.isEmpty()) {
            return ImmutableList.of();
        }
        Set<Conductor> phases = shown.stream().flatMap(p -> StepObjects.phases(p).stream()).collect(ImmutableSet.toImmutableSet());
        return ImmutableList.of(
                SitePicture.of(touched, phases, before, before, "Before step " + (part.number() + 1)),
                SitePicture.of(touched, phases, before, done.after(), "After step " + (part.number() + 1)));
    }

    private ImmutableList<String> sources() {
        ImmutableList.Builder<String> all = ImmutableList.builder();
        program.bound().network().all(Element.Source.class)
                .forEach(s -> all.add(s.name() + ", supply " + s.supply() + ": in service throughout; conductors at the site stay alive"
                        + " until tested dead and grounded where the work is"));
        program.heldAt().forEach((permit, devices) ->
                all.add(permit + ", held at " + String.join(" and ", devices) + ": no automatic reclosing, nobody closes until released"));
        long generators = program.bound().network().all(Element.Generator.class).count();
        if (generators > 0) {
            all.add(generators + (generators == 1 ? " customer generator" : " customer generators")
                    + " in the network may run: nobody on the pole can know");
        }
        return all.build();
    }
}
