package org.keeplit.text;

import java.util.List;

/**
 * Shows problems as text: the place and the sentence, the line with the offending words marked, the advice, and the
 * other place if there is one.
 */
public final class ProblemPrinter {
    private static final int WIDEST = 140;

    private ProblemPrinter() {}

    /**
     * Shows problems one after another.
     *
     * @param problems the problems
     * @return the text, each problem ending with an empty line
     */
    public static String print(List<Problem> problems) {
        StringBuilder text = new StringBuilder();
        for (Problem problem : problems) {
            text.append(print(problem)).append('\n');
        }
        return text.toString();
    }

    /**
     * Shows one problem.
     *
     * @param problem the problem
     * @return the text, of several lines
     */
    public static String print(Problem problem) {
        StringBuilder text = new StringBuilder();
        String kind = problem.severity() == Problem.Severity.WARNING ? "warning: " : "";
        text.append(problem.span()).append(": ").append(kind).append(problem.message());
        text.append(" [").append(problem.code()).append("]\n");
        mark(problem.span(), text);
        problem.help().ifPresent(help -> text.append("    help: ").append(help).append('\n'));
        problem.related().ifPresent(related -> {
            text.append("    see ")
                    .append(related.span())
                    .append(": ")
                    .append(related.note())
                    .append('\n');
            mark(related.span(), text);
        });
        return text.toString();
    }

    /** Shows the line of a span and, below it, marks under the meant words. */
    private static void mark(Span span, StringBuilder text) {
        if (span.line() == 0) {
            return;
        }
        String line = span.source().line(span.line());
        int column = Math.min(span.column() - 1, line.length());
        // A long line is shown around the place only.
        int from = line.length() <= WIDEST ? 0 : Math.max(0, Math.min(column - WIDEST / 2, line.length() - WIDEST));
        int to = Math.min(line.length(), from + WIDEST);
        String number = String.valueOf(span.line());
        text.append("    ")
                .append(number)
                .append(" | ")
                .append(visible(line.substring(from, to)))
                .append('\n');
        text.append("    ").append(" ".repeat(number.length())).append(" | ");
        text.append(blank(line.substring(from, Math.min(column, to))));
        text.append("^".repeat(Math.max(1, Math.min(span.length(), to - column))))
                .append('\n');
    }

    /** {@return text without characters that would disturb a terminal} */
    private static String visible(String text) {
        StringBuilder shown = new StringBuilder(text.length());
        for (char c : text.toCharArray()) {
            shown.append(c != '\t' && Character.isISOControl(c) ? '\ufffd' : c);
        }
        return shown.toString();
    }

    /** {@return as much blank space as a text takes, its tabs kept so that the marks stay under the words} */
    private static String blank(String text) {
        StringBuilder space = new StringBuilder(text.length());
        for (char c : text.toCharArray()) {
            if (!Character.isLowSurrogate(c)) {
                space.append(c == '\t' ? '\t' : ' ');
            }
        }
        return space.toString();
    }
}
