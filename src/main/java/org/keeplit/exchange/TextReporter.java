package org.keeplit.exchange;

import java.util.List;
import java.util.stream.Collectors;
import org.keeplit.gridfile.ImportReport;
import org.keeplit.procedure.Unjudged;
import org.keeplit.text.Problem;
import org.keeplit.verdict.ExamplesReport;
import org.keeplit.verdict.MendReport;
import org.keeplit.verdict.OrderReport;
import org.keeplit.verdict.PlanReport;
import org.keeplit.verdict.RetreatReport;
import org.keeplit.verdict.SlipReport;
import org.keeplit.verdict.Style;
import org.keeplit.verdict.SweepReport;
import org.keeplit.verdict.TextReport;
import org.keeplit.verdict.WhyReport;

/**
 * Text for people. Problems are not in it: they are printed beside it.
 *
 * @param style how to mark words
 * @param full whether everything is told, not only what most readers look for
 */
public record TextReporter(Style style, boolean full) implements Reporter {
    @Override
    public String tell(Answer answer, List<Unjudged> unjudged, List<Problem> problems) {
        if (answer instanceof Answer.Checks a) {
            return new TextReport(style, full).tell(a.all(), unjudged);
        }
        StringBuilder first = new StringBuilder();
        unjudged.forEach(one -> first.append(TextReport.line(one, style, 0)));
        return (unjudged.isEmpty() ? "" : first.append('\n').toString()) + (answer.isEmpty() ? "" : rest(answer));
    }

    private String rest(Answer answer) {
        if (answer instanceof Answer.Tests a) {
            return new ExamplesReport(style).tell(a.all(), a.coverage());
        } else if (answer instanceof Answer.Orders a) {
            return new OrderReport(style, full).tell(a.all());
        } else if (answer instanceof Answer.Slips a) {
            return new SlipReport(style, full).tell(a.all());
        } else if (answer instanceof Answer.Retreats a) {
            return new RetreatReport(style, full).tell(a.all());
        } else if (answer instanceof Answer.Plans a) {
            return new PlanReport(style).tell(a.all());
        } else if (answer instanceof Answer.Sweeps a) {
            return new SweepReport(style, full).tell(a.all());
        } else if (answer instanceof Answer.Mends a) {
            return new MendReport(style).tell(a.all());
        } else if (answer instanceof Answer.Imports a) {
            return a.all().stream().map(new ImportReport(full)::tell).collect(Collectors.joining("\n"));
        } else if (answer instanceof Answer.Rechecks a) {
            return a.all().stream().map(RecheckWords::text).collect(Collectors.joining());
        }
        return ((Answer.Whys) answer)
                .all().stream().map(at -> new WhyReport(style).tell(at.place(), at.found())).collect(Collectors.joining("\n"));
    }
}
