package org.keeplit.plain;

import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;

/**
 * What the plain evaluator found.
 *
 * @param states how many states were reached
 * @param roots the length of the shortest way to each root finding: by the rule's name, or by the word for the kind of
 *     finding and the number of its step
 * @param later the names of the rules that are broken only after another finding
 * @param exercised the names of the rules whose case came up
 * @param complete whether all states were reached within the limit
 */
public record PlainResult(
        int states,
        ImmutableMap<String, Integer> roots,
        ImmutableSet<String> later,
        ImmutableSet<String> exercised,
        boolean complete) {}
