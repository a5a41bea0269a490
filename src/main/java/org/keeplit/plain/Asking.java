package org.keeplit.plain;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.IntPredicate;
import org.keeplit.condition.Condition;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Predicate;
import org.keeplit.condition.Term;
import org.keeplit.condition.Truth;
import org.keeplit.condition.Type;
import org.keeplit.network.ClosingDuty;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Phases;
import org.keeplit.network.LeadEnd;
import org.keeplit.network.Mode;
import org.keeplit.network.OpeningDuty;
import org.keeplit.network.Place;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.DeviceSet;
import org.keeplit.procedure.Permit;

/** Judges conditions in one state, by walking over them. */
final class Asking {
    private final Scenery scenery;
    private final Names names;
    private final Facts facts;
    private final Circuit circuit;
    private final Map<String, List<String>> heldAt;
    private final PlainFigures figures;
    private final PlainFit fit;
    private final Stated stated;

    Asking(Scenery scenery, Facts facts, Map<String, List<String>> heldAt) {
        this.scenery = scenery;
        this.names = scenery.names();
        this.facts = facts;
        this.circuit = new Circuit(names, scenery.wiring(), facts);
        this.heldAt = heldAt;
        this.figures = new PlainFigures(scenery, circuit);
        this.fit = new PlainFit(figures);
        this.stated = new Stated(names);
    }

    Facts facts() {
        return facts;
    }

    Circuit circuit() {
        return circuit;
    }

    List<Joint> poles(String device) {
        return figures.poles(device);
    }

    /** {@return the currents of a bolted fault, see {@link PlainFlow#faulted}} */
    List<Cx> fault(String place, String other, List<Joint> through) {
        return figures.flow(0).faulted(place, other, 0, figures.pieces().nominal(place), through);
    }

    Truth ask(Condition condition, Map<String, Thing> env) {
        if (condition instanceof Condition.Not not) {
            return not.body() instanceof Condition.Atom atom ? atom(atom, env, true) : ask(not.body(), env).not();
        } else if (condition instanceof Condition.All all) {
            return all.parts().stream().map(p -> ask(p, env)).reduce(Truth.TRUE, Truth::and);
        } else if (condition instanceof Condition.One one) {
            return one.parts().stream().map(p -> ask(p, env)).reduce(Truth.FALSE, Truth::or);
        } else if (condition instanceof Condition.Quantified quantified) {
            return quantified(quantified, env);
        } else if (condition instanceof Condition.Counted counted) {
            return counted(counted, env);
        } else if (condition instanceof Condition.Named named) {
            return ask(named.body(), scenery.meaning(named, env));
        } else if (condition instanceof Condition.Happened || condition instanceof Condition.Since) {
            return Recalling.recall(condition, env, facts);
        } else if (condition instanceof Condition.Compare compare) {
            return figures.ask(compare, env);
        }
        return atom((Condition.Atom) condition, env, false);
    }

    private Truth quantified(Condition.Quantified q, Map<String, Thing> env) {
        Truth every = Truth.TRUE;
        Truth some = Truth.FALSE;
        for (Thing thing : scenery.range(q.binder(), env)) {
            Map<String, Thing> inner = new HashMap<>(env);
            inner.put(q.binder().variable(), thing);
            Truth such = q.binder().such().map(c -> ask(c, inner)).orElse(Truth.TRUE);
            if (such == Truth.FALSE) {
                continue;
            }
            Truth body = ask(q.body(), inner);
            every = every.and(such.not().or(body));
            some = some.or(such.and(body));
        }
        return switch (q.quantifier()) {
            case EVERY -> every;
            case SOME -> some;
            case NO -> some.not();
        };
    }

    /** Counts how many are surely so and how many may be. */
    private Truth counted(Condition.Counted c, Map<String, Thing> env) {
        int surely = 0;
        int perhaps = 0;
        for (Thing thing : scenery.range(c.binder(), env)) {
            Map<String, Thing> inner = new HashMap<>(env);
            inner.put(c.binder().variable(), thing);
            Truth one = ask(c.body(), inner)
                    .and(c.binder().such().map(such -> ask(such, inner)).orElse(Truth.TRUE));
            surely += one == Truth.TRUE ? 1 : 0;
            perhaps += one == Truth.UNKNOWN ? 1 : 0;
        }
        Truth enough = surely >= c.least()
                ? Truth.TRUE
                : surely + perhaps >= c.least() ? Truth.UNKNOWN : Truth.FALSE;
        Truth notTooMany = surely > c.most()
                ? Truth.FALSE
                : surely + perhaps <= c.most() ? Truth.TRUE : Truth.UNKNOWN;
        return enough.and(notTooMany);
    }

