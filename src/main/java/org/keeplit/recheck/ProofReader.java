package org.keeplit.recheck;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.keeplit.text.Problem;
import org.keeplit.text.Problems;
import org.keeplit.text.Source;
import org.keeplit.text.Span;

/** Reads written proofs. All that is wrong with one is told, as far as its lines can be read. */
public final class ProofReader {
    private static final Pattern STATE = Pattern.compile("((?:nothing|[0-9,-]+) :[0-9 ]*?)(?: x ([1-9][0-9]{0,8}))?");
    private static final Pattern FACT = Pattern.compile("([0-9]{1,9}) (.+)");
    private static final List<String> ONCE = List.of("place", "revision", "input", "events", "states");

    private final Source source;
    private final Problems problems;
    private final Map<String, String> once = new LinkedHashMap<>();
    private final List<String> files = new ArrayList<>();
    private final List<String> rulebooks = new ArrayList<>();
    private final Map<String, String> start = new LinkedHashMap<>();
    private final Set<String> facts = new LinkedHashSet<>();
    private final Map<String, ProofFile.Held> states = new LinkedHashMap<>();
    private boolean wrong;
    private boolean isUnreadable;

    private ProofReader(Source source, Problems problems) {
        this.source = source;
        this.problems = problems;
    }

    /**
     * Reads.
     *
     * @param source the file
     * @param problems collects what is wrong with it
     * @return the proof, or nothing if anything is
     */
    public static Optional<ProofFile> read(Source source, Problems problems) {
        return new ProofReader(source, problems).read();
    }

    private Optional<ProofFile> read() {
        String[] lines = source.content().split("\n", -1);
        String version = "keeplit proof " + ProofFile.VERSION;
        if (!lines[0].equals(version)) {
            boolean other = lines[0].startsWith("keeplit proof ");
            problem(
                    "proof-version",
                    1,
                    other ? "this is a proof of another form: " + lines[0].substring("keeplit proof ".length()) : "this is no proof",
                    other
                            ? "this program reads form " + ProofFile.VERSION + "; write the proof anew with check --proofs"
                            : "proofs are what check --proofs writes; they begin with “" + version + "”");
            return Optional.empty();
        }
        int last = lines.length - 2;
        boolean whole = last > 0 && lines[last + 1].isEmpty() && lines[last].startsWith("seal ");
        if (!whole) {
            problem("proof-cut-short", lines.length, "the file ends before its last line, the seal", "it was cut short; write it anew");
            return Optional.empty();
        }
        for (int i = 1; i < last; i++) {
            line(i + 1, lines[i]);
        }
        String before = source.content().substring(0, source.content().length() - lines[last].length() - 1);
        if (!lines[last].equals("seal " + ProofFile.seal(before))) {
            problem("proof-changed", last + 1, "the seal is not that of the lines above it", "a line was changed since the proof was written; write it anew");
        }
        return wrong ? Optional.empty() : file();
    }

    private void line(int number, String line) {
        String word = line.contains(" ") ? line.substring(0, line.indexOf(' ')) : line;
        String rest = line.substring(Math.min(line.length(), word.length() + 1));
        if (ONCE.contains(word)) {
            boolean counts = word.equals("events") || word.equals("states");
            if (once.putIfAbsent(word, rest) != null || counts && !rest.matches("[0-9]{1,9}")) {
                unreadable(number);
            }
            return;
        }
        switch (word) {
            case "file" -> files.add(rest);
            case "rulebook" -> rulebooks.add(rest);
            case "start" -> {
                int is = rest.lastIndexOf(" is ");
                if (is < 0 || start.putIfAbsent(rest.substring(0, is), rest.substring(is + 4)) != null) {
                    unreadable(number);
                }
            }
            case "fact" -> fact(number, rest);
            case "state" -> state(number, rest);
            default -> unreadable(number);
        }
    }

    private void fact(int number, String rest) {
        Matcher fact = FACT.matcher(rest);
        if (!fact.matches() || Integer.parseInt(fact.group(1)) != facts.size() + 1 || !facts.add(fact.group(2))) {
            unreadable(number);
        }
    }

    private void state(int number, String rest) {
        Matcher state = STATE.matcher(rest);
        if (!state.matches()) {
            unreadable(number);
            return;
        }
        int times = state.group(2) == null ? 1 : Integer.parseInt(state.group(2));
        if (states.putIfAbsent(state.group(1), new ProofFile.Held(times, number)) != null) {
            problem("proof-line", number, "this state stands here a second time", "write the proof anew");
        }
    }

    private Optional<ProofFile> file() {
        for (String word : ONCE) {
            if (!once.containsKey(word)) {
                problem("proof-line", 0, "the line “" + word + " …” is missing", "write the proof anew");
            }
        }
        if (wrong) {
            return Optional.empty();
        }
        ProofFile.Head head = new ProofFile.Head(
                once.get("place"), once.get("revision"), once.get("input"), ImmutableList.copyOf(files), ImmutableList.copyOf(rulebooks),
                Integer.parseInt(once.get("events")));
        ProofFile file = new ProofFile(head, ImmutableMap.copyOf(start), ImmutableList.copyOf(facts), ImmutableMap.copyOf(states));
        if (file.count() != Long.parseLong(once.get("states"))) {
            problem("proof-line", 0, "it says that it has " + once.get("states") + " states, and has " + file.count(), "write the proof anew");
            return Optional.empty();
        }
        String own = file.text();
        if (!own.equals(source.content())) {
            List<String> right = own.lines().toList();
            List<String> lines = source.content().lines().toList();
            int at = 0;
            while (at < right.size() && at < lines.size() && right.get(at).equals(lines.get(at))) {
                at++;
            }
            problem("proof-line", Math.min(at + 1, lines.size()), "this line does not stand where it is written", "write the proof anew");
            return Optional.empty();
        }
        return Optional.of(file);
    }

    /** Told of the first line only: where one is changed, those that count on it do not fit either. */
    private void unreadable(int number) {
        if (isUnreadable) {
            return;
        }
        isUnreadable = true;
        problem("proof-line", number, "no line of a proof is like this one, here", "write the proof anew");
    }

    private void problem(String code, int line, String message, String help) {
        wrong = true;
        Span at = line == 0 ? Span.ofFile(source) : new Span(source, line, 1, Math.max(0, source.line(line).length()));
        problems.add(Problem.error(code, at, message).help(help));
    }
}
