package org.keeplit.editor;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.lsp4j.SemanticTokens;
import org.eclipse.lsp4j.SemanticTokensLegend;
import org.keeplit.language.Sketch;
import org.keeplit.text.Span;

/** Colours by meaning: what a word is, as far as its line and the names in reach tell. */
final class Coloring {
    private static final List<String> TYPES = List.of(
            "keyword", "variable", "enumMember", "number", "type", "string", "comment", "property", "label", "parameter", "class", "function", "operator");

    private Coloring() {}

    static SemanticTokensLegend legend() {
        return new SemanticTokensLegend(TYPES, List.of("declaration"));
    }

    private record Colored(Span span, int type, int modifiers) {}

    static SemanticTokens of(Page page, Names names) {
        Map<Span, Name> named = new HashMap<>();
        names.in(page.name()).forEach(n -> named.put(n.span(), n));
        List<Colored> all = new ArrayList<>();
        page.sketch().comments().forEach(c -> all.add(new Colored(c, TYPES.indexOf("comment"), 0)));
        for (Sketch.Row row : page.sketch().rows()) {
            for (Sketch.Token token : row.tokens()) {
                Name name = named.get(token.span());
                int type = TYPES.indexOf(name == null ? type(token.sort()) : type(name.sort()));
                if (type >= 0) {
                    all.add(new Colored(token.span(), type, name != null && name.declares() ? 1 : 0));
                }
            }
        }
        all.sort(Comparator.comparing((Colored c) -> c.span().line()).thenComparing(c -> c.span().column()));
        return new SemanticTokens(data(all));
    }

    /** Each place is told from the one before. */
    private static List<Integer> data(List<Colored> all) {
        List<Integer> data = new ArrayList<>();
        int line = 1;
        int column = 1;
        for (Colored one : all) {
            int from = one.span().line() == line ? column : 1;
            data.addAll(List.of(one.span().line() - line, one.span().column() - from, one.span().length(), one.type(), one.modifiers()));
            line = one.span().line();
            column = one.span().column();
        }
        return data;
    }

    private static String type(Sketch.Sort sort) {
        return switch (sort) {
            case RESERVED -> "keyword";
            case VARIABLE -> "variable";
            case PHASES -> "enumMember";
            case NUMBER -> "number";
            case UNIT -> "type";
            case TEXT -> "string";
            case WORD, MARK -> "";
        };
    }

    private static String type(Name.Sort sort) {
        return switch (sort) {
            case ELEMENT, NODE -> "property";
            case LABEL -> "label";
            case PERSON -> "parameter";
            case VARIABLE -> "variable";
            case RULE, EVENT -> "function";
            case KIND, CONDUCTOR, SPACING, EQUIPMENT, NETWORK, RULEBOOK, PROCEDURE -> "class";
        };
    }
}
