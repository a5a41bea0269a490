package org.keeplit.command;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import org.keeplit.text.Unseen;
import picocli.CommandLine;

/** Reads what stands on the command line; what cannot be read is told with the form that is wanted. */
final class Converters {
    private Converters() {}

    /** Makes them known to a command and its own. @param line the command */
    static void in(CommandLine line) {
        line.registerConverter(LocalDate.class, Converters::day);
        line.registerConverter(Path.class, Converters::path);
        line.registerConverter(Double.class, Converters::number);
        line.registerConverter(double.class, Converters::number);
    }

    private static LocalDate day(String value) {
        try {
            return LocalDate.parse(value);
        } catch (DateTimeException e) {
            throw new CommandLine.TypeConversionException(
                    "a date is written year, month, day, such as 2026-03-02, not “" + Unseen.shown(value) + "”");
        }
    }

    private static Path path(String value) {
        try {
            return Path.of(value);
        } catch (InvalidPathException e) {
            throw new CommandLine.TypeConversionException(Refused.noFileName(value));
        }
    }

    private static Double number(String value) {
        try {
            return Double.valueOf(value);
        } catch (NumberFormatException e) {
            throw new CommandLine.TypeConversionException("it takes a number, such as 60, not “" + Unseen.shown(value) + "”");
        }
    }
}
