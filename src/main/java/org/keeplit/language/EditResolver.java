package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.network.Conductor;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Edit;
import org.keeplit.procedure.Procedure;
import org.keeplit.rule.Rule;
import org.keeplit.rule.Rulebook;
import org.keeplit.text.Problem;

/** Reads what a variant changes in the steps, and what must be found then. */
final class EditResolver {
    /** What can be found besides broken rules. */
    private static final ImmutableList<String> FINDINGS =
            ImmutableList.of("requirement", "stop", "cannot", "expectation", "ending", "flash", "stuck");

    private static final String STEP =
            "step A before step B; step A instead: SENTENCE; or step A on phase B instead of C";

    private final Work work;
    private final Scope scope;
    private final Set<String> labels;
    private final boolean allLabels;

    /**
     * A reader.
     *
     * @param labels the labels of the base; those of inserted steps are added on the way
     * @param allLabels whether these are all; a base with mistakes may have more
     */
    EditResolver(Work work, Scope scope, Set<String> labels, boolean allLabels) {
        this.allLabels = allLabels;
        this.work = work;
        this.scope = scope;
        this.labels = new LinkedHashSet<>(labels);
    }

    /** {@return the change that a section says, or empty if it is another kind of section} */
    Optional<Edit> edit(Node section) {
        Line line = section.line();
        return switch (line.head().getText()) {
            case "without" -> {
                var parts = Shape.of(line, Shapes::withoutLine, "without step A on phase B");
                yield Optional.of(new Edit.Without(ref(parts.stepRef()), line.span()));
            }
            case "insert" -> Optional.of(insert(section));
            case "step" -> Optional.of(step(section));
            default -> Optional.empty();
        };
    }

    private Edit insert(Node section) {
        var parts = Shape.of(section.line(), Shapes::insertLine, "insert before step A");
        Set<String> before = new LinkedHashSet<>(labels);
        ImmutableList<Block> blocks = blocks(section);
        Set<String> inserted = new LinkedHashSet<>();
        VariantResolver.collect(blocks, inserted);
        inserted.stream().filter(before::contains).findFirst().ifPresent(label -> {
            throw new Misread(Code.DUPLICATE
                    .at(section.span(), "an inserted step has the label " + label + ", which another step has already")
                    .help("give it a label of its own"));
        });
        return new Edit.Insert(parts.BEFORE() != null, ref(parts.stepRef()), blocks, section.span());
    }

    private ImmutableList<Block> blocks(Node section) {
        int before = work.report().errors();
        ImmutableList<Block> blocks = new BlockResolver(work, scope).resolve(section.children());
        if (blocks.isEmpty() && !section.unclosed() && work.report().errors() == before) {
            throw new Misread(Code.EMPTY_GROUP.at(section.span(), "this group has no steps"));
        }
        VariantResolver.collect(blocks, labels);
        return blocks;
    }

    private Edit step(Node section) {
        Line line = section.line();
        Shapes.StepLineContext parts = Shape.of(line, Shapes::stepLine, STEP);
        if (parts instanceof Shapes.MoveContext move) {
            return new Edit.Move(ref(move.stepRef(0)), move.BEFORE() != null, ref(move.stepRef(1)), line.span());
        }
        if (parts instanceof Shapes.ReplaceContext replace) {
            int colon = replace.COLON().getSymbol().getTokenIndex();
            List<Lexeme> sentence =
                    line.lexemes().subList(colon + 1, line.lexemes().size());
            Edit.Ref ref = ref(replace.stepRef());
            Block block = named(new StepResolver(work, scope).resolve(section, sentence), ref.label());
            VariantResolver.collect(ImmutableList.of(block), labels);
            return new Edit.Replace(ref, ImmutableList.of(block), line.span());
        }
        if (parts instanceof Shapes.ReplaceBlockContext replace) {
            return new Edit.Replace(ref(replace.stepRef()), blocks(section), line.span());
        }
        Shapes.OtherPhaseContext other = (Shapes.OtherPhaseContext) parts;
        Edit.Ref on = ref(other.stepRef());
        Conductor there = on.phase()
                .orElseThrow(() -> new Misread(Code.UNFINISHED
                        .at(on.span(), "the edit does not say on which phase the step is done now")
                        .help("write step " + on.label() + " on phase B instead of C")));
        Conductor meant = PhaseReader.single((Lexeme) other.WORD().getSymbol());
        return new Edit.OtherPhase(new Edit.Ref(on.label(), Optional.of(meant), on.span()), there, line.span());
    }

