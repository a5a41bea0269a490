package org.keeplit.card;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.keeplit.explore.Stepper;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Watcher;
import org.keeplit.page.Pages;
import org.keeplit.page.Proof;
import org.keeplit.page.WholeFolder;
import org.keeplit.paper.Papers;
import org.keeplit.procedure.Binding;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Person;
import org.keeplit.text.Problems;
import org.keeplit.text.Source;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** Cards against the procedure that they are of, read back from the pages as a reader finds them. */
class CardsTest {
    private static final LocalDate DATE = LocalDate.of(2026, 3, 2);
    private static final List<CardSet> FUSES = cards(new Reader().read(List.of(Path.of("procedures/fuse.procedure"))));

    private static List<CardSet> cards(Library library) {
        Problems problems = new Problems();
        assertEquals(List.of(), library.problems());
        List<CardSet> sets = Papers.cards(library, Limits.USUAL, Watcher.NOBODY, problems);
        assertEquals(List.of(), problems.sorted());
        return sets;
    }

    private static final Map<CardSet, Map<String, String>> PAGES = new HashMap<>();
    private static final Map<CardSet, String> CREW = new HashMap<>();

    private static Map<String, String> pages(CardSet set) {
        return PAGES.computeIfAbsent(set, s -> Pages.html(CardPages.files(s, DATE, Paper.A5, told -> {})));
    }

    /** {@return the whole crew's page} */
    private static String crew(CardSet set) {
        return CREW.computeIfAbsent(set, s -> CardPages.page(s, DATE, Paper.A5, Optional.empty()).html());
    }

    private static void steps(List<Block> blocks, List<Block.Step> into) {
        for (Block block : blocks) {
            if (block instanceof Block.Step step) {
                into.add(step);
            } else if (block instanceof Block.Stage stage) {
                steps(stage.parts(), into);
            } else if (block instanceof Block.Group group) {
                steps(group.parts(), into);
            } else {
                throw new AssertionError("the procedures of this test have no " + block);
            }
        }
    }

    @Test
    void theCrewsCardsTellTheProcedureStepByStep() {
        assertEquals(List.of("FU-1", "FU-2"), FUSES.stream().map(s -> s.instance().procedure().name()).toList());
        for (CardSet set : FUSES) {
            var instance = set.instance();
            List<Block.Step> steps = new ArrayList<>();
            steps(Binding.bind(instance.procedure(), instance.network(), instance.proof(), new Problems()).orElseThrow().body(), steps);
            List<Element> cards = Pages.byClass(Pages.parsed(crew(set)), "section", "card");
            assertEquals(steps.size(), cards.size());
            for (int i = 0; i < cards.size(); i++) {
                Block.Step step = steps.get(i);
                String text = cards.get(i).getTextContent();
                assertTrue(text.startsWith(String.valueOf(i + 1)), text);
                step.label().ifPresent(label -> assertTrue(text.contains(label), text));
                step.actors().forEach(actor -> assertTrue(text.contains(actor.toString()), text));
                step.cautions().forEach(caution -> assertTrue(text.contains("CAUTION: " + caution), text));
                step.records().forEach(record -> assertTrue(text.contains("Record: " + record), text));
                step.because().ifPresent(because -> assertTrue(text.contains(because), text));
                step.requires().forEach(c -> assertTrue(text.contains(Stepper.words(c)), text));
                step.expects().forEach(c -> assertTrue(text.contains(Stepper.words(c)), text));
                assertTrue(text.contains("Called outage, always"), text);
            }
        }
    }

    @Test
    void aRoleHasItsOwnStepsInFullAndTheOthersInALine() {
        CardSet set = FUSES.get(1);
        Map<String, String> pages = pages(set);
        var instance = set.instance();
        List<Block.Step> steps = new ArrayList<>();
        steps(Binding.bind(instance.procedure(), instance.network(), instance.proof(), new Problems()).orElseThrow().body(), steps);
        boolean any = false;
        for (Person person : instance.procedure().crew()) {
            Document page = Pages.parsed(pages.get((person.desk() ? "desk-" : "role-") + person.name() + ".html"));
            List<String> mine = IntStream.range(0, steps.size())
                    .filter(i -> steps.get(i).actors().stream().anyMatch(a -> a.toString().equals(person.name())))
                    .mapToObj(i -> String.valueOf(i + 1))
                    .toList();
            any |= !mine.isEmpty();
            assertEquals(mine, Pages.byClass(page, "span", "number").stream().map(Element::getTextContent).toList());
            assertEquals(set.steps().size() - mine.size(), Pages.byClass(page, "p", "other").size());
        }
        assertTrue(any);
        assertEquals(4, pages.size());
    }

