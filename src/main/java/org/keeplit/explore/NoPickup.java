package org.keeplit.explore;

/** An event trips a device of which the network does not state at which current it trips, so that nothing is known of its trips. */
final class NoPickup extends RuntimeException {
    private static final long serialVersionUID = 1;

    /** @param device the device */
    NoPickup(String device) {
        super(device);
    }
}
