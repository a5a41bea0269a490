package org.keeplit.command;

import java.util.List;
import java.util.concurrent.Callable;
import org.keeplit.exchange.Schemas;
import org.keeplit.language.FreeNames;
import picocli.CommandLine;

/** {@code schema}: the schema of the JSON that a command writes. */
@CommandLine.Command(
        name = "schema",
        description = "Print the schema (JSON Schema 2020-12) of what a command writes under --format json.",
        mixinStandardHelpOptions = true)
final class SchemaCommand implements Callable<Integer> {
    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    @CommandLine.Parameters(paramLabel = "COMMAND", description = "check, test, order, slips, retreat, plan, sweep, mend, why, import or recheck")
    private String command;

    @Override
    public Integer call() {
        List<String> known = Schemas.COMMANDS;
        if (!known.contains(command)) {
            String near = FreeNames.didYouMean(command, known).orElse("there are " + String.join(", ", known));
            throw new CommandLine.ParameterException(spec.commandLine(), "there is no schema of " + command + "; " + near);
        }
        spec.commandLine().getOut().print(Schemas.text(command));
        spec.commandLine().getOut().flush();
        return ExitCode.PROVED;
    }
}
