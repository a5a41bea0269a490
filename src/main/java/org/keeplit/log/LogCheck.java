package org.keeplit.log;

import com.google.common.collect.ImmutableList;
import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.keeplit.explore.Proving;
import org.keeplit.explore.Stepper;
import org.keeplit.page.Proof;
import org.keeplit.procedure.Instance;

/**
 * Checks a filled log against the procedure: steps in an allowed order with times, numbers read back, counters that agree with what was
 * operated, measured figures within limits, waits kept, nothing left open. All differences come at once.
 */
public final class LogCheck {
    private final Sheet sheet;
    private final Run run;
    private final ItemCheck items;
    private final Waits waits;
    private final List<Difference> differences = new ArrayList<>();
    private final Map<String, Entry> done = new LinkedHashMap<>();
    /** Steps that were done before their turn; the line that says so is already told. */
    private final List<Sheet.Line> early = new ArrayList<>();

    private final Map<String, Map<String, Entry>> written = new LinkedHashMap<>();

    private LogCheck(Sheet sheet, Stepper stepper) {
        this.sheet = sheet;
        this.run = new Run(stepper);
        this.items = new ItemCheck(run, differences);
        this.waits = new Waits(run, stepper.program(), differences);
    }

    /**
     * What came of a check.
     *
     * @param steps how many steps were written as done
     * @param differences what is not as it should be, by line; nothing if the log is in order
     * @param unreadable whether the file is no log, so that nothing was checked
     */
    public record Checked(int steps, ImmutableList<Difference> differences, boolean unreadable) {}

    /** {@return the job that a log says it is of, if it can be read and says so} @param text the file */
    public static Optional<String> job(String text) {
        return LogReader.of(text).entries().stream()
                .filter(e -> e.step().isEmpty() && e.item().equals(Sheet.JOB))
                .map(Entry::value)
                .findFirst();
    }

    /**
     * Checks. The procedure is not proved anew for it: what a step breaks in the order of the log is told with the step.
     *
     * @param instance the procedure, where it was done and from which start
     * @param prepared the same, ready to be explored
     * @param text the filled log
     * @return what came of it
     */
    public static Checked of(Instance instance, Proving.Prepared prepared, String text) {
        Sheet sheet = SheetMaker.of(instance, prepared, Proof.UNDECIDED);
        LogReader.Read read = LogReader.of(text);
        if (!read.mistakes().isEmpty()) {
            return new Checked(0, read.mistakes(), true);
        }
        return Stepper.with(prepared, stepper -> new LogCheck(sheet, stepper).check(read.entries()));
    }

    private Checked check(List<Entry> entries) {
        entries.forEach(this::gather);
        sheet.lines().forEach(line -> written.getOrDefault(line.id(), Map.of()).values().stream()
                .filter(e -> !done.containsKey(line.id()))
                .forEach(e -> differ(e, "step " + line.id() + " has “" + e.item() + "” but is not written as done")));
        about();
        LocalDateTime last = null;
        for (Entry entry : done.values()) {
            last = time(entry, last);
            step(sheet.line(entry.step()).orElseThrow(), entry, last);
        }
        left();
        items.counters(sheet, written.getOrDefault("", Map.of()));
        return new Checked(
                done.size(), differences.stream().sorted(Difference.ORDER).collect(ImmutableList.toImmutableList()), false);
    }

    private void differ(Entry entry, String words) {
        differences.add(new Difference(entry.line(), words));
    }

    /** Sorts lines by step and item; tells what names nothing, and what is there twice. */
    private void gather(Entry entry) {
        Optional<Sheet.Line> line = sheet.line(entry.step());
        if (!entry.step().isEmpty() && line.isEmpty()) {
            differ(entry, "there is no step “" + entry.step() + "”; the steps go from " + sheet.lines().get(0).id() + " to "
                    + sheet.lines().get(sheet.lines().size() - 1).id());
            return;
        } else if (entry.item().isEmpty()) {
            if (entry.step().isEmpty()) {
                differ(entry, "neither a step nor an item is named");
                return;
            }
            Entry before = done.putIfAbsent(entry.step(), entry);
            if (before != null) {
                differ(entry, "step " + entry.step() + " is written as done already in line " + before.line());
            }
            return;
        }
        List<Sheet.Item> known = line.map(Sheet.Line::items).orElse(sheet.whole());
        if (known.stream().noneMatch(i -> i.name().equals(entry.item()))) {
            differ(entry, (entry.step().isEmpty() ? "the whole job" : "step " + entry.step()) + " has no “" + entry.item() + "”; "
                    + (known.isEmpty() ? "nothing is written down with it" : "it has " + known.stream().map(i -> "“" + i.name() + "”").collect(Collectors.joining(", "))));
            return;
        }
        Entry before = written.computeIfAbsent(entry.step(), k -> new HashMap<>()).putIfAbsent(entry.item(), entry);
        if (before != null) {
            differ(entry, "“" + entry.item() + "” is written already in line " + before.line());
        }
    }

    /** Whether it is a log of this job, on a sheet of this text. */
    private void about() {
        Map<String, Entry> whole = written.getOrDefault("", Map.of());
        about(whole.get(Sheet.JOB), Sheet.JOB, sheet.instance().words(), "");
        about(whole.get(Sheet.INPUT), Sheet.INPUT, sheet.hash(), ": the procedure, the network or a rule was changed after the sheet was printed");
    }

