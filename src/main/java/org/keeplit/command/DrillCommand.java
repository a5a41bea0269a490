package org.keeplit.command;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.keeplit.drill.Drill;
import org.keeplit.drill.DrillPage;
import org.keeplit.drill.TerminalDrill;
import org.keeplit.language.Library;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Watcher;
import org.keeplit.page.Proof;
import org.keeplit.page.WholeFolder;
import org.keeplit.paper.Papers;
import org.keeplit.procedure.Instance;
import org.keeplit.text.Problems;
import picocli.CommandLine;

/** {@code drill}: lets people choose the next step, and shows what comes of it. */
@CommandLine.Command(
        name = "drill",
        description = "Write a drill for each procedure that holds, with the trainer's answers: pick the next step, see what comes of it."
                + " Or run one here, with --terminal.",
        mixinStandardHelpOptions = true)
final class DrillCommand extends PaperCommand<Drill> {
    @CommandLine.Option(names = "--terminal", description = "run the drill of the first procedure here, and write nothing")
    private boolean terminal;

    @CommandLine.Option(names = "--hints", description = "at a terminal, show hints from the start")
    private boolean hints;

    @Override
    public Integer call() {
        if (!terminal) {
            return super.call();
        }
        List<Drill> drills = made();
        if (drills == null) {
            return refused();
        }
        PrintWriter out = spec().commandLine().getOut();
        if (drills.isEmpty() || drills.get(0).places().isEmpty()) {
            out.println(drills.isEmpty() ? "There is no procedure here to drill." : told(drills.get(0)));
            out.flush();
            return drills.isEmpty() ? ExitCode.PROVED : code(drills);
        }
        try {
            // What is typed belongs to the terminal, not to this program: it is not closed.
            new TerminalDrill(drills.get(0), new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8)), out, hints).run();
        } catch (IOException e) {
            throw new CommandLine.ParameterException(spec().commandLine(), "what is typed cannot be read: " + e.getMessage());
        }
        return ExitCode.PROVED;
    }

    @Override
    String noun() {
        return "drills";
    }

    @Override
    List<Drill> workOut(Library library, Limits limits, Watcher watcher, Problems problems) {
        return Papers.drill(library, limits, watcher, problems);
    }

    @Override
    Instance instance(Drill one) {
        return one.instance();
    }

    @Override
    String told(Drill one) {
        return one.instance().words() + ": " + (one.places().isEmpty()
                ? "no drill. " + one.proof().words()
                : one.asked() + " places at which something is asked.");
    }

    @Override
    Proof proof(Drill one) {
        return one.proof();
    }

    @Override
    Map<String, byte[]> pages(Drill one, LocalDate date, Consumer<String> told) {
        Map<String, byte[]> all = new LinkedHashMap<>();
        if (!one.places().isEmpty()) {
            all.put("drill.html", WholeFolder.bytes(DrillPage.of(one, date)));
            all.put("answers.html", WholeFolder.bytes(DrillPage.answers(one, date)));
        }
        return all;
    }
}
