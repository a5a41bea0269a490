package org.keeplit.verdict;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.RuleResult;
import org.keeplit.procedure.Unjudged;
import org.keeplit.rule.Overridden;
import org.keeplit.rule.Rule;

/** Tells verdicts as text for a terminal or a file. The same verdict gives the same bytes. */
public final class TextReport {
    /** What every report says about itself. */
    public static final String CAUTION = "This verdict is about the model. Local rules, the utility's safety manual and the person in charge\n"
            + "come first; field conditions, approach distances and the state of equipment are checked on site.";

    /** What is said of a procedure that was not looked at to the end. */
    public static final String CUT = "a limit was reached before it was known whether it holds";

    /** What a report says where amperes or volts were asked for. */
    public static final String FIGURES = "Figures are those of a load flow in every declared load case, customers' generators off and running,\n"
            + "regulators at the taps that the network states or their controls find at the start, unless they were run\n"
            + "to neutral; below 70 % of their rated voltage loads of constant power count as impedances.";

    /** {@return the rest of a line on a procedure that is not known to hold} @param cut whether a limit was reached @param told what is told of others */
    static String notTried(boolean cut, String told) {
        return (cut ? ": undecided, " + CUT : ": does not hold as it is, or no rule that stops came up; " + told) + "\n\n";
    }

    /** How wide the first word of a line is. */
    private static final int STATUS = 9;

    private final Style style;
    private final boolean full;

    /**
     * Begins a report.
     *
     * @param style how to mark words
     */
    public TextReport(Style style) {
        this(style, false);
    }

    /**
     * Begins a report.
     *
     * @param style how to mark words
     * @param full whether every rule is explained in full; the checks must have asked for that, too
     */
    public TextReport(Style style, boolean full) {
        this.style = style;
        this.full = full;
    }

    /**
     * All verdicts: one line each, then the story of each that failed.
     *
     * @param judgements the verdicts
     * @return the text, with a line end at its end
     */
    public String tell(List<Judgement> judgements) {
        return tell(judgements, List.of());
    }

    /**
     * {@return the line on something of which nothing is claimed}
     *
     * @param one the procedure, or the examples
     * @param style how to mark words
     * @param width how wide the names are
     */
    public static String line(Unjudged one, Style style, int width) {
        String words = one.reason().words();
        return style.bad(words) + " ".repeat(Math.max(0, STATUS - words.length())) + "  " + one.name()
                + " ".repeat(Math.max(0, width - one.name().length())) + "  " + one.because() + "\n";
    }

    /**
     * The same, after those of which nothing is claimed.
     *
     * @param judgements the verdicts
     * @param unjudged the procedures of which nothing is claimed
     * @return the text, with a line end at its end
     */
    public String tell(List<Judgement> judgements, List<Unjudged> unjudged) {
        StringBuilder out = new StringBuilder();
        int width = Stream.concat(
                        judgements.stream().map(j -> j.procedure().name()), unjudged.stream().map(Unjudged::name))
                .mapToInt(String::length)
                .max()
                .orElse(0);
        unjudged.forEach(one -> out.append(line(one, style, width)));
        for (Judgement judgement : judgements) {
            summary(judgement, width, out);
        }
        for (Judgement judgement : judgements) {
            if (judgement.status() == Judgement.Status.BROKEN) {
                out.append('\n');
                new Story(style).tell(judgement, out);
            }
        }
        if (full) {
            judgements.forEach(judgement -> new Reasons(style).tell(judgement, out));
        }
        out.append('\n').append(counts(judgements, unjudged)).append("\n\n").append(CAUTION).append('\n');
        if (judgements.stream().anyMatch(j -> j.outcome().loadFlows() > 0)) {
            out.append(FIGURES).append('\n');
        }
        return out.toString();
    }

