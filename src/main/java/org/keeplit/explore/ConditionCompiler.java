package org.keeplit.explore;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.keeplit.condition.Condition;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Predicate;
import org.keeplit.condition.Term;
import org.keeplit.electric.Contact;
import org.keeplit.network.Conductor;
import org.keeplit.network.Phases;
import org.keeplit.outcome.Effort;

/** Turns typed conditions into nodes: variables replaced by objects, quantifiers written out. */
final class ConditionCompiler {
    /** About what one binding of variables takes, and what one part of a quantified condition takes. */
    private static final int BYTES_OF_AN_ENVIRONMENT = 100;

    private static final int BYTES_OF_A_PART = 60;

    private final World world;
    private final AtomCompiler atoms;
    private final FigureCompiler figures;
    private Memories memories;
    /** Of each quantified condition its node, if it depends on no variable outside; empty if it does. A rule asks it for each of its bindings. */
    private final Map<Condition, Optional<Node>> closed = new IdentityHashMap<>();

    ConditionCompiler(World world) {
        this.world = world;
        this.atoms = new AtomCompiler(world);
        this.figures = new FigureCompiler(world, this);
    }

    Node compile(Condition condition, Environment environment) {
        Effort.step();
        if (condition instanceof Condition.Not not) {
            // "J is not in use" means on none of its phases, as "J is in use" means on all of them.
            return not.body() instanceof Condition.Atom atom
                    ? atom(atom, environment, true)
                    : Node.not(compile(not.body(), environment));
        } else if (condition instanceof Condition.All all) {
            return Node.all(compileAll(all.parts(), environment));
        } else if (condition instanceof Condition.One one) {
            return Node.one(compileAll(one.parts(), environment));
        } else if (condition instanceof Condition.Quantified quantified) {
            return closed(condition, environment, e -> quantified(quantified, e));
        } else if (condition instanceof Condition.Counted counted) {
            return closed(condition, environment, e -> counted(counted, e));
        } else if (condition instanceof Condition.Named named) {
            return compile(named.body(), inside(named, environment));
        } else if (condition instanceof Condition.Happened happened) {
            return memories.happened(happened, environment);
        } else if (condition instanceof Condition.Since since) {
            return memories.since(since, environment);
        } else if (condition instanceof Condition.Compare compare) {
            return figures.compile(compare, environment);
        }
        return atom((Condition.Atom) condition, environment, false);
    }

    private Node closed(Condition condition, Environment environment, Function<Environment, Node> write) {
        Optional<Node> known = closed.get(condition);
        if (known == null) {
            known = FreeVariables.of(condition).isEmpty() ? Optional.of(write.apply(Environment.EMPTY)) : Optional.empty();
            closed.put(condition, known);
        }
        return known.isPresent() ? known.get() : write.apply(environment);
    }

    /** Makes known what the run remembers, before any condition that asks for it is compiled. */
    void remember(Memories some) {
        memories = some;
    }

    /** {@return what the variables of a definition stand for where it is used} */
    Environment inside(Condition.Named named, Environment environment) {
        Environment inner = Environment.EMPTY;
        for (Condition.Argument argument : named.arguments()) {
            Obj object = argument.term().isPresent()
                    ? object(argument.term().get(), environment)
                    : argument.phase().get() instanceof PhaseTerm.Variable variable
                            ? environment.get(variable.name())
                            : new Obj.OnPhase(((PhaseTerm.Given) argument.phase().get())
                                    .phases()
                                    .list()
                                    .get(0));
            inner = inner.with(argument.parameter(), object);
        }
        return inner;
    }

    private Node counted(Condition.Counted counted, Environment environment) {
        Condition.Binder binder = counted.binder();
        List<Node> parts = new ArrayList<>();
        int sure = 0;
        for (Obj object : domain(binder, environment)) {
            Environment inner = environment.with(binder.variable(), object);
            Node such = binder.such().map(c -> compile(c, inner)).orElse(Node.Constant.TRUE);
            Node part = such.equals(Node.Constant.FALSE)
                    ? such
                    : Node.all(List.of(such, compile(counted.body(), inner)));
            if (part.equals(Node.Constant.TRUE)) {
                sure++;
            } else if (!part.equals(Node.Constant.FALSE)) {
                parts.add(part);
            }
        }
        return Node.Count.of(sure, parts, counted.least(), counted.most());
    }

    FigureCompiler figures() {
        return figures;
    }

    /** {@return whether a contact is made for what opening it asks} */
    DutyFit.ToOpen fitToOpen(Contact contact) {
        return atoms.voltage().fitToOpen(contact);
    }

    /** {@return whether a contact is made for what closing it asks} */
    DutyFit.ToClose fitToClose(Contact contact) {
        return atoms.voltage().fitToClose(contact);
    }

    /** {@return the number of the vertex that a point is on a phase} */
    int vertex(Obj point, Conductor phase) {
        return atoms.vertex(point, phase);
    }

    private List<Node> compileAll(List<Condition> conditions, Environment environment) {
        return conditions.stream().map(c -> compile(c, environment)).toList();
    }

