package org.keeplit.command;

import picocli.CommandLine;

/** {@code log}: log sheets, blank and filled. */
@CommandLine.Command(
        name = "log",
        description = "Write blank log sheets, or check filled ones.",
        subcommands = {LogBlankCommand.class, LogCheckCommand.class},
        mixinStandardHelpOptions = true)
final class LogCommand implements Runnable {
    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    @Override
    public void run() {
        throw new CommandLine.ParameterException(
                spec.commandLine(), "say which: keeplit log blank FILES --out FOLDER --date DATE, or keeplit log check LOG FILES");
    }
}
