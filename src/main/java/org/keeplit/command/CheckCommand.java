package org.keeplit.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.keeplit.Keeplit;
import org.keeplit.exchange.Answer;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.outcome.Limits;
import org.keeplit.page.WholeFolder;
import org.keeplit.procedure.Unjudged;
import org.keeplit.text.Problems;
import org.keeplit.verdict.Judgement;
import picocli.CommandLine;

/** {@code check}: proves procedures on the networks that they name. */
@CommandLine.Command(
        name = "check",
        description = "Prove procedures: explore every order that the crew may follow and show the shortest way to harm.",
        mixinStandardHelpOptions = true)
final class CheckCommand implements Callable<Integer> {
    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    @CommandLine.Parameters(arity = "1..*", paramLabel = "FILE", description = "files, or folders with files")
    private List<Path> files;

    @CommandLine.Option(names = "--strict", description = "a caution counts as broken (exit code 1), and so does a rule whose case never came up (exit code 5)")
    private boolean strict;

    @CommandLine.Option(
            names = "--why",
            description = "explain every rule in full: each part with its value, its witnesses, figures and paths")
    private boolean why;

    @CommandLine.Option(
            names = "--max-states",
            converter = AtLeast.One.class,
            paramLabel = "N",
            description = "end as undecided after N states for a check (default: ${DEFAULT-VALUE})",
            defaultValue = "20000000")
    private int maxStates;

    @CommandLine.Option(
            names = "--max-seconds",
            converter = AtLeast.Nothing.class,
            paramLabel = "S",
            description = "end as undecided after S seconds for a check (default: ${DEFAULT-VALUE})",
            defaultValue = "600")
    private int maxSeconds;

    @CommandLine.Option(
            names = "--max-memory",
            converter = AtLeast.One.class,
            paramLabel = "MIB",
            description = "end as undecided when the states of a check take more than this many MiB (default: ${DEFAULT-VALUE})",
            defaultValue = "1024")
    private int maxMemory;

    @CommandLine.Option(
            names = "--events",
            converter = AtLeast.Nothing.class,
            paramLabel = "K",
            description = "let at most K of the events happen that rules name with “even if” (default: ${DEFAULT-VALUE})",
            defaultValue = "1")
    private int events;

    @CommandLine.Option(
            names = "--threads",
            converter = AtLeast.One.class,
            paramLabel = "N",
            description = "do N checks at a time (default: as many as there are processors)")
    private int threads = Runtime.getRuntime().availableProcessors();

    @CommandLine.Option(
            names = "--proofs",
            paramLabel = "FOLDER",
            description = "write all states of each procedure that holds, for recheck; the folder must be empty or absent")
    private Path proofs;

    @CommandLine.Mixin
    private Form form;

    @Override
    public Integer call() {
        try (Interrupt interrupt = new Interrupt()) {
            return check(interrupt);
        }
    }

    private int check(Interrupt interrupt) {
        if (proofs != null) {
            PaperCommand.free(spec, proofs);
        }
        Library library = new Reader().read(form.files(files));
        Problems problems = Mistakes.of(library);
        Limits limits = new Limits(maxStates, Duration.ofSeconds(maxSeconds), (long) maxMemory << 20, events);
        Progress progress = new Progress(why, interrupt::isStopped);
        List<Keeplit.Proved> proved =
                proofs == null ? List.of() : Keeplit.prove(library, limits, threads, progress, problems);
        List<Judgement> judgements = proofs == null
                ? Keeplit.check(library, limits, threads, progress, problems)
                : proved.stream().map(Keeplit.Proved::judgement).toList();
        List<Unjudged> unjudged = Keeplit.unjudged(library, judgements);
        progress.clear();
        Mistakes.tell(spec, problems.sorted());
        form.tell(
                spec,
                new Answer.Checks(judgements, strict),
                unjudged,
                problems.sorted(),
                why,
                "There is nothing to check: no procedure here says what it is proved on.");
        if (proofs != null && !problems.hasErrors()) {
            write(proved);
        }
        return ExitCode.of(judgements, unjudged, problems, strict);
    }

    private void write(List<Keeplit.Proved> proved) {
        Map<String, byte[]> pages = new LinkedHashMap<>();
        for (Keeplit.Proved one : proved) {
            one.proof().ifPresent(proof -> {
                String name = WholeFolder.slug(one.judgement().instance().words());
                int same = 2;
                String file = name + ".proof";
                while (pages.containsKey(file)) {
                    file = name + "-" + same++ + ".proof";
                }
                pages.put(file, WholeFolder.bytes(proof.text()));
            });
        }
        PaperCommand.write(spec, proofs, pages);
        if (form.isText()) {
            PrintWriter out = spec.commandLine().getOut();
            out.println(pages.isEmpty() ? "No proof is written: nothing here holds." : "Proofs in " + proofs + ": " + String.join(", ", pages.keySet()));
            out.flush();
        }
    }
}
