package org.keeplit.procedure;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;
import org.keeplit.text.Problem;
import org.keeplit.text.Problems;
import org.keeplit.text.Span;

/**
 * What a called procedure is promised: that it starts as it says, that it finds the temporary equipment, the holds and the people that it
 * was written for, and that it ends as it says.
 */
final class CallContract {
    private final Block.Call call;
    private final Procedure callee;
    private final Substitution substitution;
    private final Problems problems;

    /** @param substitution puts the caller's things in the place of the callee's names @param problems collects what does not match */
    CallContract(Block.Call call, Substitution substitution, Problems problems) {
        this.call = call;
        this.callee = call.procedure();
        this.substitution = substitution;
        this.problems = problems;
    }

    /** {@return the act of nobody that begins it, with what must be so then} */
    Block.Step begin() {
        List<Condition> all = new ArrayList<>();
        callee.starts().forEach(start -> all.add(start.condition()));
        for (Procedure.Choice choice : callee.choices()) {
            all.add(new Condition.One(
                    choice.ways().stream()
                            .map(way -> new Condition.All(
                                    way.starts().stream().map(Procedure.Start::condition).collect(ImmutableList.toImmutableList()),
                                    choice.span()))
                            .collect(ImmutableList.toImmutableList()),
                    choice.span()));
        }
        return step("begins ", all);
    }

    /** {@return the act of nobody that ends it, with what must be so then} */
    Block.Step end() {
        return step("ends ", callee.ends());
    }

    private Block.Step step(String verb, List<Condition> conditions) {
        String sentence = verb + callee.name();
        return Block.Step.unwritten(
                        Optional.empty(), ImmutableList.of(), new Action.Do(sentence), sentence, call.span())
                .withRequires(substitution.conditions(ImmutableList.copyOf(conditions)));
    }

    /** Tells whatever the callee was written for and the caller has otherwise. */
    void check(List<Temporary> temporaries, List<Permit> permits, List<Person> crew) {
        for (Temporary theirs : callee.temporaries()) {
            Optional<Temporary> ours = find(temporaries, Temporary::name, theirs.name());
            String needed = theirs.kind().name() + " " + theirs.name() + " for each phase of " + substitution.term(theirs.of());
            if (ours.isEmpty()) {
                mistake("needs " + needed + ", and the caller has none", theirs.span());
            } else if (!ours.get().kind().name().equals(theirs.kind().name())
                    || !same(ours.get().of(), substitution.term(theirs.of()))) {
                mistake("needs " + needed + "; the caller has " + ours.get().kind().name() + " " + theirs.name()
                        + " for each phase of " + ours.get().of(), theirs.span());
            }
        }
        for (Permit theirs : callee.permits()) {
            Optional<Permit> ours = find(permits, Permit::name, theirs.name());
            String needed = words(Binding.permit(theirs, substitution));
            if (ours.isEmpty()) {
                mistake("needs " + needed + ", and the caller has none", theirs.span());
            } else if (!words(ours.get()).equals(needed) || !covers(ours.get(), theirs)) {
                mistake("needs " + needed + "; the caller has " + words(ours.get()), theirs.span());
            }
        }
        for (Person theirs : callee.crew()) {
            String name = substitution.term(new Term.Name(theirs.name(), Type.PERSON, theirs.span())).toString();
            Optional<Person> comes = find(crew, Person::name, name);
            if (comes.isEmpty()) {
                mistake("needs somebody as " + theirs.name() + ", and nobody here is called " + name, theirs.span());
            }
            comes.ifPresent(ours -> {
                // Who holds a clearance is the employee in charge of it: 29 CFR 1910.269 (m)(3)(i).
                boolean holds = permits.stream().anyMatch(p -> p.holder().toString().equals(name));
                List<String> lacking = theirs.lackingIn(ours).stream()
                        .filter(what -> !(holds && what.equals(Person.IN_CHARGE)))
                        .toList();
                if (!lacking.isEmpty()) {
                    mistake("has " + theirs.name() + " " + String.join(" and ", lacking) + ", and " + name + " is not so here", theirs.span());
                }
            });
        }
    }

    private void mistake(String what, Span there) {
        problems.add(Problem.error("call-contract", call.span(), callee.name() + " " + what)
                .related(there, "there")
                .help("declare it alike in both, or write the steps out"));
    }

    /** {@return whether a permit of the caller names everybody whom the callee's names; one that names nobody is for everybody} */
    private boolean covers(Permit ours, Permit theirs) {
        return theirs.with().stream()
                .map(name -> substitution.term(new Term.Name(name, Type.PERSON, theirs.span())).toString())
                .allMatch(ours::includes);
    }

    private static boolean same(Term one, Term other) {
        return one.toString().equals(other.toString());
    }

    private static String words(Permit permit) {
        return permit.type().name().toLowerCase(Locale.ROOT) + " " + permit.name() + " for " + permit.target() + ", held at "
                + String.join(" and ", permit.heldAt().stream().map(CallContract::words).sorted().toList()) + ", by " + permit.holder();
    }

    private static String words(DeviceSet set) {
        return set instanceof DeviceSet.One one
                ? one.device().toString()
                : "every device that feeds " + ((DeviceSet.Feeding) set).of();
    }

    private static <T> Optional<T> find(List<T> all, Function<T, String> name, String wanted) {
        return all.stream().filter(t -> name.apply(t).equals(wanted)).findFirst();
    }
}
