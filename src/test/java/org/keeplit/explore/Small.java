package org.keeplit.explore;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeMap;
import org.keeplit.Keeplit;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.Watcher;
import org.keeplit.text.ProblemPrinter;
import org.keeplit.text.Problems;
import org.keeplit.text.Source;
import org.keeplit.verdict.Judgement;

/** Small procedures on one small pole, written in the test. */
final class Small {
    private static final String NETWORK =
            """
            language 1
            network pole "One recloser pole"
            uses overhead
            system voltage 12.47 kV, frequency 60 Hz
            source bus at s-0, phases ABC, supply grid, fault level 100 MVA, reactance ratio 8
            breaker feeder from s-0 to s-1, phases ABC, pickup 480 A, ground pickup 240 A
            line l-1 from s-1 to s-2, phases ABC, length 1 km, conductor acsr-336
            recloser r from s-2 to s-3, phases ABC, single-phase units, coil 100 A
            line l-2 from s-3 to s-4, phases ABC, length 1 km, conductor acsr-336
            switch gang from s-4 to s-5, phases ABC
            load mill at s-5, phases ABC, 300 kW, 100 kvar, 12 customers
            load lane at s-3, phases A, 30 kW, 10 kvar, 9 customers
            """;

    private Small() {}

    /** {@return the verdict on steps} @param rules rules of a rulebook of their own @param steps the lines of a stage */
    static Judgement judge(String rules, String steps) {
        return judge(rules, "", steps, "");
    }

    /** {@return the verdict on steps, every rule explained in full} */
    static Judgement explained(String rules, String steps) {
        return judge(rules, "", steps, "", new Watcher() {
            @Override
            public boolean goOn(int states, int open) {
                return true;
            }

            @Override
            public boolean wantsReasons() {
                return true;
            }
        });
    }

    static Judgement judge(String rules, String header, String steps, String tail) {
        return judge(rules, header, steps, tail, Watcher.NOBODY);
    }

    private static Judgement judge(String rules, String header, String steps, String tail, Watcher watcher) {
        List<Judgement> all = judgeAll(rules, header, steps, tail, watcher);
        assertEquals(1, all.size());
        return all.get(0);
    }

    /** {@return the network's text} */
    static String network() {
        return NETWORK;
    }

    /** {@return the verdicts on steps, one for each start} */
    static List<Judgement> judgeAll(String rules, String header, String steps, String tail) {
        return judgeAll(rules, header, steps, tail, Watcher.NOBODY);
    }

    private static List<Judgement> judgeAll(
            String rules, String header, String steps, String tail, Watcher watcher) {
        Problems problems = new Problems();
        List<Judgement> all = judge(NETWORK, rules, header, steps, tail, Limits.USUAL, watcher, problems);
        assertEquals("", ProblemPrinter.print(problems.sorted()));
        return all;
    }

    /** {@return the verdicts on another network called pole} @param problems collects what is wrong */
    static List<Judgement> judge(
            String network, String rules, String header, String steps, String tail, Problems problems) {
        return judge(network, rules, header, steps, tail, Limits.USUAL, Watcher.NOBODY, problems);
    }

    /** {@return the one verdict on another network called pole, in which nothing is wrong} @param events how many may happen at most */
    static Judgement judge(String network, String rules, String header, String steps, String tail, int events) {
        Problems problems = new Problems();
        List<Judgement> all = judge(network, rules, header, steps, tail, Limits.USUAL.with(events), Watcher.NOBODY, problems);
        assertEquals("", ProblemPrinter.print(problems.sorted()), rules + steps + tail);
        assertEquals(1, all.size());
        return all.get(0);
    }

    /** {@return what comes of steps within limits} @param watcher is told how it gets on */
    static Outcome within(Limits limits, Watcher watcher, String steps) {
        Problems problems = new Problems();
        String rule = "rule r-1\n  always every load L is supplied\n  says \"x\"\n  because \"Test.\"\n";
        List<Judgement> all = judge(NETWORK, rule, "planned outage of mill and lane\n", steps, "", limits, watcher, problems);
        assertEquals("", ProblemPrinter.print(problems.sorted()));
        return all.get(0).outcome();
    }

    /** {@return the lines of a stage} @param steps the steps, with semicolons between them */
    static String lines(String steps) {
        return "  " + String.join("\n  ", steps.split("; ")) + "\n";
    }

    private static List<Judgement> judge(
            String network,
            String rules,
            String header,
            String steps,
            String tail,
            Limits limits,
            Watcher watcher,
            Problems problems) {
        String procedure =
                """
                language 1
                procedure P revision 1
                title "A test"
                %KEEPS%
                crew
                  op "Operator", in charge, on the source side
                  mate "Second", on the load side
                temporary
                  bypass-jumper J for each phase of r
                  ground-set G for each phase of gang
                hold H for r, held at feeder and at r, by op
                proved on pole
                """
                                .replace("%KEEPS%", header.startsWith("keeps") ? header : "keeps test-rules")
                        + (header.startsWith("keeps") ? "" : header)
                        + "\nstage \"All\"\n"
                        + steps
                        + tail;
        Library library = new Reader()
                .readSources(List.of(
                        new Source("overhead.equipment", read("shared/equipment/overhead.equipment")),
                        new Source("pole.network", network),
                        new Source("test.rules", "language 1\nrulebook test-rules revision 1\n" + rules),
                        new Source("p.procedure", procedure)));
        library.problems().forEach(problems::add);
        return Keeplit.check(library, limits, watcher, problems);
    }

    static String read(String file) {
        try {
            return Files.readString(Path.of(file));
        } catch (java.io.IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    /** {@return the root findings by name, each with the length of its trace} */
    static TreeMap<String, Integer> roots(Judgement judgement) {
        TreeMap<String, Integer> all = new TreeMap<>();
        judgement.outcome().findings().forEach(f -> all.merge(f.name(), f.trace().size(), Math::min));
        return all;
    }
}
