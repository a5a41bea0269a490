package org.keeplit.house;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.Tag;
import org.keeplit.Keeplit;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Watcher;
import org.keeplit.text.Problems;
import org.keeplit.text.Source;
import org.keeplit.verdict.Judgement;

/** No verdict changes with what a file or a rule is called, with the order of the files, or with an unrelated file beside them. */
class VerdictInvarianceTest {
    private static final Path BASE = Path.of(System.getProperty("keeplit.basedir", ""));
    /** Quick to prove, variants included. */
    private static final List<String> PROCEDURES =
            List.of("fuse", "live-work", "regulator", "transformer", "recloser-bench", "capacitor");
    private static final Pattern RULE = Pattern.compile("(?m)^(?:override )?rule ([a-z][a-z0-9-]*)\\s*$|^rule ([a-z][a-z0-9-]*)");
    private static final List<Source> LIBRARY = read("shared/equipment", "shared/networks", "shared/rules");
    private static final Source UNRELATED_EQUIPMENT = new Source("aaa.equipment", """
            language 1
            equipment aaa "An unrelated list, with kinds of the same names that are made for anything"
            kind bypass-jumper is a temporary conductor
              breaks  nothing, parallel break, load break, fault break
              makes   nothing, parallel make, energizing, energizing load, cross-phase, onto a ground
            kind ground-set is a protective ground
            """);
    private static final Source UNRELATED_RULES = new Source("aab.rules", """
            language 1
            rulebook aab revision 1
            rule load-stays-supplied
              always every load L is supplied
              says "x"
              because "x"
              severity advice
            """);
    private static final Map<String, Map<String, String>> AS_SHIPPED = new HashMap<>();

    private static List<Source> read(String... folders) {
        List<Source> all = new ArrayList<>();
        for (String folder : folders) {
            try (Stream<Path> files = Files.list(BASE.resolve(folder))) {
                for (Path file : files.sorted().toList()) {
                    all.add(new Source(file.getFileName().toString(), Files.readString(file)));
                }
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return all;
    }

    private static Source procedure(String name) {
        try {
            return new Source(name + ".procedure", Files.readString(BASE.resolve("procedures/" + name + ".procedure")));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Tag("long")
    @Property(tries = 60, shrinking = ShrinkingMode.OFF)
    void manyVerdictsAreAboutWhatIsWritten(@ForAll long seed) {
        aVerdictIsAboutWhatIsWritten(seed);
    }

    @Property(tries = 12, seed = "16006", shrinking = ShrinkingMode.OFF)
    void aVerdictIsAboutWhatIsWritten(@ForAll long seed) {
        Random random = new Random(seed);
        String name = PROCEDURES.get(random.nextInt(PROCEDURES.size()));
        List<Source> files = new ArrayList<>(LIBRARY);
        files.add(procedure(name));
        Map<String, String> before = AS_SHIPPED.computeIfAbsent(name, n -> verdicts(files, Map.of()));
        Map<String, String> renamed = random.nextBoolean() ? rules(files, random) : Map.of();
        List<Source> changed = new ArrayList<>();
        for (Source file : files) {
            String text = file.content();
            for (Map.Entry<String, String> rule : renamed.entrySet()) {
                text = text.replaceAll("(?<![a-z0-9-])" + rule.getKey() + "(?![a-z0-9-])", rule.getValue());
            }
            String ending = file.name().substring(file.name().lastIndexOf('.'));
            changed.add(new Source(random.nextBoolean() ? "f" + random.nextInt(1_000_000) + ending : file.name(), text));
        }
        if (random.nextBoolean()) {
            changed.add(UNRELATED_EQUIPMENT);
        }
        if (random.nextBoolean()) {
            changed.add(UNRELATED_RULES);
        }
        Collections.shuffle(changed, random);
        Map<String, String> back = renamed.entrySet().stream().collect(Collectors.toMap(Map.Entry::getValue, Map.Entry::getKey));
        assertEquals(before, verdicts(changed, back), () -> name + ", seed " + seed + ", renamed " + renamed);
    }

    /** {@return new names for a third of all rules, some of them those of sorts of findings} */
    private static Map<String, String> rules(List<Source> files, Random random) {
        Map<String, String> all = new TreeMap<>();
        int number = 0;
        for (Source file : files) {
            Matcher rule = RULE.matcher(file.content());
            while (rule.find()) {
                String name = rule.group(1) == null ? rule.group(2) : rule.group(1);
                // A name of one word may be a word of prose as well.
                if (name.contains("-") && random.nextInt(3) == 0) {
                    all.putIfAbsent(name, "renamed-" + number++);
                }
            }
        }
        return all;
    }

    private static Map<String, String> verdicts(List<Source> files, Map<String, String> names) {
        Library library = new Reader().readSources(files);
        assertFalse(library.hasErrors(), () -> library.problems().toString());
        Map<String, String> all = new TreeMap<>();
        Problems problems = new Problems();
        for (Judgement one : Keeplit.check(library, Limits.USUAL, 1, Watcher.NOBODY, problems)) {
            all.put(one.instance().words(), one.status() + " in " + one.outcome().states() + " states: "
                    + one.outcome().findings().stream().map(f -> words(f, names)).sorted().toList()
                    + one.outcome().notes().stream().map(f -> words(f, names)).sorted().toList());
        }
        assertTrue(!all.isEmpty());
        return all;
    }

    private static String words(Finding finding, Map<String, String> names) {
        return names.getOrDefault(finding.name(), finding.name()) + " at " + finding.step() + " on " + finding.phase() + " after " + finding.trace().size();
    }
}
