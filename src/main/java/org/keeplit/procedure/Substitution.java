package org.keeplit.procedure;

import com.google.common.collect.ImmutableList;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Figure;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Term;
import org.keeplit.network.Conductor;
import org.keeplit.network.Phases;

/** Replaces variables by what they stand for, in terms, conditions, actions and blocks. */
final class Substitution {
    private final Map<String, Term> terms;
    private final Map<String, Conductor> phases;

    Substitution(Map<String, ? extends Term> terms, Map<String, Conductor> phases) {
        this.terms = Map.copyOf(terms);
        this.phases = Map.copyOf(phases);
    }

    /** {@return this substitution with one more phase variable} */
    Substitution with(String variable, Conductor phase) {
        Map<String, Conductor> more = new HashMap<>(phases);
        more.put(variable, phase);
        return new Substitution(terms, more);
    }

    Term term(Term term) {
        if (term instanceof Term.Variable variable) {
            return terms.getOrDefault(variable.name(), variable);
        } else if (term instanceof Term.Name name) {
            // A called procedure's people and equipment may go by other names in the caller.
            return terms.getOrDefault(name.name(), name);
        } else if (term instanceof Term.LineOf line) {
            return new Term.LineOf(term(line.of()), line.side(), line.span());
        } else if (term instanceof Term.BushingOf bushing) {
            return new Term.BushingOf(term(bushing.of()), bushing.side(), bushing.span());
        } else if (term instanceof Term.LeadOf lead) {
            return new Term.LeadOf(term(lead.of()), lead.side(), lead.span());
        } else if (term instanceof Term.NodeOf node) {
            return new Term.NodeOf(term(node.of()), node.span());
        } else if (term instanceof Term.SiteOf site) {
            return new Term.SiteOf(term(site.of()), site.span());
        }
        throw new IllegalStateException("a term of an unknown shape: " + term);
    }

    ImmutableList<Term> terms(ImmutableList<Term> all) {
        return all.stream().map(this::term).collect(ImmutableList.toImmutableList());
    }

    PhaseTerm phase(PhaseTerm phase) {
        if (phase instanceof PhaseTerm.Variable variable && phases.containsKey(variable.name())) {
            return new PhaseTerm.Given(Phases.of(phases.get(variable.name())));
        }
        return phase;
    }

    Condition condition(Condition condition) {
        if (condition instanceof Condition.Not not) {
            return new Condition.Not(condition(not.body()), not.span());
        } else if (condition instanceof Condition.All all) {
            return new Condition.All(conditions(all.parts()), all.span());
        } else if (condition instanceof Condition.One one) {
            return new Condition.One(conditions(one.parts()), one.span());
        } else if (condition instanceof Condition.Quantified quantified) {
            return new Condition.Quantified(
                    quantified.quantifier(),
                    binder(quantified.binder()),
                    condition(quantified.body()),
                    quantified.span());
        } else if (condition instanceof Condition.Counted counted) {
            return new Condition.Counted(
                    counted.least(),
                    counted.most(),
                    binder(counted.binder()),
                    condition(counted.body()),
                    counted.span());
        } else if (condition instanceof Condition.Named named) {
            // Its body knows nothing but its own variables.
            return new Condition.Named(named.words(), arguments(named.arguments()), named.body(), named.span());
        } else if (condition instanceof Condition.Atom atom) {
            return new Condition.Atom(
                    atom.predicate(), terms(atom.terms()), phase(atom.phase()), atom.words(), atom.span());
        }
        Condition.Compare compare = (Condition.Compare) condition;
        return new Condition.Compare(
                figure(compare.left()), compare.comparison(), figure(compare.right()), compare.span());
    }

    private Condition.Binder binder(Condition.Binder binder) {
        return new Condition.Binder(
                binder.variable(),
                binder.noun(),
                binder.of().map(this::term),
                binder.such().map(this::condition),
                binder.span());
    }

    private ImmutableList<Condition.Argument> arguments(ImmutableList<Condition.Argument> all) {
        return all.stream()
                .map(a -> new Condition.Argument(a.parameter(), a.term().map(this::term), a.phase().map(this::phase)))
                .collect(ImmutableList.toImmutableList());
    }

