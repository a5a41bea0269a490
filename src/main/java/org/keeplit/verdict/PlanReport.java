package org.keeplit.verdict;

import java.util.List;
import java.util.Locale;
import org.keeplit.outcome.CalledOutage;
import org.keeplit.outcome.ChosenAct;
import org.keeplit.outcome.Harm;
import org.keeplit.outcome.PlanResult;

/** Tells plans as text. The same plans give the same bytes. */
public final class PlanReport {
    private final Style style;

    /**
     * Begins a report.
     *
     * @param style how to mark words
     */
    public PlanReport(Style style) {
        this.style = style;
    }

    /**
     * {@return the text, with a line end at its end}
     *
     * @param plans the plans, in the order in which they are told
     */
    public String tell(List<PlanResult> plans) {
        StringBuilder out = new StringBuilder();
        plans.forEach(plan -> tell(plan, out));
        out.append("A plan is a proposal: it is written as a procedure, checked and approved before anybody works by it.\n");
        out.append(TextReport.CAUTION).append('\n');
        return out.toString();
    }

    private void tell(PlanResult plan, StringBuilder out) {
        out.append(style.strong(plan.instance().words())).append('\n');
        outage(plan.outage(), out);
        if (!plan.broken().isEmpty()) {
            Harm first = plan.broken().get(0);
            out.append("  ").append(style.bad("nothing was planned")).append(": at the start ").append(first.sentence());
            out.append(" (").append(first.name()).append(")\n\n");
            return;
        } else if (plan.way().isEmpty()) {
            out.append("  ").append(style.bad(plan.exhausted() ? "there is no plan" : "no plan was found"));
            out.append(plan.exhausted() ? ": all that these steps can reach, " : ", in ");
            out.append(Counted.of(plan.states(), "state")).append(plan.exhausted() ? ", was looked at\n\n" : "\n\n");
            return;
        }
        List<ChosenAct> way = plan.way().get();
        out.append("  ").append(style.good(Counted.of(way.size(), "act")));
        out.append(plan.isShortest() ? ", the fewest that there can be" : ", not shown to be the fewest: it takes at least " + plan.atLeast());
        out.append("\n\n");
        String step = "";
        for (int i = 0; i < way.size(); i++) {
            ChosenAct act = way.get(i);
            if (!act.step().equals(step) && !act.step().equals(act.actor() + " " + act.text())) {
                out.append("        ").append(act.step()).append('\n');
            }
            step = act.step();
            out.append(String.format(Locale.ROOT, "  %4d  %s %s%n", i + 1, act.actor(), act.text()));
        }
        out.append('\n');
    }

    /** A called outage is shown first: a plan never buys supply with exposure. */
    private static void outage(CalledOutage outage, StringBuilder out) {
        out.append("  The other way, always safe: a called outage");
        if (!outage.devices().isEmpty()) {
            out.append(" by ").append(String.join(", ", outage.devices())).append("; ");
            out.append(Counted.of(outage.customers(), "customer")).append(" without supply");
        }
        out.append(".\n");
    }
}
