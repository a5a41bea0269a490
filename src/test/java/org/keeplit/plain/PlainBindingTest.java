package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.keeplit.Keeplit;
import org.keeplit.explore.Proving;
import org.keeplit.language.Library;
import org.keeplit.network.Network;
import org.keeplit.procedure.Binding;
import org.keeplit.procedure.Bound;
import org.keeplit.procedure.Instance;
import org.keeplit.procedure.Procedure;
import org.keeplit.text.Problems;

/** The binding of the plain evaluator and the one of the search come to the same steps, each in its own way. */
class PlainBindingTest {
    private static final int CASES = 1500;
    private static final int LEAST = 1000;

    /** {@return how the two differ, in words; empty if they do not: what the first refuses need be refused before the search only} */
    private static String difference(Procedure procedure, Network network, Procedure.Proof proof) {
        Problems problems = new Problems();
        Optional<Bound> shared = Binding.bind(procedure, network, proof, problems);
        PlainBinding.Result plain = PlainBinding.bind(procedure, network, proof);
        if (shared.isEmpty() || plain.bound().isEmpty()) {
            boolean both = plain.bound().isEmpty()
                    && Proving.prepare(procedure, network, proof, problems).isEmpty();
            return both
                    ? ""
                    : "plain " + plain.reasons() + ", shared "
                            + problems.sorted().stream().map(p -> p.message()).toList();
        }
        return BoundWords.difference(plain.bound().get(), shared.get());
    }

    @Test
    void everyShippedProcedureIsTheSameOnEveryPlaceAndFromEveryStart() {
        Library library = Keeplit.read(List.of(Path.of("shared"), Path.of("procedures")));
        assertFalse(library.hasErrors(), () -> library.problems().toString());
        List<String> wrong = new ArrayList<>();
        int places = 0;
        for (Procedure procedure : library.givenProcedures()) {
            for (Instance instance : Instance.of(procedure, library.networks())) {
                places++;
                String difference = difference(instance.procedure(), instance.network(), instance.proof());
                if (!difference.isEmpty()) {
                    wrong.add(instance.words() + ": " + difference);
                }
            }
        }
        assertTrue(places > 200, "only " + places);
        assertEquals("", String.join("\n", wrong), () -> wrong.size() + " differ");
    }

    @Test
    void everyShippedExampleIsTheSame() {
        Library library = Keeplit.read(List.of(Path.of("shared")));
        assertFalse(library.hasErrors(), () -> library.problems().toString());
        List<String> wrong = new ArrayList<>();
        int examples = 0;
        for (var group : library.givenExamples()) {
            for (var example : group.examples()) {
                examples++;
                Procedure.Proof proof = example.procedure().proofs().get(0);
                String difference = difference(example.procedure(), library.networks().get(proof.network()), proof);
                if (!difference.isEmpty()) {
                    wrong.add(example.title() + ": " + difference);
                }
            }
        }
        assertTrue(examples > 200, "only " + examples);
        assertEquals("", String.join("\n", wrong), () -> wrong.size() + " differ");
    }

    @Test
    void generatedCasesAreTheSame() {
        int read = 0;
        List<String> wrong = new ArrayList<>();
        for (long seed = 0; seed < CASES; seed++) {
            try {
                MadeCase.Read made = CaseMaker.make(new Draw(seed * 7919 + 17)).read();
                read++;
                String difference = difference(made.procedure(), made.network(), made.procedure().proofs().get(0));
                if (!difference.isEmpty()) {
                    wrong.add("seed " + seed + ": " + difference);
                }
            } catch (IllegalArgumentException refused) {
                // The reader found a mistake in it.
            }
        }
        assertTrue(read >= LEAST, "only " + read + " were read");
        assertEquals("", String.join("\n", wrong), () -> wrong.size() + " differ");
    }
}