    private Figure figure(Figure figure) {
        if (figure instanceof Figure.Measured measured) {
            return measured(measured);
        } else if (figure instanceof Figure.Rated rated) {
            return new Figure.Rated(rated.name(), rated.dimension(), term(rated.of()), rated.span());
        } else if (figure instanceof Figure.Part part) {
            return new Figure.Part(part.factor(), figure(part.figure()), part.span());
        }
        return figure;
    }

    private Figure.Measured measured(Figure.Measured figure) {
        return new Figure.Measured(
                figure.measure(),
                term(figure.of()),
                figure.beyond().map(this::term),
                phase(figure.phase()),
                figure.span());
    }

    ImmutableList<Condition> conditions(ImmutableList<Condition> all) {
        return all.stream().map(this::condition).collect(ImmutableList.toImmutableList());
    }

    DeviceSet devices(DeviceSet set) {
        if (set instanceof DeviceSet.One one) {
            return new DeviceSet.One(term(one.device()));
        }
        return new DeviceSet.Feeding(term(((DeviceSet.Feeding) set).of()));
    }

    private Action.Spot spot(Action.Spot spot) {
        Optional<PhaseTerm> on = spot.phase().map(this::phase);
        return new Action.Spot(term(spot.point()), on);
    }

    Action action(Action action) {
        if (action instanceof Action.Operate a) {
            return new Action.Operate(a.verb(), devices(a.object()));
        } else if (action instanceof Action.MoveLead a) {
            return new Action.MoveLead(
                    term(a.device()), a.side(), a.end(), a.on(), a.onto().map(this::phase));
        } else if (action instanceof Action.Install a) {
            return new Action.Install(term(a.jumper()), spot(a.first()), spot(a.second()), a.ordered());
        } else if (action instanceof Action.Remove a) {
            return new Action.Remove(term(a.jumper()), a.first());
        } else if (action instanceof Action.Clamp a) {
            return new Action.Clamp(term(a.jumper()), a.clamp(), spot(a.spot()));
        } else if (action instanceof Action.Unclamp a) {
            return new Action.Unclamp(term(a.jumper()), a.clamp());
        } else if (action instanceof Action.ApplyGround a) {
            return new Action.ApplyGround(term(a.ground()), term(a.point()), a.order());
        } else if (action instanceof Action.RemoveGround a) {
            return new Action.RemoveGround(term(a.ground()), a.order());
        } else if (action instanceof Action.Run a) {
            return new Action.Run(term(a.source()), a.on());
        } else if (action instanceof Action.GoAloft a) {
            return new Action.GoAloft(term(a.at()));
        } else if (action instanceof Action.Speak a) {
            return new Action.Speak(a.speech(), term(a.permit()));
        } else if (action instanceof Action.Tag a) {
            return new Action.Tag(devices(a.device()), a.on());
        } else if (action instanceof Action.Check a) {
            return new Action.Check(condition(a.condition()));
        } else if (action instanceof Action.Prove a) {
            return new Action.Prove(a.proof(), term(a.of()));
        } else if (action instanceof Action.TestDead a) {
            return new Action.TestDead(term(a.point()));
        } else if (action instanceof Action.MeasureFigure a) {
            return new Action.MeasureFigure(measured(a.figure()), a.limit().map(this::condition));
        } else if (action instanceof Action.WaitDead a) {
            return new Action.WaitDead(a.time(), term(a.of()));
        } else if (action instanceof Action.WaitUntil a) {
            return new Action.WaitUntil(condition(a.condition()));
        } else if (action instanceof Action.Brief a) {
            return new Action.Brief(terms(a.people()));
        } else if (action instanceof Action.Work a) {
            return new Action.Work(term(a.point()), a.words());
        }
        return action;
    }

    Block.Step step(Block.Step step) {
        return new Block.Step(
                step.label(),
                terms(step.actors()),
                action(step.action()),
                phase(step.phases()),
                step.ordered(),
                step.asOne(),
                conditions(step.requires()),
                conditions(step.expects()),
                step.records(),
                step.cautions(),
                step.because(),
                step.sentence(),
                step.span());
    }
}
