package org.keeplit.explore;

import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** What came of judging so far: how often each rule was judged, and the shortest way to each break. */
final class Tally implements Ledger {
    private final BitSet exercised = new BitSet();
    private final Map<Integer, Judging.Example> examples = new LinkedHashMap<>();
    private final long[] judged;
    private final Map<ViolationKey, Root> roots = new LinkedHashMap<>();
    /** By the number of the rule. */
    private final Map<Integer, Judging.Break> later = new HashMap<>();
    /** By the number of the rule. */
    private final Map<Integer, Judging.Break> byEvent = new TreeMap<>();
    private Optional<String> trouble = Optional.empty();
    private int count;

    /** @param rules how many rules there are */
    Tally(int rules) {
        this.judged = new long[rules];
    }

    @Override
    public boolean isExercised(int rule) {
        return exercised.get(rule);
    }

    @Override
    public void exercised(RuleInstance instance, Judging.At at) {
        if (!exercised.get(instance.number())) {
            exercised.set(instance.number());
            examples.put(instance.number(), new Judging.Example(instance, at));
        }
    }

    @Override
    public void judged(List<RuleInstance> instances, int many) {
        for (int i = 0; i < many; i++) {
            judged[instances.get(i).number()]++;
        }
    }

    /** Rules were judged so often more, each by its number. */
    void judged(long[] more) {
        for (int i = 0; i < more.length; i++) {
            judged[i] += more[i];
        }
    }

    @Override
    public void broken(Judging.Break found, ViolationKey key) {
        count++;
        if (found.at().because() == null) {
            roots.computeIfAbsent(key, k -> new Root()).add(found);
        } else if (key.rule() >= 0) {
            keep(found, key.rule(), later);
        }
    }

    @Override
    public void byEvent(Judging.Break found) {
        keep(found, found.instance().number(), byEvent);
    }

    /** What was broken at one place with nothing broken before. */
    static final class Root {
        private Judging.Break nearest;
        private final Map<Environment, Judging.Break> byBinding = new LinkedHashMap<>();

        private void add(Judging.Break found) {
            if (nearest == null || found.at().length() < nearest.at().length()) {
                nearest = found;
            }
            if (found.instance() != null) {
                found.environments().forEach(environment -> keep(found, environment, byBinding));
            }
        }

        /** {@return the shortest way to it} */
        Judging.Break nearest() {
            return nearest;
        }

        /** {@return for each binding that breaks it here the shortest way to that; nothing where it is no rule} */
        Map<Environment, Judging.Break> byBinding() {
            return byBinding;
        }
    }

    private static <K> void keep(Judging.Break found, K key, Map<K, Judging.Break> into) {
        Judging.Break known = into.get(key);
        if (known == null || found.at().length() < known.at().length()) {
            into.put(key, found);
        }
    }

    @Override
    public void trouble(String what) {
        trouble = Optional.of(what);
    }

    /** {@return a copy of the rules whose case has come up, by number} */
    BitSet exercised() {
        return (BitSet) exercised.clone();
    }

    /** {@return where a rule was first put to the question} */
    Optional<Judging.Example> example(int rule) {
        return Optional.ofNullable(examples.get(rule));
    }

    /** {@return how often a rule was judged, each binding counted} */
    long judged(int rule) {
        return judged[rule];
    }

    /** {@return how often anything was broken, bindings of one rule counted each} */
    int count() {
        return count;
    }

    /** {@return what was broken with nothing broken before it} */
    Map<ViolationKey, Root> roots() {
        return roots;
    }

    /** {@return for each rule, by its number, the shortest way to where it is broken after something else was} */
    Map<Integer, Judging.Break> later() {
        return later;
    }

    /** {@return for each rule that events break by themselves the shortest way to that, by its number} */
    Map<Integer, Judging.Break> byEvent() {
        return byEvent;
    }

    /** {@return what could not be worked out, if anything} */
    Optional<String> trouble() {
        return trouble;
    }
}
