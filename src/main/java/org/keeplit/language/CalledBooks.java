package org.keeplit.language;

import java.util.List;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Edit;
import org.keeplit.procedure.Procedure;
import org.keeplit.rule.Rulebook;
import org.keeplit.text.Span;

/** Adds the rulebooks of called procedures to those of their caller: they are kept for the whole run. */
final class CalledBooks {
    private final Header header;
    private final Report report;

    CalledBooks(Header header, Report report) {
        this.header = header;
        this.report = report;
    }

    void of(List<Block> body, List<Edit> edits) {
        body.forEach(this::of);
        for (Edit edit : edits) {
            if (edit instanceof Edit.Replace replace) {
                replace.blocks().forEach(this::of);
            } else if (edit instanceof Edit.Insert insert) {
                insert.blocks().forEach(this::of);
            }
        }
    }

    private void of(Block block) {
        if (block instanceof Block.Call call) {
            // Those that it calls itself were added to its own when it was read.
            for (Rulebook book : call.procedure().keeps()) {
                report.attempt(() -> header.keep(book, call.span(), "called " + call.procedure().name() + " keeps "));
            }
        } else if (block instanceof Block.Group group) {
            group.parts().forEach(this::of);
        } else if (block instanceof Block.Stage stage) {
            stage.parts().forEach(this::of);
        } else if (block instanceof Block.ForEachPhase each) {
            each.parts().forEach(this::of);
        } else if (block instanceof Block.Repeat repeat) {
            repeat.parts().forEach(this::of);
        } else if (block instanceof Block.IfFound choice) {
            choice.then().forEach(this::of);
            choice.otherwise().forEach(this::of);
        }
    }
}
