package org.keeplit.mend;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.keeplit.explore.Proving;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Mend;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.Watcher;
import org.keeplit.procedure.Instance;
import org.keeplit.procedure.Procedure;
import org.keeplit.text.Problem;
import org.keeplit.text.Problems;
import org.keeplit.text.Source;

/**
 * Finds small changes of a procedure's text after which it holds: a step is moved, left out, or put in; a change of a variant is taken
 * back. Every changed text is read and proved as a whole, on every place and from every start that it names.
 */
public final class Mending {
    /** How many changes of steps are put together at most. */
    private static final int DEEP = 3;
    /** How many half-mended texts are gone on from. */
    private static final int WIDE = 4;

    /** What it costs to put a line in, against one for each step over which another moves. */
    private static final int INSERTED = 20;

    private static final Pattern EACH = Pattern.compile("\\s*for each phase ([A-Z][A-Za-z0-9]*) of ");

    /** How many changed texts are still tried once one holds. */
    private static final int MORE = 40;

    private final Library library;
    private final Procedure procedure;
    private final Limits limits;
    private final Watcher watcher;
    private final Set<String> seen = new LinkedHashSet<>();
    private int tried;
    private boolean stopped;
    /** Whether a limit was reached where a text was proved last. */
    private boolean cut;

    private Mending(Library library, Procedure procedure, Limits limits, Watcher watcher) {
        this.library = library;
        this.procedure = procedure;
        this.limits = limits;
        this.watcher = watcher;
    }

    /** A changed text and what is found in it. @param cost tells which of equally many changes is the smaller */
    private record Draft(List<String> edits, int cost, String text, Procedure procedure, List<Finding> findings) {}

    /** One change. @param text the whole file with it */
    private record Candidate(String words, int cost, String text) {}

    /**
     * Tries to mend a procedure that should hold.
     *
     * @param library what was read, the procedure among it
     * @param procedure the procedure
     * @param limits how far to go for each changed text
     * @param watcher is told how it gets on; may stop it
     * @return what was found
     */
    public static Mend of(Library library, Procedure procedure, Limits limits, Watcher watcher) {
        return new Mending(library, procedure, limits, watcher).mend();
    }

    private Mend mend() {
        Source source = procedure.span().source();
        Optional<List<Finding>> now = findings(library, procedure);
        if (now.isPresent() && now.get().isEmpty()) {
            return new Mend(procedure, true, source, ImmutableList.of(), 0, true);
        } else if (now.isEmpty()) {
            return new Mend(procedure, false, cut, source, ImmutableList.of(), 0, false);
        }
        List<Draft> open = List.of(new Draft(List.of(), 0, source.content(), procedure, now.get()));
        for (int depth = 1; depth <= DEEP && !open.isEmpty() && !stopped; depth++) {
            List<Draft> next = new ArrayList<>();
            int last = Integer.MAX_VALUE;
            for (Draft draft : open) {
                List<Candidate> all = candidates(draft);
                all.sort(Comparator.comparingInt(Candidate::cost));
                for (int i = 0; i < all.size() && tried < last; i++) {
                    Optional<Draft> better = draft(draft, all.get(i));
                    better.ifPresent(next::add);
                    if (better.isPresent() && better.get().findings.isEmpty()) {
                        // None that is smaller is left; a few more show what else there is.
                        last = Math.min(last, tried + MORE);
                    }
                }
            }
            List<Draft> mended = next.stream()
                    .filter(d -> d.findings.isEmpty())
                    .sorted(Comparator.comparingInt(Draft::cost))
                    .toList();
            if (!mended.isEmpty()) {
                return new Mend(procedure, false, source, changes(mended), tried, !stopped);
            }
            open = next.stream()
                    .sorted(Comparator.<Draft>comparingInt(d -> d.findings.size()).thenComparingInt(Draft::cost))
                    .limit(WIDE)
                    .toList();
        }
        return new Mend(procedure, false, source, ImmutableList.of(), tried, false);
    }

    private static ImmutableList<Mend.Change> changes(List<Draft> drafts) {
        return drafts.stream()
                .map(d -> new Mend.Change(ImmutableList.copyOf(d.edits), d.text))
                .collect(ImmutableList.toImmutableList());
    }

    /** {@return a draft that is nearer to holding; nothing if the text cannot be read, or what broke first still does} */
    private Optional<Draft> draft(Draft from, Candidate candidate) {
        if (stopped || !seen.add(candidate.text)) {
            return Optional.empty();
        }
        stopped = !watcher.goOn(tried, 0);
        tried++;
        Map<String, Source> sources = new LinkedHashMap<>(library.sources());
        String name = procedure.span().source().name();
        sources.put(name, new Source(name, candidate.text));
        Library changed = new Reader().readSources(List.copyOf(sources.values()));
        Procedure again = changed.judged(procedure.name()).orElse(null);
        if (again == null || changed.problems().stream().anyMatch(p -> p.span().source().name().equals(name) && isError(p))) {
            return Optional.empty();
        }
        return findings(changed, again)
                .filter(found -> found.isEmpty() || !same(found.get(0), from.findings.get(0)))
                .filter(found -> found.size() <= from.findings.size())
                .map(found -> {
                    List<String> edits = new ArrayList<>(from.edits);
                    edits.add(candidate.words);
                    return new Draft(edits, from.cost + candidate.cost, candidate.text, again, found);
                });
    }

    private static boolean isError(Problem problem) {
        return problem.severity() == Problem.Severity.ERROR;
    }

    private static boolean same(Finding one, Finding other) {
        return one.name().equals(other.name()) && one.step().equals(other.step()) && one.phase().equals(other.phase());
    }

