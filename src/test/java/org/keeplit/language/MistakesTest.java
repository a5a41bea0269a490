package org.keeplit.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.keeplit.text.Problem;
import org.keeplit.text.ProblemPrinter;
import org.keeplit.text.Source;

/**
 * Wrong files, each with the problems that people should see, beside it in a file that ends in {@code .expected}.
 *
 * <p>To write the expected files anew after a change, and then read the difference with care:
 * {@code mvn test -Dtest=MistakesTest -Dkeeplit.regenerate=true}.
 */
class MistakesTest {
    private static final Path FOLDER = Samples.ROOT.resolve("src/test/resources/mistakes");

    static Stream<String> files() throws IOException {
        try (Stream<Path> all = Files.list(FOLDER)) {
            return all
                    .map(p -> p.getFileName().toString())
                    .filter(n -> !n.endsWith(".expected"))
                    .sorted()
                    .toList()
                    .stream();
        }
    }

    @ParameterizedTest
    @MethodSource("files")
    void isToldAsExpected(String file) throws IOException {
        Source source = Samples.source(FOLDER.resolve(file));
        List<Source> all = new ArrayList<>();
        all.add(source);
        all.addAll(Samples.all());
        List<Problem> problems = new Reader()
                .readSources(all).problems().stream()
                        .filter(p -> p.span().source().name().equals(file))
                        .toList();
        String told = ProblemPrinter.print(problems);
        Path expected = FOLDER.resolve(file + ".expected");
        if (Boolean.getBoolean("keeplit.regenerate")) {
            Files.writeString(expected, told);
        }
        assertFalse(problems.isEmpty(), "a file with a mistake has a problem");
        assertEquals(Files.readString(expected), told);
    }
}
