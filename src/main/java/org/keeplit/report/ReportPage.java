package org.keeplit.report;

import com.google.common.collect.ImmutableList;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Collectors;
import org.keeplit.explore.Frame;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.TraceStep;
import org.keeplit.page.Html;
import org.keeplit.page.Screen;
import org.keeplit.procedure.Procedure;

/** Writes a report as one page that stands alone. The same report gives the same bytes. */
public final class ReportPage {
    private static final String CAUTION = "A proof is about the model. This page does not replace local rules, the utility's safety manual or the "
            + "person in charge; field conditions are checked on site.";

    private final ProofReport report;
    private final LocalDate date;
    private final StringBuilder html = new StringBuilder();

    private ReportPage(ProofReport report, LocalDate date) {
        this.report = report;
        this.date = date;
    }

    /** {@return the page} @param report what is looked through @param date the date that stands on it */
    public static String of(ProofReport report, LocalDate date) {
        return new ReportPage(report, date).page();
    }

    private String page() {
        String title = report.instance().words();
        head(title);
        html.append("<main>");
        for (int i = 0; i < report.ways().size(); i++) {
            way(i);
        }
        html.append("</main>");
        return Screen.page(
                title,
                Screen.resource(ReportPage.class, "report.css"),
                html.toString(),
                Screen.resource(ReportPage.class, "report.js"));
    }

    private void head(String title) {
        Procedure procedure = report.instance().procedure();
        Outcome outcome = report.judgement().outcome();
        html.append("<header><h1>").append(Html.text(title)).append("</h1><p>").append(Html.text(procedure.title())).append("</p>")
                .append(verdict())
                .append("<p class=\"note\">").append(Html.text("Revision " + procedure.revision() + ", network "
                        + report.instance().network().name() + ", input " + report.hash() + ", " + date + ". " + outcome.states()
                        + " states, " + outcome.transitions() + " acts tried."))
                .append("</p><p class=\"note\"><b>").append(Html.text(CAUTION)).append("</b></p>");
        html.append("<details><summary>What it rests on</summary>")
                .append(Html.list(report.judgement().basis().all()))
                .append("</details>");
        if (report.ways().size() > 1) {
            html.append("<p><label for=\"choice\">Look through: </label><select id=\"choice\">");
            for (int i = 0; i < report.ways().size(); i++) {
                html.append("<option value=\"").append(i).append("\">").append(Html.text(name(i))).append("</option>");
            }
            html.append("</select></p>");
        }
        html.append("<div class=\"moves\" role=\"group\" aria-label=\"Move through the acts\" hidden=\"hidden\">");
        button("first", "First");
        button("stepback", "Step before");
        button("back", "Act before");
        button("on", "Next act");
        button("stepon", "Next step");
        button("last", "Last");
        html.append("</div><p class=\"note keys\">Keys: left and right arrow for an act, P and N for a step, Home and End.</p>"
                + "<div id=\"said\" class=\"away\" aria-live=\"polite\"></div></header>\n");
    }

    private void button(String id, String words) {
        html.append("<button type=\"button\" id=\"").append(id).append("\">").append(words).append("</button>");
    }

    private String verdict() {
        return switch (report.judgement().status()) {
            case HOLDS -> Html.tag("p", "good", "<b>It holds.</b> Every rule that came up holds in every state, for exactly this text.");
            case FAILS_AS_STATED -> Html.tag("p", "bar", "A TEACHING VARIANT. It fails as it states. Not for use.");
            case BROKEN -> Html.tag("p", "bar", "NOT PROVED: something is broken. Not for use.");
            case UNDECIDED -> Html.tag("p", "bar", Html.text("NOT PROVED: undecided, "
                    + report.judgement().outcome().cut().orElse("a limit was reached") + ". Not for use."));
            case NOT_PROVED -> Html.tag("p", "bar", "NOT PROVED: no rule that stops came up. Not for use.");
        };
    }

    private String name(int way) {
        return report.ways().get(way).finding()
                .map(finding -> "the shortest way to: " + finding.sentence())
                .orElse(way == 0 ? "the procedure as written" : "another branch, " + (way + 1));
    }

