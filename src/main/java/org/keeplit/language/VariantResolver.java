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
import org.keeplit.network.Network;
import org.keeplit.network.Side;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Edit;
import org.keeplit.procedure.Permit;
import org.keeplit.procedure.Procedure;

/** Builds a variant: its base's header and body, with what it restates and what it changes. */
final class VariantResolver {
    private static final ImmutableSet<String> SECTIONS = ImmutableSet.of(
            "title", "keeps", "crew", "temporary", "hold", "clearance", "proved", "planned", "starts", "ends",
            "without", "step", "insert", "must");

    private final Item item;
    private final Session session;
    private final Report report;

    VariantResolver(Item item, Session session) {
        this.item = item;
        this.session = session;
        this.report = item.report();
    }

    Optional<Procedure> resolve() {
        int before = report.errors();
        Optional<Shapes.VariantHeadContext> head = report.attempt(
                () -> Shape.of(item.head().line(), Shapes::variantHead, "variant NAME \"Title\" of PROCEDURE"));
        Optional<Procedure> base =
                head.flatMap(h -> session.procedure(Shape.lexeme(h.name(1)), report));
        if (base.isEmpty()) {
            return Optional.empty();
        }
        Header header = Header.of(base.get());
        if (head.get().STRING() != null) {
            header.title = ((Lexeme) head.get().STRING().getSymbol()).value();
        }
        Scope scope = scope(header);
        new HeaderResolver(session, report, header, scope).read(item.sections());
        Set<String> labels = labels(base.get());
        EditResolver edits = new EditResolver(work(base.get(), header), scope, labels);
        List<Edit> all = new ArrayList<>(base.get().edits());
        List<Procedure.MustFail> mustFail = new ArrayList<>();
        for (Node section : item.sections()) {
            if (section.readable() && !section.line().starts("must")) {
                report.attempt(() -> edits.edit(section)).flatMap(e -> e).ifPresent(all::add);
            }
        }
        for (Node section : item.sections()) {
            if (section.readable() && section.line().starts("must")) {
                report.attempt(() -> edits.mustFail(section, header)).ifPresent(mustFail::add);
            }
        }
        ProcedureResolver.strangers(item.sections(), SECTIONS, report);
        if (report.errors() != before || !header.allNetworks || !header.allRulebooks) {
            return Optional.empty();
        }
        return Optional.of(header.procedure(
                item.name().value(), base.get().body(), all, mustFail, item.name().span()));
    }

    /** {@return the names that the base declares} */
    private Scope scope(Header header) {
        Scope scope = Scope.root(session.vocabulary(item));
        header.crew.keySet().forEach(scope::addPerson);
        header.parameters.values().forEach(p -> scope.inherit(p.name(), p.noun(), p.span()));
        header.temporaries.values().forEach(t -> scope.inherit(
                t.name(),
                new org.keeplit.condition.Noun(
                        Vocabulary.typeOf(t.kind().base()), ImmutableSet.of(t.kind().name()), t.kind().name()),
                t.span()));
        for (Permit permit : header.permits.values()) {
            scope.inherit(
                    permit.name(),
                    org.keeplit.condition.Noun.all(permit.type(), permit.type().phrase().replaceFirst("^a ", "")),
                    permit.span());
        }
        for (Procedure.Proof proof : header.proofs) {
            Optional<Network> network = session.knownNetwork(proof.network());
            network.ifPresent(n -> {
                if (!header.networks.contains(n)) {
                    header.networks.add(n);
                }
            });
        }
        return scope;
    }

    private Work work(Procedure base, Header header) {
        Map<String, Side> clamps = new LinkedHashMap<>();
        return new Work(session, report, header.crew, new LinkedHashMap<>(), clamps);
    }

    /** {@return the labels of a procedure's steps, those of its own edits included} */
    private static Set<String> labels(Procedure procedure) {
        Set<String> labels = new LinkedHashSet<>();
        collect(procedure.body(), labels);
        for (Edit edit : procedure.edits()) {
            if (edit instanceof Edit.Insert insert) {
                collect(insert.blocks(), labels);
            } else if (edit instanceof Edit.Replace replace) {
                collect(replace.blocks(), labels);
            }
        }
        return labels;
    }

    /** Collects the labels of some steps. */
    static void collect(ImmutableList<Block> blocks, Set<String> labels) {
        for (Block block : blocks) {
            if (block instanceof Block.Step step) {
                step.label().ifPresent(labels::add);
            } else if (block instanceof Block.Group group) {
                collect(group.parts(), labels);
            } else if (block instanceof Block.Stage stage) {
                collect(stage.parts(), labels);
            } else if (block instanceof Block.ForEachPhase each) {
                collect(each.parts(), labels);
            } else if (block instanceof Block.Repeat repeat) {
                collect(repeat.parts(), labels);
            } else if (block instanceof Block.IfFound choice) {
                collect(choice.then(), labels);
                collect(choice.otherwise(), labels);
            } else if (block instanceof Block.Call call) {
                collect(call.procedure().body(), labels);
            }
        }
    }
}
