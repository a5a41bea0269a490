package org.keeplit.plain;

import com.google.common.collect.ImmutableList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Figure;
import org.keeplit.condition.Moment;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;
import org.keeplit.network.Conductor;
import org.keeplit.network.Phases;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.DeviceSet;

/** What the names of one procedure stand for where it is done, put in their place. */
final class PlainSubstitution {
    /** Is shown every name that is left, and may complain. */
    interface Reader {
        /** Something of the network or of the job. */
        void name(Term.Name name);

        /** A variable that stands for nothing. */
        void unbound(String variable);
    }

    private final Map<String, Term> things;
    private final Map<String, Term> people;
    private final Map<String, Conductor> phases;
    private final Set<String> quantified;
    private final Reader reader;

    /**
     * A substitution.
     *
     * @param things what the variables stand for
     * @param people who stands for the people of the crew list
     */
    PlainSubstitution(Map<String, Term> things, Map<String, Term> people, Reader reader) {
        this(things, people, Map.of(), Set.of(), reader);
    }

    private PlainSubstitution(
            Map<String, Term> things, Map<String, Term> people, Map<String, Conductor> phases, Set<String> quantified, Reader reader) {
        this.things = things;
        this.people = people;
        this.phases = phases;
        this.quantified = quantified;
        this.reader = reader;
    }

    /** {@return this with a phase for a variable, which hides what had that name further out} */
    PlainSubstitution with(String variable, Conductor phase) {
        Map<String, Term> others = new HashMap<>(things);
        others.remove(variable);
        Map<String, Conductor> more = new HashMap<>(phases);
        more.put(variable, phase);
        return new PlainSubstitution(others, people, more, quantified, reader);
    }

    /** {@return this inside a quantifier, whose variable hides what had that name further out} */
    private PlainSubstitution inside(String variable) {
        Map<String, Term> others = new HashMap<>(things);
        others.remove(variable);
        Map<String, Conductor> fewer = new HashMap<>(phases);
        fewer.remove(variable);
        Set<String> more = new HashSet<>(quantified);
        more.add(variable);
        return new PlainSubstitution(others, people, fewer, more, reader);
    }

    Term term(Term term) {
        if (term instanceof Term.Variable variable) {
            Term thing = things.get(variable.name());
            if (thing == null && !quantified.contains(variable.name())) {
                reader.unbound(variable.name());
            }
            return thing == null ? variable : thing;
        } else if (term instanceof Term.Name name) {
            Term thing = name.type() == Type.PERSON ? people.getOrDefault(name.name(), name) : name;
            if (thing instanceof Term.Name found) {
                reader.name(found);
            }
            return thing;
        } else if (term instanceof Term.LineOf t) {
            return new Term.LineOf(term(t.of()), t.side(), t.span());
        } else if (term instanceof Term.BushingOf t) {
            return new Term.BushingOf(term(t.of()), t.side(), t.span());
        } else if (term instanceof Term.LeadOf t) {
            return new Term.LeadOf(term(t.of()), t.side(), t.span());
        } else if (term instanceof Term.NodeOf t) {
            return new Term.NodeOf(term(t.of()), t.span());
        }
        Term.SiteOf t = (Term.SiteOf) term;
        return new Term.SiteOf(term(t.of()), t.span());
    }

    PhaseTerm phase(PhaseTerm phase) {
        if (phase instanceof PhaseTerm.Variable variable) {
            Conductor given = phases.get(variable.name());
            if (given == null && !quantified.contains(variable.name())) {
                reader.unbound(variable.name());
            }
            return given == null ? variable : new PhaseTerm.Given(Phases.of(given));
        }
        return phase;
    }

    private static <T> ImmutableList<T> each(List<T> all, UnaryOperator<T> change) {
        return all.stream().map(change).collect(ImmutableList.toImmutableList());
    }

    ImmutableList<Condition> conditions(List<Condition> all) {
        return each(all, this::condition);
    }

