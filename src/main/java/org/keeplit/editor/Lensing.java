package org.keeplit.editor;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.lsp4j.CodeLens;
import org.eclipse.lsp4j.Command;
import org.keeplit.language.Sketch;
import org.keeplit.verdict.Judgement;
import org.keeplit.verdict.Style;
import org.keeplit.verdict.TextReport;

/** Above each procedure what its proof came to; its story is a click away. */
final class Lensing {
    /** The command that shows the story of a procedure: the page's reference and the procedure's name. */
    static final String STORY = "keeplit.story";

    private Lensing() {}

    static List<CodeLens> of(Page page, Proved proved) {
        List<CodeLens> all = new ArrayList<>();
        for (Sketch.Row row : page.sketch().rows()) {
            boolean head = Folding.isHead(row) && (row.starts("procedure") || row.starts("variant")) && row.tokens().size() > 1;
            if (head) {
                String name = row.tokens().get(1).name();
                Command command = new Command(title(page, name, proved), STORY, List.of(page.uri(), name));
                all.add(new CodeLens(Places.range(row.tokens().get(1).span()), command, null));
            }
        }
        return all;
    }

    private static String title(Page page, String name, Proved proved) {
        if (page.library().judged(name).isEmpty()) {
            return "not judged: the file has mistakes, or one that it reads has";
        } else if (page.library().judged(name).get().proofs().isEmpty()) {
            return "not proved: it does not say on which network";
        }
        List<Proved.Verdict> verdicts = proved.version() == page.version() ? proved.of(name) : List.of();
        if (verdicts.isEmpty()) {
            return proved.version() == page.version() && proved.done() ? "not proved: it does not fit its network" : "being proved …";
        }
        for (Judgement.Status worst : List.of(Judgement.Status.BROKEN, Judgement.Status.UNDECIDED, Judgement.Status.NOT_PROVED)) {
            if (verdicts.stream().anyMatch(v -> v.judgement().status() == worst)) {
                return switch (worst) {
                    case BROKEN -> "broken: show the story";
                    case UNDECIDED -> "undecided: show why";
                    default -> "not proved: no rule that stops came up";
                };
            }
        }
        int states = verdicts.stream().mapToInt(v -> v.judgement().outcome().states()).sum();
        boolean must = verdicts.get(0).judgement().status() == Judgement.Status.FAILS_AS_STATED;
        return (must ? "fails as it must" : "proved") + " in " + states + " states";
    }

    /** {@return what is told of a procedure} @param name its name */
    static String story(Proved proved, String name) {
        List<Judgement> all = proved.of(name).stream().map(Proved.Verdict::judgement).toList();
        return all.isEmpty() ? name + " is not proved yet.\n" : new TextReport(Style.PLAIN).tell(all);
    }
}
