package org.keeplit.editor;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionItemKind;
import org.keeplit.language.Sketch;
import org.keeplit.language.Sketch.Row;
import org.keeplit.language.Sketch.Token;
import org.keeplit.network.Element;
import org.keeplit.network.Kind;
import org.keeplit.network.Verb;

/** Proposes what may come next: people, then verbs, then what fits the verb; names where names are asked for. */
final class Completing {
    /** What can follow a name after {@code then}; see {@code ChanceResolver}. */
    private static final List<String> HAPPENS = List.of("trips", "opens", "closes", "fails to trip", "comes off", "leaves", "is out of reach",
            "has a passing fault", "has a lasting fault");
    private static final List<String> GROUPS =
            List.of("together", "in order", "in any order", "for each phase P of ", "repeat 3 times", "if \"\" is found \"\"", "call ", "end");
    private static final List<String> CLAUSES = List.of("requires ", "expects ", "records \"\"", "caution \"\"", "because \"\"", "phases in order");
    /** The verbs of the language itself, with what their object is. */
    private static final Map<String, String> VERBS = verbs();

    private final Page page;
    private final Names names;
    private final Map<String, CompletionItem> items = new LinkedHashMap<>();

    Completing(Page page, Names names) {
        this.page = page;
        this.names = names;
    }

    private static Map<String, String> verbs() {
        Map<String, String> all = new LinkedHashMap<>();
        for (String device : List.of("proves", "tags", "takes the tag off", "goes aloft at", "takes off the source lead of",
                "takes off the load lead of", "puts on the source lead of", "puts on the load lead of", "lowers", "raises")) {
            all.put(device, "device");
        }
        for (String jumper : List.of("installs", "removes", "applies", "connects", "disconnects", "starts", "stops")) {
            all.put(jumper, "temporary");
        }
        for (String permit : List.of("repeats", "confirms", "releases", "issues")) {
            all.put(permit, "permit");
        }
        for (String person : List.of("asks", "briefs")) {
            all.put(person, "person");
        }
        for (String free : List.of("checks", "waits until", "waits 5 min with", "tests", "measures", "records", "inspects", "works on", "does", "comes down")) {
            all.put(free, "any");
        }
        return all;
    }

    /** {@return the proposals} @param line the line, from 1 @param column the column, from 1 */
    List<CompletionItem> at(int line, int column) {
        Row row = page.sketch().row(line).orElse(null);
        List<Token> before = row == null
                ? List.of()
                : row.tokens().stream().filter(t -> t.span().column() - 1 + t.span().length() < column - 1
                        || t.sort() == Sketch.Sort.MARK && t.span().column() < column).toList();
        Row place = row != null ? row : page.sketch().rows().stream().filter(r -> r.number() < line).reduce((a, b) -> b).orElse(null);
        if (place == null) {
            add("language 1", CompletionItemKind.Keyword, "");
            return List.copyOf(items.values());
        }
        propose(place, before.stream().map(Token::text).toList());
        return List.copyOf(items.values());
    }

    private void propose(Row place, List<String> before) {
        String last = before.isEmpty() ? "" : before.get(before.size() - 1);
        String first = before.isEmpty() ? "" : before.get(0);
        if (first.equals("keeps") || first.equals("extends") || place.item().equals("examples") && last.equals("for")) {
            declared(Name.Sort.RULEBOOK, CompletionItemKind.Interface, "rulebook");
        } else if (first.equals("uses")) {
            declared(Name.Sort.EQUIPMENT, CompletionItemKind.Module, "equipment");
        } else if (first.equals("proved") && last.equals("on") || first.equals("on") && place.item().startsWith("example")) {
            declared(Name.Sort.NETWORK, CompletionItemKind.Module, "network");
        } else if (first.equals("must") && last.equals("on") && before.size() == 3) {
            declared(Name.Sort.RULE, CompletionItemKind.Method, "rule");
            List.of("requirement", "stop", "cannot", "expectation", "ending").forEach(w -> add(w, CompletionItemKind.Keyword, ""));
        } else if (last.equals("step") || first.equals("must") && last.equals("at")) {
            labels(place);
        } else if (List.of("on", "phase", "phases").contains(last)) {
            List.of("A", "B", "C", "all phases").forEach(p -> add(p, CompletionItemKind.EnumMember, "phase"));
            variables(place, "phase");
        } else if (place.item().equals("network")) {
            network(place, before, last);
        } else if (place.item().equals("procedure") || place.item().equals("variant") || place.item().startsWith("example")) {
            step(place, before, last);
        } else if (place.item().equals("rulebook")) {
            rule(place, before);
        }
    }