    private Truth atom(Condition.Atom atom, Map<String, Thing> env, boolean negated) {
        List<Thing> things = atom.terms().stream().map(t -> scenery.thing(t, env)).toList();
        Truth all = Truth.TRUE;
        if (atom.predicate() == Predicate.PHASE_IN) {
            boolean isOne = phases(atom, things.get(0), env).contains(things.get(0).phase());
            return Truth.of(isOne != negated);
        }
        if (!atom.predicate().perPhase()) {
            Truth truth = atom(atom, things, null);
            return negated ? truth.not() : truth;
        }
        for (Conductor phase : phases(atom, things.get(0), env)) {
            Truth truth = atom(atom, things, phase);
            all = all.and(negated ? truth.not() : truth);
        }
        return all;
    }

    private List<Conductor> phases(Condition.Atom atom, Thing thing, Map<String, Thing> env) {
        boolean onOne = thing.phase() != null && thing.type() != Type.PHASE;
        if (!onOne && atom.phase() instanceof PhaseTerm.Given given) {
            return given.phases().list();
        } else if (!onOne && atom.phase() instanceof PhaseTerm.Variable variable) {
            return List.of(env.get(variable.name()).phase());
        }
        return scenery.phasesOf(thing).list().stream().filter(p -> onOne || p != Conductor.N).toList();
    }

    private Truth is(String fact, int value) {
        return Truth.of(facts.get(fact) == value);
    }

    private Truth atom(Condition.Atom atom, List<Thing> things, Conductor p) {
        Thing it = things.isEmpty() ? null : things.get(0);
        List<String> words = atom.words();
        return switch (atom.predicate()) {
            case OPEN -> is(names.pole(it.name(), p), 0);
            case CLOSED -> is(names.pole(it.name(), p), 1);
            case ATTACHED -> attached(it, p);
            case DETACHED -> attached(it, p).not();
            case MODE -> mode(it.name(), p, words.get(0), words.get(1));
            case NEUTRAL -> neutral(it.name(), p);
            case INSTALLED -> Truth.of(on(it.name(), p, 1) && on(it.name(), p, 2));
            case RUNNING -> Truth.of(on(it.name(), p, 1));
            case IN_USE -> Truth.of(on(it.name(), p, 1) || on(it.name(), p, 2));
            case PLACED -> is(names.placed(it.name(), p), place(words.get(0)));
            case ALOFT -> is("where " + it.name(), names.number(scenery.siteOf(things.get(1))));
            case ON_GROUND -> is("where " + it.name(), 0);
            case ASKED -> is("permit " + it.name(), 1);
            case OUT -> Truth.of(facts.get("permit " + it.name()) >= 2 && facts.get("permit " + it.name()) <= 4);
            case IN_FORCE -> is("permit " + it.name(), 4);
            case RELEASED -> is("permit " + it.name(), 5);
            case COVERS -> Truth.of(target(it).equals(scenery.siteOf(things.get(1))));
            case HELD_AT -> Truth.of(heldAt.get(it.name()).contains(things.get(1).name()));
            case HELD_BY -> Truth.of(permit(it).holder().toString().equals(things.get(1).name()));
            case INCLUDES -> Truth.of(permit(it).with().isEmpty()
                    || permit(it).with().contains(things.get(1).name())
                    || permit(it).holder().toString().equals(things.get(1).name()));
            case CLAMPED_TO -> Truth.of(scenery.phasesOf(things.get(1)).list().stream()
                    .filter(Conductor::isPhase)
                    .allMatch(phase -> hangs(it.name(), scenery.vertex(things.get(1), phase))));
            case TAGGED -> is("tag " + it.name(), 1);
            case PROVED_DEAD -> is(Names.proved("DEAD", scenery.vertex(it, p), p), 1);
            case PROVED_OPEN -> proved(it, p, Action.Proof.OPEN);
            case PROVED_CLOSED -> proved(it, p, Action.Proof.CLOSED);
            case PROVED_CARRYING -> proved(it, p, Action.Proof.CARRYING);
            case PROVED_IN_PHASE -> proved(it, p, Action.Proof.IN_PHASE);
            case PROVED_NEUTRAL -> proved(it, p, Action.Proof.NEUTRAL);
            case RECORDED -> is("record " + words.get(0), 1);
            case FOUND -> is("found " + words.get(0), names.number("outcome " + words.get(1)));
            case WAITED -> Truth.of(
                    facts.get("waited " + it.name() + " " + p) * 60 >= Double.parseDouble(words.get(0)));
            case OUTAGE_PLANNED -> Truth.of(names.bound().outages().contains(it.name()));
            case HAS -> stated.has(it.name(), words.get(0));
            case CRITICAL -> Truth.of(((Element.Load) names.element(it.name())).critical().isPresent());
            case IN_CHARGE, AT_CONTROL, OBSERVER, GROUND_HAND, ON_SIDE, QUALIFIED, QUALIFIED_FOR -> stated.crew(
                    atom.predicate(), words, it.name());
            case IN_CLASS -> Stated.inClass(words, scenery.nominal(it));
            case STANDS_AT -> Truth.of(scenery.siteOf(it).equals(scenery.siteOf(things.get(1))));
            case SAME -> Truth.of(it.equals(things.get(1)));
            case COUNTED -> is(names.count(it.name(), p), Integer.parseInt(words.get(0)));
            default -> electrical(atom, things, p);
        };
    }

