package org.keeplit.outcome;

import com.google.common.collect.ImmutableSet;

/**
 * What a called outage takes: the devices to open so that nothing feeds the structures of the job, and who is without supply then.
 *
 * @param devices the devices, in the order of the network
 * @param loads how many loads lose supply on some phase
 * @param customers how many customers they are
 */
public record CalledOutage(ImmutableSet<String> devices, int loads, int customers) {}
