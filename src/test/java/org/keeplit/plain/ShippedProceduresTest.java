package org.keeplit.plain;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.keeplit.Keeplit;
import org.keeplit.language.Library;

/** Both evaluators find the same in every procedure that ships and in every published sequence. */
class ShippedProceduresTest {
    @TestFactory
    Stream<DynamicTest> bothFindTheSame() {
        Library library = Keeplit.read(List.of(Path.of("procedures"), Path.of("src/test/resources/outside")));
        return library.givenProcedures().stream()
                .flatMap(p -> p.proofs().stream()
                        .map(proof -> DynamicTest.dynamicTest(
                                p.name(),
                                () -> Agreement.check(p, library.networks().get(proof.network()), proof, p.name()))));
    }
}
