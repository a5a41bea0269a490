package org.keeplit.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.keeplit.language.Formatter;
import org.keeplit.language.Reader;
import org.keeplit.page.WholeFile;
import org.keeplit.text.Problems;
import org.keeplit.text.Source;
import picocli.CommandLine;

/** {@code format}: files in their one canonical form. */
@CommandLine.Command(
        name = "format",
        description = "Write files in their one canonical form: lines set in, one space between words, columns below one another."
                + " Words, comments and line ends stay.",
        mixinStandardHelpOptions = true)
final class FormatCommand implements Callable<Integer> {
    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    @CommandLine.Parameters(arity = "1..*", paramLabel = "FILE", description = "files, or folders with files")
    private List<Path> files;

    @CommandLine.Option(names = "--check", description = "write nothing; name the files that are not so, with exit code 1")
    private boolean check;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        Problems problems = new Problems();
        List<Source> other = new ArrayList<>();
        List<Source> texts = new Reader().texts(files, problems);
        for (Source file : texts) {
            Formatter.Formatted formatted = Formatter.format(file);
            formatted.problems().forEach(problems::add);
            formatted.text().filter(t -> !t.equals(file.content())).ifPresent(t -> other.add(new Source(file.name(), t)));
        }
        for (Source file : other) {
            if (!check) {
                put(file);
            }
            out.println((check ? "is not in its canonical form: " : "written: ") + file.name());
        }
        Mistakes.tell(spec, problems.sorted());
        out.println(texts.size() + (texts.size() == 1 ? " file, " : " files, ") + other.size()
                + (check ? " to be written anew" : " written anew"));
        out.flush();
        if (problems.hasErrors()) {
            return ExitCode.MISTAKES;
        }
        return check && !other.isEmpty() ? ExitCode.BROKEN : ExitCode.PROVED;
    }

    private static void put(Source file) {
        try {
            WholeFile.replace(Path.of(file.name()), file.content());
        } catch (IOException e) {
            throw new Refused(file.name() + " cannot be written, and stays as it was: " + Refused.reason(e));
        }
    }
}
