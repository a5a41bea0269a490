package org.keeplit.exchange;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.keeplit.outcome.ChosenAct;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.Mend;
import org.keeplit.outcome.OrderTable;
import org.keeplit.outcome.PlanResult;
import org.keeplit.outcome.RetreatTable;
import org.keeplit.outcome.SlipResult;
import org.keeplit.outcome.SlipTable;
import org.keeplit.outcome.SweepResult;
import org.keeplit.outcome.TraceStep;
import org.keeplit.procedure.Instance;
import org.keeplit.text.Span;
import org.keeplit.verdict.TextReport;

/** Takes what follows from procedures apart into single cases. */
final class InsightCases {
    private static final Case.About HOLDS =
            new Case.About("procedure/holds", "The procedure holds as it is.", "What follows from a procedure is told of one that holds.");

    private InsightCases() {}

    private static Case of(Instance one, String name, Case.About about, Case.Came came, String message, Span place, List<Case.Act> way) {
        return new Case(one.words(), one.procedure().name(), name, about, came, message, Optional.of(place), way);
    }

    private static Case doesNotHold(Instance one, boolean cut) {
        String message = cut ? TextReport.CUT : "does not hold as it is";
        return of(one, "holds", HOLDS, cut ? Case.Came.OPEN : Case.Came.BROKEN, message, one.procedure().span(), List.of());
    }

    private static Span at(Instance one, int line) {
        return new Span(one.procedure().span().source(), line, 1, 0);
    }

    /** The acts of a way are written where the procedure is, as far as its line tells. */
    private static List<Case.Act> way(Finding finding, Instance one) {
        return finding.trace().stream().map(act -> Case.act(act, Optional.of(at(one, act.line())))).toList();
    }

    private static List<Case.Act> way(List<ChosenAct> acts) {
        return acts.stream()
                .map(a -> new Case.Act(a.actor() + " " + a.text(), List.of(), Optional.of(a.span())))
                .toList();
    }

    static void order(OrderTable table, List<Case> into) {
        if (!table.holds()) {
            into.add(doesNotHold(table.instance(), table.cut()));
            return;
        }
        into.add(every("what must come first", table.necessary(), table.instance()));
        into.add(every("what must come first as it is written", table.asWritten(), table.instance()));
    }

    private static Case every(String which, OrderTable.Every every, Instance one) {
        Case.About about = new Case.About("order/safe", "Every order that keeps to what must come first is safe.", "");
        Span head = one.procedure().span();
        String name = "every order that keeps to " + which;
        return switch (every.answer()) {
            case SAFE -> of(one, name, about, Case.Came.KEPT, "safe in " + every.states() + " states", head, List.of());
            case UNDECIDED -> of(one, name, about, Case.Came.OPEN, "none that is not safe was found in " + every.states() + " states", head, List.of());
            case NOT_SAFE -> {
                Finding finding = every.exception().orElseThrow();
                yield of(one, name, about, Case.Came.WARNED, "not every one is safe: " + finding.sentence(), head, way(finding, one));
            }
        };
    }

    static void slips(SlipTable table, List<Case> into) {
        if (!table.holds()) {
            into.add(doesNotHold(table.instance(), table.cut()));
            return;
        }
        for (SlipResult one : table.slips()) {
            String kind = Shared.word(one.kind());
            Case.About about = new Case.About(
                    "slip/" + kind, "A single slip (" + one.kind().word() + ") is caught before harm comes of it.", "");
            Optional<Finding> first = one.findings().stream().findFirst();
            int line = first.flatMap(f -> f.trace().stream().filter(a -> a.step().equals(one.step())).findFirst())
                    .map(TraceStep::line)
                    .orElse(table.instance().procedure().span().line());
            Case.Came came = switch (one.ending()) {
                case HARMLESS, NOTICED, CAUGHT -> Case.Came.KEPT;
                case EXPOSED -> Case.Came.WARNED;
                case UNDECIDED -> Case.Came.OPEN;
            };
            String harm = one.ending() == SlipResult.Ending.EXPOSED
                    ? ": " + first.orElseThrow().sentence()
                            + one.cure().map(c -> "; caught if " + c.actor() + " " + c.look()).orElse("")
                    : "";
            into.add(of(
                    table.instance(),
                    one.step() + ", " + one.kind().word() + ": " + one.words(),
                    about,
                    came,
                    one.ending().word() + harm,
                    at(table.instance(), line),
                    came == Case.Came.WARNED ? way(first.orElseThrow(), table.instance()) : List.of()));
        }
    }

