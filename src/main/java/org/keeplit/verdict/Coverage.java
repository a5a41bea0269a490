package org.keeplit.verdict;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.keeplit.explore.RuleParts;
import org.keeplit.outcome.RuleResult;
import org.keeplit.outcome.RuleSeen;
import org.keeplit.rule.Rule;
import org.keeplit.rule.Rulebook;
import org.keeplit.text.Span;

/**
 * How far examples put some rulebooks to the test.
 *
 * @param books the rulebooks with their own rules; what they take over from others belongs to those
 */
public record Coverage(ImmutableList<Book> books) {

    /**
     * A rulebook.
     *
     * @param name its name
     * @param rules its own rules, in its order
     */
    public record Book(String name, ImmutableList<OfRule> rules) {}

    /**
     * A rule.
     *
     * @param rule the rule
     * @param exercised whether its case came up in some example
     * @param kept whether some example that passed shows it kept
     * @param broken whether some example that passed shows it broken
     * @param parts its questions with the answers that came up
     */
    public record OfRule(
            Rule rule, boolean exercised, boolean kept, boolean broken, ImmutableList<RuleSeen.PartSeen> parts) {
        /** {@return the questions that were not seen both true and false} */
        public ImmutableList<RuleSeen.PartSeen> missing() {
            return parts.stream().filter(p -> !p.isCovered()).collect(ImmutableList.toImmutableList());
        }

        /** {@return whether nothing is left to show} */
        public boolean isComplete() {
            return exercised && kept && broken && missing().isEmpty();
        }
    }

    /** {@return all rules} */
    public Stream<OfRule> rules() {
        return books.stream().flatMap(book -> book.rules().stream());
    }

    /** {@return whether every rule is complete} */
    public boolean isComplete() {
        return rules().allMatch(OfRule::isComplete);
    }

    /**
     * Works it out.
     *
     * @param books the rulebooks
     * @param examples what came of the examples
     * @return the coverage, in the order of the rulebooks
     */
    public static Coverage of(List<Rulebook> books, List<ExampleJudgement> examples) {
        Map<Span, List<RuleSeen.PartSeen>> seen = new LinkedHashMap<>();
        for (ExampleJudgement one : examples) {
            for (RuleSeen rule : one.seen()) {
                seen.merge(rule.rule().span(), rule.parts(), Coverage::both);
            }
        }
        ImmutableList.Builder<Book> all = ImmutableList.builder();
        for (Rulebook book : books) {
            ImmutableList.Builder<OfRule> rules = ImmutableList.builder();
            for (Rule rule : book.rules()) {
                if (rule.span().source().equals(book.span().source())) {
                    rules.add(of(rule, seen.get(rule.span()), examples));
                }
            }
            all.add(new Book(book.name(), rules.build()));
        }
        return new Coverage(all.build());
    }

    private static OfRule of(Rule rule, List<RuleSeen.PartSeen> seen, List<ExampleJudgement> examples) {
        List<ExampleJudgement> about = examples.stream()
                .filter(e -> e.seen().stream().anyMatch(s -> s.rule().span().equals(rule.span())))
                .toList();
        boolean exercised = about.stream().anyMatch(e -> e.judgement().outcome().rules().stream()
                .anyMatch(r -> r.rule().span().equals(rule.span()) && r.verdict() != RuleResult.Verdict.NOT_EXERCISED));
        return new OfRule(
                rule,
                exercised,
                about.stream().anyMatch(e -> e.keeps(rule.name())),
                about.stream().anyMatch(e -> e.breaks(rule.name())),
                seen == null ? unseen(rule) : ImmutableList.copyOf(seen));
    }

    private static ImmutableList<RuleSeen.PartSeen> unseen(Rule rule) {
        return RuleParts.of(rule).stream()
                .map(part -> new RuleSeen.PartSeen(part, false, false))
                .collect(ImmutableList.toImmutableList());
    }

    private static List<RuleSeen.PartSeen> both(List<RuleSeen.PartSeen> some, List<RuleSeen.PartSeen> more) {
        List<RuleSeen.PartSeen> all = new ArrayList<>();
        for (int i = 0; i < some.size(); i++) {
            all.add(some.get(i).and(more.get(i)));
        }
        return all;
    }
}
