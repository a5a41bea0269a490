package org.keeplit.command;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.keeplit.Keeplit;
import org.keeplit.explore.RelatedRules;
import org.keeplit.explore.RuleWords;
import org.keeplit.language.Library;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Watcher;
import org.keeplit.procedure.Example;
import org.keeplit.procedure.Examples;
import org.keeplit.rule.Overridden;
import org.keeplit.rule.Rule;
import org.keeplit.rule.Rulebook;
import org.keeplit.text.Problems;
import org.keeplit.verdict.ExampleJudgement;
import org.keeplit.verdict.Judgement;
import org.keeplit.verdict.RulePage;

/** Puts together what there is to say about rules. */
final class RulePages {
    private final Library library;
    private final Watcher watcher;
    private final Problems problems;

    private RulePages(Library library, Watcher watcher, Problems problems) {
        this.library = library;
        this.watcher = watcher;
        this.problems = problems;
    }

    /**
     * {@return the pages of the rules of a name; none if there is none}
     *
     * @param library what was read
     * @param name the rule's name, perhaps after that of its rulebook: {@code BOOK/RULE}
     * @param watcher is told how examples and procedures get on
     * @param problems collects what does not fit
     */
    static List<RulePage> of(Library library, String name, Watcher watcher, Problems problems) {
        RulePages pages = new RulePages(library, watcher, problems);
        List<RulePage> all = new ArrayList<>();
        for (Rulebook book : library.rulebooks().values()) {
            for (Rule rule : book.rules()) {
                boolean own = rule.span().source().equals(book.span().source());
                if (own && (rule.name().equals(name) || (book.name() + "/" + rule.name()).equals(name))) {
                    all.add(pages.page(book, rule));
                }
            }
        }
        return all;
    }

    private RulePage page(Rulebook book, Rule rule) {
        List<ExampleJudgement> about = examples(rule);
        List<Rule> all = new ArrayList<>(book.rules());
        library.rulebooks().values().forEach(b -> all.addAll(b.rules()));
        List<Overridden> overridden = library.rulebooks().values().stream()
                .flatMap(b -> b.overridden().stream())
                .filter(o -> o.rule().equals(rule.name()) && o.rulebook().equals(book.name()))
                .distinct()
                .toList();
        return new RulePage(
                book.name(),
                rule,
                RuleWords.of(rule),
                ImmutableList.copyOf(overridden),
                nearest(about.stream().filter(e -> e.keeps(rule.name())).toList()),
                nearest(about.stream().filter(e -> e.breaks(rule.name())).toList()),
                judgements(rule),
                RelatedRules.of(rule, all));
    }

    /** {@return what came of the examples that have to do with a rule} */
    private List<ExampleJudgement> examples(Rule rule) {
        List<ExampleJudgement> all = new ArrayList<>();
        for (Examples group : library.examples().values()) {
            for (Example example : group.examples()) {
                boolean asks = example.procedure().keeps().stream()
                        .flatMap(b -> b.rules().stream())
                        .anyMatch(r -> r.span().equals(rule.span()));
                if (asks) {
                    all.addAll(Keeplit.test(library, group, example, Limits.USUAL, watcher, problems));
                }
            }
        }
        return all;
    }

    /** {@return the first example that is about some rules only, else the first at all} */
    private static Optional<ExampleJudgement> nearest(List<ExampleJudgement> all) {
        return all.stream().min(Comparator.comparing(e -> e.example().of().isEmpty()));
    }

    private ImmutableList<Judgement> judgements(Rule rule) {
        boolean kept = library.givenProcedures().stream()
                .flatMap(p -> p.keeps().stream())
                .flatMap(b -> b.rules().stream())
                .anyMatch(r -> r.span().equals(rule.span()));
        if (!kept) {
            return ImmutableList.of();
        }
        return Keeplit.check(library, Limits.USUAL, watcher, problems).stream()
                .filter(j -> j.outcome().rules().stream().anyMatch(r -> r.rule().span().equals(rule.span())))
                .collect(ImmutableList.toImmutableList());
    }
}
