package org.keeplit.plain;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.keeplit.network.Conductor;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.TraceStep;

/** Does the acts of a trace one after another, to see that they can be done and come to what was found. */
final class Replay {
    private static final Pattern PHASE = Pattern.compile("phase ([ABC])(?!.*phase [ABC])");
    private final Walk walk;

    Replay(Walk walk) {
        this.walk = walk;
    }

    /** {@return what is wrong with a trace; empty if nothing is} */
    String wrong(Finding finding) {
        List<TraceStep> trace = finding.trace();
        boolean waits = finding.kind() == Finding.Kind.STUCK;
        int acts = waits ? trace.size() - 1 : trace.size();
        Set<Walk.At> at = Set.of(walk.start());
        for (int i = 0; i < acts; i++) {
            int act = i;
            List<String> byItself = new ArrayList<>();
            while (i + 1 < acts && trace.get(i + 1).byItself()) {
                byItself.add(trace.get(++i).actor());
            }
            boolean last = i == acts - 1;
            Set<Walk.At> reached = new HashSet<>();
            Set<String> found = new HashSet<>();
            for (Walk.At here : at) {
                for (Walk.Done done : walk.acts(here)) {
                    if (fits(done.act(), trace.get(act)) && done.byItself().equals(byItself)) {
                        found.addAll(done.found());
                        found.addAll(done.notes());
                        done.to().filter(t -> done.keepsAllRules()).ifPresent(reached::add);
                    }
                }
            }
            if (last && found.contains(name(finding))) {
                return "";
            }
            at = reached;
            if (at.isEmpty()) {
                return "act " + (act + 1) + " of " + trace.size() + " cannot be done or comes to " + found + ": "
                        + trace.get(act).text();
            }
        }
        return comesUp(finding, at) ? "" : name(finding) + " does not come up at the end of its trace";
    }

    private boolean comesUp(Finding finding, Set<Walk.At> at) {
        if (finding.trace().isEmpty() && comesUp(finding, walk::foundAtStart)) {
            return true;
        }
        return at.stream()
                .anyMatch(here -> finding.kind() == Finding.Kind.STUCK
                        ? walk.stuck(here).isPresent()
                        : walk.isEnd(here) && comesUp(finding, notes -> walk.foundAtEnd(here, notes)));
    }

    private static boolean comesUp(Finding finding, Function<Set<String>, Set<String>> looking) {
        Set<String> notes = new HashSet<>();
        Set<String> found = looking.apply(notes);
        return found.contains(name(finding)) || notes.contains(name(finding));
    }

    private static String name(Finding finding) {
        return switch (finding.kind()) {
            case REQUIREMENT, STOP, CANNOT, EXPECTATION, STUCK -> finding.name() + " " + finding.stepNumber();
            default -> finding.name();
        };
    }

    private static boolean fits(PlainAct act, TraceStep step) {
        if (act.step().span().line() != step.line()) {
            return false;
        }
        Matcher said = PHASE.matcher(step.text());
        Set<Conductor> phases = new HashSet<>();
        act.deeds().forEach(d -> phases.addAll(phases(d)));
        return !said.find()
                || act.deeds().size() > 1
                || phases.isEmpty()
                || step.text().contains("onto phase")
                || step.text().contains(" for phase ")
                || phases.contains(Conductor.valueOf(said.group(1)));
    }

    private static List<Conductor> phases(Deed deed) {
        if (deed instanceof Deed.Switch d) {
            return d.phases().list();
        } else if (deed instanceof Deed.LeadOff d) {
            return List.of(d.phase());
        } else if (deed instanceof Deed.LeadMove d) {
            return List.of(d.phase());
        } else if (deed instanceof Deed.Prove d) {
            return List.of(d.phase());
        } else if (deed instanceof Deed.Test d) {
            return List.of(d.phase());
        }
        return List.of();
    }
}
