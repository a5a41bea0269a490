package org.keeplit.proof;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiConsumer;
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
    /** What is otherwise than at the start in some state, in the order of the words, which numbers it. */
    private final List<String> facts;
    private final Map<String, Integer> numbers = new HashMap<>();
    private final Set<FieldKey> changed = new HashSet<>();
    private final Map<String, ProofFile.Held> states = new LinkedHashMap<>();

    private ProofMaker(Explored explored) {
        this.program = explored.program();
        this.words = new FieldWords(program);
        this.left = new ActsLeft(program);
        Set<String> all = new TreeSet<>();
        explored.states(state -> changed(state, (field, fact) -> {
            all.add(fact);
            changed.add(field.key());
        }));
        this.facts = List.copyOf(all);
        facts.forEach(fact -> numbers.put(fact, numbers.size() + 1));
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
        ProofMaker maker = new ProofMaker(explored);
        explored.states(maker::state);
        return Optional.of(new ProofFile(
                ProofFile.Head.of(instance, events), maker.start(), ImmutableList.copyOf(maker.facts), ImmutableMap.copyOf(maker.states)));
    }

    private ImmutableMap<String, String> start() {
        ImmutableMap.Builder<String, String> all = ImmutableMap.builder();
        for (Field field : program.layout().fields()) {
            if (!FieldWords.isOwn(field.key()) && changed.contains(field.key())) {
                all.put(words.name(field.key()), words.value(field.key(), field.initial()));
            }
        }
        return all.buildOrThrow();
    }

    /** Goes through what is otherwise than at the start in a state. */
    private void changed(long[] state, BiConsumer<Field, String> to) {
        for (Field field : program.layout().fields()) {
            int value = field.get(state);
            if (value != field.initial() && !(field.key() instanceof FieldKey.Remembered)) {
                to.accept(field, words.name(field.key(), value) + " is " + words.value(field.key(), value));
            }
        }
    }

    private void state(long[] state) {
        List<Integer> now = new ArrayList<>();
        changed(state, (field, fact) -> now.add(numbers.get(fact)));
        String line = StateLine.of(left.in(state), now.stream().sorted().toList());
        states.merge(line, new ProofFile.Held(1, 0), (a, b) -> new ProofFile.Held(a.times() + 1, 0));
    }
}
