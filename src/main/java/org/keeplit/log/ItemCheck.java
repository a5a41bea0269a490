package org.keeplit.log;

import com.google.common.collect.ImmutableList;
import java.math.BigInteger;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.keeplit.explore.Stepper;
import org.keeplit.procedure.Action;
import org.keeplit.program.Primitive;
import org.keeplit.unit.Quantity;
import org.keeplit.unit.Unit;

/** Checks what is written down with steps: that it is there, and that it fits. */
final class ItemCheck {
    private static final Pattern FIGURE = Pattern.compile("([+-]?[0-9]+(?:[.,][0-9]+)?)\\s*(\\S+)?");
    private static final Pattern WHOLE = Pattern.compile("[0-9]{1,12}");

    private final Run run;
    private final List<Difference> differences;
    /** For each hold the number under which it was issued. */
    private final Map<String, Entry> issued = new HashMap<>();
    /** Holds of which it was already told that nobody wrote their number when they were issued. */
    private final Set<String> unnumbered = new HashSet<>();

    ItemCheck(Run run, List<Difference> differences) {
        this.run = run;
        this.differences = differences;
    }

    /** Checks what belongs to a step that was followed. */
    void step(Sheet.Line line, Entry done, Map<String, Entry> written, List<Run.Done> acts) {
        for (Sheet.Item item : line.items()) {
            Entry entry = present(line, item, done, written);
            if (entry != null) {
                switch (item.sort()) {
                    case FOUND -> found(item, entry);
                    case MEASURED -> measured(item, entry, acts);
                    case NUMBER -> number(item, entry, line, acts);
                    case RECORD, COUNTER, ABOUT -> { }
                }
            } else if (item.sort() == Sheet.Sort.NUMBER && isIssue(acts)) {
                unnumbered.add(item.about().get(0));
            }
        }
    }

    /** Of a step that was done out of order only whether everything was written down can be said. */
    void early(Sheet.Line line, Entry done, Map<String, Entry> written) {
        line.items().forEach(item -> present(line, item, done, written));
    }

    private Entry present(Sheet.Line line, Sheet.Item item, Entry done, Map<String, Entry> written) {
        Entry entry = written.get(item.name());
        if (entry == null || entry.value().isEmpty()) {
            boolean back = item.sort() == Sheet.Sort.NUMBER && !line.words().contains(" issues ");
            differences.add(new Difference(done.line(), "step " + line.id() + " has no “" + item.name() + "”"
                    + (back ? ", so nothing shows that it was read back" : "")));
            return null;
        }
        return entry;
    }

    private void found(Sheet.Item item, Entry entry) {
        if (!item.about().contains(entry.value())) {
            differ(entry, "“" + item.name() + "” is found “" + entry.value() + "”; it can be " + String.join(" or ", item.about()));
        }
    }

    private void differ(Entry entry, String words) {
        differences.add(new Difference(entry.line(), words));
    }

    private void measured(Sheet.Item item, Entry entry, List<Run.Done> acts) {
        Matcher matcher = FIGURE.matcher(entry.value());
        if (!matcher.matches() || matcher.group(2) == null || Unit.of(matcher.group(2)).isEmpty()) {
            differ(entry, "“" + entry.value() + "” is no figure with a unit, such as 118 V");
            return;
        }
        Quantity figure = Quantity.of(Double.parseDouble(matcher.group(1).replace(',', '.')), Unit.of(matcher.group(2)).get());
        acts.stream().filter(a -> a.act().text().endsWith(item.name())).forEach(a -> {
            ImmutableList<Stepper.Bound> bounds = run.bounds(a);
            for (Stepper.Bound bound : bounds) {
                if (bound.dimension() != figure.dimension()) {
                    differ(entry, "“" + entry.value() + "” is not what “" + item.name() + "” is measured in");
                    return;
                } else if (!bound.allows(figure.si())) {
                    differ(entry, "“" + item.name() + "” is " + figure + "; it " + bound.comparison().words().replace("is ", "must be ") + " "
                            + new Quantity(bound.limit(), bound.dimension()) + ". The crew stops");
                    return;
                }
            }
        });
    }

    private static boolean isIssue(List<Run.Done> acts) {
        return acts.stream().flatMap(a -> a.act().primitives().stream())
                .anyMatch(p -> p instanceof Primitive.Speak s && s.speech() == Action.Speech.ISSUE);
    }

    /** A hold is known by its number: whoever repeats, confirms or releases it says the one under which it was issued. */
    private void number(Sheet.Item item, Entry entry, Sheet.Line line, List<Run.Done> acts) {
        String hold = item.about().get(0);
        if (isIssue(acts)) {
            issued.put(hold, entry);
            return;
        }
        Entry first = issued.get(hold);
        if (first == null && unnumbered.add(hold)) {
            differ(entry, "step " + line.id() + " has the number " + entry.value() + ", but none was written when " + hold + " was issued");
        } else if (first != null && !first.value().equals(entry.value())) {
            differ(entry, "step " + line.id() + " has the number " + entry.value() + ", and " + hold + " was issued as " + first.value() + " in line "
                    + first.line() + ": it was not read back word for word");
        }
    }

    /** Readings of counters differ by what was opened. */
    void counters(Sheet sheet, Map<String, Entry> written) {
        for (Sheet.Item item : sheet.whole()) {
            if (item.sort() != Sheet.Sort.COUNTER) {
                continue;
            }
            Entry entry = written.get(item.name());
            if (entry == null || entry.value().isEmpty()) {
                differences.add(new Difference(0, "“" + item.name() + "” is not written"));
            } else if (!WHOLE.matcher(entry.value()).matches()) {
                differ(entry, "“" + entry.value() + "” is no reading of a counter; it is a whole number");
            } else if (item.name().endsWith(", after")) {
                counter(item, entry, written.get(item.name().replaceFirst(", after$", ", before")));
            }
        }
    }

    private void counter(Sheet.Item item, Entry after, Entry before) {
        if (before == null || !WHOLE.matcher(before.value()).matches()) {
            return;
        }
        BigInteger counted = new BigInteger(after.value()).subtract(new BigInteger(before.value()));
        int operated = run.operations(item.about());
        if (!counted.equals(BigInteger.valueOf(operated))) {
            String words = counted.signum() < 0
                    ? "it went back, from " + before.value() + " to " + after.value()
                    : "it went from " + before.value() + " to " + after.value() + ", which is " + counted;
            differ(after, "“" + item.name() + "”: " + words + "; by the steps it was opened " + operated + (operated == 1 ? " time" : " times")
                    + (counted.compareTo(BigInteger.valueOf(operated)) > 0 ? ". Did it operate by itself, or is a reading wrong?" : ". Is a reading wrong?"));
        }
    }
}
