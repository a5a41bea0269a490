package org.keeplit.plain;

import java.util.LinkedHashMap;
import java.util.Map;
import org.keeplit.condition.Condition;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Predicate;
import org.keeplit.condition.Term;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.LeadEnd;
import org.keeplit.network.Mode;
import org.keeplit.network.Phases;
import org.keeplit.network.Side;
import org.keeplit.procedure.Bound;

/** The facts at the start. */
final class Normal {
    private final Names names;
    private final Map<String, Integer> facts = new LinkedHashMap<>();
    private final Map<String, String> clamps = new LinkedHashMap<>();

    Normal(Names names) {
        this.names = names;
        Bound bound = names.bound();
        bound.network().all(Element.Device.class).forEach(d -> {
            for (Conductor p : d.phases()) {
                facts.put(names.pole(d.name(), p), d.closed().contains(p) ? 1 : 0);
                for (Side side : Side.values()) {
                    for (LeadEnd end : LeadEnd.values()) {
                        facts.put(Names.end(d.name(), side, p, end), 1);
                    }
                }
                for (Mode mode : d.kind().modes()) {
                    String value = d.settings().getOrDefault(mode.name(), mode.values().get(0));
                    facts.put(names.mode(d.name(), p, mode.name()), mode.values().indexOf(value));
                }
            }
        });
        bound.network().all(Element.Regulator.class).forEach(r -> {
            for (Conductor p : r.phases()) {
                facts.put(Names.tap(r.name(), p), 1);
                for (Mode mode : r.kind().modes()) {
                    String value = r.settings().getOrDefault(mode.name(), mode.values().get(0));
                    facts.put(names.mode(r.name(), p, mode.name()), mode.values().indexOf(value));
                }
                r.settings().forEach((mode, value) -> facts.put(
                        names.mode(r.name(), p, mode),
                        r.kind().mode(mode).orElseThrow().values().indexOf(value)));
            }
        });
        bound.starts().stream().filter(s -> s.given()).forEach(s -> given(s.condition()));
    }

    Map<String, Integer> facts() {
        return facts;
    }

    Map<String, String> clamps() {
        return clamps;
    }

    private void given(Condition condition) {
        if (condition instanceof Condition.All all) {
            all.parts().forEach(this::given);
            return;
        }
        Condition.Atom atom = (Condition.Atom) condition;
        Term term = atom.terms().get(0);
        if (names.bound().permit(term.toString()).isPresent()) {
            facts.put("permit " + term, 4);
            return;
        }
        if (atom.predicate() == Predicate.TAGGED) {
            facts.put("tag " + term, 1);
            return;
        }
        Phases all = names.bound().phasesOf(term);
        for (Conductor p : atom.phase() instanceof PhaseTerm.Given given ? given.phases() : all) {
            given(atom, term, p);
        }
    }

    private void given(Condition.Atom atom, Term term, Conductor p) {
        String name = term.toString();
        switch (atom.predicate()) {
            case OPEN -> facts.put(names.pole(name, p), 0);
            case CLOSED -> facts.put(names.pole(name, p), 1);
            case MODE -> facts.put(
                    names.mode(name, p, atom.words().get(0)),
                    names.element(name)
                            .kind()
                            .mode(atom.words().get(0))
                            .orElseThrow()
                            .values()
                            .indexOf(atom.words().get(1)));
            case PLACED -> facts.put(names.placed(name, p), Asking.place(atom.words().get(0)));
            case NEUTRAL -> facts.put(Names.tap(name, p), 0);
            case ATTACHED, DETACHED -> {
                Term.LeadOf lead = (Term.LeadOf) term;
                for (LeadEnd end : LeadEnd.values()) {
                    facts.put(
                            Names.end(lead.of().toString(), lead.side(), p, end),
                            atom.predicate() == Predicate.ATTACHED ? 1 : 0);
                }
            }
            case INSTALLED -> {
                Element.Branch around = (Element.Branch)
                        names.element(names.bound().temporary(name).orElseThrow().of().toString());
                put(name, p, 1, Names.node(around.from(), p));
                put(name, p, 2, Names.node(around.to(), p));
            }
            default -> throw new IllegalStateException("cannot be given: " + atom.predicate());
        }
    }

    private void put(String family, Conductor p, int clamp, String vertex) {
        facts.put(Names.clamp(family, p, clamp), names.number(vertex));
        clamps.put(Names.clamp(family, p, clamp), vertex);
    }
}
