package org.keeplit.procedure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.text.Problems;
import org.keeplit.text.Source;

/** A sentence about several devices is one step for edits, unless they say a phase. */
class EditingTest {
    private static final String BASE =
            """
            language 1
            procedure OUT revision 1
            title "Both ends of a cable"
            keeps no-interruption
            crew
              east "Lineworker", in charge
            proved on cable-run
            planned outage of mill
            stage "All"
            first: east does "looks"
            both: east opens near and far
            last: east does "looks again"
            variant OUT-a "Edited" of OUT
            """;

    /** The sentences in order; what stands in one group in brackets. */
    private static List<String> edited(String edit) throws IOException {
        List<Source> sources = new ArrayList<>();
        for (String file : List.of(
                "shared/equipment/overhead.equipment", "shared/examples/poles.network", "shared/rules/no-interruption.rules")) {
            sources.add(new Source(file, Files.readString(Path.of(file))));
        }
        sources.add(new Source("out.procedure", BASE + edit + "\n"));
        Library library = new Reader().readSources(sources);
        assertTrue(!library.hasErrors(), () -> library.problems().toString());
        Procedure variant = library.procedures().get("OUT-a");
        Procedure.Proof proof = variant.proofs().get(0);
        Bound bound = Binding.bind(variant, library.networks().get(proof.network()), proof, new Problems()).orElseThrow();
        return told(bound.body());
    }

    private static List<String> told(List<Block> blocks) {
        List<String> all = new ArrayList<>();
        for (Block block : blocks) {
            if (block instanceof Block.Stage stage) {
                all.addAll(told(stage.parts()));
            } else if (block instanceof Block.Group group) {
                all.add(told(group.parts()).toString());
            } else {
                Block.Step step = (Block.Step) block;
                all.add(step.label().map(l -> l + ": ").orElse("") + step.sentence());
            }
        }
        return all;
    }

    private static final String FIRST = "first: east does \"looks\"";
    private static final String BOTH = "[both: east opens near and far, both: east opens near and far]";
    private static final String LAST = "last: east does \"looks again\"";

    @Test
    void itIsLeftOutAndReplacedOnce() throws IOException {
        assertEquals(List.of(FIRST, LAST), edited("without step both"));
        assertEquals(List.of(FIRST, "both: east opens near", LAST), edited("step both instead: east opens near"));
    }

    @Test
    void whatReplacesItMayBeAboutSeveralDevicesToo() throws IOException {
        assertEquals(
                List.of(FIRST, "[both: east tags near and far, both: east tags near and far]", LAST),
                edited("step both instead: east tags near and far"));
    }

    @Test
    void itIsMovedAsAWhole() throws IOException {
        assertEquals(List.of(BOTH, FIRST, LAST), edited("step both before step first"));
        assertEquals(List.of(FIRST, LAST, BOTH), edited("step both after step last"));
    }

    @Test
    void whatIsInsertedStandsBesideTheWhole() throws IOException {
        assertEquals(
                List.of(FIRST, BOTH, "east does \"waits\"", LAST),
                edited("insert after step both\n  east does \"waits\"\nend"));
        assertEquals(
                List.of(FIRST, "east does \"waits\"", BOTH, LAST),
                edited("insert before step both\n  east does \"waits\"\nend"));
    }

    @Test
    void aPhaseIsTakenOutOfEach() throws IOException {
        List<String> steps = edited("step both on phase A before step first");
        assertEquals(4, steps.size(), steps::toString);
        assertEquals(BOTH, steps.get(0), steps::toString);
        assertEquals(FIRST, steps.get(1), steps::toString);
    }
}
