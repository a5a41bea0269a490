package org.keeplit.command;

import com.google.common.collect.ImmutableMap;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeMap;
import org.keeplit.exchange.Answer;
import org.keeplit.exchange.JsonReporter;
import org.keeplit.exchange.JunitReporter;
import org.keeplit.exchange.Reporter;
import org.keeplit.exchange.SarifReporter;
import org.keeplit.exchange.TextReporter;
import org.keeplit.explore.Explored;
import org.keeplit.gridfile.GridImport;
import org.keeplit.language.Explanations;
import org.keeplit.procedure.Unjudged;
import org.keeplit.recheck.ProofReader;
import org.keeplit.text.Pages;
import org.keeplit.text.Problem;
import picocli.CommandLine;

/** In which form a command tells its answer; the same choice on all commands. */
final class Form {
    /** The choices on the command line. */
    enum Format {
        /** For people. */
        text,
        /** By the schemas that {@code keeplit schema} prints. */
        json,
        /** SARIF 2.1.0. */
        sarif,
        /** JUnit XML. */
        junit
    }

    @CommandLine.Option(
            names = "--format",
            paramLabel = "FORMAT",
            description = "what is written: ${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}); keeplit schema prints the schemas of json",
            defaultValue = "text")
    private Format format;

    @CommandLine.Mixin
    private Colors colors;

    boolean isText() {
        return format == Format.text;
    }

    boolean isCases() {
        return format == Format.sarif || format == Format.junit;
    }

    /** {@return the files as they are to be read: other programs get no absolute paths} */
    List<Path> files(List<Path> given) {
        Path here = Path.of("").toAbsolutePath();
        return isText() ? given : given.stream().map(f -> f.isAbsolute() ? relative(here, f) : f).toList();
    }

    private static Path relative(Path here, Path file) {
        boolean same = here.getRoot().equals(file.getRoot());
        Path relative = same ? here.relativize(file.normalize()) : file;
        return relative.toString().isEmpty() ? Path.of(".") : relative;
    }

    /**
     * Writes an answer.
     *
     * @param spec the command
     * @param answer the answer
     * @param unjudged the procedures and examples of which nothing is claimed
     * @param problems what is wrong with the files
     * @param full whether text tells everything
     * @param nothing what text says of an empty answer, unless the files have mistakes
     */
    void tell(
            CommandLine.Model.CommandSpec spec,
            Answer answer,
            List<Unjudged> unjudged,
            List<Problem> problems,
            boolean full,
            String nothing) {
        var out = spec.commandLine().getOut();
        boolean mistakes = problems.stream().anyMatch(p -> p.severity() == Problem.Severity.ERROR);
        if (!isText() || !answer.isEmpty() || !unjudged.isEmpty()) {
            out.print(reporter(full).tell(answer, unjudged, problems));
        } else if (!mistakes) {
            out.println(nothing);
        }
        out.flush();
    }

    private Reporter reporter(boolean full) {
        return switch (format) {
            case text -> new TextReporter(colors.style(), full);
            case json -> new JsonReporter();
            case sarif -> new SarifReporter(pages());
            case junit -> new JunitReporter();
        };
    }

    /** {@return the pages of all codes of problems} */
    static ImmutableMap<String, String> pages() {
        TreeMap<String, String> all = new TreeMap<>(Pages.of(Explored.class));
        all.putAll(Explanations.pages());
        all.putAll(Pages.of(GridImport.class));
        all.putAll(Pages.of(ProofReader.class));
        return ImmutableMap.copyOf(all);
    }
}
