package org.keeplit.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.keeplit.language.FreeNames;
import org.keeplit.language.Library;
import org.keeplit.rule.Rulebook;
import picocli.CommandLine;

/** {@code new rule} and {@code new procedure}: files to begin with, which pass as they are written. */
@CommandLine.Command(
        name = "new",
        description = "Begin a rule or a procedure, with its examples or its variant.",
        mixinStandardHelpOptions = true)
final class NewCommand implements Runnable {
    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    @Override
    public void run() {
        throw new CommandLine.ParameterException(
                spec.commandLine(), "say what is new: new rule NAME, or new procedure NAME");
    }

    @CommandLine.Command(
            name = "rule",
            description = "Begin a rule, with an example that keeps it and one that breaks it, on a network of their own.",
            mixinStandardHelpOptions = true)
    int rule(
            @CommandLine.Parameters(paramLabel = "NAME", description = "the rule's name") String name,
            @CommandLine.Option(
                            names = "--in",
                            paramLabel = "BOOK",
                            description = "the rulebook at whose end it is written (default: a new one of the same name)")
                    String book,
            @CommandLine.Option(
                            names = "--folder",
                            paramLabel = "DIR",
                            description = "where the files are written (default: beside the rulebook, or here)")
                    Path folder) {
        Scaffold scaffold = begin(name, folder == null ? Path.of(".") : folder);
        scaffold.rulesOf(name).ifPresent(where -> {
            throw wrong("there is already a rule " + name + " in " + where);
        });
        Path rules;
        if (book == null) {
            rules = scaffold.put(List.of("new-rulebook.rules", "new-rule.rules"), name + ".rules", Map.of());
        } else {
            rules = rulebook(scaffold.library(), book);
            scaffold.moveTo(folder == null && rules.getParent() != null ? rules.getParent() : scaffold.folder());
            scaffold.append("new-rule.rules", rules);
        }
        scaffold.put(
                List.of("new-rule.examples", "new.network"),
                name + ".examples",
                Map.of("BOOK", book == null ? name : book));
        return write(scaffold, "keeplit test " + rules);
    }

    @CommandLine.Command(
            name = "procedure",
            description = "Begin a procedure, with a variant that must fail, on a network of its own.",
            mixinStandardHelpOptions = true)
    int procedure(
            @CommandLine.Parameters(paramLabel = "NAME", description = "the procedure's name") String name,
            @CommandLine.Option(
                            names = "--folder",
                            paramLabel = "DIR",
                            description = "where the files are written (default: here)",
                            defaultValue = ".")
                    Path folder) {
        Scaffold scaffold = begin(name, folder);
        if (scaffold.library().procedures().containsKey(name)) {
            throw wrong("there is already a procedure " + name);
        }
        boolean kept = scaffold.library().rulebooks().containsKey("no-interruption");
        Path file = scaffold.put(
                List.of("new.procedure", "new.network"),
                name + ".procedure",
                Map.of(
                        "KEEPS", "keeps  " + (kept ? "no-interruption" : name + "-rules") + "\n",
                        "FAILS", kept ? "open-only-what-is-bypassed" : "requirement"));
        if (!kept) {
            // A procedure that keeps no rulebook proves nothing.
            scaffold.put(List.of("new-procedure.rules"), name + ".rules", Map.of());
        }
        return write(scaffold, "keeplit check " + (kept ? "" : scaffold.folder().resolve(name + ".rules") + " ") + file);
    }

    private Scaffold begin(String name, Path folder) {
        FreeNames.mistake(name).ifPresent(text -> {
            throw wrong(text);
        });
        Scaffold scaffold = new Scaffold(name, folder);
        if (scaffold.equipment().isEmpty()) {
            throw wrong("no equipment in reach has the kinds source, breaker, recloser, load and bypass-jumper, with which a new"
                    + " file begins; give it a folder shared with equipment");
        }
        return scaffold;
    }

    private Path rulebook(Library library, String book) {
        Rulebook found = library.rulebooks().get(book);
        if (found == null) {
            Optional<String> near = FreeNames.didYouMean(book, library.rulebooks().keySet());
            throw wrong("there is no rulebook " + book + near.map(n -> "; " + n).orElse(""));
        }
        return Path.of(found.span().source().name());
    }

    private int write(Scaffold scaffold, String next) {
        Optional<Path> there = scaffold.existing();
        if (there.isPresent()) {
            throw new Refused(there.get() + " is there already, and nothing is overwritten");
        }
        PrintWriter out = spec.commandLine().getOut();
        scaffold.write().forEach(path -> out.println("wrote " + path));
        out.println("Next: " + next);
        out.flush();
        return ExitCode.PROVED;
    }

    private CommandLine.ParameterException wrong(String text) {
        return new CommandLine.ParameterException(spec.commandLine(), text);
    }
}
