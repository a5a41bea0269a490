package org.keeplit.proof;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.keeplit.explore.Explored;
import org.keeplit.page.Proof;
import org.keeplit.procedure.Instance;
import org.keeplit.program.Field;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Program;
import org.keeplit.recheck.ProofFile;
import org.keeplit.recheck.StateLine;

/** Makes a written proof of what a search found. */
public final class ProofMaker {
    private final Program program;
    private final FieldWords words;
    private final ActsLeft left;
    private final Map<String, Integer> facts = new LinkedHashMap<>();
    private final Map<String, ProofFile.Held> states = new LinkedHashMap<>();

    private ProofMaker(Program program) {
        this.program = program;
        this.words = new FieldWords(program);
        this.left = new ActsLeft(program);
    }

    /**
     * Makes one.
     *
     * @param instance the procedure on its place
     * @param explored what a search found, with all states kept
     * @param events how many events were let happen at most
     * @return the proof; nothing if something is broken or the search was cut
     */
    public static Optional<ProofFile> of(Instance instance, Explored explored, int events) {
        if (Proof.of(explored.outcome()) != Proof.HOLDS) {
            return Optional.empty();
        }
        ProofMaker maker = new ProofMaker(explored.program());
        explored.states(maker::state);
        return Optional.of(new ProofFile(
                ProofFile.Head.of(instance, events), maker.start(), ImmutableList.copyOf(maker.facts.keySet()), ImmutableMap.copyOf(maker.states)));
    }

    private ImmutableMap<String, String> start() {
        ImmutableMap.Builder<String, String> all = ImmutableMap.builder();
        for (Field field : program.layout().fields()) {
            if (!FieldWords.isOwn(field.key())) {
                all.put(words.name(field.key()), words.value(field.key(), field.initial()));
            }
        }
        return all.buildOrThrow();
    }

    private void state(long[] state) {
        List<Integer> now = new ArrayList<>();
        for (Field field : program.layout().fields()) {
            int value = field.get(state);
            if (value == field.initial() || field.key() instanceof FieldKey.Remembered) {
                continue;
            }
            String fact = words.name(field.key(), value) + " is " + words.value(field.key(), value);
            facts.putIfAbsent(fact, facts.size() + 1);
            now.add(facts.get(fact));
        }
        String line = StateLine.of(left.in(state), now.stream().sorted().toList());
        states.merge(line, new ProofFile.Held(1, 0), (a, b) -> new ProofFile.Held(a.times() + 1, 0));
    }
}