    Condition condition(Condition condition) {
        if (condition instanceof Condition.Not c) {
            return new Condition.Not(condition(c.body()), c.span());
        } else if (condition instanceof Condition.All c) {
            return new Condition.All(conditions(c.parts()), c.span());
        } else if (condition instanceof Condition.One c) {
            return new Condition.One(conditions(c.parts()), c.span());
        } else if (condition instanceof Condition.Quantified c) {
            return new Condition.Quantified(
                    c.quantifier(), binder(c.binder()), inside(c.binder().variable()).condition(c.body()), c.span());
        } else if (condition instanceof Condition.Counted c) {
            return new Condition.Counted(
                    c.least(), c.most(), binder(c.binder()), inside(c.binder().variable()).condition(c.body()), c.span());
        } else if (condition instanceof Condition.Named c) {
            // The definition knows its own variables only.
            return new Condition.Named(c.words(), each(c.arguments(), this::argument), c.body(), c.span());
        } else if (condition instanceof Condition.Happened c) {
            return new Condition.Happened(each(c.moments(), this::moment), each(c.since(), this::moment), c.span());
        } else if (condition instanceof Condition.Since c) {
            return new Condition.Since(each(c.since(), this::moment), condition(c.body()), c.span());
        } else if (condition instanceof Condition.Atom c) {
            return new Condition.Atom(c.predicate(), each(c.terms(), this::term), phase(c.phase()), c.words(), c.span());
        }
        Condition.Compare c = (Condition.Compare) condition;
        return new Condition.Compare(figure(c.left()), c.comparison(), figure(c.right()), c.span());
    }

    private Condition.Binder binder(Condition.Binder binder) {
        return new Condition.Binder(
                binder.variable(), binder.noun(), binder.of().map(this::term),
                binder.such().map(c -> inside(binder.variable()).condition(c)), binder.span());
    }

    private Condition.Argument argument(Condition.Argument argument) {
        return new Condition.Argument(argument.parameter(), argument.term().map(this::term), argument.phase().map(this::phase));
    }

    private Moment moment(Moment moment) {
        return new Moment(
                moment.act(), each(moment.participants(), this::participant), moment.phase().map(this::phase),
                moment.by().map(this::participant), moment.words(), moment.span());
    }

    private Moment.Participant participant(Moment.Participant participant) {
        return participant instanceof Moment.The the ? new Moment.The(term(the.term())) : participant;
    }

    private Figure figure(Figure figure) {
        if (figure instanceof Figure.Measured f) {
            return measured(f);
        } else if (figure instanceof Figure.Rated f) {
            return new Figure.Rated(f.name(), f.dimension(), term(f.of()), f.span());
        } else if (figure instanceof Figure.Part f) {
            return new Figure.Part(f.factor(), figure(f.figure()), f.span());
        }
        return figure;
    }

    private Figure.Measured measured(Figure.Measured f) {
        return new Figure.Measured(f.measure(), term(f.of()), f.beyond().map(this::term), phase(f.phase()), f.span());
    }

    Block.Step step(Block.Step s) {
        return new Block.Step(
                s.label(), each(s.actors(), this::term), action(s.action()), phase(s.phases()), s.ordered(), s.asOne(),
                conditions(s.requires()), conditions(s.expects()), s.records(), s.cautions(), s.because(), s.sentence(), s.span());
    }

    DeviceSet devices(DeviceSet devices) {
        return devices instanceof DeviceSet.One one
                ? new DeviceSet.One(term(one.device()))
                : new DeviceSet.Feeding(term(((DeviceSet.Feeding) devices).of()));
    }

    private Action.Spot spot(Action.Spot spot) {
        return new Action.Spot(term(spot.point()), spot.phase().map(this::phase));
    }

    private Action action(Action action) {
        if (action instanceof Action.Operate a) {
            return new Action.Operate(a.verb(), devices(a.object()));
        } else if (action instanceof Action.MoveLead a) {
            return new Action.MoveLead(term(a.device()), a.side(), a.end(), a.on(), a.onto().map(this::phase));
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
        } else if (action instanceof Action.Work a) {
            return new Action.Work(term(a.point()), a.words());
        } else if (action instanceof Action.Brief a) {
            return new Action.Brief(each(a.people(), this::term));
        }
        // What is left speaks of nothing that has a name here: coming down, records, inspections, words, events.
        return action;
    }
}
