package org.keeplit.network;

import java.util.Optional;
import org.keeplit.unit.Quantity;

/**
 * How far a contact is made for a duty.
 *
 * @param current the most current through it, in ampere: before it opens, or once it is closed; nothing if none is stated
 * @param voltage the most voltage across it, in volt: once it is open, or before it closes; nothing if none is stated
 */
public record DutyLimit(Optional<Quantity> current, Optional<Quantity> voltage) {
    /** No limit is stated. */
    public static final DutyLimit NONE = new DutyLimit(Optional.empty(), Optional.empty());

    /** {@return whether no limit is stated} */
    public boolean isNone() {
        return current.isEmpty() && voltage.isEmpty();
    }
}
