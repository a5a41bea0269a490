package org.keeplit.command;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.keeplit.language.Library;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Watcher;
import org.keeplit.page.Proof;
import org.keeplit.page.WholeFolder;
import org.keeplit.paper.Papers;
import org.keeplit.procedure.Instance;
import org.keeplit.report.ProofReport;
import org.keeplit.report.ReportPage;
import org.keeplit.text.Problems;
import org.keeplit.verdict.Judgement;
import picocli.CommandLine;

/** {@code report}: pages to look through proofs. */
@CommandLine.Command(
        name = "report",
        description = "Write a page to look through each proof, act by act: picture, people, voltages, figures, rules; of what breaks, the story.",
        mixinStandardHelpOptions = true)
final class ReportCommand extends PaperCommand<ProofReport> {
    @Override
    String noun() {
        return "reports";
    }

    @Override
    List<ProofReport> workOut(Library library, Limits limits, Watcher watcher, Problems problems) {
        return Papers.report(library, limits, watcher, problems);
    }

    @Override
    Instance instance(ProofReport one) {
        return one.instance();
    }

    @Override
    String told(ProofReport one) {
        return one.instance().words() + ": " + switch (one.judgement().status()) {
            case HOLDS -> "holds";
            case FAILS_AS_STATED -> "fails as it states";
            case BROKEN -> "BROKEN";
            case UNDECIDED -> "UNDECIDED";
            case NOT_PROVED -> "NOT PROVED";
        } + ", " + one.ways().size() + (one.ways().size() == 1 ? " way" : " ways") + " to look through.";
    }

    @Override
    Proof proof(ProofReport one) {
        Judgement.Status status = one.judgement().status();
        return status == Judgement.Status.BROKEN
                ? Proof.BROKEN
                : status == Judgement.Status.UNDECIDED ? Proof.UNDECIDED : Proof.HOLDS;
    }

    @Override
    Map<String, byte[]> pages(ProofReport one, LocalDate date, Consumer<String> told) {
        return Map.of(".html", WholeFolder.bytes(ReportPage.of(one, date)));
    }
}
