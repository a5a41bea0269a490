package org.keeplit.electric;

import com.google.common.collect.ImmutableList;
import org.keeplit.network.Network;

/** Numbers for what distinguishes one live conductor from another: its supply system and its clock angle. */
public final class Identities {
    /** Hours on the clock, 30 degrees each. */
    private static final int HOURS = 12;

    private final ImmutableList<String> supplies;

    /** Numbers the supplies of a network. @param network the network */
    public Identities(Network network) {
        this.supplies = network.supplies().asList();
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
