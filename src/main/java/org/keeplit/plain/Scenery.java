package org.keeplit.plain;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Noun;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Phases;
import org.keeplit.procedure.Bound;
import org.keeplit.text.Span;

/** What there is in a run: the ranges of nouns and the meanings of terms. */
final class Scenery {
    private final Names names;
    private final Wiring wiring;
    private final Set<String> climbed;
    private final PlainTaps taps = new PlainTaps(this);
    /** Load flows by all that they depend on, so that states that differ in words only share them. */
    private final Map<List<Object>, PlainFlow> flows = new HashMap<>();
    private PlainFigures start;
    private PlainNominal nominals;

    Scenery(Names names, Wiring wiring, Set<String> climbed) {
        this.names = names;
        this.wiring = wiring;
        this.climbed = climbed;
    }

    /** Says what the run starts from. */
    void startsFrom(Facts facts) {
        start = new PlainFigures(this, new Circuit(names, wiring, facts));
    }

    /** {@return the load flows that were worked out in this run} */
    Map<List<Object>, PlainFlow> flows() {
        return flows;
    }

    /** {@return where taps stand in figures} */
    PlainTaps taps() {
        return taps;
    }

    /** {@return the figures of the run's first state} */
    PlainFigures start() {
        return start;
    }

    Names names() {
        return names;
    }

    Wiring wiring() {
        return wiring;
    }

    Bound bound() {
        return names.bound();
    }

    List<Thing> range(Condition.Binder binder, Map<String, Thing> env) {
        if (binder.of().isPresent()) {
            return phases(phasesOf(thing(binder.of().get(), env)));
        }
        return range(binder.noun());
    }

    private List<Thing> range(Noun noun) {
        List<Thing> all = new ArrayList<>();
        switch (noun.type()) {
            case DEVICE, REGULATOR, CAPACITOR, TRANSFORMER, LINE, LOAD, GENERATOR, SOURCE -> {
                for (Element element : bound().network().elements()) {
                    if (typeOf(element) == noun.type() && fits(noun, element.kind().name())) {
                        all.add(Thing.named(noun.type(), element.name()));
                    }
                }
            }
            case PERSON -> bound().procedure().crew().forEach(p -> all.add(Thing.named(Type.PERSON, p.name())));
            case SITE -> {
                Set<String> sites = new LinkedHashSet<>(bound().network().sites());
                sites.addAll(climbed);
                sites.forEach(s -> all.add(Thing.named(Type.SITE, s)));
            }
            case JUMPER, GROUND, MOBILE -> bound().temporaries().forEach(t -> {
                if (t.kind().base().name().equals(noun.type().name()) && fits(noun, t.kind().name())) {
                    all.add(Thing.named(noun.type(), t.name()));
                }
            });
            case HOLD, CLEARANCE -> bound().permits().forEach(p -> {
                if (p.type() == noun.type()) {
                    all.add(Thing.named(noun.type(), p.name()));
                }
            });
            case POINT -> bound().network().nodes().forEach((node, phases) -> {
                for (Conductor p : phases) {
                    all.add(Thing.spot(Names.node(node, p), p));
                }
            });
            case CONTACT -> wiring.joints().stream().filter(Joint::isContact).forEach(j -> all.add(Thing.contact(j)));
            case PHASE -> {
                all.addAll(phases(Phases.ABC));
                if (bound().network().all(Element.Transformer.class).anyMatch(Element.Transformer::centreTapped)) {
                    all.addAll(phases(Phases.LEGS));
                }
            }
        }
        return all;
    }

    static Type typeOf(Element element) {
        if (element instanceof Element.Device) {
            return Type.DEVICE;
        }
        return Type.valueOf(element.kind().base().name());
    }

    private static boolean fits(Noun noun, String kind) {
        return noun.kinds().isEmpty() || noun.kinds().contains(kind);
    }

    private static List<Thing> phases(Phases phases) {
        return phases.list().stream().filter(p -> p != Conductor.N).map(Thing::phase).toList();
    }

    Phases phasesOf(Thing thing) {
        if (thing.phase() != null) {
            return Phases.of(thing.phase());
        } else if (thing.place() != null) {
            return bound().phasesOf(thing.place());
        }
        return bound().phasesOf(new Term.Name(thing.name(), thing.type(), Span.NONE));
    }

