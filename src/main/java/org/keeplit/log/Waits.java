package org.keeplit.log;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.keeplit.network.Conductor;
import org.keeplit.program.Primitive;
import org.keeplit.program.Program;
import org.keeplit.unit.Dimension;
import org.keeplit.unit.Quantity;

/**
 * Checks that waits were kept: from when the bank went dead, or from when who waits was done with something else, whichever is later, to
 * when the wait was written as done. Times are taken as they are written.
 */
final class Waits {
    private final Run run;
    private final List<Difference> differences;
    private final Set<Bank> banks = new LinkedHashSet<>();
    private final Map<Bank, Since> since = new HashMap<>();
    /** When each person was last done with something. */
    private final Map<String, Since> busy = new HashMap<>();

    private record Bank(String name, Conductor phase) {}

    /** From when a wait counts. @param time when; null if it was so at the start @param line the line that says so */
    private record Since(LocalDateTime time, int line) {}

    Waits(Run run, Program program, List<Difference> differences) {
        this.run = run;
        this.differences = differences;
        program.acts().forEach(act -> act.primitives().forEach(p -> {
            if (p instanceof Primitive.Pass pass) {
                banks.add(new Bank(pass.capacitor(), pass.phase()));
            }
        }));
        banks.stream().filter(b -> run.isDead(b.name, b.phase)).forEach(b -> since.put(b, new Since(null, 0)));
    }

    /** Looks at a step that was followed. @param time when it was done; null if nobody knows */
    void step(Sheet.Line line, Entry entry, LocalDateTime time, List<Run.Done> acts) {
        Set<String> told = new LinkedHashSet<>();
        acts.forEach(a -> a.act().primitives().forEach(p -> {
            if (p instanceof Primitive.Pass pass) {
                wait(line, entry, time, pass, told);
            }
        }));
        if (time != null) {
            line.who().forEach(who -> busy.put(who, new Since(time, entry.line())));
        }
        told.forEach(words -> differences.add(new Difference(entry.line(), words)));
        for (Bank bank : banks) {
            if (!run.isDead(bank.name, bank.phase)) {
                since.remove(bank);
            } else {
                since.putIfAbsent(bank, new Since(time, entry.line()));
            }
        }
    }

    private void wait(Sheet.Line line, Entry entry, LocalDateTime time, Primitive.Pass pass, Set<String> told) {
        Bank bank = new Bank(pass.capacitor(), pass.phase());
        Since from = since.get(bank);
        for (String who : line.who()) {
            Since free = busy.get(who);
            if (free != null && (from == null || from.time == null || free.time.isAfter(from.time))) {
                from = free;
            }
        }
        if (from != null && from.time != null && time != null) {
            long seconds = Duration.between(from.time, time).toSeconds();
            if (seconds < pass.seconds()) {
                told.add("step " + line.id() + " waits for " + new Quantity(pass.seconds(), Dimension.TIME) + " with " + bank.name
                        + " dead, but only " + new Quantity(seconds, Dimension.TIME) + " lie between line " + from.line + " and this one");
            }
        }
    }
}
