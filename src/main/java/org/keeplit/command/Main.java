package org.keeplit.command;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import org.keeplit.text.Versions;
import picocli.CommandLine;

/** The command line's entry point. */
@CommandLine.Command(
        name = "keeplit",
        description = "Proves live-line switching procedures against a model of the feeder.",
        subcommands = {
            CheckCommand.class,
            RecheckCommand.class,
            TestCommand.class,
            ExplainCommand.class,
            WhyCommand.class,
            SlipsCommand.class,
            OrderCommand.class,
            PlanCommand.class,
            MendCommand.class,
            SweepCommand.class,
            RetreatCommand.class,
            CardsCommand.class,
            ReportCommand.class,
            DrillCommand.class,
            LogCommand.class,
            NewCommand.class,
            ImportCommand.class,
            ExportCommand.class,
            FormatCommand.class,
            EditorCommand.class,
            SchemaCommand.class,
            CommandLine.HelpCommand.class
        },
        mixinStandardHelpOptions = true,
        version = "keeplit " + Versions.PROGRAM + ", language " + Versions.LANGUAGE)
public final class Main implements Runnable {
    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    private Main() {}

    /**
     * Runs the program.
     *
     * @param arguments the command line
     */
    public static void main(String[] arguments) {
        PrintWriter out = new PrintWriter(System.out, false, StandardCharsets.UTF_8);
        PrintWriter err = new PrintWriter(System.err, false, StandardCharsets.UTF_8);
        int code = run(out, err, arguments);
        out.flush();
        err.flush();
        Interrupt.told(code);
        System.exit(code);
    }

    /**
     * Runs the program without leaving the process.
     *
     * @param out where results go
     * @param err where problems go
     * @param arguments the command line
     * @return the exit code
     */
    public static int run(PrintWriter out, PrintWriter err, String... arguments) {
        CommandLine line = new CommandLine(new Main())
                .setOut(out)
                .setErr(err)
                .setCaseInsensitiveEnumValuesAllowed(true)
                .setExecutionExceptionHandler((fault, command, parsed) -> fault(fault, err));
        try {
            return line.execute(arguments);
        } catch (OutOfMemoryError full) {
            err.println("There was not enough memory to go on, and nothing was written: give the program more, as in java -Xmx4g -jar keeplit.jar …");
            return ExitCode.UNDECIDED;
        } catch (StackOverflowError deep) {
            return fault(deep, err);
        }
    }

    private static int fault(Throwable fault, PrintWriter err) {
        err.println("This is a fault of keeplit, not of your files. Please report it with what follows.");
        fault.printStackTrace(err);
        return ExitCode.FAULT;
    }

    @Override
    public void run() {
        throw new CommandLine.ParameterException(spec.commandLine(), "say what to do, for example: keeplit check procedures");
    }
}
