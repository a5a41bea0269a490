package org.keeplit.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Tag;
import net.jqwik.api.constraints.IntRange;
import org.keeplit.text.Problem;
import org.keeplit.text.ProblemPrinter;
import org.keeplit.text.Source;
import org.keeplit.text.Span;

/** Good files with lines and letters changed at random: never an exception, and every problem lies inside its file. */
class MutationTest {
    private static final String STRANGE = "\"#:,/%.-{}AaZ019 \té\u0430\u0000\u2028\ud83d\udc04";
    private static final List<Source> GOOD = Samples.all();

    @Property(tries = 120, seed = "20260101")
    void changedLetters(@ForAll long seed, @ForAll @IntRange(min = 1, max = 8) int changes) {
        Random random = new Random(seed);
        int file = random.nextInt(GOOD.size());
        StringBuilder text = new StringBuilder(GOOD.get(file).content());
        for (int i = 0; i < changes; i++) {
            int at = random.nextInt(text.length());
            switch (random.nextInt(3)) {
                case 0 -> text.deleteCharAt(at);
                case 1 -> text.insert(at, STRANGE.charAt(random.nextInt(STRANGE.length())));
                default -> text.setCharAt(at, STRANGE.charAt(random.nextInt(STRANGE.length())));
            }
        }
        read(file, text.toString());
    }

    @Property(tries = 120, seed = "20260102")
    void changedLines(@ForAll long seed, @ForAll @IntRange(min = 1, max = 5) int changes) {
        Random random = new Random(seed);
        int file = random.nextInt(GOOD.size());
        List<String> lines = new ArrayList<>(GOOD.get(file).content().lines().toList());
        for (int i = 0; i < changes && !lines.isEmpty(); i++) {
            int at = random.nextInt(lines.size());
            int other = random.nextInt(lines.size());
            switch (random.nextInt(4)) {
                case 0 -> lines.remove(at);
                case 1 -> lines.add(at, lines.get(other));
                case 2 -> lines.set(at, swapWords(lines.get(at), random));
                default -> {
                    List<String> foreign = GOOD.get(random.nextInt(GOOD.size()))
                            .content()
                            .lines()
                            .toList();
                    lines.add(at, foreign.get(random.nextInt(foreign.size())));
                }
            }
        }
        read(file, String.join("\n", lines) + "\n");
    }

    @Tag("long")
    @Property(tries = 10_000)
    void changedLettersAtLength(@ForAll long seed, @ForAll @IntRange(min = 1, max = 40) int changes) {
        changedLetters(seed, changes);
    }

    @Tag("long")
    @Property(tries = 10_000)
    void changedLinesAtLength(@ForAll long seed, @ForAll @IntRange(min = 1, max = 20) int changes) {
        changedLines(seed, changes);
    }

    private static String swapWords(String line, Random random) {
        String[] words = line.split(" ");
        int a = random.nextInt(words.length == 0 ? 1 : words.length);
        int b = random.nextInt(words.length == 0 ? 1 : words.length);
        if (words.length > 1) {
            String kept = words[a];
            words[a] = words[b];
            words[b] = kept;
        }
        return String.join(" ", words);
    }

    private static void read(int file, String text) {
        List<Source> all = new ArrayList<>(GOOD);
        all.set(file, new Source(GOOD.get(file).name(), text));
        Library library = new Reader().readSources(all);
        for (Problem problem : library.problems()) {
            inside(problem.span());
            problem.related().ifPresent(r -> inside(r.span()));
        }
        String told = ProblemPrinter.print(library.problems());
        assertEquals(told, ProblemPrinter.print(new Reader().readSources(all).problems()), "the same, every time");
    }

    private static void inside(Span span) {
        if (span.line() == 0) {
            return;
        }
        assertTrue(span.line() <= span.source().content().lines().count(), "the line is there");
        String line = span.source().line(span.line());
        assertTrue(span.column() >= 1 && span.column() - 1 + span.length() <= line.length(), "so is the stretch");
    }
}
