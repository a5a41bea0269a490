package org.keeplit.procedure;

import org.keeplit.condition.Term;

/** One device, or the devices that feed a place when the procedure starts. */
public sealed interface DeviceSet {
    /**
     * One device.
     *
     * @param device the device
     */
    record One(Term device) implements DeviceSet {}

    /**
     * The reclosing devices that feed an object's structure in the starting state, the object itself left out.
     *
     * @param of the device or regulator under work
     */
    record Feeding(Term of) implements DeviceSet {}
}
