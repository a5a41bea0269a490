package org.keeplit.explore;

import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import org.keeplit.outcome.RuleResult;

/** What the compiled rules show before any state is looked at: rules that can never come up, or never be broken. */
final class RuleRemarks {
    private final BitSet comeUp = new BitSet();
    private final BitSet canBreak = new BitSet();

    /** @param instances those that are judged in states, before acts and after acts */
    RuleRemarks(List<List<List<RuleInstance>>> instances) {
        for (List<List<RuleInstance>> lists : instances) {
            for (List<RuleInstance> list : lists) {
                for (RuleInstance instance : list) {
                    comeUp.set(instance.number());
                    if (!isKept(instance)) {
                        canBreak.set(instance.number());
                    }
                }
            }
        }
    }

    /**
     * {@return a remark on a rule, or nothing}
     *
     * @param rule its number
     * @param bindings how many bindings it has
     */
    Optional<RuleResult.Remark> of(int rule, int bindings) {
        if (bindings == 0 || !comeUp.get(rule)) {
            return Optional.of(RuleResult.Remark.CANNOT_COME_UP);
        }
        return canBreak.get(rule) ? Optional.empty() : Optional.of(RuleResult.Remark.CANNOT_BE_BROKEN);
    }

    private static boolean isKept(RuleInstance instance) {
        return instance.body().equals(Node.Constant.TRUE) || instance.excuse().equals(Node.Constant.TRUE);
    }
}
