package org.keeplit.plain;

import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.Map;
import java.util.TreeMap;

/**
 * What the plain evaluator found.
 *
 * @param states how many states were reached
 * @param places each place at which something breaks first
 * @param later the rules that are broken only after another finding, as {@code RULEBOOK/RULE}
 * @param exercised the rules whose case came up, as {@code RULEBOOK/RULE}
 * @param complete whether all states were reached within the limit
 */
public record PlainResult(
        int states,
        ImmutableMap<PlainPlace, Root> places,
        ImmutableSet<String> later,
        ImmutableSet<String> exercised,
        boolean complete) {

    /**
     * What breaks at a place with nothing broken before.
     *
     * @param length how many acts and reactions the shortest way there has
     * @param step the number of the step there; -1 where it is at no step
     * @param bindings in how many ways the rule's variables can be bound so that it breaks there; 0 for what is no rule, and for cautions
     * @param stops whether it breaks the procedure; a caution or advice does not
     */
    public record Root(int length, int step, int bindings, boolean stops) {}

    /**
     * {@return the length of the shortest way to each root finding: by the rule's name, or by the word for the sort of finding and
     * the number of its step}
     */
    public ImmutableMap<String, Integer> roots() {
        Map<String, Integer> all = new TreeMap<>();
        places.forEach((place, root) -> {
            boolean numbered = place.name().isEmpty() && root.step() >= 0 && !place.sort().equals("flash");
            String name = place.name().isEmpty() ? place.sort() + (numbered ? " " + root.step() : "") : place.name();
            all.merge(name, root.length(), Math::min);
        });
        return ImmutableMap.copyOf(all);
    }
}