    @Test
    void everySheetSaysWhatItIsOf() {
        CardSet set = FUSES.get(0);
        List<Element> sheets = Pages.byClass(Pages.parsed(crew(set)), "section", "sheet");
        for (int i = 0; i < sheets.size(); i++) {
            String text = sheets.get(i).getTextContent();
            for (String part : List.of("FU-1, revision 1", "network heron-vale", "input " + set.hash(), "2026-03-02",
                    "The proof holds for exactly this text.", CardPages.CAUTION, "Page " + (i + 1) + " of " + sheets.size())) {
                assertTrue(text.contains(part), part + " in " + text);
            }
        }
    }

    /** The distances are those of 29 CFR 1910.269 table R-6, 5.1 to 15.0 kV: 0.65 m (2.14 ft) and 0.68 m (2.24 ft), from memory. */
    @Test
    void approachDistancesAreThoseOfTheTable() {
        assertEquals(
                List.of("0.65 m (2.14 ft) to a part at line voltage, from ground", "0.68 m (2.24 ft) to a part of another phase"),
                FUSES.get(0).approach().subList(0, 2));
    }

    @Test
    void theGrantIsRepeatedWordForWord() {
        List<String> said = FUSES.get(0).steps().stream().flatMap(s -> s.speech().stream()).toList();
        String grant = "old H for the line at pole-h-8, both sides of f-hl-4, held at mill-one and r-24, to foreman, number ____, at __:__.\u201D";
        assertTrue(said.contains("desk: \u201CH" + grant), said.toString());
        assertTrue(said.contains("foreman: \u201CI repeat: h" + grant), said.toString());
    }

    @Test
    void theSameInputGivesTheSameBytes() {
        String steps = "  bypass: op closes bridge\n  open: op opens main\n";
        CardSet one = cards(small("waits", steps)).get(0);
        CardSet again = cards(small("waits", steps)).get(0);
        for (Paper paper : Paper.values()) {
            Map<String, byte[]> files = CardPages.files(one, DATE, paper, told -> {});
            Map<String, byte[]> anew = CardPages.files(again, DATE, paper, told -> {});
            assertEquals(files.keySet(), anew.keySet());
            files.forEach((name, bytes) -> assertArrayEquals(bytes, anew.get(name), name));
        }
    }

    private static Library small(String words, String steps) {
        return small(words, steps, "");
    }

