package org.keeplit.procedure;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
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
 * @param with the people and the temporary equipment of the crew that works under it, by their names; nobody if that was not said
 * @param span where declared
 */
public record Permit(
        String name,
        Type type,
        Term target,
        ImmutableList<DeviceSet> heldAt,
        Term holder,
        ImmutableSet<String> with,
        Span span) {
    /**
     * Whether somebody works, or something is used, under it. Where no crew is named, that is everybody and everything: nobody is
     * forgotten because a line is short.
     *
     * @param other the name of a person or of temporary equipment
     * @return whether it counts for them
     */
    public boolean includes(String other) {
        return with.isEmpty() || with.contains(other) || holder.toString().equals(other);
    }
}
