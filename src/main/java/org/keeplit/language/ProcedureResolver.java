package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Procedure;

/** Builds a procedure from its sections. */
final class ProcedureResolver {
    private static final ImmutableSet<String> SECTIONS = ImmutableSet.of(
            "title",
            "keeps",
            "for",
            "crew",
            "temporary",
            "hold",
            "clearance",
            "proved",
            "planned",
            "starts",
            "stage",
            "ends");

    private static final ImmutableSet<String> EDITS = ImmutableSet.of("without", "step", "insert", "must");

    private final Item item;
    private final Session session;
    private final Report report;

    ProcedureResolver(Item item, Session session) {
        this.item = item;
        this.session = session;
        this.report = item.report();
    }

    /** {@return the procedure, with what could be read of it} */
    Resolved<Procedure> resolve() {
        int before = report.errors();
        Header header = new Header();
        report.attempt(() -> {
            var head = Shape.of(item.head().line(), Shapes::procedureHead, "procedure NAME revision 1");
            header.revision = Shape.lexeme(head.revision()).value();
        });
        Scope scope = Scope.root(session.vocabulary(item));
        new HeaderResolver(session, report, header, scope).read(item.sections());
        Work work = new Work(session, report, header.crew, new LinkedHashMap<>());
        List<Block> body = body(work, scope);
        new CalledBooks(header, report).of(body, List.of());
        strangers(item.sections(), SECTIONS, report);
        if (body.isEmpty() && report.errors() == before) {
            report.add(Code.MISSING_LINE
                    .at(item.name().span(), "the procedure has no steps")
                    .help("steps stand below a line such as stage \"Hold-off\""));
        }
        Procedure procedure = header.procedure(
                item.name().value(),
                body,
                ImmutableList.of(),
                ImmutableList.of(),
                item.name().span());
        return Resolved.of(procedure, report.errors() == before && header.soundReferences());
    }

    private List<Block> body(Work work, Scope scope) {
        List<Block> body = new ArrayList<>();
        BlockResolver blocks = new BlockResolver(work, scope);
        for (Node section : item.sections()) {
            if (section.line().starts("stage")) {
                String title = section.readable()
                        ? report.attempt(() -> (Lexeme) Shape.of(section.line(), Shapes::stageLine, "stage \"Bypass\"")
                                        .STRING()
                                        .getSymbol())
                                .map(Lexeme::value)
                                .orElse("")
                        : "";
                ImmutableList<Block> parts = blocks.resolve(section.children());
                body.add(new Block.Stage(title, parts, section.span()));
            }
        }
        return body;
    }

    /** Tells the lines that belong to no section, and single-line sections with lines below them. */
    static void strangers(List<Node> sections, ImmutableSet<String> known, Report report) {
        for (Node section : sections) {
            String head = section.head().getText();
            boolean holdsLines = List.of("crew", "temporary", "starts", "ends", "stage", "insert", "step")
                    .contains(head);
            if (!known.contains(head) && section.readable()) {
                boolean edit = EDITS.contains(head);
                report.add(Code.UNKNOWN_LINE
                        .at(
                                section.head().span(),
                                "“" + Cursor.clip(head) + "” starts no line " + (edit ? "of a procedure" : "here"))
                        .help(
                                edit
                                        ? "it belongs in a variant: variant NAME \"Title\" of PROCEDURE"
                                        : Suggestions.didYouMean(head, known)
                                                .orElse("steps stand below a line such as stage \"Hold-off\"")));
            } else if (!holdsLines) {
                section.children().stream()
                        .filter(Node::readable)
                        .findFirst()
                        .ifPresent(child -> report.add(Code.UNKNOWN_LINE
                                .at(child.head().span(), "this line belongs to no section")
                                .help("steps stand below a line such as stage \"Hold-off\", conditions below "
                                        + "“starts with” and “ends with”")));
            }
        }
    }
}
