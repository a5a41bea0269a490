package org.keeplit.paper;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import org.keeplit.card.CardMaker;
import org.keeplit.card.CardSet;
import org.keeplit.drill.Drill;
import org.keeplit.drill.DrillMaker;
import org.keeplit.explore.AtOnePlace;
import org.keeplit.explore.Everywhere;
import org.keeplit.explore.Proving;
import org.keeplit.language.Library;
import org.keeplit.log.LogCheck;
import org.keeplit.log.Sheet;
import org.keeplit.log.SheetMaker;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Watcher;
import org.keeplit.procedure.Instance;
import org.keeplit.report.ProofReport;
import org.keeplit.text.Problems;

/** What is made for people of the procedures of a library, wherever they are proved. */
public final class Papers {
    private Papers() {}

    /**
     * Makes the cards of every procedure of the given files that must hold, on every place that it names.
     *
     * @param library what was read
     * @param limits how many states are looked at
     * @param watcher is told how each gets on; may stop it
     * @param problems collects what does not fit
     * @return a set of cards for each procedure and place, in the order of the files
     */
    public static ImmutableList<CardSet> cards(
            Library library, Limits limits, Watcher watcher, Problems problems) {
        return Everywhere.whatMustHold(library.givenProcedures(), library.networks(), problems, (one, prepared) -> CardMaker.of(one, prepared, limits, watcher));
    }

    /**
     * Gathers what can be looked through of every procedure of the given files, on every place that it names; of a broken one, and of a
     * teaching variant, the story of each thing that breaks.
     *
     * @param library what was read
     * @param limits how far to go for each
     * @param watcher is told how each gets on; may stop it
     * @param problems collects what does not fit
     * @return a report for each procedure and place, in the order of the files
     */
    public static ImmutableList<ProofReport> report(
            Library library, Limits limits, Watcher watcher, Problems problems) {
        return Everywhere.all(library.givenProcedures(), library.networks(), problems, p -> true, (one, prepared) -> ProofReport.of(one, prepared, limits, watcher));
    }

    /**
     * Makes a drill of every procedure of the given files that must hold, on every place that it names.
     *
     * @param library what was read
     * @param limits how far to go for each proof
     * @param watcher is told how each gets on; may stop it
     * @param problems collects what does not fit
     * @return a drill for each procedure and place, in the order of the files
     */
    public static ImmutableList<Drill> drill(
            Library library, Limits limits, Watcher watcher, Problems problems) {
        return Everywhere.whatMustHold(library.givenProcedures(), library.networks(), problems, (one, prepared) -> DrillMaker.of(one, prepared, limits, watcher));
    }

    /**
     * Makes a log sheet of every procedure of the given files that must hold, on every place that it names.
     *
     * @param library what was read
     * @param limits how far to go for each proof
     * @param watcher is told how each gets on; may stop it
     * @param problems collects what does not fit
     * @return a sheet for each procedure and place, in the order of the files
     */
    public static ImmutableList<Sheet> sheets(
            Library library, Limits limits, Watcher watcher, Problems problems) {
        return Everywhere.whatMustHold(library.givenProcedures(), library.networks(), problems, (one, prepared) -> SheetMaker.of(one, prepared, limits, watcher));
    }

    /**
     * Checks a filled log against the procedure among the given files that it says it is of, or against the only one.
     *
     * @param library what was read
     * @param text the filled log
     * @param problems collects what does not fit
     * @return what came of it; nothing if its procedure is not there
     */
    public static Optional<LogCheck.Checked> checkLog(Library library, String text, Problems problems) {
        List<Instance> all = library.givenProcedures().stream()
                .filter(p -> p.mustFail().isEmpty())
                .flatMap(p -> Instance.of(p, library.networks()).stream())
                .toList();
        Optional<String> job = LogCheck.job(text);
        return all.stream()
                .filter(one -> job.map(one.words()::equals).orElse(all.size() == 1))
                .findFirst()
                .flatMap(one -> AtOnePlace.guarded(one, problems, () -> Proving.using(one.procedure(), one.network(), one.proof(), problems,
                        p -> LogCheck.of(one, p, text))));
    }
}
