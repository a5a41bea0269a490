package org.keeplit.command;

import org.keeplit.verdict.Style;
import picocli.CommandLine;

/** Decides whether to colour: only on a terminal, never under {@code NO_COLOR}, unless told otherwise. */
final class Colors {
    /** The choices on the command line. */
    enum When {
        /** On a terminal only. */
        auto,
        /** Always. */
        always,
        /** Never. */
        never
    }

    @CommandLine.Option(
            names = "--color",
            paramLabel = "WHEN",
            description = "colour: ${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE})",
            defaultValue = "auto")
    private When when;

    Style style() {
        return switch (when) {
            case always -> Style.COLOR;
            case never -> Style.PLAIN;
            case auto -> {
                String no = System.getenv("NO_COLOR");
                boolean asked = no == null || no.isEmpty();
                yield System.console() != null && asked ? Style.COLOR : Style.PLAIN;
            }
        };
    }
}
