package org.keeplit.procedure;

import com.google.common.collect.ImmutableList;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;
import org.keeplit.text.Span;

/**
 * A hold-off or a clearance that the procedure obtains.
 *
 * @param name the name that steps use
 * @param type {@link Type#HOLD} or {@link Type#CLEARANCE}
 * @param target the device or regulator at whose structure the work is
 * @param heldAt the devices named when it is issued
 * @param holder the person who holds it
 * @param span where declared
 */
public record Permit(
        String name, Type type, Term target, ImmutableList<DeviceSet> heldAt, Term holder, Span span) {}
