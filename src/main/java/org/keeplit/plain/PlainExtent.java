package org.keeplit.plain;

import java.util.List;
import java.util.Map;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Term;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Network;
import org.keeplit.network.Phases;
import org.keeplit.network.Side;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.DeviceSet;

/** Which phases things have, and steps are done on. */
final class PlainExtent {
    private final Network network;
    private final Map<String, Term> brought;

    /** @param brought what each piece of temporary equipment is brought for */
    PlainExtent(Network network, Map<String, Term> brought) {
        this.network = network;
        this.brought = brought;
    }

    Phases of(Term term) {
        if (term instanceof Term.LineOf t) {
            boolean behind = t.side() == Side.LOAD;
            return behind && network.element(t.of().toString()).orElse(null) instanceof Element.Transformer bank
                    ? bank.secondaryPhases()
                    : of(t.of());
        } else if (term instanceof Term.BushingOf t) {
            return of(t.of());
        } else if (term instanceof Term.LeadOf t) {
            return of(t.of());
        } else if (term instanceof Term.NodeOf t) {
            return of(t.of());
        } else if (term instanceof Term.SiteOf) {
            return Phases.NONE;
        }
        String name = term.toString();
        if (brought.containsKey(name)) {
            return of(brought.get(name));
        }
        return network.element(name).map(Element::phases).orElse(network.nodes().getOrDefault(name, Phases.NONE));
    }

    /** {@return the phases of a thing, the neutral left out, in order} */
    List<Conductor> phases(Term term) {
        return of(term).list().stream().filter(p -> p != Conductor.N).toList();
    }

    /** {@return the phases on which a step is done; which devices feed a place is not known here, so they count with all three} */
    Phases of(Block.Step step) {
        Term object = object(step.action());
        Phases has = object != null ? of(object) : step.action() instanceof Action.Operate ? Phases.ABC : Phases.NONE;
        return step.phases() instanceof PhaseTerm.Given given ? given.phases().and(has) : has;
    }

    /** {@return what a step is done to, phase by phase; null for a step that has no phases, and for one on devices not known yet} */
    static Term object(Action action) {
        if (action instanceof Action.Operate a) {
            return a.object() instanceof DeviceSet.One one ? one.device() : null;
        } else if (action instanceof Action.MoveLead a) {
            return a.device();
        } else if (action instanceof Action.Install a) {
            return a.jumper();
        } else if (action instanceof Action.Remove a) {
            return a.jumper();
        } else if (action instanceof Action.Clamp a) {
            return a.jumper();
        } else if (action instanceof Action.Unclamp a) {
            return a.jumper();
        } else if (action instanceof Action.ApplyGround a) {
            return a.ground();
        } else if (action instanceof Action.RemoveGround a) {
            return a.ground();
        } else if (action instanceof Action.Run a) {
            return a.source();
        } else if (action instanceof Action.Prove a) {
            return a.of();
        } else if (action instanceof Action.TestDead a) {
            return a.point();
        } else if (action instanceof Action.WaitDead a) {
            return a.of();
        } else if (action instanceof Action.Work a) {
            return a.point();
        } else if (action instanceof Action.MeasureFigure a && a.figure().measure().perPhase()) {
            return a.figure().of();
        }
        return null;
    }
}
