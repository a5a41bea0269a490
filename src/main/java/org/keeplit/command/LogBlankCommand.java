package org.keeplit.command;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.keeplit.language.Library;
import org.keeplit.log.Sheet;
import org.keeplit.log.SheetPage;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Watcher;
import org.keeplit.page.Pdf;
import org.keeplit.page.Proof;
import org.keeplit.page.WholeFolder;
import org.keeplit.paper.Papers;
import org.keeplit.procedure.Instance;
import org.keeplit.text.Problems;
import picocli.CommandLine;

/** {@code log blank}: sheets to fill. */
@CommandLine.Command(
        name = "blank",
        description = "Write a blank log sheet for each procedure that must hold: to print, as HTML and PDF, and as CSV and JSON to fill.",
        mixinStandardHelpOptions = true)
final class LogBlankCommand extends PaperCommand<Sheet> {
    @Override
    String noun() {
        return "log sheets";
    }

    @Override
    List<Sheet> workOut(Library library, Limits limits, Watcher watcher, Problems problems) {
        return Papers.sheets(library, limits, watcher, problems);
    }

    @Override
    Instance instance(Sheet one) {
        return one.instance();
    }

    @Override
    String told(Sheet one) {
        return one.instance().words() + ": " + one.lines().size() + (one.lines().size() == 1 ? " step. " : " steps. ") + one.proof().words();
    }

    @Override
    Proof proof(Sheet one) {
        return one.proof();
    }

    @Override
    Map<String, byte[]> pages(Sheet one, LocalDate date, Consumer<String> told) {
        Map<String, byte[]> all = new LinkedHashMap<>();
        String page = SheetPage.of(one, date);
        all.put("log.html", WholeFolder.bytes(page));
        all.put("log.pdf", Pdf.of(page, date));
        all.put("log.csv", WholeFolder.bytes(SheetPage.csv(one)));
        all.put("log.json", WholeFolder.bytes(SheetPage.json(one)));
        return all;
    }
}
