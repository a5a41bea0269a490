package org.keeplit.card;

import com.google.common.collect.ImmutableList;
import java.util.Optional;
import org.keeplit.outcome.CalledOutage;
import org.keeplit.page.Proof;
import org.keeplit.procedure.Instance;
import org.keeplit.verdict.Basis;

/**
 * All that cards tell of a procedure on one place.
 *
 * @param instance the procedure, where it was proved and from which start
 * @param proof what was proved of it
 * @param basis what the proof rests on
 * @param hash a short hash of everything that the proof read
 * @param approach the approach distances, in words; empty if the network states no voltage
 * @param outage what a called outage takes, where the procedure holds
 * @param hazards what the rules that came up guard against, one line a rule
 * @param sources what may put voltage on the site, and how it is held
 * @param steps a card for each step, in the order of the text
 * @param feeder the neighbourhood at the start as SVG, if a device is worked on
 * @param network the whole network at the start as SVG, what the procedure leaves alone folded
 * @param site the work site at the start as SVG, if there is one
 */
public record CardSet(
        Instance instance,
        Proof proof,
        Basis basis,
        String hash,
        ImmutableList<String> approach,
        Optional<CalledOutage> outage,
        ImmutableList<String> hazards,
        ImmutableList<String> sources,
        ImmutableList<StepCard> steps,
        Optional<String> feeder,
        String network,
        Optional<String> site) {}
