package org.keeplit.fuzz;

import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Every seed and every find of the fuzzer, each day. */
class FuzzSeedsTest {
    private static final Path SEEDS = Path.of("src/fuzz/seeds");

    @TestFactory
    Stream<DynamicTest> noSeedLetsAnExceptionOut() throws IOException {
        return Targets.ALL.entrySet().stream().flatMap(target -> {
            List<Path> seeds = files(SEEDS.resolve(target.getKey()));
            assertTrue(!seeds.isEmpty(), target.getKey());
            return seeds.stream().map(seed -> DynamicTest.dynamicTest(target.getKey() + "/" + seed.getFileName(), () ->
                    assertTimeoutPreemptively(Duration.ofSeconds(20), () -> target.getValue().accept(Files.readAllBytes(seed)))));
        });
    }

    private static List<Path> files(Path folder) {
        try (Stream<Path> all = Files.list(folder)) {
            return all.sorted().toList();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
