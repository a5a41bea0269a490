package org.keeplit.explore;

import java.util.BitSet;
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
    private final Map<String, Judging.Break> roots = new LinkedHashMap<>();
    private final Map<String, Judging.Break> later = new LinkedHashMap<>();
    private final Map<String, Judging.Break> byEvent = new TreeMap<>();
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
    public void broken(Judging.Break found, String key) {
        count++;
        keep(found, key, found.at().because() == null ? roots : later);
    }

    @Override
    public void byEvent(Judging.Break found) {
        keep(found, found.instance().rule().name(), byEvent);
    }

    private static void keep(Judging.Break found, String key, Map<String, Judging.Break> into) {
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

    /** {@return what was broken with nothing broken before it, by name} */
    Map<String, Judging.Break> roots() {
        return roots;
    }

    /** {@return what was broken only after something else was} */
    Map<String, Judging.Break> later() {
        return later;
    }

    /** {@return for each rule that events break by themselves the shortest way to that, by name} */
    Map<String, Judging.Break> byEvent() {
        return byEvent;
    }

    /** {@return what could not be worked out, if anything} */
    Optional<String> trouble() {
        return trouble;
    }
}