    private Truth electrical(Condition.Atom atom, List<Thing> things, Conductor p) {
        Thing it = things.get(0);
        return switch (atom.predicate()) {
            case ENERGIZED -> level(it, p, l -> l == Voltages.ENERGIZED);
            case ALIVE -> level(it, p, l -> l >= Voltages.BACKFED);
            case DEAD -> level(it, p, l -> l == Voltages.DEAD);
            case GROUNDED -> Truth.of(circuit.grounded(scenery.vertex(it, p)));
            case GROUNDED_THROUGHOUT -> throughout(scenery.vertex(it, p));
            case TIED_TO_GROUND -> Truth.of(circuit.now().isEarthed(scenery.vertex(it, p)));
            case SHORTED -> Truth.of(circuit.now().isShorted(scenery.vertex(it, p)));
            case BYPASSED -> lacks(it, p) ? Truth.FALSE : circuit.bypassed((Element.Branch) names.element(it.name()), p);
            case LOOPED -> Truth.of(!lacks(it, p) && circuit.looped((Element.Branch) names.element(it.name()), p));
            case OPENING_DUTY -> Truth.of(
                    atom.words().contains((lacks(it, p) ? OpeningDuty.NOTHING : circuit.opening(pole(it, p))).phrase()));
            case CLOSING_DUTY -> Truth.of(
                    atom.words().contains((lacks(it, p) ? ClosingDuty.NOTHING : circuit.closing(pole(it, p))).phrase()));
            case FIT_TO_OPEN -> fit.toOpen(it.joint());
            case FIT_TO_CLOSE -> fitToClose(it.joint());
            case ISOLATED -> circuit.isolated((Element.Branch) names.element(it.name()));
            case SUPPLIED -> circuit.supplied((Element.Load) names.element(it.name()));
            case FEEDS -> Truth.of(circuit.feeding(scenery.siteOf(things.get(1))).contains(it.name()));
            case LIVE_SITE -> live(scenery.siteOf(it));
            default -> throw new IllegalStateException("nothing is known of " + atom.predicate());
        };
    }

    /** {@return whether a device or a regulator has no such phase: nothing is there to join, to open or to close} */
    private boolean lacks(Thing it, Conductor p) {
        return it.joint() == null && !scenery.phasesOf(it).contains(p);
    }

    private Truth attached(Thing it, Conductor p) {
        Term.LeadOf lead = (Term.LeadOf) it.place();
        if (!names.isWithLeads(lead.of().toString())) {
            return Truth.TRUE;
        }
        boolean both = true;
        for (LeadEnd end : LeadEnd.values()) {
            both &= facts.get(Names.end(lead.of().toString(), lead.side(), p, end)) == 1;
        }
        return Truth.of(both);
    }

    private Truth mode(String device, Conductor p, String mode, String value) {
        Mode known = names.element(device).kind().mode(mode).orElse(null);
        return known == null
                ? Truth.of(value.equals("blocked"))
                : is(names.mode(device, p, mode), known.values().indexOf(value));
    }