    private void declared(Name.Sort sort, CompletionItemKind kind, String detail) {
        names.all().filter(n -> n.sort() == sort && n.declares()).forEach(n -> add(n.text(), kind, detail));
    }

    private void labels(Row place) {
        String root = names.root(place.itemName());
        names.all().filter(n -> n.sort() == Name.Sort.LABEL && n.declares() && n.scope().equals(root))
                .forEach(n -> add(n.text(), CompletionItemKind.Event, "step"));
    }

    private void network(Row place, List<String> before, String last) {
        if (before.isEmpty()) {
            kinds().filter(k -> !k.base().isTemporary()).forEach(k -> add(k.name() + " ", CompletionItemKind.Class, "kind"));
        } else if (List.of("from", "to", "at").contains(last)) {
            names.all().filter(n -> n.sort() == Name.Sort.NODE && n.scope().equals(place.itemName()))
                    .forEach(n -> add(n.text(), CompletionItemKind.Field, "node"));
        } else if (last.equals("conductor")) {
            names.all().filter(n -> n.sort() == Name.Sort.CONDUCTOR).forEach(n -> add(n.text(), CompletionItemKind.Constant, "conductor"));
        } else if (last.equals("spacing")) {
            names.all().filter(n -> n.sort() == Name.Sort.SPACING).forEach(n -> add(n.text(), CompletionItemKind.Constant, "spacing"));
        } else if (last.equals(",")) {
            kinds().filter(k -> k.name().equals(before.get(0))).flatMap(k -> k.modes().stream())
                    .forEach(m -> m.values().forEach(v -> add(m.name() + " " + v, CompletionItemKind.Property, "setting")));
            List.of("phases ", "length ", "conductor ", "spacing ", "rating ", "ganged", "single-phase units", "open", "at ")
                    .forEach(w -> add(w, CompletionItemKind.Property, ""));
        }
    }

    private void rule(Row place, List<String> before) {
        String line = String.join(" ", before);
        if (line.startsWith("even if")) {
            declared(Name.Sort.EVENT, CompletionItemKind.Event, "event");
        } else if (line.equals("even")) {
            add("if ", CompletionItemKind.Keyword, "");
        } else if (before.isEmpty() && place.section().equals("event")) {
            List.of("any ", "when ", "then ", "says \"\"", "event ", "rule ").forEach(w -> add(w, CompletionItemKind.Keyword, ""));
        } else if (line.equals("then")) {
            eventVariables(place);
        } else if (before.size() == 2 && line.startsWith("then")) {
            HAPPENS.forEach(w -> add(w, CompletionItemKind.Function, "what happens"));
        } else if (before.isEmpty()) {
            List.of("rule ", "event ", "even if ", "always ", "never ", "while any ", "before ", "after ", "between ", "at the end ", "require ", "unless ", "says \"\"",
                            "because \"\"", "citation \"\"", "severity caution", "applies to ", "end")
                    .forEach(w -> add(w, CompletionItemKind.Keyword, ""));
        } else {
            kinds().forEach(k -> add(k.name(), CompletionItemKind.Class, "kind"));
        }
    }

    /** The variables that the event binds. */
    private void eventVariables(Row place) {
        page.sketch().rows().stream()
                .filter(r -> r.starts("any") && r.section().equals("event") && r.number() <= place.number())
                .reduce((a, b) -> b)
                .ifPresent(any -> any.tokens().stream()
                        .filter(t -> t.sort() == Sketch.Sort.VARIABLE)
                        .forEach(t -> add(t.text() + " ", CompletionItemKind.Variable, "")));
    }

