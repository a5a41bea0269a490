package org.keeplit.drill;

import com.google.common.collect.ImmutableList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.keeplit.outcome.TraceStep;

/** Says what comes of a choice; pages and terminals use the same words. */
final class DrillWords {
    /** How many loads are named before the rest is only counted. */
    private static final int NAMED = 5;

    private DrillWords() {}

    /** {@return what came of a wrong choice, one sentence each; nothing for a right one} */
    static ImmutableList<String> told(Drill.Option option) {
        ImmutableList.Builder<String> all = ImmutableList.builder();
        if (option.isRight()) {
            return all.build();
        }
        String when = option.later() == 0 ? "At once: " : "After " + acts(option.later()) + " more as written: ";
        all.add(switch (option.ending()) {
            case COSTS -> when + option.told() + ".";
            case CAUGHT -> when + option.told() + ". That catches it.";
            case NOTICED -> when + option.told() + ". Nothing is lost before.";
            case HARMLESS -> "It is not as written. When all else is done as written nothing comes of it, and no check shows it.";
            case UNKNOWN -> when + "it could not be worked out: " + option.told() + ".";
            case RIGHT -> throw new IllegalStateException("right choices need no words");
        });
        if (!option.by().isEmpty()) {
            all.add((option.ending() == Drill.Ending.COSTS ? "It breaks " : "Caught by ") + option.by() + ".");
        }
        if (!option.why().isEmpty()) {
            all.add("Why it matters: " + option.why());
        }
        if (!cost(option).isEmpty()) {
            all.add(cost(option));
        }
        return all.build();
    }

    private static String acts(int count) {
        return count == 1 ? "1 act" : count + " acts";
    }

    /** {@return who loses supply; the critical loads and the largest first} */
    static String cost(Drill.Option option) {
        if (option.lost().isEmpty()) {
            return "";
        }
        List<TraceStep.Lost> ranked = option.lost().stream()
                .sorted(Comparator.comparing((TraceStep.Lost l) -> l.critical().isEmpty())
                        .thenComparing(Comparator.comparing(TraceStep.Lost::customers).reversed())
                        .thenComparing(TraceStep.Lost::load))
                .toList();
        String named = ranked.stream()
                .limit(NAMED)
                .map(l -> l.load() + " on phase " + l.phases() + (l.critical().isEmpty() ? "" : " (critical: " + l.critical() + ")"))
                .collect(Collectors.joining("; "));
        int more = ranked.size() - NAMED;
        int customers = option.customers();
        return "Loses supply: " + (customers == 1 ? "1 customer" : customers + " customers") + ": " + named
                + (more > 0 ? "; and " + more + (more == 1 ? " more load" : " more loads") : "") + ".";
    }
}
