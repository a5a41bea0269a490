package org.keeplit.editor;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DiagnosticRelatedInformation;
import org.eclipse.lsp4j.DiagnosticSeverity;
import org.keeplit.exchange.Where;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.TraceStep;
import org.keeplit.procedure.Block;
import org.keeplit.rule.Rule;
import org.keeplit.text.Problem;
import org.keeplit.text.Span;
import org.keeplit.verdict.Judgement;

/** What is wrong with a page: first what reading finds, then what the proof finds. */
final class Diagnosing {
    static final String SOURCE = "keeplit";

    private final Places places;

    Diagnosing(Places places) {
        this.places = places;
    }

    /** {@return everything to be marked on a page} @param page the page @param proved its proof, perhaps of an older text */
    List<Diagnostic> of(Page page, Proved proved) {
        List<Diagnostic> all = new ArrayList<>();
        page.problems().forEach(p -> all.add(problem(p)));
        if (proved.version() == page.version()) {
            proved.problems().stream().filter(p -> p.span().source().name().equals(page.name())).forEach(p -> all.add(problem(p)));
            proved.verdicts().forEach(v -> verdict(v.judgement(), page, all));
        }
        return all;
    }

    Diagnostic problem(Problem problem) {
        DiagnosticSeverity severity =
                problem.severity() == Problem.Severity.ERROR ? DiagnosticSeverity.Error : DiagnosticSeverity.Warning;
        String help = problem.help().map(h -> "\n" + h).orElse("");
        Diagnostic one = new Diagnostic(Places.range(problem.span()), problem.message() + help, severity, SOURCE, problem.code());
        problem.related().ifPresent(r ->
                one.setRelatedInformation(List.of(new DiagnosticRelatedInformation(places.location(r.span()), r.note()))));
        return one;
    }

    private void verdict(Judgement judgement, Page page, List<Diagnostic> all) {
        Span head = judgement.procedure().span();
        judgement.differences().forEach(d -> all.add(plain(head, d, DiagnosticSeverity.Error, "must-fail")));
        List<Block.Step> steps = judgement.outcome().steps();
        boolean must = !judgement.procedure().mustFail().isEmpty();
        judgement.stories().forEach(f -> add(finding(f, steps, head, must ? DiagnosticSeverity.Information : DiagnosticSeverity.Error), page, f, steps, head, all));
        judgement.outcome().notes().stream().filter(n -> !must).forEach(n -> add(
                finding(n, steps, head, n.severity() == Rule.Severity.CAUTION ? DiagnosticSeverity.Warning : DiagnosticSeverity.Information),
                page, n, steps, head, all));
        if (judgement.status() == Judgement.Status.UNDECIDED) {
            String why = judgement.outcome().cut().orElse("it could not be decided");
            all.add(plain(head, judgement.instance().words() + ": undecided, " + why, DiagnosticSeverity.Information, "undecided"));
        }
    }

    /** What happens in a step of another file is marked at the head. */
    private void add(Diagnostic one, Page page, Finding finding, List<Block.Step> steps, Span head, List<Diagnostic> all) {
        Span at = Where.of(finding, steps, head);
        if (!at.source().name().equals(page.name())) {
            one.setRange(Places.range(head));
        }
        all.add(one);
    }

    private static Diagnostic plain(Span at, String text, DiagnosticSeverity severity, String code) {
        return new Diagnostic(Places.range(at), text, severity, SOURCE, code);
    }

    private Diagnostic finding(Finding finding, List<Block.Step> steps, Span head, DiagnosticSeverity severity) {
        int acts = finding.trace().size();
        String after = acts == 0 ? ", before the first step" : acts == 1 ? ", at the first act" : ", after " + acts + " acts";
        String why = finding.rule().map(r -> "\n" + r.because()).orElse("");
        Diagnostic one = plain(
                Where.of(finding, steps, head), finding.sentence() + " (" + finding.name() + after + ")" + why, severity, finding.name());
        List<DiagnosticRelatedInformation> way = new ArrayList<>();
        for (TraceStep act : finding.trace()) {
            Optional<Span> at = Where.of(act, steps);
            at.ifPresent(s -> way.add(new DiagnosticRelatedInformation(
                    places.location(s), act.number() + "  " + act.actor() + " " + act.text())));
        }
        one.setRelatedInformation(way);
        return one;
    }
}
