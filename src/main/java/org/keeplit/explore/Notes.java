package org.keeplit.explore;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.keeplit.program.StateKey;

/**
 * What one thread finds in some states, in order, before it is known what the others find. Handed in one after the other, in the order of
 * the states, notes lead to what one thread alone would have found.
 */
final class Notes implements Ledger, Trying.Reached, Expanding.Ends {
    /** What was found before these states. */
    interface Before {
        /** {@return whether a state was met} @param number its number, or -1 for one that is not kept */
        Trying.Met met(int number);

        /** {@return whether a state that is kept may still be found nearer} */
        boolean isWaiting(int number);

        boolean isNumberless(int number);
    }

    /** One thing that was found. */
    sealed interface Note {}

    /** An act led to a state. @param numberless whether a figure could not be worked out in it */
    record Kept(long[] state, Judging.At at, boolean numberless) implements Note {}

    /** A state was judged that was not met before. @param inside what came of that */
    record Judged(long[] state, int rules, List<Note> inside) implements Note {}

    record Exercised(RuleInstance instance, Judging.At at) implements Note {}

    record Broken(Judging.Break found, ViolationKey key) implements Note {}

    record ByEvent(Judging.Break found) implements Note {}

    record Trouble(String what) implements Note {}

    record End(int number) implements Note {}

    /** Nothing could be gone on with. */
    record Failed(Throwable cause) implements Note {}

    /**
     * The notes of some states.
     *
     * @param notes what was found, in order
     * @param judged how often each rule was judged, besides in states that were not met before
     * @param transitions how many acts were tried, and how many reactions followed
     * @param kept how many states they may add at most
     */
    record Sheet(List<Note> notes, long[] judged, long transitions, int kept) {}

    private final Scene scene;
    private final LastFound finder;
    private final Before before;
    /** For each state that was not met before and is kept, how long the shortest way to it is. */
    private final Map<StateKey, Integer> own = new HashMap<>();

    private BitSet exercised = new BitSet();
    private List<Note> notes = new ArrayList<>();
    private long[] judged;
    private int kept;
    /** While a state is judged that was not met before. */
    private Judged now;

    private int rulesNow;

    Notes(Scene scene, int rules, StateStore.Finder finder, Before before) {
        this.scene = scene;
        this.judged = new long[rules];
        this.finder = new LastFound(finder);
        this.before = before;
    }

    /** Begins anew. @param known the rules whose case has come up, by number */
    void begin(BitSet known) {
        exercised = known;
        finder.forget();
        own.clear();
        notes = new ArrayList<>();
        judged = new long[judged.length];
        kept = 0;
        now = null;
    }

    /** {@return what was noted since the beginning} */
    Sheet sheet(long transitions) {
        return new Sheet(notes, judged, transitions, kept);
    }

    void failed(Throwable cause) {
        now = null;
        note(new Failed(cause));
    }

    private void note(Note note) {
        (now == null ? notes : now.inside).add(note);
    }

    @Override
    public Trying.Met met(long[] state) {
        if (own.containsKey(StateKey.of(state))) {
            return Trying.Met.KEPT;
        }
        Trying.Met met = before.met(finder.find(state));
        if (met == Trying.Met.NEVER) {
            now = new Judged(state, 0, new ArrayList<>(0));
        }
        return met;
    }

    @Override
    public void judged() {
        notes.add(new Judged(now.state, rulesNow, now.inside));
        now = null;
    }

    @Override
    public void keep(long[] state, Judging.At at) {
        if (at.because() == null) {
            int known = finder.find(state);
            if (known >= 0 ? !before.isWaiting(known) : isNear(state, at.length())) {
                return;
            }
        }
        kept++;
        note(new Kept(state, at, scene.trouble() != null));
    }

    /** Notes how near a state is that was not met before; {@return whether it was known to be as near}. */
    private boolean isNear(long[] state, int length) {
        Integer known = own.putIfAbsent(StateKey.of(state), length);
        if (known != null && known > length) {
            own.put(StateKey.of(state), length);
        }
        return known != null && known <= length;
    }

    @Override
    public boolean isExercised(int rule) {
        return exercised.get(rule);
    }

    @Override
    public void exercised(RuleInstance instance, Judging.At at) {
        exercised.set(instance.number());
        note(new Exercised(instance, at));
    }

    @Override
    public void judged(List<RuleInstance> instances, int count) {
        if (now != null) {
            rulesNow = count;
            return;
        }
        for (int i = 0; i < count; i++) {
            judged[instances.get(i).number()]++;
        }
    }

    @Override
    public void broken(Judging.Break found, ViolationKey key) {
        note(new Broken(found, key));
    }

    @Override
    public void byEvent(Judging.Break found) {
        note(new ByEvent(found));
    }

    @Override
    public void trouble(String what) {
        note(new Trouble(what));
    }

    @Override
    public boolean isNumberless(int number) {
        return before.isNumberless(number);
    }

    @Override
    public void end(int number) {
        note(new End(number));
    }
}
