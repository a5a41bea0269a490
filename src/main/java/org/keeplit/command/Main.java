package org.keeplit.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.InvalidPathException;
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
        if (out.checkError() && code != ExitCode.FAULT) {
            err.println("Standard output could not be written to the end: it is closed, or the disk is full.");
            code = ExitCode.USAGE;
        }
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
        PrintWriter seen = new PrintWriter(new VisibleWriter(out), true);
        PrintWriter problems = new PrintWriter(new VisibleWriter(err), true);
        try {
            return seen(seen, problems, arguments);
        } finally {
            seen.flush();
            problems.flush();
        }
    }

    private static int seen(PrintWriter out, PrintWriter err, String... arguments) {
        CommandLine line = new CommandLine(new Main())
                .setOut(out)
                .setErr(err)
                .setCaseInsensitiveEnumValuesAllowed(true)
                .setExecutionExceptionHandler((fault, command, parsed) -> ended(fault, err));
        Converters.in(line);
        try {
            return line.execute(arguments);
        } catch (OutOfMemoryError full) {
            err.println("There was not enough memory to go on, and nothing was written: give the program more, as in java -Xmx4g -jar keeplit.jar …");
            return ExitCode.UNDECIDED;
        } catch (StackOverflowError deep) {
            return fault(deep, err);
        }
    }

    /** {@return the exit code of a command that did not come to its end} @param why what ended it */
    private static int ended(Exception why, PrintWriter err) {
        if (why instanceof Refused) {
            err.println(why.getMessage());
            return ExitCode.USAGE;
        } else if (why instanceof UncheckedIOException unchecked) {
            return ended(unchecked.getCause(), err);
        } else if (why instanceof FileSystemException file) {
            err.println(file.getFile() + ": " + Refused.reason(file));
            return ExitCode.USAGE;
        } else if (why instanceof IOException io) {
            err.println("A file could not be read or written: " + Refused.reason(io));
            return ExitCode.USAGE;
        } else if (why instanceof InvalidPathException name) {
            err.println(Refused.noFileName(name.getInput()));
            return ExitCode.USAGE;
        }
        return fault(why, err);
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
