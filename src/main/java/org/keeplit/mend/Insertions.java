package org.keeplit.mend;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.keeplit.condition.Type;
import org.keeplit.network.Base;
import org.keeplit.network.Effect;
import org.keeplit.network.Element;
import org.keeplit.network.Kind;
import org.keeplit.network.Side;
import org.keeplit.network.Verb;
import org.keeplit.procedure.Instance;
import org.keeplit.procedure.Permit;
import org.keeplit.procedure.Person;
import org.keeplit.procedure.Procedure;
import org.keeplit.procedure.Temporary;

/**
 * Lines that a procedure may lack: what can be proved and tested of its own things, what their kinds can be set to, what people say of its
 * holds, and where they go. Positions are left to the writer: a step that opens or closes is no mend.
 */
final class Insertions {
    private final Procedure procedure;
    private final Instance instance;
    private final Set<String> all = new LinkedHashSet<>();

    private Insertions(Instance instance) {
        this.instance = instance;
        this.procedure = instance.procedure();
    }

    /** {@return the lines, those that are likely first} @param actor who does what anybody may do @param on the phase, such as " on P", or empty */
    static List<String> of(Instance instance, String actor, String on) {
        Insertions insertions = new Insertions(instance);
        insertions.proofs(actor, on);
        insertions.settings(on);
        insertions.talk();
        insertions.people();
        return new ArrayList<>(insertions.all);
    }

    private void proofs(String actor, String on) {
        String phases = on.isEmpty() ? " on all phases" : on;
        for (Procedure.Parameter parameter : procedure.parameters()) {
            String name = parameter.name();
            if (parameter.noun().type() == Type.DEVICE) {
                for (String proof : List.of("open", "closed", "in phase")) {
                    all.add(actor + " proves " + name + " " + proof + phases);
                }
                all.add(actor + " proves " + name + " carries current" + phases);
                for (Side side : Side.values()) {
                    all.add(actor + " tests the " + side.word() + "-side line of " + name + " dead" + on);
                }
            } else if (parameter.noun().type() == Type.REGULATOR) {
                all.add(actor + " proves " + name + " at neutral");
            }
        }
        for (Temporary temporary : procedure.temporaries()) {
            if (temporary.kind().base() == Base.JUMPER) {
                all.add(actor + " proves " + temporary.name() + " carries current" + phases);
            }
        }
    }

    /** What a kind can be set to. */
    private void settings(String on) {
        for (Procedure.Parameter parameter : procedure.parameters()) {
            instance.network().element(String.valueOf(instance.proof().arguments().get(parameter.name())))
                    .map(Element::kind)
                    .map(Kind::verbs)
                    .ifPresent(verbs -> verbs.stream().filter(Insertions::sets).forEach(verb -> inCharge().forEach(
                            who -> all.add(who + " " + verb.one().with(parameter.name()) + on))));
        }
    }

    private static boolean sets(Verb verb) {
        return verb.effects().stream().allMatch(Effect.SetMode.class::isInstance);
    }

    private void talk() {
        List<String> desk = crew(Person::desk);
        for (Permit permit : procedure.permits()) {
            String holder = permit.holder().toString();
            desk.forEach(d -> {
                all.add(d + " blocks reclosing of every device that feeds " + permit.target());
                all.add(d + " tags every device that feeds " + permit.target());
                all.add(holder + " asks " + d + " for " + permit.name());
                all.add(d + " issues " + permit.name() + " to " + holder);
                all.add(d + " confirms " + permit.name());
            });
            all.add(holder + " repeats " + permit.name());
            all.add(holder + " releases " + permit.name());
        }
    }

    private void people() {
        for (String who : inCharge()) {
            List<String> others = crew(p -> !p.name().equals(who));
            if (!others.isEmpty()) {
                all.add(who + " briefs " + listed(others));
            }
        }
        List<String> field = crew(p -> !p.desk() && !p.inCharge());
        if (!field.isEmpty()) {
            all.add(listed(field) + (field.size() == 1 ? " comes down" : " come down"));
            procedure.parameters().stream()
                    .filter(p -> p.noun().type() == Type.DEVICE)
                    .forEach(p -> all.add(
                            listed(field) + (field.size() == 1 ? " goes" : " go") + " aloft at " + p.name()));
        }
    }

    private List<String> inCharge() {
        List<String> named = crew(Person::inCharge);
        return named.isEmpty() ? crew(p -> !p.desk()).stream().limit(1).toList() : named;
    }

    private List<String> crew(Predicate<Person> which) {
        return procedure.crew().stream().filter(which).map(Person::name).toList();
    }

    private static String listed(List<String> names) {
        return names.size() == 1
                ? names.get(0)
                : names.subList(0, names.size() - 1).stream().collect(Collectors.joining(", "))
                        + " and " + names.get(names.size() - 1);
    }
}
