package org.keeplit.editor;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.lsp4j.DocumentSymbol;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.SymbolKind;
import org.keeplit.language.Sketch;
import org.keeplit.language.Sketch.Row;

/** The symbols of a page: its items, and in them stages and labelled steps, rules, kinds, elements, examples. */
final class Outlining {
    private Outlining() {}

    static List<DocumentSymbol> of(Page page) {
        List<Row> rows = page.sketch().rows();
        List<DocumentSymbol> all = new ArrayList<>();
        DocumentSymbol item = null;
        DocumentSymbol section = null;
        for (int i = 0; i < rows.size(); i++) {
            Optional<DocumentSymbol> symbol = symbol(rows, i, page);
            if (symbol.isEmpty()) {
                continue;
            }
            symbol.get().setChildren(new ArrayList<>());
            if (Folding.isHead(rows.get(i)) && !rows.get(i).starts("example")) {
                item = symbol.get();
                section = null;
                all.add(item);
            } else {
                boolean step = symbol.get().getKind() == SymbolKind.Event;
                DocumentSymbol owner = step && section != null ? section : item;
                (owner == null ? all : owner.getChildren()).add(symbol.get());
                section = step ? section : symbol.get();
            }
        }
        return all;
    }

    private static Optional<DocumentSymbol> symbol(List<Row> rows, int at, Page page) {
        Row row = rows.get(at);
        List<Sketch.Token> words = row.tokens();
        if (words.size() < 2) {
            return Optional.empty();
        }
        String first = words.get(0).text();
        String name = words.get(1).name();
        if (Folding.isHead(row)) {
            boolean titled = words.size() > 2 && words.get(2).sort() == Sketch.Sort.TEXT;
            return one(rows, at, name, titled ? words.get(2).name() : first, kind(first), page);
        }
        return switch (first) {
            case "stage" -> one(rows, at, name, "stage", SymbolKind.Namespace, page);
            case "rule", "event", "kind", "conductor", "spacing", "example" -> one(rows, at, name, first, kind(first), page);
            default -> row.item().equals("network") && words.size() > 3 && (words.get(2).text().equals("from") || words.get(2).text().equals("at"))
                    ? one(rows, at, name, first, SymbolKind.Field, page)
                    : words.get(1).text().equals(":") && row.depth() > 0
                            ? one(rows, at, words.get(0).name(), sentence(row), SymbolKind.Event, page)
                            : Optional.empty();
        };
    }

    private static String sentence(Row row) {
        String line = row.tokens().get(0).span().source().line(row.number());
        return line.substring(line.indexOf(':') + 1).trim();
    }

    private static SymbolKind kind(String word) {
        return switch (word) {
            case "network" -> SymbolKind.Module;
            case "equipment" -> SymbolKind.Package;
            case "rulebook" -> SymbolKind.Interface;
            case "rule" -> SymbolKind.Method;
            // Steps are what editors call events; these are what rules speak of.
            case "event" -> SymbolKind.Struct;
            case "kind" -> SymbolKind.Class;
            case "conductor", "spacing" -> SymbolKind.Constant;
            case "example" -> SymbolKind.Function;
            default -> SymbolKind.Class;
        };
    }

    private static Optional<DocumentSymbol> one(List<Row> rows, int at, String name, String detail, SymbolKind kind, Page page) {
        if (name.isBlank()) {
            return Optional.empty();
        }
        Row last = rows.get(Folding.last(rows, at));
        Sketch.Token end = last.tokens().get(last.tokens().size() - 1);
        Row row = rows.get(at);
        Sketch.Token named = row.tokens().get(row.tokens().get(1).text().equals(":") ? 0 : 1);
        Range range = new Range(
                new Position(row.number() - 1, row.tokens().get(0).span().column() - 1),
                new Position(last.number() - 1, end.span().column() - 1 + end.span().length()));
        return Optional.of(new DocumentSymbol(name, kind, range, Places.range(named.span()), detail));
    }
}
