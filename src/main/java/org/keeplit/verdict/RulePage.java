package org.keeplit.verdict;

import com.google.common.collect.ImmutableList;
import java.util.Optional;
import org.keeplit.rule.Overridden;
import org.keeplit.rule.Rule;

/**
 * What there is to say about a rule.
 *
 * @param rulebook the name of its rulebook
 * @param rule the rule
 * @param asks what it asks, in words, a line each part
 * @param overridden where another rulebook replaces or drops it
 * @param keeping an example that keeps it
 * @param breaking an example that breaks it
 * @param judgements what came of it in procedures
 * @param related the names of rules that are judged alike
 */
public record RulePage(
        String rulebook,
        Rule rule,
        ImmutableList<String> asks,
        ImmutableList<Overridden> overridden,
        Optional<ExampleJudgement> keeping,
        Optional<ExampleJudgement> breaking,
        ImmutableList<Judgement> judgements,
        ImmutableList<String> related) {}