    private void way(int number) {
        ProofReport.Way way = report.ways().get(number);
        ImmutableList<Frame> frames = way.frames();
        html.append("<section class=\"way\" id=\"way-").append(number).append("\"><h2>").append(Html.text(upper(name(number))))
                .append("</h2><div class=\"look\"><nav class=\"list\" aria-label=\"Acts\"><ol start=\"0\">");
        for (int i = 0; i < frames.size(); i++) {
            boolean byItself = frames.get(i).step().map(TraceStep::byItself).orElse(false);
            html.append("<li").append(byItself ? " class=\"byitself\"" : "").append("><a href=\"#").append(id(number, i)).append("\">")
                    .append(Html.text(words(frames.get(i)))).append("</a></li>");
        }
        html.append("</ol></nav><div>");
        for (int i = 0; i < frames.size(); i++) {
            frame(number, way, i);
        }
        html.append("</div></div></section>\n");
    }

    private static String id(int way, int frame) {
        return "w" + way + "-" + frame;
    }

    private static String words(Frame frame) {
        return frame.step().map(s -> s.actor() + " " + s.text()).orElse("the start");
    }

    private static String upper(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }

    private void frame(int number, ProofReport.Way way, int at) {
        Frame frame = way.frames().get(at);
        int last = way.frames().size() - 1;
        String place = at == 0 ? "The start" : at + " of " + last + ": " + words(frame);
        boolean end = at == last && way.finding().isPresent();
        html.append("<article class=\"frame\" id=\"").append(id(number, at)).append("\" data-step=\"")
                .append(Html.text(frame.step().map(s -> s.step() + "#" + s.line()).orElse(""))).append("\" data-said=\"")
                .append(Html.text(place + told(frame) + (end ? ". " + way.finding().get().sentence() : ""))).append("\"><h3>")
                .append(Html.text(place)).append("</h3>");
        frame.step().ifPresent(this::step);
        if (end) {
            finding(way.finding().get());
        }
        Frame before = at == 0 ? frame : way.frames().get(at - 1);
        html.append(FramePieces.pictures(before, frame, at == 0))
                .append("<div class=\"side\">")
                .append(FramePieces.people(report, frame))
                .append(FramePieces.levels(before, frame))
                .append("</div>")
                .append(FramePieces.limits(frame))
                .append(FramePieces.rules(frame))
                .append("</article>\n");
    }

    private static String told(Frame frame) {
        return frame.step().map(s -> s.changes().isEmpty() ? "" : ". " + String.join("; ", s.changes())).orElse("");
    }

    private void step(TraceStep step) {
        html.append("<p class=\"note\">").append(Html.text((step.byItself() ? "This comes by itself, after step " : "Step ") + step.step() + ", line "
                + step.line())).append("</p>");
        html.append(step.changes().isEmpty() ? "<p>Nothing changes that the model knows.</p>" : Html.list(step.changes()));
        if (!step.lost().isEmpty()) {
            int customers = step.lost().stream().mapToInt(TraceStep.Lost::customers).sum();
            html.append(Html.tag("p", "bad", Html.text("Loses supply: " + customers + (customers == 1 ? " customer" : " customers") + ": "
                    + step.lost().stream().map(ReportPage::lost).collect(Collectors.joining("; ")))));
        }
    }

    private static String lost(TraceStep.Lost lost) {
        return lost.load() + " on phase " + lost.phases() + (lost.critical().isEmpty() ? "" : " (critical: " + lost.critical() + ")");
    }

    private void finding(Finding finding) {
        html.append(Html.tag("p", "bad", Html.text(upper(finding.sentence()) + ".")));
        finding.rule().ifPresent(rule -> html.append(Html.list(List.of(
                "Rule " + rule.name() + (finding.phase().map(p -> ", phase " + p).orElse("")),
                "Why it matters: " + rule.because(),
                "Source: " + rule.citation().orElse("common practice, no source")))));
        if (finding.unknown()) {
            html.append("<p>It cannot be shown to be kept: the model cannot know everything that it asks.</p>");
        }
        if (!finding.why().text().isEmpty()) {
            html.append("<p>What was asked, and what was so:</p><ul class=\"tree\">").append(FramePieces.tree(finding.why())).append("</ul>");
        }
    }
}
