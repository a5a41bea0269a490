package org.keeplit.command;

import com.google.common.collect.ImmutableMap;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.keeplit.exchange.Answer;
import org.keeplit.gridfile.GridImport;
import org.keeplit.gridfile.Imported;
import org.keeplit.language.FreeNames;
import org.keeplit.language.Reader;
import org.keeplit.network.Equipment;
import org.keeplit.page.WholeFile;
import org.keeplit.text.Problem;
import picocli.CommandLine;

/** {@code import}: a network text from the grid files of other programs. */
@CommandLine.Command(
        name = "import",
        description = "Make a network text of a distribution model (IEC 61970 CIM100, RDF/XML), and list everything that could not be carried.",
        mixinStandardHelpOptions = true)
final class ImportCommand implements Callable<Integer> {
    private static final String ENDING = ".network";

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    @CommandLine.Parameters(arity = "1..*", paramLabel = "FILE", description = "all files of one model")
    private List<Path> files;

    @CommandLine.Option(names = "--out", required = true, paramLabel = "FILE", description = "the network file to write; it gives the network its name, and may not be there")
    private Path out;

    @CommandLine.Option(
            names = "--equipment",
            paramLabel = "NAME",
            description = "the equipment list that the network uses, looked for from where it is written (default: ${DEFAULT-VALUE})",
            defaultValue = "overhead")
    private String equipment;

    @CommandLine.Option(names = "--kind", paramLabel = "CLASS=KIND", description = "the kind of equipment that a class becomes, where it is not the usual one; may be said several times")
    private Map<String, String> kinds = new LinkedHashMap<>();

    @CommandLine.Option(names = "--frequency", paramLabel = "HZ", description = "the frequency, which such files do not state (default: ${DEFAULT-VALUE})", defaultValue = "60")
    private double hertz;

    @CommandLine.Option(names = "--strict", description = "exit code 1 if anything that carries current or serves customers is not carried")
    private boolean strict;

    @CommandLine.Option(names = "--full", description = "name every object, however many share a reason")
    private boolean full;

    @CommandLine.Mixin
    private Form form;

    @Override
    public Integer call() {
        if (form.isCases()) {
            throw wrong("what was carried is told as text or json");
        }
        String name = name();
        if (Files.exists(out)) {
            throw new Refused(out + " is there already, and nothing is overwritten");
        }
        if (!(hertz > 0 && hertz <= 1000)) {
            throw wrong("a frequency is above zero, such as --frequency=50");
        }
        Equipment list = equipment();
        kinds.forEach((type, kind) -> GridImport.mistake(list, type, kind).ifPresent(text -> {
            throw wrong(text);
        }));
        Imported made = GridImport.read(form.files(files), new GridImport.Options(name, list, ImmutableMap.copyOf(kinds), hertz));
        List<Problem> problems = new ArrayList<>(made.problems());
        if (problems.isEmpty()) {
            // What the file says may be something that no network text can: that is told where it would stand.
            new Reader().read(List.of(out), Map.of(out.toAbsolutePath().normalize(), made.text())).problems().forEach(problems::add);
        }
        Mistakes.tell(spec, problems);
        boolean mistakes = problems.stream().anyMatch(p -> p.severity() == Problem.Severity.ERROR);
        if (!mistakes) {
            write(made.text());
        }
        if (!mistakes || !form.isText()) {
            form.tell(spec, new Answer.Imports(List.of(made)), List.of(), problems, full, "");
        }
        if (mistakes) {
            return ExitCode.MISTAKES;
        }
        return strict && made.listing().lacksEquipment() ? ExitCode.BROKEN : ExitCode.PROVED;
    }

    private String name() {
        String file = out.getFileName() == null ? "" : out.getFileName().toString();
        if (!file.endsWith(ENDING) || file.length() == ENDING.length()) {
            throw wrong(out + " does not end in " + ENDING + "; a network is written, such as --out=valley" + ENDING);
        }
        String name = file.substring(0, file.length() - ENDING.length());
        FreeNames.mistake(name).ifPresent(text -> {
            throw wrong("the file gives the network its name, and " + text);
        });
        return name;
    }

    /** {@return the equipment list, found as the network that is to be written will find it} */
    private Equipment equipment() {
        String begun = "language 1\nnetwork begun\nuses " + equipment + "\n";
        var found = new Reader().read(List.of(out), Map.of(out.toAbsolutePath().normalize(), begun)).equipment();
        if (!found.containsKey(equipment)) {
            String near = FreeNames.didYouMean(equipment, found.keySet()).map(n -> "; " + n).orElse("");
            throw wrong("there is no equipment list " + equipment + " in the folder shared nearest to " + out + near
                    + "; name one with --equipment, or write into a folder that has one above it");
        }
        return found.get(equipment);
    }

    private void write(String text) {
        try {
            WholeFile.write(out, text);
        } catch (FileAlreadyExistsException e) {
            throw new Refused(out + " is there already, and nothing is overwritten");
        } catch (IOException e) {
            throw Refused.unwritten(out, e);
        }
    }

    private CommandLine.ParameterException wrong(String text) {
        return new CommandLine.ParameterException(spec.commandLine(), text);
    }
}
