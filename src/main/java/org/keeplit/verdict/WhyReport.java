package org.keeplit.verdict;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.keeplit.outcome.RuleAtStep;
import org.keeplit.outcome.TraceStep;
import org.keeplit.outcome.Why;
import org.keeplit.rule.Rule;

/** Tells why a rule is kept or broken around a step. The same gives the same bytes. */
public final class WhyReport {
    /** How many bindings are told in full where nothing changes. */
    private static final int TOLD = 3;

    private static final String NOT_JUDGED = ", where the rule is not judged";

    private final Style style;

    /**
     * Begins a report.
     *
     * @param style how to mark words
     */
    public WhyReport(Style style) {
        this.style = style;
    }

    /**
     * {@return the explanation, with a line end at its end}
     *
     * @param place which procedure, and where
     * @param at the rule around the step
     */
    public String tell(String place, RuleAtStep at) {
        StringBuilder out = new StringBuilder();
        out.append(style.strong(at.rule().name() + " at " + at.step() + " in " + place)).append('\n');
        if (!at.safe()) {
            out.append("  Every way to this step breaks a rule before.\n");
        }
        out.append("\n  One shortest way through the step; > marks its acts:\n");
        int width = String.valueOf(at.way().size()).length();
        for (TraceStep step : at.way()) {
            boolean own = step.number() >= at.firstOfStep() && step.step().equals(at.step());
            String number = " ".repeat(width - String.valueOf(step.number()).length()) + step.number();
            out.append(own ? "  > " : "    ").append(number).append("  ").append(step.actor()).append(' ')
                    .append(step.text()).append('\n');
        }
        if (at.before().isEmpty()) {
            out.append("\n  The rule is not asked here: nothing in this step brings it up, and it does not count before or after.\n");
            return out.toString();
        }
        Set<Integer> told = told(at);
        boolean after = at.rule().form() == Rule.Form.AFTER;
        boolean before = at.rule().form() == Rule.Form.BEFORE;
        trees("Before the step" + (after ? NOT_JUDGED : ""), at.before(), told, out);
        trees("After the step" + (before ? NOT_JUDGED : ""), at.after(), told, out);
        return out.toString();
    }

    /** Those that change or are broken are told, and where none is, the first few. */
    private static Set<Integer> told(RuleAtStep at) {
        List<Integer> alike = new ArrayList<>();
        Set<Integer> told = new LinkedHashSet<>();
        for (int i = 0; i < at.before().size(); i++) {
            if (at.before().get(i).equals(at.after().get(i))) {
                alike.add(i);
            } else {
                told.add(i);
            }
        }
        if (told.isEmpty()) {
            told.addAll(alike.subList(0, Math.min(TOLD, alike.size())));
        }
        return told;
    }

    private void trees(String title, List<Why> all, Set<Integer> told, StringBuilder out) {
        out.append("\n  ").append(style.strong(title)).append('\n');
        told.forEach(i -> Reasons.tree(all.get(i), 2, out));
        if (told.size() < all.size()) {
            out.append("    and ").append(all.size() - told.size())
                    .append(" more of which nothing changes in this step\n");
        }
    }
}