    /** {@return what is found wherever a procedure is proved; nothing if it cannot be proved, or not be decided} */
    private Optional<List<Finding>> findings(Library where, Procedure what) {
        List<Finding> all = new ArrayList<>();
        for (Instance one : Instance.of(what, where.networks())) {
            Optional<Outcome> outcome = Proving.prove(
                    one.procedure(), one.network(), one.proof(), limits, Watcher.NOBODY, new Problems());
            cut = outcome.isPresent() && outcome.get().cut().isPresent() && outcome.get().findings().isEmpty();
            if (outcome.isEmpty() || cut) {
                return Optional.empty();
            }
            all.addAll(outcome.get().findings());
        }
        all.sort(Comparator.comparingInt(f -> f.trace().size()));
        return Optional.of(all);
    }

    /** {@return the changes of one step that may help with what is found first, the likely and small ones first} */
    private List<Candidate> candidates(Draft draft) {
        List<String> lines = new ArrayList<>(draft.text.lines().toList());
        List<Chunk> chunks = Chunk.of(draft.procedure, lines);
        int at = index(chunks, draft.findings.get(0));
        List<Candidate> all = new ArrayList<>();
        if (!draft.procedure.edits().isEmpty()) {
            chunks.forEach(chunk -> all.add(without("takes back: ", chunk, lines, 1)));
            return all;
        }
        for (int i = 0; i < chunks.size(); i++) {
            if (i != at && at >= 0) {
                all.add(moved(chunks, at, i, lines));
                all.add(moved(chunks, i, at, lines));
            }
        }
        if (at >= 0) {
            places(chunks.get(at), lines).forEach(place -> inserted(draft, chunks.get(at), place, lines, all));
            places(chunks.get(0), lines).forEach(place -> inserted(draft, chunks.get(0), place, lines, all));
        }
        chunks.forEach(chunk -> all.add(without("leaves out: ", chunk, lines, 400)));
        return all;
    }

    private static int index(List<Chunk> chunks, Finding finding) {
        int line = finding.trace().isEmpty() ? 0 : finding.trace().get(finding.trace().size() - 1).line();
        for (int i = 0; i < chunks.size(); i++) {
            if (chunks.get(i).from() == line) {
                return i;
            }
        }
        return chunks.size() - 1;
    }

    /** Moves a step before another; behind it, if it stood before. */
    private Candidate moved(List<Chunk> chunks, int from, int to, List<String> lines) {
        Chunk moved = chunks.get(from);
        Chunk anchor = chunks.get(to);
        List<String> part = List.copyOf(lines.subList(moved.from() - 1, moved.to() - 1));
        List<String> shifted = part.stream()
                .map(line -> anchor.indent() + line.substring(Math.min(moved.indent().length(), line.length())))
                .toList();
        List<String> now = new ArrayList<>(lines);
        int target = from < to ? anchor.to() - 1 : anchor.from() - 1;
        if (from < to) {
            now.addAll(target, shifted);
            remove(now, moved);
        } else {
            remove(now, moved);
            now.addAll(target, shifted);
        }
        String words = "moves “" + moved.text() + "” " + (from < to ? "behind" : "before") + " “" + anchor.text() + "”";
        return new Candidate(words, Math.abs(from - to), text(now));
    }

    private static void remove(List<String> lines, Chunk chunk) {
        lines.subList(chunk.from() - 1, chunk.to() - 1).clear();
    }

    private Candidate without(String words, Chunk chunk, List<String> lines, int cost) {
        List<String> now = new ArrayList<>(lines);
        remove(now, chunk);
        return new Candidate(words + chunk.text(), cost, text(now));
    }

    /** {@return the lines before which something can be put in for a step: its own, and those that begin the groups around it} */
    private static List<Integer> places(Chunk chunk, List<String> lines) {
        List<Integer> all = new ArrayList<>(List.of(chunk.from()));
        int indent = chunk.indent().length();
        for (int line = chunk.from() - 1; line > 0 && indent > 0; line--) {
            String text = lines.get(line - 1);
            if (!text.isBlank() && indent(text) < indent) {
                indent = indent(text);
                if (indent > 0) {
                    all.add(line);
                }
            }
        }
        return all;
    }

    private static int indent(String line) {
        return line.length() - line.stripLeading().length();
    }

    private void inserted(Draft draft, Chunk step, int place, List<String> lines, List<Candidate> into) {
        List<Instance> instances = Instance.of(draft.procedure, library.networks());
        if (instances.isEmpty()) {
            return;
        }
        String anchor = lines.get(place - 1);
        String actor = step.text().replaceFirst("^[a-z0-9-]+: ", "").split(" ")[0];
        int cost = INSERTED;
        for (String line : Insertions.of(instances.get(0), actor, phase(place, lines))) {
            List<String> now = new ArrayList<>(lines);
            now.add(place - 1, anchor.substring(0, indent(anchor)) + line);
            into.add(new Candidate("puts in “" + line + "” before “" + anchor.strip() + "”", cost++, text(now)));
        }
    }

    /** {@return how a step on one phase is written at a line, such as " on P"; empty outside of {@code for each phase}} */
    private static String phase(int place, List<String> lines) {
        int indent = indent(lines.get(place - 1));
        for (int line = place - 1; line > 0 && indent > 0; line--) {
            String text = lines.get(line - 1);
            if (!text.isBlank() && indent(text) < indent) {
                indent = indent(text);
                Matcher each = EACH.matcher(text);
                if (each.lookingAt()) {
                    return " on " + each.group(1);
                }
            }
        }
        return "";
    }

    /** {@return a text with the line ends of the file} */
    private String text(List<String> lines) {
        String end = procedure.span().source().content().contains("\r\n") ? "\r\n" : "\n";
        return String.join(end, lines) + end;
    }
}
