package org.keeplit.exchange;

import com.google.common.collect.Iterables;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.RuleResult;
import org.keeplit.procedure.Unjudged;
import org.keeplit.rule.Rule;
import org.keeplit.text.Span;
import org.keeplit.verdict.ExampleJudgement;
import org.keeplit.verdict.Judgement;

/** Takes answers apart into single cases. */
final class Cases {
    private static final Case.About AS_WRITTEN = new Case.About(
            "procedure/as-written",
            "It can be done as it is written, and ends as it says.",
            "Every step can be done, what it requires and expects is so, nobody finds otherwise or waits for ever, no two voltages meet,"
                    + " and what must hold at the end does.");
    private static final Case.About MUST_FAIL = new Case.About(
            "procedure/must-fail", "A teaching variant fails on exactly what it states.", "");

    private static final Case.About JUDGED = new Case.About(
            "procedure/judged",
            "It is judged.",
            "A verdict needs files without any mistake, a place where the procedure is to be proved, and at least one rule that stops and comes up.");

    private Cases() {}

    /** {@return the cases of an answer, in its order} */
    static List<Case> of(Answer answer, List<Unjudged> unjudged) {
        List<Case> all = new ArrayList<>();
        unjudged.forEach(one -> all.add(new Case(
                one.name(), one.name(), one.reason().words(), JUDGED, Case.Came.OPEN, one.because(), Optional.of(one.span()), List.of())));
        if (answer instanceof Answer.Checks a) {
            a.all().forEach(one -> check(one, a.strict(), all));
        } else if (answer instanceof Answer.Tests a) {
            a.all().forEach(one -> all.add(example(one)));
        } else if (answer instanceof Answer.Orders a) {
            a.all().forEach(one -> InsightCases.order(one, all));
        } else if (answer instanceof Answer.Slips a) {
            a.all().forEach(one -> InsightCases.slips(one, all));
        } else if (answer instanceof Answer.Retreats a) {
            a.all().forEach(one -> InsightCases.retreat(one, all));
        } else if (answer instanceof Answer.Plans a) {
            a.all().forEach(one -> all.add(InsightCases.plan(one)));
        } else if (answer instanceof Answer.Sweeps a) {
            a.all().forEach(one -> all.add(InsightCases.place(one)));
        } else if (answer instanceof Answer.Mends a) {
            a.all().forEach(one -> all.add(InsightCases.mend(one)));
        } else if (answer instanceof Answer.Rechecks a) {
            a.all().forEach(one -> all.add(RecheckWords.asCase(one)));
        } else {
            throw new IllegalArgumentException("an explanation is no case");
        }
        return all;
    }

    private static void check(Judgement one, boolean strict, List<Case> into) {
        if (!one.procedure().mustFail().isEmpty()) {
            mustFail(one, into);
            return;
        }
        Outcome outcome = one.outcome();
        outcome.rules().forEach(result -> {
            into.add(rule(result, one, strict));
            // The nearest place is told under the name of the rule, each further one with its step and phase.
            Iterables.concat(outcome.findings(), outcome.notes()).forEach(f -> {
                if (isOf(f, result) && !result.finding().equals(Optional.of(f))) {
                    into.add(found(one, VerdictJson.words(f), Case.About.of(result.rulebook(), result.rule()), came(f.severity(), strict), f));
                }
            });
        });
        boolean written = true;
        for (Finding finding : outcome.findings()) {
            if (finding.rule().isEmpty()) {
                Case.About about = new Case.About("procedure/" + finding.kind().word(), AS_WRITTEN.text(), AS_WRITTEN.full());
                into.add(found(one, VerdictJson.words(finding), about, Case.Came.BROKEN, finding));
                written = false;
            }
        }
        for (Finding alone : outcome.byEvent()) {
            Case.About about = alone.rule().map(r -> Case.About.of(alone.rulebook().orElse(""), r)).orElse(AS_WRITTEN);
            into.add(found(one, alone.name() + ", by the event alone", about, Case.Came.NOTED, alone));
        }
        if (written) {
            Case.Came came = outcome.cut().isPresent() ? Case.Came.OPEN : Case.Came.KEPT;
            String states = String.format(Locale.ROOT, "%,d states", outcome.states());
            String message = outcome.cut().map(cut -> cut + (outcome.states() == 0 ? "" : " after " + states) + "; nothing is claimed").orElse("so in all " + states);
            into.add(plain(one, "as written", AS_WRITTEN, came, message));
        }
        if (one.status() == Judgement.Status.NOT_PROVED) {
            into.add(plain(one, "not proved", JUDGED, Case.Came.OPEN, "no rule that stops came up; nothing is claimed"));
        }
    }