    private void summary(Judgement judgement, int width, StringBuilder out) {
        String status = switch (judgement.status()) {
            case HOLDS -> style.good("holds    ");
            case FAILS_AS_STATED -> style.good("fails ok ");
            case BROKEN -> style.bad("BROKEN   ");
            case UNDECIDED -> style.warning("undecided");
            case NOT_PROVED -> style.bad("not proved");
        };
        String name = judgement.procedure().name();
        out.append(status).append("  ").append(name).append(" ".repeat(width - name.length())).append("  on ");
        out.append(judgement.instance().place()).append(": ").append(details(judgement)).append('\n');
        for (String told : judgement.basis().told()) {
            out.append("           ").append(told).append('\n');
        }
        for (String reliance : judgement.reliances()) {
            out.append("           relies on this: ").append(reliance).append('\n');
        }
        for (Overridden one : judgement.overridden()) {
            out.append("           ").append(one.replaced() ? "replaced" : "dropped").append(" by ").append(one.by())
                    .append(": ").append(one.rule()).append(" of ").append(one.rulebook()).append(", because ")
                    .append(one.because()).append('\n');
        }
        for (String two : judgement.outcome().contradictions()) {
            out.append("           ").append(style.warning("cannot both be kept")).append(": ").append(two).append('\n');
        }
        for (Finding alone : judgement.outcome().byEvent()) {
            out.append("           by the event alone: ").append(alone.sentence()).append(" (")
                    .append(Expected.words(alone)).append(")\n");
        }
        for (Finding note : judgement.outcome().notes()) {
            out.append("           ").append(style.warning(note.severity().word())).append(": ")
                    .append(note.sentence()).append(" (").append(Expected.words(note)).append(")\n");
        }
        if (judgement.status() == Judgement.Status.HOLDS) {
            for (RuleResult.Remark remark : RuleResult.Remark.values()) {
                names(style.warning(remark.heading()), judgement.outcome().rules().stream()
                        .filter(r -> r.remark().equals(Optional.of(remark)))
                        .toList(), out);
            }
            names("not exercised", judgement.notExercised().stream().filter(r -> r.remark().isEmpty()).toList(), out);
        }
    }

    private static void names(String heading, List<RuleResult> rules, StringBuilder out) {
        if (!rules.isEmpty()) {
            out.append("           ").append(heading).append(": ")
                    .append(rules.stream().map(r -> r.rule().name()).collect(Collectors.joining(", ")))
                    .append('\n');
        }
    }

    private static String details(Judgement judgement) {
        Outcome outcome = judgement.outcome();
        long held = outcome.rules().stream()
                .filter(r -> r.verdict() == RuleResult.Verdict.HOLDS)
                .count();
        String states = Counted.of(outcome.states(), "state");
        String cut = outcome.cut().map(c -> "; the run was cut: " + c).orElse("");
        return switch (judgement.status()) {
            case HOLDS -> held + (held == 1 ? " rule holds in " : " rules hold in ") + states;
            case FAILS_AS_STATED -> outcome.findings().isEmpty()
                    ? "only cautions and advice"
                    : outcome.findings().stream().map(Expected::words).collect(Collectors.joining("; "));
            case BROKEN -> broken(judgement) + cut;
            case UNDECIDED -> outcome.cut().orElse("") + (outcome.states() == 0 ? "" : " after " + states) + "; nothing is claimed";
            case NOT_PROVED -> "no rule that stops came up in " + states + "; nothing is claimed";
        };
    }

    private static String broken(Judgement judgement) {
        if (!judgement.differences().isEmpty()) {
            return String.join("; ", judgement.differences());
        }
        List<Finding> findings = judgement.outcome().findings();
        String more = findings.size() == 1 ? "" : " and " + (findings.size() - 1) + " more";
        return Expected.words(findings.get(0)) + more;
    }

    private static String counts(List<Judgement> judgements, List<Unjudged> unjudged) {
        return judgements.size() + (judgements.size() == 1 ? " check: " : " checks: ")
                + count(judgements, Judgement.Status.HOLDS) + " hold, "
                + count(judgements, Judgement.Status.FAILS_AS_STATED) + " fail as they must, "
                + count(judgements, Judgement.Status.BROKEN) + " broken, "
                + count(judgements, Judgement.Status.UNDECIDED) + " undecided"
                + more(count(judgements, Judgement.Status.NOT_PROVED)
                        + unjudged.stream().filter(u -> u.reason() == Unjudged.Reason.NO_PLACE).count(), Unjudged.Reason.NO_PLACE)
                + more(unjudged.stream().filter(u -> u.reason() != Unjudged.Reason.NO_PLACE).count(), Unjudged.Reason.MISTAKES)
                + notes(judgements, Rule.Severity.CAUTION, "caution", "cautions")
                + notes(judgements, Rule.Severity.ADVICE, "piece of advice", "pieces of advice");
    }

    private static String more(long count, Unjudged.Reason reason) {
        return count == 0 ? "" : ", " + count + " " + reason.words();
    }

    private static String notes(List<Judgement> judgements, Rule.Severity severity, String one, String more) {
        long count = judgements.stream()
                .flatMap(j -> j.outcome().notes().stream())
                .filter(n -> n.severity() == severity)
                .count();
        return count == 0 ? "" : ", " + count + " " + (count == 1 ? one : more);
    }

    private static long count(List<Judgement> judgements, Judgement.Status status) {
        return judgements.stream().filter(j -> j.status() == status).count();
    }
}
