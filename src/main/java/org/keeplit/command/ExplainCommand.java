package org.keeplit.command;

import com.google.common.collect.ImmutableMap;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.keeplit.language.FreeNames;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.text.Problems;
import org.keeplit.verdict.RulePage;
import org.keeplit.verdict.RulePageReport;
import picocli.CommandLine;

/** {@code explain}: the page of a rule or of a problem's code. */
@CommandLine.Command(
        name = "explain",
        description = "Explain a rule, with an example that keeps it and one that breaks it; or the code of a problem.",
        mixinStandardHelpOptions = true)
final class ExplainCommand implements Callable<Integer> {
    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    @CommandLine.Parameters(index = "0", paramLabel = "NAME", description = "a rule, RULEBOOK/RULE, or a problem's code")
    private String name;

    @CommandLine.Parameters(
            index = "1..*",
            paramLabel = "FILE",
            description = "rulebooks besides those of the folder shared; of procedures it is told what comes of the rule")
    private List<Path> files;

    @CommandLine.Mixin
    private Colors colors;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        ImmutableMap<String, String> codes = Form.pages();
        if (codes.containsKey(name)) {
            out.println(name);
            out.println();
            out.print(codes.get(name));
            out.flush();
            return ExitCode.PROVED;
        }
        Library library = new Reader().readWithExamples(places());
        if (library.hasErrors()) {
            Mistakes.tell(spec, library.problems());
            return ExitCode.MISTAKES;
        }
        Problems problems = new Problems();
        List<RulePage> pages = RulePages.of(library, name, new Progress(false), problems);
        if (pages.isEmpty()) {
            throw new CommandLine.ParameterException(spec.commandLine(), unknown(library, codes));
        }
        Mistakes.tell(spec, problems.sorted());
        String between = "";
        for (RulePage page : pages) {
            out.print(between + new RulePageReport(colors.style()).tell(page));
            between = "\n";
        }
        out.flush();
        return problems.hasErrors() ? ExitCode.MISTAKES : ExitCode.PROVED;
    }

    /** {@return the files with the library near each; a rulebook that is read by its name alone has no examples} */
    private List<Path> places() {
        List<Path> all = new ArrayList<>(Nearby.usual(files));
        Nearby.usual(files).stream().flatMap(f -> Nearby.shared(f).stream()).distinct().forEach(all::add);
        return all;
    }

    private String unknown(Library library, ImmutableMap<String, String> codes) {
        List<String> names = new ArrayList<>();
        library.rulebooks().values().forEach(book -> book.rules().forEach(rule -> names.add(rule.name())));
        names.addAll(codes.keySet());
        Optional<String> near = FreeNames.didYouMean(name, names);
        return "there is no rule and no code " + name + near.map(n -> "; " + n).orElse("");
    }
}