    private Node quantified(Condition.Quantified quantified, Environment environment) {
        Condition.Binder binder = quantified.binder();
        boolean every = quantified.quantifier() == Condition.Quantifier.EVERY;
        List<Node> parts = new ArrayList<>();
        for (Obj object : domain(binder, environment)) {
            Environment inner = environment.with(binder.variable(), object);
            Node such = binder.such().map(c -> compile(c, inner)).orElse(Node.Constant.TRUE);
            Node body = such.equals(Node.Constant.FALSE)
                    ? Node.Constant.FALSE
                    : compile(quantified.body(), inner);
            Node part = every ? Node.one(List.of(Node.not(such), body)) : Node.all(List.of(such, body));
            parts.add(part);
            if (!(part instanceof Node.Constant)) {
                Effort.keep(BYTES_OF_A_PART);
            }
        }
        return switch (quantified.quantifier()) {
            case EVERY -> Node.all(parts);
            case SOME -> Node.one(parts);
            case NO -> Node.not(Node.one(parts));
        };
    }

    /** {@return the objects that a binder ranges over, its further condition left aside} */
    List<Obj> domain(Condition.Binder binder, Environment environment) {
        if (binder.of().isPresent()) {
            return World.phases(world.phasesOf(object(binder.of().get(), environment)));
        }
        return world.domain(binder.noun());
    }

    /** {@return all that some variables can stand for, their further conditions left aside} @param start what others stand for */
    List<Environment> environments(List<Condition.Binder> binders, Environment start) {
        List<Environment> all = List.of(start);
        for (Condition.Binder binder : binders) {
            List<Environment> more = new ArrayList<>();
            for (Environment environment : all) {
                for (Obj object : domain(binder, environment)) {
                    Effort.step();
                    Effort.keep(BYTES_OF_AN_ENVIRONMENT);
                    more.add(environment.with(binder.variable(), object));
                }
            }
            all = more;
        }
        return all;
    }

    /** {@return the object that a term names} */
    Obj object(Term term, Environment environment) {
        if (term instanceof Term.Variable variable) {
            Obj object = environment.get(variable.name());
            if (object == null) {
                throw new IllegalStateException("nothing is bound to " + variable.name());
            }
            return object;
        } else if (term instanceof Term.Name name) {
            return world.named(name);
        } else if (term instanceof Term.SiteOf site) {
            return new Obj.Site(world.siteOf(object(site.of(), environment)));
        } else if (term instanceof Term.LineOf line) {
            return new Obj.Place(new Term.LineOf(named(line.of(), environment), line.side(), line.span()));
        } else if (term instanceof Term.BushingOf bushing) {
            return new Obj.Place(
                    new Term.BushingOf(named(bushing.of(), environment), bushing.side(), bushing.span()));
        } else if (term instanceof Term.LeadOf lead) {
            return new Obj.Place(new Term.LeadOf(named(lead.of(), environment), lead.side(), lead.span()));
        } else if (term instanceof Term.NodeOf node) {
            return new Obj.Place(new Term.NodeOf(named(node.of(), environment), node.span()));
        }
        throw new IllegalStateException("a term of an unknown shape: " + term);
    }

    /** {@return a term that names the object outright, so that points need no environment later} */
    private Term named(Term term, Environment environment) {
        return new Term.Name(object(term, environment).words(), term.type(), term.span());
    }

    private Node atom(Condition.Atom atom, Environment environment, boolean negated) {
        List<Obj> objects =
                atom.terms().stream().map(t -> object(t, environment)).toList();
        if (atom.predicate() == Predicate.PHASE_IN) {
            // The phases said are the ones that it may be, not ones to ask it of.
            Conductor own = ((Obj.OnPhase) objects.get(0)).phase();
            Node node = AtomCompiler.constant(phases(atom, objects, environment).contains(own));
            return negated ? Node.not(node) : node;
        }
        if (!atom.predicate().perPhase()) {
            Node node = atoms.compile(atom, objects, null);
            return negated ? Node.not(node) : node;
        }
        List<Node> parts = new ArrayList<>();
        for (Conductor phase : phases(atom, objects, environment)) {
            Node node = atoms.compile(atom, objects, phase);
            parts.add(negated ? Node.not(node) : node);
        }
        return Node.all(parts);
    }

    /** {@return the phases on which something is asked; none if it is not asked of phases} */
    List<Conductor> asked(Condition.Atom atom, Environment environment) {
        List<Obj> objects =
                atom.terms().stream().map(t -> object(t, environment)).toList();
        return atom.predicate().perPhase() ? phases(atom, objects, environment) : List.of();
    }

    private List<Conductor> phases(Condition.Atom atom, List<Obj> objects, Environment environment) {
        Phases all = objects.isEmpty() ? Phases.NONE : world.phasesOf(objects.get(0));
        if (objects.size() == 1 && objects.get(0) instanceof Obj.Spot || objects.get(0) instanceof Obj.Joint) {
            // It is on one phase already; a phase that the rule names is that one.
            return all.list();
        }
        if (atom.phase() instanceof PhaseTerm.Given given) {
            return given.phases().list();
        } else if (atom.phase() instanceof PhaseTerm.Variable variable) {
            return List.of(((Obj.OnPhase) environment.get(variable.name())).phase());
        }
        return all.list().stream().filter(Conductor::isPhase).toList();
    }
}
