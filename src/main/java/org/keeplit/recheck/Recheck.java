package org.keeplit.recheck;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.keeplit.page.InputHash;
import org.keeplit.procedure.Instance;

/**
 * Goes through a procedure with the plain evaluator and holds every state that it meets against a written proof: the start is among its
 * states, so is whatever may follow one of them, nothing is broken in any, and it has no others.
 */
public final class Recheck {
    private static final int TOLD = 3;

    private Recheck() {}

    /** Is told how far a re-check has come. */
    @FunctionalInterface
    public interface Going {
        /**
         * {@return whether to go on}
         *
         * @param met how many states were met
         * @param written how many the proof has
         */
        boolean on(int met, long written);
    }

    /**
     * Re-checks.
     *
     * @param proof the proof
     * @param all the procedures that were read, each on its places
     * @param events how many events may happen at most
     * @param most how long to go on at most
     * @param going is told how it gets on; may stop it
     * @return what came of it
     */
    public static Rechecked of(ProofFile proof, List<Instance> all, int events, Duration most, Going going) {
        String place = proof.head().place();
        List<Instance> named = all.stream().filter(i -> i.words().equals(place)).toList();
        if (named.isEmpty()) {
            String others = all.stream().map(Instance::words).distinct().limit(TOLD).collect(Collectors.joining("; "));
            return Rechecked.refused(place, 0, List.of(others.isEmpty()
                    ? "no procedure was read that says what it is proved on; give the files that were proved after --with"
                    : "it is not among the files that were read; there is " + others));
        }
        List<Instance> same = named.stream().filter(i -> InputHash.of(i).equals(proof.head().input())).toList();
        if (same.isEmpty()) {
            return Rechecked.refused(place, 0, changed(proof, named.get(0)));
        }
        List<String> head = new ArrayList<>(otherHead(proof.head(), same.get(0)));
        if (proof.head().events() != events) {
            head.add("it says that at most " + proof.head().events() + " events may happen, and it is re-checked with " + events
                    + " (--events)");
        }
        head.addAll(otherStart(proof));
        return head.isEmpty() ? new Rechecking(proof, most, going).run(same.get(0)) : Rechecked.refused(place, 0, head);
    }

    /** {@return what is wrong with its lines on the start: there is one for each thing that is ever otherwise, and no more} */
    private static List<String> otherStart(ProofFile proof) {
        Set<String> needed = new TreeSet<>();
        for (String fact : proof.facts()) {
            if (!fact.startsWith("event ")) {
                needed.add(fact.substring(0, fact.lastIndexOf(" is ")));
            }
        }
        List<String> told = new ArrayList<>();
        Set<String> used = new TreeSet<>();
        proof.states().keySet().forEach(state -> used.addAll(List.of(state.substring(state.indexOf(" :") + 2).strip().split(" "))));
        for (int i = 1; i <= proof.facts().size(); i++) {
            if (!used.contains(Integer.toString(i))) {
                told.add("no state of it has " + proof.facts().get(i - 1));
            }
        }
        needed.stream().filter(fact -> !proof.start().containsKey(fact)).limit(TOLD).forEach(fact ->
                told.add("it does not say how " + fact + " stands at the start"));
        proof.start().keySet().stream().filter(fact -> !needed.contains(fact)).limit(TOLD).forEach(fact ->
                told.add("it says how " + fact + " stands at the start, which is never otherwise in it"));
        return told;
    }

    /** {@return what a proof says of what it is of, and is not so, though the hash of all that was read fits} */
    private static List<String> otherHead(ProofFile.Head head, Instance instance) {
        ProofFile.Head own = ProofFile.Head.of(instance, head.events());
        List<String> told = new ArrayList<>();
        if (!head.revision().equals(own.revision())) {
            told.add("it says revision " + head.revision() + ", and the procedure has revision " + own.revision());
        }
        if (!head.rulebooks().equals(own.rulebooks())) {
            told.add("the rulebooks that it names are not those that the procedure keeps");
        }
        if (!head.files().equals(own.files())) {
            told.add("the files that it lists are not those that were read");
        }
        return told;
    }

    /** {@return which files are others than those that were proved} */
    private static List<String> changed(ProofFile proof, Instance instance) {
        Set<String> then = new TreeSet<>(proof.head().files());
        Set<String> now = new TreeSet<>(InputHash.files(instance));
        List<String> told = new ArrayList<>();
        for (String file : then) {
            String name = name(file);
            if (!now.contains(file)) {
                told.add(name + (now.stream().anyMatch(n -> name(n).equals(name))
                        ? " was changed since the proof was written"
                        : " was read for the proof, and is not read now"));
            }
        }
        now.stream()
                .filter(n -> then.stream().noneMatch(t -> name(t).equals(name(n))))
                .forEach(n -> told.add(name(n) + " is read now, and was not read for the proof"));
        return told.isEmpty() ? List.of("the hash of all that is read is " + InputHash.of(instance) + ", and the proof is of " + proof.head().input()) : told;
    }

    private static String name(String file) {
        return file.substring(file.indexOf(' ') + 1);
    }
}
