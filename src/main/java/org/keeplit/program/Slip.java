package org.keeplit.program;

import com.google.common.collect.ImmutableList;
import org.keeplit.outcome.SlipKind;

/**
 * One human slip at one act.
 *
 * @param kind what goes wrong
 * @param act the number of the act at which it does
 * @param words what is done instead, in words
 * @param primitives what is done instead; of no meaning where the act is only left out, repeated or moved
 */
public record Slip(SlipKind kind, int act, String words, ImmutableList<Primitive> primitives) {}
