package org.keeplit.editor;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionKind;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.keeplit.text.Problem;

/** Mends a mistake as its advice says. */
final class Fixing {
    private static final Pattern MEANT = Pattern.compile("did you mean (.+)\\?");
    private static final Pattern WRITE = Pattern.compile("(?:write|type) “?([^\\s”]+)”?(?: on a Latin keyboard)?");

    private Fixing() {}

    static List<Either<org.eclipse.lsp4j.Command, CodeAction>> of(Page page, Range asked, Diagnosing diagnosing) {
        List<Either<org.eclipse.lsp4j.Command, CodeAction>> all = new ArrayList<>();
        for (Problem problem : page.problems()) {
            Range range = Places.range(problem.span());
            boolean near = range.getStart().getLine() <= asked.getEnd().getLine() && range.getEnd().getLine() >= asked.getStart().getLine();
            if (near) {
                edit(problem, range).ifPresent(edit -> {
                    CodeAction action = new CodeAction(title(problem, edit));
                    action.setKind(CodeActionKind.QuickFix);
                    action.setDiagnostics(List.of(diagnosing.problem(problem)));
                    action.setIsPreferred(true);
                    action.setEdit(new WorkspaceEdit(Map.of(page.uri(), List.of(edit))));
                    all.add(Either.forRight(action));
                });
            }
        }
        return all;
    }

    private static String title(Problem problem, TextEdit edit) {
        return switch (problem.code()) {
            case "missing-comma" -> "Put in the comma";
            case "missing-quote" -> "Close the text at the end of the line";
            case "language" -> "Begin the file with “language 1”";
            case "reserved" -> "Write it in quotes";
            default -> "Write " + edit.getNewText();
        };
    }

    private static Optional<TextEdit> edit(Problem problem, Range range) {
        Position start = range.getStart();
        String line = problem.span().source().line(problem.span().line());
        switch (problem.code()) {
            case "missing-comma":
                int before = start.getCharacter();
                while (before > 0 && line.charAt(before - 1) == ' ') {
                    before--;
                }
                return insert(start.getLine(), before, ",");
            case "missing-quote":
                return insert(start.getLine(), line.stripTrailing().length(), "\"");
            case "language":
                return problem.message().startsWith("the first line") ? insert(0, 0, "language 1\n") : Optional.empty();
            case "reserved":
                String word = word(line, range);
                return word.isEmpty() ? Optional.empty() : Optional.of(new TextEdit(range, "\"" + word + "\""));
            default:
                return problem.help().flatMap(Fixing::meant).filter(m -> problem.span().length() > 0).map(m -> new TextEdit(range, m));
        }
    }

    private static String word(String line, Range range) {
        int to = Math.min(line.length(), range.getEnd().getCharacter());
        return line.substring(Math.min(range.getStart().getCharacter(), to), to);
    }

    private static Optional<TextEdit> insert(int line, int column, String text) {
        Position at = new Position(line, column);
        return Optional.of(new TextEdit(new Range(at, at), text));
    }

    /** {@return what the advice says was meant, if it says one thing} */
    private static Optional<String> meant(String help) {
        Matcher meant = MEANT.matcher(help);
        if (meant.matches()) {
            return Optional.of(meant.group(1));
        }
        Matcher write = WRITE.matcher(help);
        return write.matches() ? Optional.of(write.group(1)) : Optional.empty();
    }
}