    /** {@return whether a tap stands on neutral; it is never known to stand elsewhere} */
    Truth neutral(String regulator, Conductor p) {
        return facts.get(Names.tap(regulator, p)) == 0 ? Truth.TRUE : Truth.UNKNOWN;
    }

    private boolean on(String family, Conductor p, int clamp) {
        return facts.get(Names.clamp(family, p, clamp)) != 0;
    }

    static int place(String words) {
        for (Place place : Place.values()) {
            if (place.phrase().equals(words)) {
                return place.ordinal();
            }
        }
        return Place.valueOf(words.toUpperCase(Locale.ROOT)).ordinal();
    }

    private boolean hangs(String family, String place) {
        return scenery.wiring().joints().stream()
                .anyMatch(j -> j.isContact()
                        && j.owner().equals(family)
                        && (j.a().equals(place) || j.b().equals(place))
                        && facts.get(j.fact()) == j.value());
    }

    private Permit permit(Thing it) {
        return names.bound().permit(it.name()).orElseThrow();
    }

    private String target(Thing it) {
        Term target = permit(it).target();
        return names.site(target instanceof Term.SiteOf of ? of.of().toString() : target.toString());
    }

    private Truth proved(Thing it, Conductor p, Action.Proof proof) {
        return is(Names.proved(proof.name(), it.name(), p), 1);
    }

    private Truth level(Thing it, Conductor p, IntPredicate wanted) {
        int level = circuit.now().level(scenery.vertex(it, p));
        return level == Voltages.MAY_BE ? Truth.UNKNOWN : Truth.of(wanted.test(level));
    }

    /** {@return whether every phase of a place is grounded; a piece of temporary equipment is a place by itself} */
    private Truth throughout(String place) {
        int slash = place.indexOf('/');
        String owner = slash < 0 ? place : place.substring(0, slash);
        if (slash < 0 || scenery.bound().temporary(owner).isPresent()) {
            return Truth.of(circuit.grounded(place));
        }
        boolean line = slash == place.lastIndexOf('/');
        Phases phases = line ? scenery.bound().network().nodes().get(owner) : names.element(owner).phases();
        String stem = place.substring(0, place.lastIndexOf('/') + 1);
        return Truth.of(
                phases.list().stream().filter(Conductor::isPhase).allMatch(p -> circuit.grounded(stem + p)));
    }

    private Joint pole(Thing it, Conductor p) {
        return it.joint() != null ? it.joint() : pole(scenery.wiring(), it.name(), p);
    }

    static Joint pole(Wiring wiring, String device, Conductor p) {
        return wiring.joints().stream()
                .filter(j -> j.part() == Joint.Part.POLE && j.owner().equals(device) && j.phase() == p)
                .findFirst()
                .orElseThrow();
    }

    private Truth fitToClose(Joint contact) {
        Truth made = fit.toClose(contact);
        if (made != null) {
            return made;
        }
        ClosingDuty duty = circuit.closing(contact);
        int a = circuit.now().level(contact.a());
        int b = circuit.now().level(contact.b());
        if (duty == ClosingDuty.GROUND && Math.max(a, b) == Voltages.MAY_BE) {
            boolean proved = facts.get(provedDead(contact.a())) == 1 || facts.get(provedDead(contact.b())) == 1;
            return proved ? Truth.TRUE : Truth.UNKNOWN;
        }
        boolean mayRun = duty == ClosingDuty.JOIN && (a == Voltages.MAY_BE || b == Voltages.MAY_BE);
        return duty == ClosingDuty.UNEQUAL || mayRun ? Truth.UNKNOWN : Truth.FALSE;
    }

    private static String provedDead(String vertex) {
        if (vertex.equals(Names.EARTH)) {
            return "";
        }
        return Names.proved("DEAD", vertex, Conductor.valueOf(vertex.substring(vertex.lastIndexOf('/') + 1)));
    }

    private Truth live(String site) {
        boolean safe = scenery.wiring().lineVertices(site).stream()
                .allMatch(v -> facts.get(provedDead(v)) == 1 && circuit.grounded(v));
        return Truth.of(!safe);
    }

    /** {@return the devices that a hold or clearance is held at} */
    static List<String> heldAt(Permit permit, Writing writing) {
        List<String> all = new ArrayList<>();
        for (DeviceSet set : permit.heldAt()) {
            all.addAll(writing.devices(set));
        }
        return all;
    }
}
