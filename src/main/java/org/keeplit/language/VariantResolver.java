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
import java.util.function.Consumer;
import org.keeplit.condition.Noun;
import org.keeplit.condition.Term;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.network.Network;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Edit;
import org.keeplit.procedure.Permit;
import org.keeplit.procedure.Procedure;

/** Builds a variant: its base's header and body, with what it restates and what it changes. */
final class VariantResolver {
    private static final ImmutableSet<String> SECTIONS = ImmutableSet.of(
            "title",
            "keeps",
            "crew",
            "temporary",
            "hold",
            "clearance",
            "proved",
            "planned",
            "starts",
            "ends",
            "without",
            "step",
            "insert",
            "must");

    private final Item item;
    private final Session session;
    private final Report report;

    VariantResolver(Item item, Session session) {
        this.item = item;
        this.session = session;
        this.report = item.report();
    }

    /** {@return the variant, with what could be read of it} */
    Resolved<Procedure> resolve() {
        int before = report.errors();
        Optional<Shapes.VariantHeadContext> head = report.attempt(
                () -> Shape.of(item.head().line(), Shapes::variantHead, "variant NAME \"Title\" of PROCEDURE"));
        Resolved<Procedure> found = head.map(h -> session.procedure(Shape.lexeme(h.name(1)), report))
                .orElseGet(Resolved::nothing);
        if (found.thing().isEmpty()) {
            return Resolved.nothing();
        }
        Procedure base = found.thing().get();
        Header header = Header.of(base);
        // What is wrong in the base was told there; what it lacks for that reason is no mistake of the variant.
        header.allNetworks = found.sound();
        header.allRulebooks = found.sound();
        if (head.get().STRING() != null) {
            header.title = ((Lexeme) head.get().STRING().getSymbol()).value();
        }
        Scope scope = scope(header, item, session);
        new HeaderResolver(session, report, header, scope).read(item.sections());
        Set<String> labels = labels(base);
        EditResolver edits = new EditResolver(work(header), scope, labels, found.sound());
        List<Edit> all = new ArrayList<>(base.edits());
        List<Procedure.MustFail> mustFail = new ArrayList<>();
        for (Node section : item.sections()) {
            if (section.readable() && !section.line().starts("must")) {
                report.attempt(() -> edits.edit(section)).flatMap(e -> e).ifPresent(all::add);
            }
        }
        new CalledBooks(header, report).of(base.body(), all);
        for (Node section : item.sections()) {
            if (section.readable() && section.line().starts("must")) {
                report.attempt(() -> edits.mustFail(section, header)).ifPresent(mustFail::add);
            }
        }
        ProcedureResolver.strangers(item.sections(), SECTIONS, report);
        Procedure variant = header.procedure(
                item.name().value(), base.body(), all, mustFail, item.name().span());
        return Resolved.of(variant, report.errors() == before && header.soundReferences());
    }

    /** {@return the names that a base declares} @param header what was taken over from it */
    static Scope scope(Header header, Item item, Session session) {
        Scope scope = Scope.root(session.vocabulary(item));
        header.crew.keySet().forEach(scope::addPerson);
        header.parameters.values().forEach(p -> scope.inherit(p.name(), p.noun(), p.span()));
        header.temporaries
                .values()
                .forEach(t -> scope.inherit(
                        t.name(),
                        new Noun(
                                Vocabulary.typeOf(t.kind().base()),
                                ImmutableSet.of(t.kind().name()),
                                t.kind().name()),
                        t.span()));
        for (Permit permit : header.permits.values()) {
            scope.inherit(
                    permit.name(),
                    Noun.all(permit.type(), permit.type().phrase().replaceFirst("^a ", "")),
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

    private Work work(Header header) {
        return new Work(session, report, header.crew, new LinkedHashMap<>());
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
        steps(blocks, step -> step.label().ifPresent(labels::add));
    }

    /** Goes through all steps, those inside groups and calls included. */
    private static void steps(ImmutableList<Block> blocks, Consumer<Block.Step> visit) {
        for (Block block : blocks) {
            if (block instanceof Block.Step step) {
                visit.accept(step);
            } else if (block instanceof Block.Group group) {
                steps(group.parts(), visit);
            } else if (block instanceof Block.Stage stage) {
                steps(stage.parts(), visit);
            } else if (block instanceof Block.ForEachPhase each) {
                steps(each.parts(), visit);
            } else if (block instanceof Block.Repeat repeat) {
                steps(repeat.parts(), visit);
            } else if (block instanceof Block.IfFound choice) {
                steps(choice.then(), visit);
                steps(choice.otherwise(), visit);
            } else if (block instanceof Block.Call call) {
                steps(call.procedure().body(), visit);
            }
        }
    }
}
