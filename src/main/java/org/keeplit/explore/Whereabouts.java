package org.keeplit.explore;

import com.google.common.collect.ImmutableSet;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.keeplit.procedure.Person;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Orders;
import org.keeplit.program.Primitive;
import org.keeplit.program.Program;

/** Where people may be once an act is done, over all orders in which nothing is broken. */
public final class Whereabouts {
    private final Program program;
    private final Map<Integer, Map<String, Set<Integer>>> afterAct = new HashMap<>();

    private Whereabouts(Program program) {
        this.program = program;
    }

    static Whereabouts of(Machine machine, StateStore store, Explorer explorer) {
        Program program = machine.world().program();
        Whereabouts all = new Whereabouts(program);
        long[] state = new long[program.layout().words()];
        for (int number = 0; number < store.size(); number++) {
            if (!explorer.isAfterBreak(number)) {
                store.load(number, state);
                for (Orders.Move move : machine.orders().moves(state)) {
                    if (machine.isOpen(move, state)) {
                        all.add(move, state);
                    }
                }
            }
        }
        return all;
    }

    private void add(Orders.Move move, long[] state) {
        Map<String, Set<Integer>> at = afterAct.computeIfAbsent(move.act().id(), k -> new HashMap<>());
        for (Person person : program.bound().procedure().crew()) {
            int where = program.layout().value(state, new FieldKey.Where(person.name()));
            for (Primitive primitive : move.act().primitives()) {
                if (primitive instanceof Primitive.GoUp up && up.person().equals(person.name())) {
                    where = program.sites().indexOf(up.site()) + 1;
                } else if (primitive instanceof Primitive.ComeDown down && down.person().equals(person.name())) {
                    where = 0;
                }
            }
            at.computeIfAbsent(person.name(), k -> new TreeSet<>()).add(where);
        }
    }

    /**
     * {@return the places where a person may be, in words}
     *
     * @param person the name
     * @param act the number of the act that was just done
     */
    public ImmutableSet<String> of(String person, int act) {
        return afterAct.getOrDefault(act, Map.of()).getOrDefault(person, Set.of()).stream()
                .map(this::words)
                .collect(ImmutableSet.toImmutableSet());
    }

    /**
     * {@return a place in words}
     *
     * @param where the value of {@link FieldKey.Where}
     */
    public String words(int where) {
        return where == 0 ? "on the ground" : "aloft at " + program.sites().get(where - 1);
    }
}
