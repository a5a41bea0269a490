package org.keeplit.network;

import com.google.common.collect.ImmutableList;

/**
 * A setting of a device, such as reclosing on or blocked.
 *
 * @param name its name
 * @param values the values that it can take; the first is the normal one
 * @param each whether each single-phase unit has its own
 */
public record Mode(String name, ImmutableList<String> values, boolean each) {
    /** The mode that every reclosing kind has. */
    public static final String RECLOSING = "reclosing";
    /** The mode of the ground trip. */
    public static final String GROUND_TRIP = "ground-trip";
    /** The mode of the phase trip. */
    public static final String PHASE_TRIP = "phase-trip";
    /** The mode of all tripping. */
    public static final String TRIP = "trip";
    /** The mode of a scheme that closes a tie when one side loses supply. */
    public static final String SCHEME = "scheme";
    /** The mode of a regulator's control. */
    public static final String CONTROL = "control";
    /** The mode of a control's own supply. */
    public static final String CONTROL_POWER = "control-power";
    /** The mode of operation from the control desk. */
    public static final String REMOTE = "remote";
    /** The value that keeps something from acting by itself. */
    public static final String BLOCKED = "blocked";

    /** {@return the normal value} */
    public String normal() {
        return values.get(0);
    }
}
