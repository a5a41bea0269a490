package org.keeplit.plain;

import org.keeplit.network.Network;

/** Made networks for tests of other rooms. */
public final class MadeNetworks {
    private MadeNetworks() {}

    /** {@return a small network} @param seed stands for it */
    public static Network of(long seed) {
        return new MadePositions(seed).network();
    }
}
