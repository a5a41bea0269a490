package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import java.util.stream.Collectors;
import org.keeplit.condition.ActKind;
import org.keeplit.condition.Condition;
import org.keeplit.rule.Rule;
import org.keeplit.rule.Trigger;

/** Says what a rule asks, from its typed tree. */
public final class RuleWords {
    private final ConditionWords words = new ConditionWords(Environment.EMPTY);
    private final ImmutableList.Builder<String> lines = ImmutableList.builder();

    private RuleWords() {}

    /**
     * {@return what a rule asks, a line each part, parts set in by two spaces}
     *
     * @param rule the rule
     */
    public static ImmutableList<String> of(Rule rule) {
        RuleWords all = new RuleWords();
        all.rule(rule);
        return all.lines.build();
    }

    private void rule(Rule rule) {
        boolean moments = rule.form() == Rule.Form.EVENTUALLY && !rule.until().isEmpty();
        String asked = rule.form() == Rule.Form.EVENTUALLY ? ", this must have become so since:" : ", this must be so:";
        line(0, head(rule) + (moments ? "" : asked));
        rule.scope().filter(RuleWords::isNested).ifPresent(c -> {
            line(1, "as long as");
            tree(c, 2);
            line(1, "holds");
        });
        if (!moments) {
            tree(rule.body(), 1);
        }
        rule.unless().ifPresent(c -> {
            line(0, "unless");
            tree(c, 1);
        });
    }

    private String head(Rule rule) {
        String binders = rule.binders().stream().map(b -> "any " + binder(b)).collect(Collectors.joining(" and "));
        String with = binders.isEmpty() ? "" : ", for " + binders;
        return switch (rule.form()) {
            case ALWAYS -> "In every state" + with;
            case WHILE -> "In every state in which "
                    + rule.scope().filter(c -> !isNested(c)).map(words::say).orElse("the scope holds") + with;
            case BEFORE -> "Before " + triggers(rule) + with;
            case AFTER -> "After " + triggers(rule) + with;
            case BETWEEN -> "In every state from " + (rule.triggers().isEmpty() ? "the start" : triggers(rule)) + " to "
                    + (rule.until().isEmpty() ? "the end" : words.moments(rule.until())) + with;
            case EVENTUALLY -> "At each ending, once " + triggers(rule) + " has happened" + with
                    + (rule.until().isEmpty() ? "" : ", " + words.moments(rule.until()) + " must have come afterwards");
            case AT_START -> "At the start" + with;
            case AT_END -> "At the end" + with;
        };
    }

    private String triggers(Rule rule) {
        String acts = rule.triggers().stream()
                .map(t -> t.act().words())
                .distinct()
                .collect(Collectors.joining(" or "));
        Trigger one = rule.triggers().get(0);
        StringBuilder text = new StringBuilder(acts);
        if (one.act() == ActKind.SETTING) {
            text.append(' ').append(one.words().get(0)).append(" of any ").append(binder(one.binders().get(0)))
                    .append(" to ").append(one.words().get(1));
        } else if (one.act().takesText()) {
            text.append(" \"").append(one.words().get(0)).append('"');
        } else if (one.act() == ActKind.GOING_ALOFT && one.binders().size() == 2) {
            text.append(" at any ").append(binder(one.binders().get(1)))
                    .append(" by any ").append(binder(one.binders().get(0)));
        } else {
            one.binders().forEach(b -> text.append(one.act() == ActKind.COMING_DOWN ? " by any " : " any ").append(binder(b)));
        }
        one.phase().ifPresent(p -> text.append(" on phase ").append(p));
        one.by().ifPresent(p -> text.append(" by any person ").append(p));
        return text.toString();
    }

    private String binder(Condition.Binder binder) {
        return binder.noun().words() + " " + binder.variable()
                + binder.of().map(t -> " of " + words.term(t)).orElse("")
                + words.such(binder);
    }

    private void tree(Condition condition, int depth) {
        if (condition instanceof Condition.All all && all.parts().size() > 1) {
            line(depth, "all of these:");
            all.parts().forEach(p -> tree(p, depth + 1));
        } else if (condition instanceof Condition.One one && one.parts().size() > 1) {
            line(depth, "one of these:");
            one.parts().forEach(p -> tree(p, depth + 1));
        } else if (condition instanceof Condition.Quantified some && isNested(some.body())) {
            String how = some.quantifier() == Condition.Quantifier.EVERY ? "for every "
                    : some.quantifier() == Condition.Quantifier.SOME ? "for some " : "for no ";
            line(depth, how + binder(some.binder()) + ":");
            tree(some.body(), depth + 1);
        } else if (condition instanceof Condition.Not not && isNested(not.body())) {
            line(depth, "not:");
            tree(not.body(), depth + 1);
        } else {
            line(depth, words.say(condition));
        }
    }

    private static boolean isNested(Condition condition) {
        return condition instanceof Condition.All all && all.parts().size() > 1
                || condition instanceof Condition.One one && one.parts().size() > 1
                || condition instanceof Condition.Quantified some && isNested(some.body())
                || condition instanceof Condition.Not not && isNested(not.body());
    }

    private void line(int depth, String text) {
        lines.add("  ".repeat(depth) + text);
    }
}
