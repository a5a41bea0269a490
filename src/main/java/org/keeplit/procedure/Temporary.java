package org.keeplit.procedure;

import org.keeplit.condition.Term;
import org.keeplit.network.Kind;
import org.keeplit.text.Span;

/**
 * A family of temporary equipment, one piece for each phase of an object.
 *
 * @param name the name that steps use
 * @param kind its kind
 * @param of the object whose phases count
 * @param span where declared
 */
public record Temporary(String name, Kind kind, Term of, Span span) {}
