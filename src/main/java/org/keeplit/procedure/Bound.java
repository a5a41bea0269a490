package org.keeplit.procedure;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.Optional;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Term;
import org.keeplit.network.Element;
import org.keeplit.network.Network;
import org.keeplit.network.Phases;
import org.keeplit.network.Side;

/**
 * A procedure bound to a network: parameters replaced, calls written in, {@code for each phase} written out,
 * edits applied. Its body holds only {@link Block.Step}, {@link Block.Group}, {@link Block.Stage},
 * {@link Block.Repeat} and {@link Block.IfFound}.
 *
 * @param procedure the procedure as written
 * @param network the network
 * @param arguments the objects for the parameters
 * @param temporaries the temporary equipment, its {@code of} bound
 * @param permits the holds and clearances, bound
 * @param outages the loads that go without supply by plan
 * @param starts the lines of {@code starts with}, bound
 * @param body the steps
 * @param ends the conditions at the end, bound
 */
public record Bound(
        Procedure procedure,
        Network network,
        ImmutableMap<String, Term> arguments,
        ImmutableList<Temporary> temporaries,
        ImmutableList<Permit> permits,
        ImmutableList<String> outages,
        ImmutableList<Procedure.Start> starts,
        ImmutableList<Block> body,
        ImmutableList<Condition> ends) {

    /**
     * {@return the temporary family of that name}
     *
     * @param name the name
     */
    public Optional<Temporary> temporary(String name) {
        return temporaries.stream().filter(t -> t.name().equals(name)).findFirst();
    }

    /**
     * {@return the hold or clearance of that name}
     *
     * @param name the name
     */
    public Optional<Permit> permit(String name) {
        return permits.stream().filter(p -> p.name().equals(name)).findFirst();
    }

    /**
     * The phases of an object that a bound term names.
     *
     * @param term the term
     * @return the phases; none for objects that have none, such as people
     */
    public Phases phasesOf(Term term) {
        return phasesOf(network, temporaries, term);
    }

    static Phases phasesOf(Network network, ImmutableList<Temporary> temporaries, Term term) {
        if (term instanceof Term.LineOf line) {
            // Behind a centre tap, or two units in open delta, hang other conductors than before it.
            return line.side() == Side.LOAD && network.element(line.of().toString()).orElse(null) instanceof Element.Transformer transformer
                    ? transformer.secondaryPhases()
                    : phasesOf(network, temporaries, line.of());
        } else if (term instanceof Term.BushingOf bushing) {
            return phasesOf(network, temporaries, bushing.of());
        } else if (term instanceof Term.LeadOf lead) {
            return phasesOf(network, temporaries, lead.of());
        } else if (term instanceof Term.NodeOf node) {
            return phasesOf(network, temporaries, node.of());
        } else if (term instanceof Term.Name name) {
            for (Temporary temporary : temporaries) {
                if (temporary.name().equals(name.name())) {
                    return phasesOf(network, temporaries, temporary.of());
                }
            }
            Optional<Element> element = network.element(name.name());
            if (element.isPresent()) {
                return element.get().phases();
            }
            return network.nodes().getOrDefault(name.name(), Phases.NONE);
        }
        return Phases.NONE;
    }
}
