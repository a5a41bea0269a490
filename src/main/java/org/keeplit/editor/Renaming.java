package org.keeplit.editor;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.keeplit.language.FreeNames;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.text.Problem;
import org.keeplit.text.Source;
import org.keeplit.text.Span;

/**
 * Gives a thing another name, in every file. The changed files are read before anything is proposed; if a mistake would come of it, or the
 * name is taken, it is refused.
 */
final class Renaming {
    /** A renaming that cannot be. */
    static final class Refused extends Exception {
        private static final long serialVersionUID = 1L;

        Refused(String why) {
            super(why);
        }
    }

    private final Names names;
    private final Places places;
    private final Map<Path, String> open;

    Renaming(Names names, Places places, Map<Path, String> open) {
        this.names = names;
        this.places = places;
        this.open = open;
    }

    WorkspaceEdit rename(Name name, String to) throws Refused {
        Optional<String> mistake = FreeNames.mistake(to);
        boolean variable = name.sort() == Name.Sort.VARIABLE;
        if (mistake.isPresent()) {
            throw new Refused(mistake.get());
        } else if (variable != Character.isUpperCase(to.charAt(0)) && name.sort() != Name.Sort.PROCEDURE) {
            throw new Refused(variable ? "a variable begins with a capital" : "only variables begin with a capital");
        } else if (names.same(name).stream().noneMatch(Name::declares)) {
            throw new Refused("it is not known where " + name.text() + " is declared");
        } else if (!names.same(new Name(name.sort(), name.scope(), to, name.span(), false)).isEmpty()) {
            throw new Refused(to + " is taken");
        }
        Map<Source, List<Span>> bySource = new LinkedHashMap<>();
        names.same(name).forEach(n -> bySource.computeIfAbsent(n.span().source(), s -> new ArrayList<>()).add(n.span()));
        test(bySource, to);
        Map<String, List<TextEdit>> edits = new LinkedHashMap<>();
        bySource.forEach((source, spans) -> edits.put(
                places.uri(source.name()),
                spans.stream().map(s -> new TextEdit(Places.range(s), to)).toList()));
        return new WorkspaceEdit(edits);
    }

    private void test(Map<Source, List<Span>> bySource, String to) throws Refused {
        List<Path> files = bySource.keySet().stream().map(s -> Path.of(s.name())).toList();
        Map<Path, String> after = new HashMap<>(open);
        bySource.forEach((source, spans) -> after.put(Path.of(source.name()), changed(source, spans, to)));
        Library was = new Reader().read(files, open);
        Library is = new Reader().read(files, after);
        if (errors(is) > errors(was)) {
            Problem first = is.problems().stream().filter(p -> p.severity() == Problem.Severity.ERROR).findFirst().orElseThrow();
            throw new Refused("it would make a mistake: " + first.span() + ": " + first.message());
        }
    }

    private static long errors(Library library) {
        return library.problems().stream().filter(p -> p.severity() == Problem.Severity.ERROR).count();
    }

    private static String changed(Source source, List<Span> spans, String to) {
        List<String> lines = new ArrayList<>(source.content().lines().toList());
        spans.stream()
                .sorted(Comparator.comparing(Span::line).thenComparing(Span::column).reversed())
                .forEach(span -> {
                    String line = lines.get(span.line() - 1);
                    int from = span.column() - 1;
                    lines.set(span.line() - 1, line.substring(0, from) + to + line.substring(from + span.length()));
                });
        return String.join("\n", lines) + "\n";
    }
}
