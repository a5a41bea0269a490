package org.keeplit.plain;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSortedSet;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.keeplit.network.Conductor;

/** Says states in words that do not depend on how this evaluator counts. */
final class PlainWords {
    private final Names names;
    private final Map<String, String> events = new HashMap<>();
    private final Map<Process, ImmutableList<Integer>> left = new HashMap<>();

    PlainWords(Names names, Mishaps mishaps) {
        this.names = names;
        mishaps.all().forEach(one -> events.put(
                one.key(),
                "event " + one.chance().name() + ": "
                        + String.join(", ", new TreeSet<>(one.act().deeds().stream().map(PlainWords::happening).toList()))));
    }

    PlainState state(Process process, Facts facts) {
        ImmutableSortedSet.Builder<String> all = ImmutableSortedSet.naturalOrder();
        facts.changed().forEach((fact, value) -> {
            if (!fact.startsWith("past ")) {
                all.add(events.getOrDefault(fact, fact) + " is " + value(fact, value));
            }
        });
        return new PlainState(left.computeIfAbsent(process, PlainWords::numbers), all.build());
    }

    private static ImmutableList<Integer> numbers(Process process) {
        List<PlainAct> acts = new ArrayList<>();
        Process.acts(process, acts);
        return acts.stream().map(PlainAct::number).sorted().distinct().collect(ImmutableList.toImmutableList());
    }

    /** {@return a value of a fact in words; a number where numbers mean the same to everybody} */
    String value(String fact, int value) {
        if (fact.startsWith("where ")) {
            return value == 0 ? "ground" : value == Effects.GONE ? "gone" : names.words(value);
        } else if (fact.startsWith("clamp ")) {
            return value == 0 ? "off" : names.words(value);
        } else if (fact.startsWith("found ")) {
            return value == 0 ? "nothing" : names.words(value).substring("outcome ".length());
        } else if (fact.startsWith("end ") && value > 1) {
            return "on " + Conductor.values()[value - Wiring.ROLLED];
        }
        return Integer.toString(value);
    }

    private static String happening(Deed deed) {
        if (deed instanceof Deed.Switch d) {
            return (d.close() ? "closes " : "opens ") + d.device() + " " + d.phases();
        } else if (deed instanceof Deed.ClampOff d) {
            return "off " + Names.clamp(d.family(), d.phase(), d.clamp());
        } else if (deed instanceof Deed.Adjust d) {
            return "sets " + d.mode() + " of " + d.device() + " " + d.phase() + " to " + d.value();
        } else if (deed instanceof Deed.Leave d) {
            return "leaves " + d.person();
        } else if (deed instanceof Deed.CutOff d) {
            return "cut off " + d.person();
        } else if (deed instanceof Deed.Lame d) {
            return "fails " + d.device();
        } else if (deed instanceof Deed.Fault d) {
            return (d.stays() ? "lasting" : "passing") + " fault " + d.line() + " " + d.phases();
        }
        throw new IllegalStateException("no event does this: " + deed);
    }
}
