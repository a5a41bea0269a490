package org.keeplit.network;

import com.google.common.collect.ImmutableMap;
import java.util.Optional;
import org.keeplit.text.Span;

/**
 * Where the wires of an overhead line hang at its poles.
 *
 * @param name its name
 * @param positions where each wire hangs; some conductors may be missing
 * @param neutral the neutral's conductor in the equipment files, if there is a neutral
 * @param span where it is declared
 */
public record Spacing(
        String name, ImmutableMap<Conductor, Position> positions, Optional<String> neutral, Span span) {
    /**
     * The place of one wire.
     *
     * @param across how far it hangs to one side, in metres; less than 0 for the other side
     * @param height how high it hangs, in metres
     */
    public record Position(double across, double height) {}

    /** {@return the conductors that have a place} */
    public Phases conductors() {
        return positions.keySet().stream().map(Phases::of).reduce(Phases.NONE, Phases::or);
    }

    /** {@return the phases that have a place} */
    public Phases phases() {
        return conductors().and(Phases.ABC);
    }
}