    private static boolean isOf(Finding finding, RuleResult result) {
        return finding.rule().equals(Optional.of(result.rule())) && finding.rulebook().equals(Optional.of(result.rulebook()));
    }

    private static Case rule(RuleResult result, Judgement one, boolean strict) {
        Case.About about = Case.About.of(result.rulebook(), result.rule());
        String name = result.rule().name();
        return switch (result.verdict()) {
            case HOLDS -> plain(one, name, about, Case.Came.KEPT, "kept in every state; judged " + result.judged() + " times");
            case NOT_EXERCISED -> plain(one, name, about, strict && one.status() == Judgement.Status.HOLDS ? Case.Came.MISSED : Case.Came.NOT_ASKED, "its case never came up, which is not the same as holding");
            case UNDECIDED -> plain(one, name, about, Case.Came.OPEN, one.outcome().cut().orElse("it could not be decided"));
            case ONLY_AFTER -> {
                String before = result.finding().flatMap(Finding::after).orElse("another break");
                yield plain(one, name, about, Case.Came.AFTER, "broken only after " + before);
            }
            case BROKEN -> {
                Finding finding = result.finding().orElseThrow();
                yield found(one, name, about, came(finding.severity(), strict), finding);
            }
        };
    }

    private static Case.Came came(Rule.Severity severity, boolean strict) {
        return switch (severity) {
            case STOP -> Case.Came.BROKEN;
            case CAUTION -> strict ? Case.Came.BROKEN : Case.Came.WARNED;
            case ADVICE -> Case.Came.NOTED;
        };
    }

    private static void mustFail(Judgement one, List<Case> into) {
        Case.Came came = switch (one.status()) {
            case HOLDS, FAILS_AS_STATED -> Case.Came.KEPT;
            case BROKEN -> Case.Came.BROKEN;
            case UNDECIDED, NOT_PROVED -> Case.Came.OPEN;
        };
        String message = switch (came) {
            case OPEN -> one.outcome().cut().orElse("") + "; nothing is claimed";
            case BROKEN -> String.join("; ", one.differences());
            default -> "fails on exactly what it states";
        };
        Optional<Finding> first = one.outcome().findings().stream().findFirst();
        into.add(new Case(
                one.instance().words(),
                one.procedure().name(),
                "fails as stated",
                MUST_FAIL,
                came,
                message,
                Optional.of(one.procedure().span()),
                first.map(f -> Case.way(f, one.outcome().steps())).orElse(List.of())));
    }

    private static Case plain(Judgement one, String name, Case.About about, Case.Came came, String message) {
        return new Case(
                one.instance().words(), one.procedure().name(), name, about, came, message, Optional.of(one.procedure().span()), List.of());
    }

    private static Case found(Judgement one, String name, Case.About about, Case.Came came, Finding finding) {
        Span at = Where.of(finding, one.outcome().steps(), one.procedure().span());
        String where = finding.step().isEmpty() ? ", before the first step" : ", at step " + finding.step();
        String unknown = finding.unknown() ? "; it cannot be shown to be kept" : "";
        return new Case(
                one.instance().words(),
                one.procedure().name(),
                name,
                about,
                came,
                finding.sentence() + where + unknown,
                Optional.of(at),
                Case.way(finding, one.outcome().steps()));
    }

    private static Case example(ExampleJudgement one) {
        Case.Came came = one.isPassed() ? Case.Came.KEPT : one.isUndecided() ? Case.Came.OPEN : Case.Came.BROKEN;
        Outcome outcome = one.judgement().outcome();
        String message = switch (came) {
            case KEPT -> "came as it states";
            case OPEN -> outcome.cut().orElse("") + "; nothing is claimed";
            default -> String.join("; ", one.differences());
        };
        String start = one.judgement().instance().start();
        List<Case.Act> way = came == Case.Came.BROKEN && !outcome.findings().isEmpty()
                ? Case.way(outcome.findings().get(0), outcome.steps())
                : List.of();
        return new Case(
                "examples " + one.group(),
                one.group(),
                one.example().title() + (start.isEmpty() ? "" : ", starting with " + start),
                new Case.About("example/" + one.group(), "An example of a rulebook comes as it states.", ""),
                came,
                message,
                Optional.of(one.example().span()),
                way);
    }
}
