package org.keeplit.plain;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.keeplit.condition.Condition;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.DeviceSet;
import org.keeplit.procedure.Permit;
import org.keeplit.procedure.Person;
import org.keeplit.procedure.Procedure;
import org.keeplit.procedure.Temporary;

/** What a caller owes to a procedure that it calls: what it brings, who comes, what is so before and after. */
final class PlainCalls {
    private final Procedure caller;
    private final PlainSubstitution mine;
    private final Procedure called;
    private final PlainSubstitution theirs;
    private final List<String> reasons;

    /**
     * One call.
     *
     * @param mine what the names of the caller stand for
     * @param theirs what the names of the called procedure stand for
     * @param reasons gets what does not fit
     */
    PlainCalls(Procedure caller, PlainSubstitution mine, Procedure called, PlainSubstitution theirs, List<String> reasons) {
        this.caller = caller;
        this.mine = mine;
        this.called = called;
        this.theirs = theirs;
        this.reasons = reasons;
    }

    /** Tells what of the called procedure's equipment, holds, clearances and people is not so here. @param standIns who of the caller is who there */
    void check(Map<String, String> standIns) {
        for (Temporary need : called.temporaries()) {
            Optional<Temporary> has = caller.temporaries().stream().filter(t -> t.name().equals(need.name())).findFirst();
            String wanted = need.kind().name() + " for " + theirs.term(need.of());
            String brought = has.map(t -> t.kind().name() + " for " + mine.term(t.of())).orElse("nothing");
            same(need.name(), wanted, brought);
        }
        for (Permit need : called.permits()) {
            Optional<Permit> has = caller.permits().stream().filter(p -> p.name().equals(need.name())).findFirst();
            same(need.name(), words(need, theirs), has.map(p -> words(p, mine)).orElse("nothing"));
            for (String own : need.with()) {
                String here = standIns.getOrDefault(own, own);
                boolean named = has.isEmpty() || has.get().with().isEmpty() || has.get().with().contains(here)
                        || has.get().holder().toString().equals(here);
                if (!named) {
                    reasons.add(called.name() + " needs " + need.name() + " with " + here + ", whom " + caller.name() + " does not name there");
                }
            }
        }
        for (Person need : called.crew()) {
            String name = standIns.get(need.name());
            Optional<Person> comes = caller.crew().stream().filter(p -> p.name().equals(name)).findFirst();
            if (comes.isEmpty()) {
                reasons.add(called.name() + " needs " + need.name() + ", and " + name + " is not one of the crew of " + caller.name());
            } else {
                boolean holds = caller.permits().stream().anyMatch(p -> p.holder().toString().equals(name));
                roles(need, false).stream()
                        .filter(role -> !roles(comes.get(), holds).contains(role))
                        .forEach(role -> reasons.add(called.name() + " has " + need.name() + " " + role + ", and " + name + " is not"));
            }
        }
    }

    private void same(String name, String wanted, String there) {
        if (!wanted.equals(there)) {
            reasons.add(called.name() + " needs " + name + " as " + wanted + ", and " + caller.name() + " has " + there);
        }
    }

    private static String words(Permit permit, PlainSubstitution names) {
        Set<String> devices = new TreeSet<>();
        for (DeviceSet at : permit.heldAt()) {
            DeviceSet known = names.devices(at);
            devices.add(known instanceof DeviceSet.One one
                    ? one.device().toString()
                    : "every device that feeds " + ((DeviceSet.Feeding) known).of());
        }
        return permit.type().phrase() + " for " + names.term(permit.target()) + ", held at " + devices + " by " + names.term(permit.holder());
    }

    /** {@return somebody's roles, in words} @param holds whether a hold or clearance is issued to that person */
    private static Set<String> roles(Person person, boolean holds) {
        Set<String> all = new TreeSet<>();
        if (person.inCharge() || holds) {
            all.add("in charge");
        }
        if (person.desk()) {
            all.add("at control");
        }
        if (person.observer()) {
            all.add("as an observer");
        }
        if (person.groundHand()) {
            all.add("as a ground hand");
        }
        if (person.qualified()) {
            all.add("qualified");
        }
        person.side().ifPresent(side -> all.add("on the " + side.word() + " side"));
        person.qualifications().forEach(q -> all.add("qualified for " + q));
        return all;
    }

    /** {@return the act that begins the call} */
    Block begins(Block.Call call) {
        List<Condition> all = new ArrayList<>();
        called.starts().forEach(start -> all.add(theirs.condition(start.condition())));
        for (Procedure.Choice choice : called.choices()) {
            ImmutableList<Condition> ways = choice.ways().stream()
                    .map(way -> both(way.starts().stream().map(s -> theirs.condition(s.condition())).toList(), choice))
                    .collect(ImmutableList.toImmutableList());
            all.add(ways.size() == 1 ? ways.get(0) : new Condition.One(ways, choice.span()));
        }
        return act("begins " + called.name(), all, call);
    }

    private static Condition both(List<Condition> parts, Procedure.Choice choice) {
        return parts.size() == 1 ? parts.get(0) : new Condition.All(ImmutableList.copyOf(parts), choice.span());
    }

    /** {@return the act that ends the call} */
    Block ends(Block.Call call) {
        return act("ends " + called.name(), theirs.conditions(called.ends()), call);
    }

    private static Block act(String words, List<Condition> owed, Block.Call call) {
        return Block.Step.unwritten(Optional.empty(), ImmutableList.of(), new Action.Do(words), words, call.span())
                .withRequires(ImmutableList.copyOf(owed));
    }
}
