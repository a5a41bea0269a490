package org.keeplit.command;

import java.io.PrintWriter;
import java.util.List;
import org.keeplit.language.Library;
import org.keeplit.text.Problem;
import org.keeplit.text.ProblemPrinter;
import org.keeplit.text.Problems;
import picocli.CommandLine;

/** What a command collects of mistakes in files, and how it tells them. */
final class Mistakes {
    private Mistakes() {}

    /** {@return a collection to which a run adds, with what reading found} @param library what was read */
    static Problems of(Library library) {
        Problems problems = new Problems();
        library.problems().forEach(problems::add);
        return problems;
    }

    /** Prints problems beside the answer; of none, nothing. @param spec the command @param problems in their order */
    static void tell(CommandLine.Model.CommandSpec spec, List<Problem> problems) {
        PrintWriter err = spec.commandLine().getErr();
        err.print(ProblemPrinter.print(problems));
        err.flush();
    }
}
