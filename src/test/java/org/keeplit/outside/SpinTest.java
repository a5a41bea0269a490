package org.keeplit.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.keeplit.explore.Proving;
import org.keeplit.explore.Search;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.Watcher;
import org.keeplit.procedure.Procedure;
import org.keeplit.text.Problems;
import org.keeplit.text.Source;

/** The same discrete models run by Spin: as many states, and the same verdicts. */
class SpinTest {
    @TempDir
    Path folder;

    @Test
    void asManyStatesAndTheSameVerdicts() throws Exception {
        compare(4);
    }

    @Tag("long")
    @Test
    void inTheLongRun() throws Exception {
        compare(500);
    }

    /** Three crews at once; prints a table, and nothing is asserted of times. */
    @Tag("long")
    @Test
    void sideBySide() throws Exception {
        assumeTrue(Spin.isThere(), "Spin or a C compiler is missing: install the packages spin and gcc to compare with them");
        prove(SwitchingModel.make(4, 24, 3, 30), 1);
        sideBySide("crews in each other's way", SwitchingModel.make(5, 24, 3, 110));
        sideBySide("crews apart", SwitchingModel.make(5, 24, 3, 100).apart());
    }

    private void sideBySide(String name, SwitchingModel model) throws Exception {
        Spin.Found spin = Spin.run(model.promela(false), Files.createDirectory(folder.resolve(name.replace(' ', '-'))));
        System.out.printf("%s%n  Spin: %,d states, %,d transitions, vector %d bytes, %.1f bytes a state as it says, generation %.1f s, compilation %.1f s, run %.2f s, %,.0f transitions/s%n",
                name, spin.states(), spin.transitions(), spin.vector(), spin.bytes() / spin.states(), spin.generating(), spin.compiling(), spin.running(),
                spin.transitions() / spin.running());
        for (int threads : new int[] {1, 2}) {
            long start = System.nanoTime();
            Outcome own = prove(model, threads);
            double seconds = (System.nanoTime() - start) / 1e9;
            assertEquals(spin.states() - 1, own.states());
            System.out.printf("  keeplit, %d threads: %,d states, %,d transitions, %.1f bytes a state, %.2f s with reading, %,.0f transitions/s%n",
                    threads, own.states(), own.transitions(), (double) own.bytes() / own.states(), seconds, own.transitions() / seconds);
        }
    }

    private void compare(int cases) throws Exception {
        assumeTrue(Spin.isThere(), "Spin or a C compiler is missing: install the packages spin and gcc to compare with them");
        int broken = 0;
        int held = 0;
        int onlyCannot = 0;
        for (int seed = 0; seed < cases; seed++) {
            SwitchingModel model = SwitchingModel.make(seed, 9, 3, 4 + seed % 4);
            Outcome own = prove(model, 1);
            Spin.Judged spin = Spin.judge(model.promela(true), Files.createDirectory(folder.resolve("case-" + seed)));
            // Spin counts the state before the first look, too.
            assertEquals(spin.states() - 1, own.states(), "states of case " + seed);
            assertEquals(spin.dark(), own.findings().stream().anyMatch(f -> f.name().equals("supplied")), "somebody dark in case " + seed);
            assertEquals(spin.broken(), !own.findings().isEmpty(), "verdict of case " + seed);
            broken += spin.broken() ? 1 : 0;
            held += spin.broken() ? 0 : 1;
            onlyCannot += spin.broken() && !spin.dark() ? 1 : 0;
        }
        assertTrue(broken > 0 && held > 0, "all come out alike: " + broken + " broken, " + held + " held");
        assertTrue(cases < 60 || onlyCannot > 0, "two crews are never in each other's way");
        System.out.printf("Spin: %d cases, %d held, %d broken, %d of them only where an act cannot be done%n", cases, held, broken, onlyCannot);
    }

    static Outcome prove(SwitchingModel model, int threads) throws IOException {
        Library library = new Reader().readSources(List.of(
                new Source("overhead.equipment", Files.readString(Path.of("shared/equipment/overhead.equipment"))),
                new Source("supply.rules", SwitchingModel.rules()),
                new Source("made.network", model.network()),
                new Source("made.procedure", model.procedure())));
        assertTrue(library.problems().stream().noneMatch(p -> p.severity() == org.keeplit.text.Problem.Severity.ERROR), library.problems()::toString);
        Procedure procedure = library.procedures().get("P-1");
        return Proving.prove(
                        procedure,
                        library.networks().get("made"),
                        procedure.proofs().get(0),
                        Search.USUAL.on(threads),
                        Limits.USUAL,
                        Watcher.NOBODY,
                        new Problems())
                .orElseThrow();
    }
}
