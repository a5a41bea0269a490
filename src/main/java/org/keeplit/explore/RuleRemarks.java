package org.keeplit.explore;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.keeplit.outcome.RuleResult;

/** What the compiled rules show before any state is looked at: rules that can never come up, or never be broken. */
final class RuleRemarks {
    private RuleRemarks() {}

    /**
     * {@return a remark on a rule, or nothing}
     *
     * @param rule its number
     * @param bindings how many bindings it has
     * @param inStates the instances that are judged in states
     * @param before for each act those that are judged before it
     * @param after for each act those that are judged after it
     */
    static Optional<RuleResult.Remark> of(
            int rule,
            int bindings,
            List<List<RuleInstance>> inStates,
            List<List<RuleInstance>> before,
            List<List<RuleInstance>> after) {
        List<RuleInstance> own = new ArrayList<>();
        for (List<List<RuleInstance>> lists : List.of(inStates, before, after)) {
            lists.forEach(list -> list.stream().filter(i -> i.number() == rule).forEach(own::add));
        }
        if (bindings == 0 || own.isEmpty()) {
            return Optional.of(RuleResult.Remark.CANNOT_COME_UP);
        }
        if (own.stream().allMatch(RuleRemarks::isKept)) {
            return Optional.of(RuleResult.Remark.CANNOT_BE_BROKEN);
        }
        return Optional.empty();
    }

    private static boolean isKept(RuleInstance instance) {
        return instance.body().equals(Node.Constant.TRUE) || instance.excuse().equals(Node.Constant.TRUE);
    }
}
