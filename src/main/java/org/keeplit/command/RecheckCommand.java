package org.keeplit.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.keeplit.Keeplit;
import org.keeplit.exchange.Answer;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.recheck.ProofFile;
import org.keeplit.recheck.ProofReader;
import org.keeplit.recheck.Rechecked;
import org.keeplit.text.Problem;
import org.keeplit.text.Problems;
import org.keeplit.text.Source;
import org.keeplit.text.Span;
import picocli.CommandLine;

/** {@code recheck}: goes through written proofs with the plain evaluator. */
@CommandLine.Command(
        name = "recheck",
        description = "Re-check written proofs (check --proofs) with a second, slow evaluator that shares nothing with the first: that a proof has every"
                + " state that may come up and no other, and that nothing is broken in any.",
        mixinStandardHelpOptions = true)
final class RecheckCommand implements Callable<Integer> {
    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    @CommandLine.Parameters(arity = "1..*", paramLabel = "PROOF", description = "written proofs, or folders with them")
    private List<Path> proofs;

    @CommandLine.Option(
            names = "--with",
            required = true,
            arity = "1..*",
            paramLabel = "FILE",
            description = "the files, or folders with files, that were proved")
    private List<Path> files;

    @CommandLine.Option(
            names = "--events",
            converter = AtLeast.Nothing.class,
            paramLabel = "K",
            description = "let at most K events happen, as check --events K did (default: ${DEFAULT-VALUE})",
            defaultValue = "1")
    private int events;

    @CommandLine.Option(
            names = "--max-seconds",
            converter = AtLeast.Nothing.class,
            paramLabel = "S",
            description = "end as undecided after S seconds for a proof (default: ${DEFAULT-VALUE})",
            defaultValue = "3600")
    private int maxSeconds;

    @CommandLine.Mixin
    private Form form;

    @Override
    public Integer call() {
        Library library = new Reader().read(form.files(files));
        Problems problems = Mistakes.of(library);
        Map<Path, ProofFile> read = new LinkedHashMap<>();
        for (Path path : form.files(paths())) {
            read(path, problems).ifPresent(proof -> read.put(path, proof));
        }
        Mistakes.tell(spec, problems.sorted());
        List<Answer.OfProof> all = new ArrayList<>();
        if (!library.hasErrors()) {
            read.forEach((path, proof) -> {
                all.add(recheck(path, proof, library));
                if (form.isText()) {
                    // It takes long: each is told when it is done.
                    tell(all.subList(all.size() - 1, all.size()), problems);
                }
            });
        }
        if (!form.isText()) {
            tell(all, problems);
        }
        boolean refused = all.stream().anyMatch(one -> one.came().status() == Rechecked.Status.REFUSED);
        boolean undecided = all.stream().anyMatch(one -> one.came().status() == Rechecked.Status.UNDECIDED);
        return problems.hasErrors() ? ExitCode.MISTAKES : refused ? ExitCode.BROKEN : undecided ? ExitCode.UNDECIDED : ExitCode.PROVED;
    }

    private void tell(List<Answer.OfProof> some, Problems problems) {
        form.tell(spec, new Answer.Rechecks(some), List.of(), problems.sorted(), false, "");
    }

    private List<Path> paths() {
        List<Path> all = new ArrayList<>();
        for (Path path : proofs) {
            if (!Files.isDirectory(path)) {
                all.add(path);
                continue;
            }
            int before = all.size();
            try (Stream<Path> inside = Files.walk(path)) {
                inside.filter(p -> p.toString().endsWith(".proof")).sorted().forEach(all::add);
            } catch (IOException e) {
                throw new CommandLine.ParameterException(spec.commandLine(), path + " cannot be read: " + e.getMessage());
            }
            if (all.size() == before) {
                throw new CommandLine.ParameterException(spec.commandLine(), "there is no proof in " + path + "; check --proofs writes them");
            }
        }
        return all;
    }

    private Optional<ProofFile> read(Path path, Problems problems) {
        try {
            return ProofReader.read(new Source(path.toString(), new String(Files.readAllBytes(path), StandardCharsets.UTF_8)), problems);
        } catch (IOException e) {
            Span whole = Span.ofFile(new Source(path.toString(), ""));
            problems.add(
                    Files.exists(path)
                            ? Problem.error("unreadable", whole, "the file cannot be read")
                            : Problem.error("missing-file", whole, "there is no such file"));
            return Optional.empty();
        }
    }

    private Answer.OfProof recheck(Path path, ProofFile proof, Library library) {
        Progress progress = new Progress(false);
        long began = System.nanoTime();
        Rechecked done = Keeplit.recheck(proof, library, events, Duration.ofSeconds(maxSeconds), (met, written) -> {
            progress.step(String.format(Locale.ROOT, "%s: %,d of %,d states re-checked", proof.head().place(), met, written));
            return !Thread.currentThread().isInterrupted();
        });
        progress.clear();
        // Apart from the answer, which is the same for the same input.
        PrintWriter err = spec.commandLine().getErr();
        err.printf(Locale.ROOT, "re-checked %s in %.1f s%n", path, (System.nanoTime() - began) / 1e9);
        err.flush();
        return new Answer.OfProof(path, proof, done);
    }
}