    /** {@return a step that goes by the label of the one that it replaces, if it has none of its own} */
    private static Block named(Block block, String label) {
        return block instanceof Block.Step s && s.label().isEmpty()
                ? s.withLabel(Optional.of(label))
                : block;
    }

    private Edit.Ref ref(Shapes.StepRefContext parts) {
        Lexeme label = Shape.lexeme(parts.name());
        if (allLabels && !labels.contains(label.value())) {
            throw new Misread(unknownStep(label));
        }
        Optional<Conductor> phase = parts.onPhase() == null
                ? Optional.empty()
                : Optional.of(PhaseReader.single((Lexeme) parts.onPhase().WORD().getSymbol()));
        return new Edit.Ref(label.value(), phase, label.span());
    }

    private Problem unknownStep(Lexeme label) {
        return Code.UNKNOWN_STEP
                .at(label.span(), "no step has the label " + Cursor.clip(label.value()))
                .help(Suggestions.didYouMean(label.value(), labels)
                        .orElse(
                                labels.isEmpty()
                                        ? "give the step a label in the procedure: LABEL: east opens R"
                                        : "the labels are " + Suggestions.list(labels, "and")));
    }

    /** {@return what must be found} */
    Procedure.MustFail mustFail(Node section, Header header) {
        Line line = section.line();
        var parts = Shape.of(line, Shapes::mustFailLine, "must fail on RULE at STEP on phase B");
        List<Lexeme> named = parts.ruleName().name().stream().map(Shape::lexeme).toList();
        Optional<Lexeme> rulebook = named.size() > 1 ? Optional.of(named.get(0)) : Optional.empty();
        Lexeme rule = named.get(named.size() - 1);
        List<String> known = new ArrayList<>();
        List<String> books = new ArrayList<>();
        for (Rulebook book : header.keeps) {
            if (rulebook.isEmpty() || rulebook.get().value().equals(book.name())) {
                book.rules().stream().map(Rule::name).forEach(known::add);
                book.rules().stream().filter(r -> r.name().equals(rule.value())).forEach(r -> books.add(book.name()));
            }
        }
        boolean isKind = rulebook.isEmpty() && FINDINGS.contains(rule.value());
        if (books.size() + (isKind ? 1 : 0) > 1) {
            throw new Misread(Code.TWO_READINGS
                    .at(rule.span(), Cursor.clip(rule.value()) + " may be "
                            + (isKind ? "the sort of finding, or " : "") + "the rule of "
                            + Suggestions.list(books, "or"))
                    .help("name the rulebook: " + books.get(0) + "/" + rule.value()));
        }
        ImmutableSet<String> all =
                ImmutableSet.<String>builder().addAll(known).addAll(rulebook.isPresent() ? ImmutableSet.of() : FINDINGS).build();
        if (!all.contains(rule.value()) && header.allRulebooks) {
            throw new Misread(Code.UNKNOWN_RULE
                    .at(rule.span(), "no rulebook that the procedure keeps has a rule " + Cursor.clip(rule.value()))
                    .help(Suggestions.didYouMean(rule.value(), all)
                            .orElse("the rules are " + Suggestions.list(all, "and"))));
        }
        Optional<Lexeme> label = Optional.ofNullable(parts.name()).map(Shape::lexeme);
        // An event is called by its name, like a step by its label.
        boolean event = label.isPresent()
                && header.keeps.stream().flatMap(b -> b.chances().stream()).anyMatch(c -> c.name().equals(label.get().value()));
        label.filter(l -> allLabels && !event && !labels.contains(l.value()) && !l.isText())
                .ifPresent(l -> {
                    throw new Misread(unknownStep(l));
                });
        Optional<Conductor> phase = Optional.ofNullable(parts.onPhase())
                .map(p -> PhaseReader.single((Lexeme) p.WORD().getSymbol()));
        return new Procedure.MustFail(rulebook.map(Lexeme::value), rule.value(), label.map(Lexeme::value), phase, line.span());
    }
}
