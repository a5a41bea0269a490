package org.keeplit.editor;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.eclipse.lsp4j.InlayHint;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.keeplit.insight.AsWritten;
import org.keeplit.text.Span;

/** Beside each step the state that it leads to, when the steps are done in the order of the text. */
final class Hinting {
    /** How many changes stand beside a step; the rest is in the tooltip. */
    private static final int SHOWN = 2;

    private Hinting() {}

    static List<InlayHint> of(Page page, Proved proved, Range asked) {
        if (proved.version() != page.version()) {
            return List.of();
        }
        Map<Integer, Set<String>> byLine = new TreeMap<>();
        for (Proved.Verdict verdict : proved.verdicts()) {
            // One place stands for all: what a step does is the same everywhere.
            boolean first = proved.of(verdict.judgement().procedure().name()).get(0) == verdict;
            boolean must = !verdict.judgement().procedure().mustFail().isEmpty();
            verdict.written().filter(w -> first && !must).ifPresent(w -> w.steps().forEach(done -> add(done, page, byLine)));
        }
        List<InlayHint> all = new ArrayList<>();
        byLine.forEach((line, changes) -> {
            if (line - 1 >= asked.getStart().getLine() && line - 1 <= asked.getEnd().getLine() && !changes.isEmpty()) {
                all.add(hint(page, line, new ArrayList<>(changes)));
            }
        });
        return all;
    }

    private static void add(AsWritten.Done done, Page page, Map<Integer, Set<String>> byLine) {
        Span span = done.part().acts().get(0).step().span();
        if (span.source().name().equals(page.name())) {
            byLine.computeIfAbsent(span.line(), l -> new LinkedHashSet<>()).addAll(done.changes());
        }
    }

    private static InlayHint hint(Page page, int line, List<String> changes) {
        String text = page.sketch().source().line(line);
        String shown = String.join(", ", changes.subList(0, Math.min(SHOWN, changes.size())));
        String more = changes.size() > SHOWN ? " and " + (changes.size() - SHOWN) + " more" : "";
        InlayHint hint = new InlayHint(new Position(line - 1, text.stripTrailing().length()), Either.forLeft("→ " + shown + more));
        hint.setPaddingLeft(true);
        hint.setTooltip(String.join("\n", changes));
        return hint;
    }
}
