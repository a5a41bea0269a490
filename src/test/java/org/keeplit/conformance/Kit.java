package org.keeplit.conformance;

import java.io.IOException;
import java.math.BigInteger;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Reads the conformance kit: its cases and the files that they share. The format is in the README of its folder. */
final class Kit {
    /** Where the kit lies. */
    static final Path ROOT = Path.of(System.getProperty("keeplit.basedir", "")).resolve("src/test/resources/conformance");

    private Kit() {}

    /**
     * A case.
     *
     * @param name its name
     * @param title what it says, in a sentence
     * @param covers what of the page it covers
     * @param files the texts by file name
     * @param expected what is expected, one for each start
     * @param judged the procedure that is judged; nothing if the bundle has only one
     */
    record Case(
            String name,
            String title,
            List<String> covers,
            Map<String, String> files,
            List<Expectation> expected,
            Optional<String> judged) {

        /** {@return the same case, with something else expected of it} */
        Case expecting(Expectation other) {
            return new Case(name, title, covers, files, List.of(other), judged);
        }
    }

    /**
     * What is expected of one procedure from one start.
     *
     * @param verdict the verdict, in words
     * @param roots the places of the root breaks, cautions and advice apart
     * @param notes the places of the root breaks of cautions and advice
     * @param byEvent the rules that an event alone breaks
     * @param mistake where a mistake is told, for a case that is not judged
     * @param states how many states there are
     * @param orders how many complete orders of acts there are
     * @param sets how many different sets of done acts there are
     * @param ways acts and constraints, for the brute force
     */
    record Expectation(
            String verdict,
            List<Place> roots,
            List<Place> notes,
            List<Place> byEvent,
            Optional<Mistake> mistake,
            Optional<Integer> states,
            Optional<BigInteger> orders,
            Optional<Integer> sets,
            List<Orders.Way> ways) {
        /** {@return a verdict without anything found} */
        static Expectation nothing(String verdict) {
            return new Expectation(
                    verdict,
                    List.of(),
                    List.of(),
                    List.of(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    List.of());
        }

        /** {@return what would be wrong to expect: another verdict, a place too few, a place too many, a state too many} */
        List<Expectation> wrong() {
            List<Expectation> all = new ArrayList<>();
            all.add(with(verdict.equals("holds") ? "broken" : "holds", roots, states));
            if (!roots.isEmpty()) {
                all.add(with(verdict, roots.subList(1, roots.size()), states));
            }
            if (!verdict.equals("mistake") && !verdict.equals("not judged")) {
                List<Place> more = new ArrayList<>(roots);
                more.add(new Place("stuck", "nowhere", ""));
                all.add(with(verdict, more, states));
            }
            states.ifPresent(n -> all.add(with(verdict, roots, Optional.of(n + 1))));
            return all;
        }

        private Expectation with(String otherVerdict, List<Place> otherRoots, Optional<Integer> otherStates) {
            return new Expectation(otherVerdict, otherRoots, notes, byEvent, mistake, otherStates, orders, sets, ways);
        }
    }

    /**
     * Where a mistake is told.
     *
     * @param file the file
     * @param line the line, from 1; 0 for any
     */
    record Mistake(String file, int line) {}

    /**
     * Where something breaks.
     *
     * @param what the kind; of a rule with its rulebook and its name
     * @param step the label of the step; {@code start}; or {@code end} or {@code any}, where step and phase are not compared
     * @param phase the phase, or empty; {@code any} is not compared
     */
    record Place(String what, String step, String phase) {
        /** {@return whether a place that was found is this one} */
        boolean is(Place found) {
            boolean anywhere = step.equals("end") || step.equals("any");
            return what.equals(found.what)
                    && (anywhere || step.equals(found.step) && (phase.equals("any") || phase.equals(found.phase)));
        }

        @Override
        public String toString() {
            return what + " at " + step + (phase.isEmpty() ? "" : " on " + phase);
        }
    }

    /** {@return the cases, by name} */
    static Map<String, Case> cases() throws IOException {
        Map<String, Case> all = new TreeMap<>();
        try (Stream<Path> files = Files.walk(ROOT.resolve("cases"))) {
            for (Path file : files.filter(f -> f.toString().endsWith(".case")).sorted().toList()) {
                String name = file.getFileName().toString().replaceAll("\\.case$", "");
                if (all.put(name, read(name, Files.readAllLines(file))) != null) {
                    throw new IllegalStateException("two cases have the name " + name);
                }
            }
        }
        return all;
    }

    /** {@return the line with each backslash, u and four hexadecimal digits as the character that they stand for} */
    private static String characters(String line) {
        return Pattern.compile("\\\\u(\\p{XDigit}{4})")
                .matcher(line)
                .replaceAll(m -> Matcher.quoteReplacement(Character.toString(Integer.parseInt(m.group(1), 16))));
    }

    /** {@return the topics that the cases cover, each with the words of the page} */
    static Map<String, String> topics() throws IOException {
        Map<String, String> all = new TreeMap<>();
        for (String line : Files.readAllLines(ROOT.resolve("topics.txt"))) {
            if (!line.isBlank() && !line.startsWith("#")) {
                all.put(first(line), rest(line));
            }
        }
        return all;
    }

    private static Case read(String name, List<String> lines) throws IOException {
        String title = "";
        List<String> covers = new ArrayList<>();
        Map<String, String> files = new LinkedHashMap<>();
        List<List<String>> expected = new ArrayList<>();
        Optional<String> judged = Optional.empty();
        String part = "";
        for (String line : lines) {
            if (line.startsWith("=== ")) {
                part = line.substring(4).strip();
                if (part.equals("expect")) {
                    expected.add(new ArrayList<>());
                } else {
                    files.put(part, "");
                }
            } else if (part.equals("expect")) {
                expected.get(expected.size() - 1).add(line);
            } else if (!part.isEmpty()) {
                files.merge(part, characters(line) + "\n", String::concat);
            } else if (!line.isBlank()) {
                switch (first(line)) {
                    case "title" -> title = rest(line);
                    case "covers" -> covers.addAll(words(rest(line)));
                    case "use" -> files.put(rest(line), Files.readString(ROOT.resolve("common").resolve(rest(line))));
                    case "judge" -> judged = Optional.of(rest(line));
                    case "why" -> {}
                    default -> throw new IllegalStateException(name + ": " + line);
                }
            }
        }
        if (title.isEmpty() || covers.isEmpty() || expected.isEmpty()) {
            throw new IllegalStateException(name + " has no title, covers nothing or expects nothing");
        }
        List<Expectation> all = new ArrayList<>();
        for (List<String> one : expected) {
            all.add(expectation(name, one));
        }
        return new Case(name, title, covers, files, all, judged);
    }

    private static Expectation expectation(String name, List<String> lines) {
        String verdict = "";
        List<Place> roots = new ArrayList<>();
        List<Place> notes = new ArrayList<>();
        List<Place> byEvent = new ArrayList<>();
        Optional<Mistake> mistake = Optional.empty();
        Optional<Integer> states = Optional.empty();
        Optional<BigInteger> orders = Optional.empty();
        Optional<Integer> sets = Optional.empty();
        List<Orders.Way> ways = new ArrayList<>();
        for (String line : lines) {
            if (line.isBlank() || line.startsWith("#")) {
                continue;
            }
            String rest = rest(line);
            switch (first(line)) {
                case "verdict" -> verdict = rest;
                case "root" -> roots.add(place(rest));
                case "note" -> notes.add(place(rest));
                case "event" -> byEvent.add(place(rest));
                case "mistake" -> mistake = Optional.of(new Mistake(first(rest), Integer.parseInt(rest(rest))));
                case "states" -> states = Optional.of(Integer.parseInt(rest));
                case "orders" -> orders = Optional.of(new BigInteger(rest));
                case "sets" -> sets = Optional.of(Integer.parseInt(rest));
                case "acts" -> ways.add(new Orders.Way(words(rest), new ArrayList<>(), new ArrayList<>()));
                case "before" -> before(words(rest), ways.get(ways.size() - 1).before());
                case "whole" -> {
                    String[] two = rest.split("\\|");
                    ways.get(ways.size() - 1).whole().add(new Orders.Whole(words(two[0]), words(two[1])));
                }
                default -> throw new IllegalStateException(name + ": " + line);
            }
        }
        if (verdict.isEmpty() || ways.isEmpty() && (orders.isPresent() || sets.isPresent())) {
            throw new IllegalStateException(name + " states no verdict, or a number with nothing to count");
        }
        return new Expectation(verdict, roots, notes, byEvent, mistake, states, orders, sets, ways);
    }

    /** Reads {@code a,b c d}: a and b come before c, c before d. */
    private static void before(List<String> chain, List<List<String>> pairs) {
        for (int i = 0; i + 1 < chain.size(); i++) {
            for (String earlier : chain.get(i).split(",")) {
                for (String later : chain.get(i + 1).split(",")) {
                    pairs.add(List.of(earlier, later));
                }
            }
        }
    }

    /** Reads {@code rule BOOK RULE at STEP on PHASE} and shorter ones. */
    private static Place place(String text) {
        int at = text.indexOf(" at ");
        String what = text.substring(0, at);
        List<String> where = words(text.substring(at + 4));
        return new Place(what, where.get(0), where.size() > 2 ? where.get(2) : "");
    }

    private static List<String> words(String text) {
        return Arrays.asList(text.strip().split("\\s+"));
    }

    private static String first(String line) {
        return line.strip().split("\\s+", 2)[0];
    }

    private static String rest(String line) {
        String[] two = line.strip().split("\\s+", 2);
        return two.length == 2 ? two[1] : "";
    }
}
