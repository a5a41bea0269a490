package org.keeplit.command;

import com.google.common.collect.ImmutableMap;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.keeplit.Keeplit;
import org.keeplit.card.CardPages;
import org.keeplit.card.CardSet;
import org.keeplit.card.Paper;
import org.keeplit.explore.Limits;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.page.Proof;
import org.keeplit.page.WholeFolder;
import org.keeplit.text.Problems;
import picocli.CommandLine;

/** {@code cards}: paper for the crew. */
@CommandLine.Command(
        name = "cards",
        description = "Write step cards for the crew, for each role and for the desk, with a briefing first, as pages to print.",
        mixinStandardHelpOptions = true)
final class CardsCommand implements Callable<Integer> {
    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    @CommandLine.Parameters(arity = "1..*", paramLabel = "FILE", description = "files, or folders with files")
    private List<Path> files;

    @CommandLine.Option(names = "--out", required = true, paramLabel = "FOLDER", description = "the folder to write; nothing may be in it")
    private Path folder;

    @CommandLine.Option(
            names = "--date",
            required = true,
            paramLabel = "DATE",
            description = "the date that stands on every sheet, such as 2026-03-02")
    private LocalDate date;

    @CommandLine.Option(
            names = "--paper",
            paramLabel = "PAPER",
            converter = PaperReader.class,
            description = "a5 or half-letter (default: ${DEFAULT-VALUE})",
            defaultValue = "a5")
    private Paper paper;

    @CommandLine.Option(
            names = "--max-states",
            paramLabel = "N",
            description = "look at N states of a procedure at most (default: ${DEFAULT-VALUE})",
            defaultValue = "200000")
    private int maxStates;

    /** Reads the name of a paper. */
    static final class PaperReader implements CommandLine.ITypeConverter<Paper> {
        @Override
        public Paper convert(String value) {
            return switch (value) {
                case "a5" -> Paper.A5;
                case "half-letter" -> Paper.HALF_LETTER;
                default -> throw new CommandLine.TypeConversionException("there is no paper “" + value + "”; say a5 or half-letter");
            };
        }
    }

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        Library library = new Reader().read(files);
        Problems problems = Mistakes.of(library);
        Progress progress = new Progress(false);
        List<CardSet> sets =
                Keeplit.cards(library, new Limits(maxStates, Duration.ofMinutes(10), Limits.USUAL.bytes()), progress, problems);
        progress.clear();
        Mistakes.tell(spec, problems.sorted());
        if (problems.hasErrors()) {
            return ExitCode.MISTAKES;
        }
        if (sets.isEmpty()) {
            out.println("There are no cards to write: no procedure here that must hold says what it is proved on.");
            out.flush();
            return ExitCode.PROVED;
        }
        try {
            WholeFolder.write(folder, pages(sets));
        } catch (FileAlreadyExistsException there) {
            throw new CommandLine.ParameterException(
                    spec.commandLine(), "there is something in " + folder + " already, and nothing is overwritten; name a new folder");
        } catch (IOException e) {
            throw new CommandLine.ParameterException(spec.commandLine(), folder + " cannot be written: " + e.getMessage());
        }
        sets.forEach(set -> out.println(set.instance().words() + ": " + set.steps().size() + " steps. " + set.proof().words()));
        out.flush();
        return sets.stream().anyMatch(s -> s.proof() == Proof.BROKEN)
                ? ExitCode.BROKEN
                : sets.stream().anyMatch(s -> s.proof() == Proof.UNDECIDED) ? ExitCode.UNDECIDED : ExitCode.PROVED;
    }

    private ImmutableMap<String, String> pages(List<CardSet> sets) {
        Map<String, String> all = new LinkedHashMap<>();
        for (CardSet set : sets) {
            String name = WholeFolder.slug(set.instance().words());
            String under = name;
            for (int i = 2; all.containsKey(under + "/crew.html"); i++) {
                under = name + "-" + i;
            }
            String place = under;
            CardPages.of(set, date, paper).forEach((file, page) -> all.put(place + "/" + file, page));
        }
        return ImmutableMap.copyOf(all);
    }
}