    private void about(Entry entry, String item, String wanted, String because) {
        if (entry == null) {
            differences.add(new Difference(0, "“" + item + "” is not written; it is " + wanted));
        } else if (!entry.value().equals(wanted)) {
            differ(entry, "“" + item + "” is " + entry.value() + " here and " + wanted + " in the files" + because);
        }
    }

    /** {@return the time of a line, or of the one before where it has none} */
    private LocalDateTime time(Entry entry, LocalDateTime last) {
        if (entry.time().isEmpty()) {
            differ(entry, "step " + entry.step() + " has no time");
            return last;
        }
        try {
            LocalDateTime time = LocalDateTime.parse(entry.time().replace(' ', 'T'));
            if (last != null && time.isBefore(last)) {
                differ(entry, "step " + entry.step() + " is at " + entry.time() + ", before the one above it, at " + last
                        + "; lines are written as things happen");
                return last;
            }
            return time;
        } catch (DateTimeParseException e) {
            differ(entry, "“" + entry.time() + "” is no time; write it like 2026-03-02T08:15");
            return last;
        }
    }

    private void step(Sheet.Line line, Entry entry, LocalDateTime time) {
        by(line, entry);
        Set<Integer> next = skipping(line);
        if (!next.contains(line.step())) {
            String first = sheet.lines().stream().filter(l -> next.contains(l.step())).map(LogCheck::name).collect(Collectors.joining(", or "));
            differ(entry, "step " + name(line) + " is done out of order"
                    + (first.isEmpty() ? ": all is done" : ": first comes step " + first));
            items.early(line, entry, written.getOrDefault(line.id(), Map.of()));
            early.add(line);
            return;
        }
        follow(line, entry, time);
        for (boolean again = true; again; ) {
            again = false;
            for (Sheet.Line one : List.copyOf(early)) {
                if (run.next().contains(one.step())) {
                    early.remove(one);
                    run.follow(one.step(), found(one));
                    again = true;
                }
            }
        }
    }

    /** Goes past steps that the log nowhere says are done, so that each is told once and what follows is judged. {@return what may come then} */
    private Set<Integer> skipping(Sheet.Line line) {
        Set<Integer> next = run.next();
        while (!next.contains(line.step())) {
            Set<Integer> now = next;
            Optional<Sheet.Line> open = sheet.lines().stream()
                    .filter(l -> now.contains(l.step()) && !done.containsKey(l.id()))
                    .findFirst();
            if (open.isEmpty() || run.follow(open.get().step(), found(open.get())).harm().isPresent()) {
                return next;
            }
            open(open.get());
            next = run.next();
        }
        return next;
    }

    private void open(Sheet.Line line) {
        differences.add(new Difference(0, "left open: step " + name(line) + " is not written as done"));
    }

    /** {@return a step's number and the first of its acts} */
    private static String name(Sheet.Line line) {
        int more = line.words().indexOf(';');
        return line.id() + " (" + (more < 0 ? line.words() : line.words().substring(0, more) + "; \u2026") + ")";
    }

    private Optional<String> found(Sheet.Line line) {
        return line.items().stream()
                .filter(i -> i.sort() == Sheet.Sort.FOUND)
                .map(i -> written.getOrDefault(line.id(), Map.of()).get(i.name()))
                .filter(e -> e != null)
                .map(Entry::value)
                .findFirst();
    }

    private void by(Sheet.Line line, Entry entry) {
        List<String> named = List.of(entry.by().split("\\s*(,|;|/|\\band\\b)\\s*|\\s+"));
        List<String> missing = line.who().stream().filter(w -> !named.contains(w)).toList();
        List<String> others = named.stream().filter(w -> !w.isEmpty() && !line.who().contains(w)).toList();
        if (!missing.isEmpty() || !others.isEmpty()) {
            differ(entry, "step " + line.id() + " is for " + String.join(" and ", line.who()) + (entry.by().isEmpty() ? "; nobody is written" : ", not for " + entry.by()));
        }
    }

    private void follow(Sheet.Line line, Entry entry, LocalDateTime time) {
        Run.Followed followed = run.follow(line.step(), found(line));
        followed.harm().ifPresent(harm -> differ(entry, "with step " + name(line) + " " + harm));
        items.step(line, entry, written.getOrDefault(line.id(), Map.of()), followed.acts());
        waits.step(line, entry, time, followed.acts());
    }

    /** What should have been done, or be so at the end. */
    private void left() {
        boolean whole = differences.stream().noneMatch(d -> d.line() == 0 && d.words().startsWith("left open"));
        while (!run.isOver()) {
            Set<Integer> next = run.next();
            Optional<Sheet.Line> line = sheet.lines().stream().filter(l -> next.contains(l.step())).findFirst();
            if (line.isEmpty()) {
                differences.add(new Difference(0, "what comes next waits for what is not so"));
                return;
            } else if (!early.remove(line.get())) {
                open(line.get());
                whole = false;
            }
            if (run.follow(line.get().step(), found(line.get())).harm().isPresent()) {
                return;
            }
        }
        if (whole) {
            run.wrongAtEnd().forEach(wrong -> differences.add(new Difference(0, "at the end: " + wrong)));
        }
    }
}