    static void retreat(RetreatTable table, List<Case> into) {
        Instance one = table.instance();
        if (!table.holds()) {
            into.add(doesNotHold(one, table.cut()));
            return;
        }
        Case.About about = new Case.About("retreat/way-back", "There is a safe way back to normal after every step.", "");
        for (RetreatTable.Stop stop : table.stops()) {
            boolean back = stop.none() == 0;
            String message = back
                    ? "a way back of at most " + stop.longest() + " acts"
                    : "no way back " + (stop.proved() ? "exists" : "was found") + " from " + stop.none() + " of " + stop.states() + " states";
            into.add(of(
                    one,
                    "after " + stop.part().name(),
                    about,
                    back ? Case.Came.KEPT : Case.Came.BROKEN,
                    message,
                    at(one, stop.part().line()),
                    stop.way().map(InsightCases::way).orElse(List.of())));
        }
        if (table.cut()) {
            String message = "there are more states than the " + table.states() + " that were looked at";
            into.add(of(one, "all states", about, Case.Came.OPEN, message, one.procedure().span(), List.of()));
        }
    }

    static Case plan(PlanResult plan) {
        Case.About about = new Case.About("plan/found", "There is a safe way from the start to the end.", "");
        Span head = plan.instance().procedure().span();
        if (!plan.broken().isEmpty()) {
            String message = "nothing was planned: at the start " + plan.broken().get(0).sentence();
            return of(plan.instance(), "plan", about, Case.Came.BROKEN, message, head, List.of());
        } else if (plan.way().isPresent()) {
            List<Case.Act> way = way(plan.way().get());
            String message = way.size() + (way.size() == 1 ? " act" : " acts") + (plan.isShortest() ? ", the fewest that there can be" : "");
            return of(plan.instance(), "plan", about, Case.Came.KEPT, message, head, way);
        }
        Case.Came came = plan.exhausted() ? Case.Came.BROKEN : Case.Came.OPEN;
        String message = plan.exhausted() ? "there is no plan" : "no plan was found in " + plan.states() + " states";
        return of(plan.instance(), "plan", about, came, message, head, List.of());
    }

    static Case place(SweepResult result) {
        Case.Came came = switch (result.answer()) {
            case HOLDS -> Case.Came.KEPT;
            case BREAKS -> Case.Came.BROKEN;
            case DOES_NOT_APPLY -> Case.Came.NOT_ASKED;
            case UNDECIDED, NOT_PROVED -> Case.Came.OPEN;
        };
        Case.About about = new Case.About("sweep/" + result.procedure(), "The procedure holds wherever it fits.", "");
        String message = result.answer().words() + ": " + result.detail();
        return new Case("sweep of " + result.procedure(), result.procedure(), result.place(), about, came, message, Optional.empty(), List.of());
    }

    static Case mend(Mend mend) {
        String name = mend.procedure().name();
        String message = mend.holds()
                ? "holds as it is"
                : mend.cut() ? TextReport.CUT : Stream.concat(
                                Stream.of("does not hold as it is"),
                                mend.mends().stream().limit(1).map(m -> "holds after: " + String.join("; ", m.edits())))
                        .reduce((a, b) -> a + "; " + b)
                        .orElseThrow();
        return new Case(
                name,
                name,
                "holds",
                HOLDS,
                mend.holds() ? Case.Came.KEPT : mend.cut() ? Case.Came.OPEN : Case.Came.BROKEN,
                message,
                Optional.of(mend.procedure().span()),
                List.of(),
                mend.mends().stream().map(m -> new Case.Fix(String.join("; ", m.edits()), mend.source(), m.text())).toList());
    }
}
