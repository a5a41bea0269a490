package org.keeplit.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.log.LogCheck;
import org.keeplit.paper.Papers;
import org.keeplit.text.Problems;
import picocli.CommandLine;

/** {@code log check}: a filled log against its procedure. */
@CommandLine.Command(
        name = "check",
        description = "Check a filled log, CSV or JSON, against its procedure, and tell every difference.",
        mixinStandardHelpOptions = true)
final class LogCheckCommand implements Callable<Integer> {
    private static final int LARGEST = 16 * 1024 * 1024;

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    @CommandLine.Parameters(index = "0", paramLabel = "LOG", description = "the filled log")
    private Path log;

    @CommandLine.Parameters(index = "1..*", arity = "1..*", paramLabel = "FILE", description = "files, or folders with files, the procedure among them")
    private List<Path> files;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        String text = read();
        Library library = new Reader().read(files);
        Problems problems = Mistakes.of(library);
        Optional<LogCheck.Checked> checked = Papers.checkLog(library, text, problems);
        Mistakes.tell(spec, problems.sorted());
        if (problems.hasErrors()) {
            return ExitCode.of(problems).getAsInt();
        } else if (checked.isEmpty()) {
            throw new CommandLine.ParameterException(spec.commandLine(), LogCheck.job(text)
                    .map(job -> "no procedure among the files is “" + job + "”, as " + log + " says")
                    .orElse(log + " does not say which job it is of, and there is not just one among the files"));
        }
        checked.get().differences().forEach(d -> out.println(log + (d.line() == 0 ? "" : ":" + d.line()) + ": " + d.words()));
        int differences = checked.get().differences().size();
        if (!checked.get().unreadable()) {
            out.println(checked.get().steps() + (checked.get().steps() == 1 ? " step" : " steps") + " written as done. "
                    + (differences == 0 ? "The log is in order." : differences + (differences == 1 ? " difference." : " differences.")));
        }
        out.flush();
        return checked.get().unreadable() ? ExitCode.MISTAKES : differences == 0 ? ExitCode.PROVED : ExitCode.BROKEN;
    }

    private String read() {
        try {
            if (Files.exists(log) && !Files.isRegularFile(log)) {
                throw new Refused(log + " is no regular file, so it is not read");
            } else if (Files.exists(log) && Files.size(log) > LARGEST) {
                throw new Refused(log + " has " + Files.size(log) + " bytes; the largest log that is read has " + LARGEST);
            }
            return Files.readString(log);
        } catch (NoSuchFileException none) {
            throw new CommandLine.ParameterException(spec.commandLine(), "there is no file " + log);
        } catch (CharacterCodingException coded) {
            throw new CommandLine.ParameterException(spec.commandLine(), log + " is not in UTF-8; save it as CSV in UTF-8");
        } catch (IOException e) {
            throw new CommandLine.ParameterException(spec.commandLine(), log + " cannot be read: " + e.getMessage());
        }
    }
}