    private void step(Row place, List<String> before, String last) {
        Set<String> people = names.peopleOf(place.itemName());
        if (before.isEmpty() || last.equals(":")) {
            people.forEach(p -> add(p + " ", CompletionItemKind.Value, "person"));
            GROUPS.forEach(g -> add(g, CompletionItemKind.Keyword, ""));
            CLAUSES.forEach(g -> add(g, CompletionItemKind.Keyword, ""));
        } else if (people.contains(last)) {
            VERBS.keySet().forEach(v -> add(v, CompletionItemKind.Function, "step"));
            kinds().forEach(k -> k.verbs().forEach(v -> add(v.one().with("…").replaceFirst(" ….*", ""), CompletionItemKind.Function, k.name())));
        } else if (last.equals("as")) {
            elements(place, Set.of());
        } else {
            object(place, before);
        }
    }

    /** What fits the verb: of a verb that kinds declare, what is of these kinds. */
    private void object(Row place, List<String> before) {
        String line = String.join(" ", before);
        Set<String> fitting = new LinkedHashSet<>();
        kinds().forEach(kind -> {
            for (Verb verb : kind.verbs()) {
                boolean one = line.endsWith(" " + String.join(" ", verb.one().before()));
                boolean several = line.endsWith(" " + String.join(" ", verb.several().before()));
                if (one || several) {
                    fitting.add(kind.name());
                }
            }
        });
        if (!fitting.isEmpty()) {
            variables(place, "device", fitting);
            elements(place, fitting);
            return;
        }
        String asked = VERBS.entrySet().stream()
                .filter(v -> line.endsWith(" " + v.getKey().replace(" the ", " ")))
                .map(Map.Entry::getValue)
                .reduce((a, b) -> b)
                .orElse("any");
        if (asked.equals("person")) {
            names.peopleOf(place.itemName()).forEach(p -> add(p, CompletionItemKind.Value, "person"));
        } else if (asked.equals("permit") || asked.equals("temporary")) {
            variables(place, asked);
        } else {
            variables(place, asked.equals("device") ? "device" : "");
            elements(place, Set.of());
        }
    }

    private void variables(Row place, String sort) {
        variables(place, sort, Set.of());
    }

    /** The variables that the procedure declares, by the line that does. @param kinds of devices, those that count; none for all */
    private void variables(Row place, String sort, Set<String> kinds) {
        String root = names.root(place.itemName());
        for (Row row : page.sketch().rows()) {
            if (!names.root(row.itemName()).equals(root)) {
                continue;
            }
            String of = row.starts("for", "each", "phase") ? "phase" : row.starts("hold") || row.starts("clearance") ? "permit"
                    : row.section().equals("temporary") ? "temporary" : row.section().equals("for") ? "device" : "";
            for (int i = 1; i < row.tokens().size() && !of.isEmpty(); i++) {
                Token token = row.tokens().get(i);
                boolean declared = token.sort() == Sketch.Sort.VARIABLE && (of.equals("device") || i == (of.equals("phase") ? 3 : 1));
                boolean fits = kinds.isEmpty() || kinds.contains(row.tokens().get(i - 1).text());
                if (declared && fits && (sort.isEmpty() || sort.equals(of))) {
                    add(token.text(), CompletionItemKind.Variable, of.equals("device") ? row.tokens().get(i - 1).text() : of);
                }
            }
        }
    }

    private void elements(Row place, Set<String> kinds) {
        String owner = place.item().startsWith("example") ? "" : place.itemName();
        names.networksOf(owner).stream()
                .flatMap(n -> Stream.ofNullable(page.library().networks().get(n)))
                .flatMap(n -> n.elements().stream())
                .filter(e -> kinds.isEmpty() ? !(e instanceof Element.Line) : kinds.contains(e.kind().name()))
                .forEach(e -> add(e.name(), CompletionItemKind.Field, e.kind().name()));
    }

    private Stream<Kind> kinds() {
        return page.library().equipment().values().stream().flatMap(e -> e.kinds().values().stream());
    }

    private void add(String label, CompletionItemKind kind, String detail) {
        items.computeIfAbsent(label.strip(), l -> {
            CompletionItem item = new CompletionItem(l);
            item.setKind(kind);
            item.setDetail(detail.isEmpty() ? null : detail);
            item.setInsertText(label);
            item.setSortText(String.format(Locale.ROOT, "%04d", items.size()));
            return item;
        });
    }
}
