package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertFalse;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.keeplit.Keeplit;
import org.keeplit.language.Library;
import org.keeplit.procedure.Example;
import org.keeplit.procedure.Procedure;

/** Both evaluators find the same in every example that ships: each rule kept and broken, on small networks. */
class ShippedExamplesAgreementTest {
    @TestFactory
    Stream<DynamicTest> bothFindTheSame() {
        Library library = Keeplit.read(List.of(Path.of("shared")));
        assertFalse(library.hasErrors(), () -> library.problems().toString());
        return library.givenExamples().stream().flatMap(group -> group.examples().stream()
                .map(example -> DynamicTest.dynamicTest(
                        group.name() + ": " + example.title(), () -> check(library, example))));
    }

    private static void check(Library library, Example example) {
        Procedure.Proof proof = example.procedure().proofs().get(0);
        Agreement.check(example.procedure(), library.networks().get(proof.network()), proof, example.title());
    }
}
