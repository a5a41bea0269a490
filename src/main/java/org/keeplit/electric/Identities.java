package org.keeplit.electric;

import com.google.common.collect.ImmutableList;
import java.util.stream.Stream;

/** Numbers for what distinguishes one live conductor from another: its supply system and its clock angle. */
public final class Identities {
    /** Hours on the clock, 30 degrees each. */
    private static final int HOURS = 12;

    private final ImmutableList<String> supplies;

    /** Numbers the supplies of a grid: the network's, and each temporary source is one of its own. @param grid the grid */
    public Identities(Grid grid) {
        this.supplies = Stream.concat(
                        grid.network().supplies().stream(),
                        grid.machines().stream().map(m -> m.family().name()))
                .distinct()
                .collect(ImmutableList.toImmutableList());
    }

    /** {@return the number of an identity} @param supply the supply system @param clock its lag in hours */
    int of(String supply, int clock) {
        return supplies.indexOf(supply) * HOURS + Math.floorMod(clock, HOURS);
    }

    /** {@return an identity turned by some hours} @param identity the identity @param hours the further lag */
    static int turned(int identity, int hours) {
        return identity / HOURS * HOURS + Math.floorMod(identity % HOURS + hours, HOURS);
    }

    /** {@return whether two identities belong to one supply system} */
    static boolean sameSupply(int one, int other) {
        return one / HOURS == other / HOURS;
    }

    /** {@return the lag in hours of an identity} @param identity the identity */
    static int clock(int identity) {
        return identity % HOURS;
    }

    /** {@return an identity in words} @param identity the identity */
    public String describe(int identity) {
        return supplies.get(identity / HOURS) + " at " + identity % HOURS * 30 + " degrees";
    }
}