    /** @param more what the network says of itself besides */
    private static Library small(String words, String steps, String more) {
        String network = """
                language 1
                network pole "<b>One</b> switch"
                uses overhead
                system voltage 12.47 kV, frequency 60 Hz%s
                source bus at s-0, phases ABC, supply grid
                switch main from s-0 to s-1, phases ABC, at pole-1
                bypass-switch bridge from s-0 to s-1, phases ABC, ganged, open, at pole-1
                load mill at s-1, phases ABC, 300 kW, 12 customers
                """.formatted(more);
        String rules = """
                language 1
                rulebook supply revision 1
                rule supplied
                  always every load L is supplied
                  says "{L} loses supply"
                  because "Test."
                """;
        String procedure = """
                language 1
                procedure P revision 1
                title "A <script>alert(1)</script> & 'test'"
                keeps supply
                crew
                  op "<script>", in charge
                proved on pole
                stage "All"
                  op does "%s"
                %s""".formatted(words, steps);
        try {
            return new Reader().readSources(List.of(
                    new Source("overhead.equipment", Files.readString(Path.of("shared/equipment/overhead.equipment"))),
                    new Source("pole.network", network),
                    new Source("supply.rules", rules),
                    new Source("p.procedure", procedure)));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void whatFilesSayIsTextAndNeverMarkup() {
        String words = "looks at <script>alert(2)</script> & </section> it's <img src=x onerror=alert(3)>";
        CardSet set = cards(small(words, "  bypass: op closes bridge\n")).get(0);
        pages(set).forEach((file, page) -> {
            Document parsed = Pages.parsed(page);
            assertEquals(0, parsed.getElementsByTagName("script").getLength());
            assertEquals(0, parsed.getElementsByTagName("img").getLength());
            assertFalse(page.contains("<script"), file);
            assertTrue(Pages.byClass(parsed, "section", "card").get(0).getTextContent().contains(words));
        });
    }

    @Test
    void whatIsNotProvedSaysSoAcrossEverySheet() {
        CardSet set = cards(small("waits", "  open: op opens main\n")).get(0);
        assertEquals(Proof.BROKEN, set.proof());
        Document page = Pages.parsed(crew(set));
        int sheets = Pages.byClass(page, "section", "sheet").size();
        assertEquals(sheets, Pages.byClass(page, "div", "across").size());
        assertFalse(page.getDocumentElement().getTextContent().contains("The proof holds"));
    }

    @Test
    void anyChangeOfTheTextChangesTheHash() {
        String steps = "  bypass: op closes bridge\n";
        String one = cards(small("waits", steps)).get(0).hash();
        assertEquals(one, cards(small("waits", steps)).get(0).hash());
        assertNotEquals(one, cards(small("waits.", steps)).get(0).hash());
    }

    @Test
    void aFolderIsWrittenWholeOrNotAtAll(@TempDir Path folder) throws IOException {
        Path out = folder.resolve("out");
        WholeFolder.write(out, Map.of("a/b.html", WholeFolder.bytes("one")));
        assertEquals("one", Files.readString(out.resolve("a/b.html")));
        assertThrows(FileAlreadyExistsException.class, () -> WholeFolder.write(out, Map.of("c.html", WholeFolder.bytes("two"))));
        // A page that is where another needs a folder cannot be written, after the first was.
        Path second = folder.resolve("second");
        assertThrows(IOException.class, () -> WholeFolder.write(second, Map.of("a", WholeFolder.bytes("one"), "a/b", WholeFolder.bytes("two"))));
        try (Stream<Path> left = Files.list(folder)) {
            assertEquals(List.of(out), left.toList());
        }
    }

    /** The network of 157 nodes comes down to what the job has to do with, and every load is in one row's count. */
    @Test
    void theNetworkIsFoldedAndNothingIsLost() {
        CardSet set = FUSES.get(0);
        Element picture = Pages.parsed(set.network()).getDocumentElement();
        assertTrue(Double.parseDouble(picture.getAttribute("viewBox").split(" ")[3]) < 540, "higher than wide");
        int loads = 0;
        int customers = 0;
        Matcher counts = Pattern.compile("(\\d+) loads?, (\\d+) customers?").matcher(picture.getTextContent());
        while (counts.find()) {
            loads += Integer.parseInt(counts.group(1));
            customers += Integer.parseInt(counts.group(2));
        }
        List<org.keeplit.network.Element.Load> all = set.instance().network().all(org.keeplit.network.Element.Load.class).toList();
        assertEquals(all.size(), loads);
        assertEquals(all.stream().mapToInt(org.keeplit.network.Element.Load::customers).sum(), customers);
        for (String name : List.of("mill-one", "r-24", "f-hl-4")) {
            assertTrue(picture.getTextContent().contains(name), name);
        }
    }

    /** 29 CFR 1910.269 tables R-5 and R-6 (2014 final rule): at 1,500 m the factor is 1.05, so 0.65 m becomes 0.6825 and 0.68 m 0.714. */
    @Test
    void approachDistancesCountTheHeightThatTheNetworkStates() {
        Library library = small("waits", "  bypass: op closes bridge\n", ", altitude 1500 m");
        List<String> approach = cards(library).get(0).approach();
        assertTrue(approach.get(0).startsWith("0.69 m (2.27 ft)"), approach.toString());
        assertTrue(approach.get(1).startsWith("0.72 m (2.37 ft)"), approach.toString());
        assertTrue(approach.get(2).contains("at 1500 m above sea, as the network states: times 1.05"), approach.toString());
    }

    @Test
    void whoStandsOnTheGroundAndSpeaksIsNotToldToKeepAway() {
        for (StepCard step : FUSES.get(0).steps()) {
            if (step.name().equals("foreman repeats H")) {
                assertFalse(step.near());
            } else if (step.who().contains("east") && step.name().startsWith("bypass")) {
                assertTrue(step.near());
                assertEquals(2, step.pictures().size());
                assertTrue(step.tools().get(0).contains("J and a clamp stick"), step.tools().toString());
            }
        }
    }
}