    Thing thing(Term term, Map<String, Thing> env) {
        if (term instanceof Term.Variable variable) {
            return env.get(variable.name());
        } else if (term instanceof Term.SiteOf site) {
            return Thing.named(Type.SITE, siteOf(thing(site.of(), env)));
        } else if (term instanceof Term.LineOf t) {
            return Thing.point(new Term.LineOf(plain(t.of(), env), t.side(), t.span()));
        } else if (term instanceof Term.BushingOf t) {
            return Thing.point(new Term.BushingOf(plain(t.of(), env), t.side(), t.span()));
        } else if (term instanceof Term.LeadOf t) {
            return Thing.point(new Term.LeadOf(plain(t.of(), env), t.side(), t.span()));
        } else if (term instanceof Term.NodeOf t) {
            return Thing.point(new Term.NodeOf(plain(t.of(), env), t.span()));
        }
        String name = term.toString();
        if (bound().procedure().crew().stream().anyMatch(p -> p.name().equals(name))) {
            return Thing.named(Type.PERSON, name);
        } else if (bound().temporary(name).isPresent()) {
            return Thing.named(Type.valueOf(bound().temporary(name).get().kind().base().name()), name);
        } else if (bound().permit(name).isPresent()) {
            return Thing.named(bound().permit(name).get().type(), name);
        } else if (bound().network().element(name).isPresent()) {
            return Thing.named(typeOf(bound().network().element(name).get()), name);
        }
        return term.type() == Type.SITE ? Thing.named(Type.SITE, name) : Thing.point(term);
    }

    private Term plain(Term of, Map<String, Thing> env) {
        Thing thing = thing(of, env);
        return new Term.Name(thing.name(), thing.type(), of.span());
    }

    /** {@return what the variables of a named condition stand for} */
    Map<String, Thing> meaning(Condition.Named named, Map<String, Thing> env) {
        Map<String, Thing> inner = new HashMap<>();
        for (Condition.Argument argument : named.arguments()) {
            if (argument.term().isPresent()) {
                inner.put(argument.parameter(), thing(argument.term().get(), env));
            } else if (argument.phase().get() instanceof PhaseTerm.Given given) {
                inner.put(argument.parameter(), Thing.phase(given.phases().list().get(0)));
            } else {
                inner.put(argument.parameter(), env.get(((PhaseTerm.Variable) argument.phase().get()).name()));
            }
        }
        return inner;
    }

    /** {@return the nominal voltage where something is, line to line; of a transformer on its primary} */
    double nominal(Thing thing) {
        if (thing.place() instanceof Term.LineOf line) {
            return nominals().at(((Element.Branch) names.element(line.of().toString())).node(line.side()));
        } else if (thing.place() instanceof Term.NodeOf of) {
            return nominals().at(((Element.Shunt) names.element(of.of().toString())).node());
        } else if (thing.place() instanceof Term.LeadOf of) {
            return ofElement(of.of().toString());
        } else if (thing.place() instanceof Term.BushingOf of) {
            return ofElement(of.of().toString());
        }
        String name = thing.joint() != null ? thing.joint().owner() : thing.name();
        if (thing.joint() == null && thing.phase() != null) {
            // A place on one phase: a node, a lead or a bushing of a device, a piece of temporary equipment.
            name = name.substring(0, name.indexOf('/'));
        }
        return ofElement(name);
    }

    private double ofElement(String name) {
        if (bound().temporary(name).isPresent()) {
            return ofElement(bound().temporary(name).get().of().toString());
        }
        Element element = bound().network().element(name).orElse(null);
        if (element instanceof Element.Branch branch) {
            return nominals().at(branch.from());
        }
        return nominals().at(element instanceof Element.Shunt shunt ? shunt.node() : name);
    }

    private PlainNominal nominals() {
        if (nominals == null) {
            nominals = new PlainNominal(bound().network());
        }
        return nominals;
    }

    String siteOf(Thing thing) {
        if (thing.type() == Type.SITE) {
            return thing.name();
        }
        return thing.joint() != null ? thing.joint().site() : names.site(thing.name());
    }

    /** {@return the place of a thing on a phase} */
    String vertex(Thing thing, Conductor phase) {
        if (thing.phase() != null) {
            return thing.name();
        }
        return names.vertex(
                thing.place() != null
                        ? thing.place()
                        : new Term.Name(thing.name(), thing.type(), Span.NONE),
                phase);
    }
}
