package org.keeplit.language;

import com.google.common.collect.ArrayListMultimap;
import com.google.common.collect.ListMultimap;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.keeplit.text.Source;
import org.keeplit.text.Span;

/** A file cut into its items, before anything is resolved. */
final class Draft {
    private static final String VARIANT = "variant NAME \"Title\" of PROCEDURE";

    private final FileKind kind;
    private final Report report;
    private final List<Item> items = new ArrayList<>();
    private final ListMultimap<List<Object>, Item> byName = ArrayListMultimap.create();

    /** Cuts a file. */
    Draft(FileKind kind, Source source) {
        this(kind, source, Lexed.once());
    }

    /** Cuts a file. @param lexed its lines, as far as they were read before */
    Draft(FileKind kind, Source source, Lexed lexed) {
        this.kind = kind;
        this.report = new Report(source);
        List<Node> sections = Outline.of(new LineReader(source, report, lexed).read(), kind, report);
        split(skipLanguage(sections));
    }

    FileKind kind() {
        return kind;
    }

    Report report() {
        return report;
    }

    List<Item> items() {
        return Collections.unmodifiableList(items);
    }

    /** {@return the items of a kind and name; more than one is a mistake} */
    List<Item> items(FileKind of, String name) {
        return byName.get(List.of(of, name));
    }

    /** {@return the names of the items of a kind} */
    Set<String> names(FileKind of) {
        return items.stream().filter(i -> i.kind() == of).map(i -> i.name().value()).collect(Collectors.toSet());
    }

    private List<Node> skipLanguage(List<Node> sections) {
        if (sections.isEmpty()) {
            report.add(Code.EMPTY_FILE
                    .at(
                            Span.ofFile(report.source()),
                            report.source().content().isBlank() ? "the file is empty" : "there is nothing in the file but comments")
                    .help("it starts with “language 1”, then “" + kind.opening() + "”"));
            return sections;
        }
        Node first = sections.get(0);
        if (!first.line().starts("language")) {
            report.add(Code.LANGUAGE
                    .at(first.span(), "the first line does not say which version of the language this is")
                    .help("start the file with “language 1”"));
            return sections;
        }
        report.attempt(() -> {
            Lexeme version = (Lexeme) Shape.of(first.line(), p -> p.languageLine(), "language 1")
                    .NUMBER()
                    .getSymbol();
            if (!version.is("1")) {
                throw new Misread(Code.LANGUAGE
                        .at(version.span(), "version " + version.getText() + " of the language is not known")
                        .help("this program reads version 1"));
            }
        });
        List<Node> rest = new ArrayList<>(first.children());
        rest.addAll(sections.subList(1, sections.size()));
        return rest;
    }

    private void split(List<Node> sections) {
        int at = 0;
        while (at < sections.size() && !kind.isHead(sections.get(at).line())) {
            at++;
        }
        if (at > 0 || sections.isEmpty() && !report.source().content().isBlank()) {
            missingHead(sections);
        }
        while (at < sections.size()) {
            int to = at + 1;
            while (to < sections.size() && !kind.isHead(sections.get(to).line())) {
                to++;
            }
            item(sections.get(at), sections.subList(at + 1, to));
            at = to;
        }
    }

    private void missingHead(List<Node> sections) {
        Span span = sections.isEmpty()
                ? Span.ofFile(report.source())
                : sections.get(0).span();
        if (report.errors() == 0 || !sections.isEmpty()) {
            report.add(Code.NO_HEAD
                    .at(span, "the file should say first what it is")
                    .help("after “language 1” comes “" + kind.opening() + "”"));
        }
    }

    private void item(Node head, List<Node> sections) {
        if (!head.readable()) {
            return;
        }
        if (head.line().lexemes().size() < 2 || !head.line().lexemes().get(1).isName()) {
            report.attempt(() -> {
                Cursor cursor = Cursor.over(head.line());
                cursor.next("its first word");
                Lexeme name = cursor.need("the " + kind.word() + "'s name");
                throw new Misread((name.isReserved() ? Code.RESERVED : Code.UNEXPECTED)
                        .at(name.span(), "“" + name.getText() + "” cannot be a name")
                        .help("such a line reads: " + (head.line().starts("variant") ? VARIANT : kind.opening())));
            });
            return;
        }
        List<Node> all = new ArrayList<>(head.children());
        all.addAll(sections);
        Item item = new Item(kind.kindOf(head.line()), head.line().lexemes().get(1), head, all, report);
        items.add(item);
        byName.put(List.of(item.kind(), item.name().value()), item);
    }
}
