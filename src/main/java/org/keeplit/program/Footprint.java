package org.keeplit.program;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Mode;
import org.keeplit.network.Place;
import org.keeplit.network.Trait;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.Bound;

/** Asks the layout for room for whatever an act may change. */
final class Footprint {
    private final Bound bound;
    private final Layout.Builder layout;
    private final Map<FieldKey.Clamp, List<Vertex>> spots;
    private final Set<String> sites;
    private final Map<String, List<String>> outcomes;
    private final Map<FieldKey.Count, Integer> opens = new HashMap<>();
    private int minutes;

    Footprint(
            Bound bound,
            Layout.Builder layout,
            Map<FieldKey.Clamp, List<Vertex>> spots,
            Set<String> sites,
            Map<String, List<String>> outcomes) {
        this.bound = bound;
        this.layout = layout;
        this.spots = spots;
        this.sites = sites;
        this.outcomes = outcomes;
    }

    void add(Primitive primitive) {
        if (primitive instanceof Primitive.MovePole p) {
            movePole(p);
        } else if (primitive instanceof Primitive.MoveEnd p) {
            FieldKey.End key = new FieldKey.End(p.device(), p.side(), p.phase(), p.end());
            layout.changes(key, key.value(p.onto()) + 1);
        } else if (primitive instanceof Primitive.MoveClamp p) {
            FieldKey.Clamp key = new FieldKey.Clamp(p.family(), p.phase(), p.clamp());
            layout.changes(key, spots.getOrDefault(key, List.of()).size() + 1);
        } else if (primitive instanceof Primitive.SetMode p) {
            setMode(p);
        } else if (primitive instanceof Primitive.RunToNeutral p) {
            layout.changes(new FieldKey.Tap(p.regulator(), p.phase()), 2);
        } else if (primitive instanceof Primitive.Carry p) {
            Element element = bound.network().element(p.device()).orElseThrow();
            for (Conductor phase : p.phases()) {
                layout.changes(
                        new FieldKey.Placed(p.device(), StartValues.unit(element, phase)), Place.values().length);
            }
        } else if (primitive instanceof Primitive.GoUp p) {
            layout.changes(new FieldKey.Where(p.person()), sites.size() + 1);
        } else if (primitive instanceof Primitive.ComeDown p) {
            layout.changes(new FieldKey.Where(p.person()), sites.size() + 1);
        } else if (primitive instanceof Primitive.Speak p) {
            layout.changes(new FieldKey.Permitted(p.permit()), FieldKey.Permitted.RELEASED + 1);
        } else if (primitive instanceof Primitive.MoveTag p) {
            layout.changes(new FieldKey.Tagged(p.device()), 2);
        } else if (primitive instanceof Primitive.Leave p) {
            layout.changes(new FieldKey.Where(p.person()), sites.size() + 2);
        } else if (primitive instanceof Primitive.CutOff p) {
            layout.changes(new FieldKey.CutOff(p.person()), 2);
        } else if (primitive instanceof Primitive.FailToTrip p) {
            layout.changes(new FieldKey.Failed(p.device()), 2);
        } else {
            addFact(primitive);
        }
    }

    /** A unit that trips does so once after an act at most, so the acts bound its counter. */
    void add(Reaction reaction, int times) {
        for (Conductor unit : Pickups.units(reaction.device())) {
            if (reaction.phases().contains(unit)) {
                layout.changes(new FieldKey.Pole(reaction.device().name(), unit), 2);
                if (!reaction.closes() && reaction.device().kind().has(Trait.COUNTS)) {
                    FieldKey.Count key = new FieldKey.Count(reaction.device().name(), unit);
                    layout.changes(key, opens.getOrDefault(key, 0) + times + 1);
                }
            }
        }
    }

    private void addFact(Primitive primitive) {
        if (primitive instanceof Primitive.Prove p) {
            layout.changes(proved(p), 2);
            if (p.proof() == Action.Proof.NEUTRAL) {
                layout.changes(new FieldKey.Tap(p.subject(), p.phase()), 2);
            }
        } else if (primitive instanceof Primitive.TestDead p) {
            layout.changes(Units.provedDead(p.vertex()), 2);
        } else if (primitive instanceof Primitive.Write p) {
            layout.changes(new FieldKey.Recorded(p.item()), 2);
        } else if (primitive instanceof Primitive.ComeOut p) {
            layout.changes(
                    new FieldKey.Found(p.item()),
                    outcomes.getOrDefault(p.item(), List.of()).size() + 1);
        } else if (primitive instanceof Primitive.Pass p) {
            minutes += minutes(p);
            layout.changes(new FieldKey.Waited(p.capacitor(), p.phase()), minutes + 1);
        }
    }

    /** {@return the waiting time in whole minutes, rounded down so that a wait never counts for more than it was} */
    static int minutes(Primitive.Pass pass) {
        return pass.seconds() / 60;
    }

    /** {@return the key of a proof} */
    static FieldKey.Proved proved(Primitive.Prove prove) {
        return new FieldKey.Proved(prove.proof().name(), prove.subject(), prove.phase());
    }

    private void movePole(Primitive.MovePole move) {
        Element element = bound.network().element(move.device()).orElseThrow();
        List<Conductor> units = new ArrayList<>();
        for (Conductor phase : move.phases()) {
            Conductor unit = StartValues.unit(element, phase);
            if (!units.contains(unit)) {
                units.add(unit);
            }
        }
        for (Conductor unit : units) {
            layout.changes(new FieldKey.Pole(move.device(), unit), 2);
            if (element.kind().has(Trait.COUNTS) && !move.closed()) {
                count(move.device(), unit);
            }
        }
    }

    private void count(String device, Conductor unit) {
        FieldKey.Count key = new FieldKey.Count(device, unit);
        layout.changes(key, opens.merge(key, 1, Integer::sum) + 1);
    }

    private void setMode(Primitive.SetMode set) {
        Element element = bound.network().element(set.device()).orElseThrow();
        Mode mode = element.kind().mode(set.mode()).orElseThrow();
        layout.changes(
                new FieldKey.Mode(set.device(), set.phase(), set.mode()), mode.values().size());
        if (element instanceof Element.Regulator) {
            // Whatever its control is set to decides whether its tap can move.
            for (Conductor phase : element.phases()) {
                layout.changes(new FieldKey.Tap(set.device(), phase), 2);
            }
        }
    }
}
