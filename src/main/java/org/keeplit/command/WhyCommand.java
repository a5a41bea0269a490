package org.keeplit.command;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.keeplit.Keeplit;
import org.keeplit.exchange.Answer;
import org.keeplit.language.FreeNames;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.network.Conductor;
import org.keeplit.outcome.Limits;
import org.keeplit.procedure.Procedure;
import org.keeplit.text.Problems;
import picocli.CommandLine;

/** {@code why RULE at STEP in PROCEDURE}: a rule with every value, before a step and after it. */
@CommandLine.Command(
        name = "why",
        description = "Explain a rule before and after a step of a procedure: why RULE at STEP in PROCEDURE.",
        mixinStandardHelpOptions = true)
final class WhyCommand implements Callable<Integer> {
    private static final String FORM = "such a question reads: why RULE at STEP [on phase B] in PROCEDURE [FILES]";

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    @CommandLine.Parameters(
            arity = "1..*",
            paramLabel = "RULE at STEP [on phase B] in PROCEDURE [FILES]",
            description = "the step by its label; the procedure is looked for in the files, or in the folder procedures")
    private List<String> words;

    @CommandLine.Mixin
    private Form form;

    @Override
    public Integer call() {
        List<String> left = new ArrayList<>(words);
        String rule = left.remove(0);
        expect(left, "at");
        String step = next(left, "a step");
        Optional<Conductor> phase = Optional.empty();
        if (!left.isEmpty() && left.get(0).equals("on")) {
            left.remove(0);
            if (!left.isEmpty() && left.get(0).equals("phase")) {
                left.remove(0);
            }
            phase = Optional.of(phase(next(left, "a phase")));
        }
        expect(left, "in");
        String procedure = next(left, "a procedure");
        if (form.isCases()) {
            throw wrong("an explanation is told as text or json", Optional.empty());
        }
        List<Path> files = form.files(left.stream().map(Path::of).toList());
        Library library = new Reader().read(files.isEmpty() ? usual() : files);
        if (library.hasErrors()) {
            Mistakes.tell(spec, library.problems());
            form.tell(spec, new Answer.Whys(List.of()), library.mistaken(), library.problems(), false, "");
            return ExitCode.MISTAKES;
        }
        Procedure asked = library.judged(procedure).orElse(null);
        if (asked == null) {
            throw wrong("there is no procedure " + procedure, FreeNames.didYouMean(procedure, library.procedures().keySet()));
        }
        List<String> rules = asked.keeps().stream()
                .flatMap(book -> book.rules().stream())
                .map(r -> r.name())
                .toList();
        if (!rules.contains(rule)) {
            throw wrong(procedure + " keeps no rule " + rule, FreeNames.didYouMean(rule, rules));
        }
        return answer(library, asked, rule, step, phase);
    }

    private int answer(Library library, Procedure asked, String rule, String step, Optional<Conductor> phase) {
        Problems problems = new Problems();
        Progress progress = new Progress(false);
        List<Keeplit.At> all = Keeplit.why(library, asked, rule, step, phase, Limits.USUAL, progress, problems);
        progress.clear();
        Mistakes.tell(spec, problems.sorted());
        if (problems.hasErrors()) {
            return ExitCode.of(problems).getAsInt();
        }
        if (all.isEmpty()) {
            throw wrong("no way through " + asked.name() + " comes to a step " + step, Optional.empty());
        }
        List<Answer.At> told = all.stream().map(at -> new Answer.At(at.place(), at.found())).toList();
        form.tell(spec, new Answer.Whys(told), List.of(), problems.sorted(), false, "");
        return ExitCode.PROVED;
    }

    private static List<Path> usual() {
        List<Path> all = Stream.of("procedures", "shared").map(Path::of).filter(Files::isDirectory).toList();
        return all.isEmpty() ? List.of(Path.of(".")) : all;
    }

    private void expect(List<String> left, String word) {
        if (left.isEmpty() || !left.remove(0).equals(word)) {
            throw wrong("“" + word + "” is missing", Optional.of(FORM));
        }
    }

    private String next(List<String> left, String what) {
        if (left.isEmpty()) {
            throw wrong(what + " is missing", Optional.of(FORM));
        }
        return left.remove(0);
    }

    private Conductor phase(String letter) {
        for (Conductor conductor : Conductor.values()) {
            if (conductor.name().equals(letter)) {
                return conductor;
            }
        }
        throw wrong("there is no phase " + letter, Optional.of("phases are A, B and C"));
    }

    private CommandLine.ParameterException wrong(String text, Optional<String> help) {
        return new CommandLine.ParameterException(spec.commandLine(), text + help.map(h -> "; " + h).orElse(""));
    }
}
