package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Example;
import org.keeplit.procedure.Procedure;
import org.keeplit.rule.Rule;
import org.keeplit.rule.Rulebook;

/** Builds one example: a small procedure that keeps the rulebooks, or the rules that it is about. */
final class ExampleResolver {
    static final String FORM = "example \"What it shows\" of rule NAME";

    private static final ImmutableSet<String> SECTIONS = ImmutableSet.of(
            "on", "keeps", "crew", "temporary", "hold", "clearance", "planned", "starts", "do", "ends", "must");
    private static final ImmutableSet<String> HOLD_LINES =
            ImmutableSet.of("crew", "temporary", "starts", "do", "ends", "must");

    private final Item item;
    private final Session session;
    private final Report report;
    private final Header common;
    private final Map<String, Lexeme> titles;

    /**
     * A reader.
     *
     * @param common what all examples of the file have in common
     * @param titles the titles so far, with their places
     */
    ExampleResolver(Item item, Session session, Header common, Map<String, Lexeme> titles) {
        this.item = item;
        this.session = session;
        this.report = item.report();
        this.common = common;
        this.titles = titles;
    }

    /** {@return the example} @param head its first line @param sections the lines below it */
    Optional<Example> resolve(Node head, List<Node> sections) {
        int before = report.errors();
        Header header = Header.of(common.procedure("", List.of(), List.of(), List.of(), item.name().span()));
        header.networks.addAll(common.networks);
        header.allNetworks = common.allNetworks;
        header.allRulebooks = common.allRulebooks;
        Scope scope = VariantResolver.scope(header, item, session);
        new HeaderResolver(session, report, header, scope).read(sections);
        strangers(List.of(head), ImmutableSet.of("example"), report);
        strangers(sections, SECTIONS, report);
        List<String> of = new ArrayList<>();
        Lexeme title = report.attempt(() -> title(head, header, of)).orElse(head.head());
        needsNetwork(header, title);
        // With a name that is wrong all rules count, so that no other line stumbles.
        if (!of.isEmpty() && rules(header).containsAll(of)) {
            header.keeps.replaceAll(book -> only(book, of));
        }
        List<Block> body = body(sections, header, scope, title);
        Set<String> labels = new LinkedHashSet<>();
        VariantResolver.collect(ImmutableList.copyOf(body), labels);
        List<Example.Breaks> breaks = new MustReader(item, session, header, labels).read(sections, title);
        List<Procedure.MustFail> mustFail =
                breaks.stream().map(Example.Breaks::what).toList();
        header.title = title.value();
        header.revision = "1";
        if (report.errors() != before || !header.soundReferences()) {
            return Optional.empty();
        }
        Procedure procedure = header.procedure(title.value(), body, List.of(), mustFail, title.span());
        return Optional.of(new Example(procedure, ImmutableList.copyOf(of), ImmutableList.copyOf(breaks)));
    }

    private Lexeme title(Node head, Header header, List<String> of) {
        var parts = Shape.of(head.line(), Shapes::exampleHead, FORM);
        Lexeme title = (Lexeme) parts.STRING().getSymbol();
        Lexeme first = titles.putIfAbsent(title.value(), title);
        if (first != null) {
            report.add(Code.DUPLICATE
                    .at(title.span(), "there is already an example of this title")
                    .related(first.span(), "the first one"));
        }
        if (parts.names() != null) {
            for (Shapes.NameContext name : parts.names().name()) {
                rule(Shape.lexeme(name), header);
                of.add(Shape.lexeme(name).value());
            }
        }
        return title;
    }

    private static List<String> rules(Header header) {
        return header.keeps.stream()
                .flatMap(book -> book.rules().stream())
                .map(Rule::name)
                .toList();
    }

    private void rule(Lexeme name, Header header) {
        List<String> known = rules(header);
        if (!known.contains(name.value()) && header.allRulebooks) {
            report.add(Code.UNKNOWN_RULE
                    .at(name.span(), "no rulebook that these examples are for has a rule " + Cursor.clip(name.value()))
                    .help(Suggestions.didYouMean(name.value(), known)
                            .orElse("the rules are " + Suggestions.list(known, "and"))));
        }
    }

    private void needsNetwork(Header header, Lexeme title) {
        if (header.proofs.isEmpty() && header.allNetworks) {
            report.add(Code.MISSING_LINE
                    .at(title.span(), "the example does not say on which network it is")
                    .help("below it, or above the first example for all of them: on network NAME"));
        }
    }

    /** {@return a rulebook with only some of its rules} */
    private static Rulebook only(Rulebook book, List<String> names) {
        return new Rulebook(
                book.name(),
                book.revision(),
                book.title(),
                book.extended(),
                book.parameters(),
                book.usual(),
                book.definitions(),
                book.chances(),
                book.rules().stream()
                        .filter(rule -> names.contains(rule.name()))
                        .collect(ImmutableList.toImmutableList()),
                book.overridden(),
                book.span());
    }

    private List<Block> body(List<Node> sections, Header header, Scope scope, Lexeme title) {
        int before = report.errors();
        Work work = new Work(session, report, header.crew, new LinkedHashMap<>());
        BlockResolver blocks = new BlockResolver(work, scope);
        List<Block> body = new ArrayList<>();
        for (Node section : sections) {
            if (section.line().starts("do")) {
                Shape.of(section.line(), Shapes::doLine, "do");
                body.addAll(blocks.resolve(section.children()));
            }
        }
        if (body.isEmpty() && report.errors() == before) {
            report.add(Code.MISSING_LINE
                    .at(title.span(), "the example has no steps")
                    .help("they stand below a line “do”, one a line as in a procedure"));
        }
        return body;
    }

    /** Tells the lines that belong to no section. */
    static void strangers(List<Node> sections, ImmutableSet<String> known, Report report) {
        for (Node section : sections) {
            String head = section.head().getText();
            if (!known.contains(head) && section.readable()) {
                report.add(Code.UNKNOWN_LINE
                        .at(section.head().span(), "“" + Cursor.clip(head) + "” starts no line here")
                        .help(Suggestions.didYouMean(head, known)
                                .orElse("lines here start with " + Suggestions.list(known, "or"))));
            } else if (!HOLD_LINES.contains(head)) {
                section.children().stream()
                        .filter(Node::readable)
                        .findFirst()
                        .ifPresent(child -> report.add(Code.UNKNOWN_LINE
                                .at(child.head().span(), "this line belongs to no section")
                                .help("steps stand below a line “do”, conditions below “starts with” and “ends with”")));
            }
        }
    }
}
