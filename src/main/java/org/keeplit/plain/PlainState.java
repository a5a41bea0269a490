package org.keeplit.plain;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSortedSet;

/**
 * A state in words. What rules remember is not among them: states that differ in nothing else look alike.
 *
 * @param left the numbers of the acts that may still come up, in the order of the text, from 0
 * @param facts what is not as it was at the start, each as {@code FACT is VALUE}
 */
public record PlainState(ImmutableList<Integer> left, ImmutableSortedSet<String> facts) {}
