package org.keeplit.plain;

import com.google.common.collect.ImmutableList;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Kind;
import org.keeplit.network.Network;
import org.keeplit.network.Phases;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Bound;
import org.keeplit.procedure.Edit;
import org.keeplit.procedure.Permit;
import org.keeplit.procedure.Procedure;
import org.keeplit.procedure.Temporary;
import org.keeplit.text.Span;

/**
 * Puts a procedure on a network, for the plain evaluator: the second of two ways that share nothing but what they are given and what
 * comes of it.
 */
public final class PlainBinding {
    /**
     * What came of it.
     *
     * @param bound the procedure on the network; empty if it cannot be put there
     * @param reasons why not, in plain sentences; empty if it can
     */
    public record Result(Optional<Bound> bound, ImmutableList<String> reasons) {}

    private final Network network;
    private final List<String> reasons = new ArrayList<>();
    private final Set<String> jobs = new LinkedHashSet<>();
    private final Deque<String> calls = new ArrayDeque<>();
    private final PlainSubstitution.Reader reader = new PlainSubstitution.Reader() {
        @Override
        public void name(Term.Name name) {
            known(name);
        }

        @Override
        public void unbound(String variable) {
            reasons.add(variable + " stands for nothing here");
        }
    };

    private PlainBinding(Network network) {
        this.network = network;
    }

    /**
     * Binds.
     *
     * @param procedure the procedure, from one start
     * @param network the network
     * @param proof what its parameters stand for
     * @return the bound procedure, or why there is none
     */
    public static Result bind(Procedure procedure, Network network, Procedure.Proof proof) {
        PlainBinding binding = new PlainBinding(network);
        Bound bound = binding.bound(procedure, proof);
        ImmutableList<String> why = binding.reasons.stream().distinct().collect(ImmutableList.toImmutableList());
        return new Result(why.isEmpty() ? Optional.of(bound) : Optional.empty(), why);
    }

    private Bound bound(Procedure procedure, Procedure.Proof proof) {
        if (!procedure.choices().isEmpty()) {
            reasons.add(procedure.name() + " may start in several ways, and one must be chosen");
        }
        fit(procedure, proof.arguments());
        procedure.crew().forEach(p -> jobs.add(p.name()));
        Map<String, Term> things = things(procedure, proof.arguments());
        PlainSubstitution names = new PlainSubstitution(things, Map.of(), reader);
        ImmutableList.Builder<Temporary> temporaries = ImmutableList.builder();
        Map<String, Term> brought = new HashMap<>();
        for (Temporary t : procedure.temporaries()) {
            Term of = names.term(t.of());
            temporaries.add(new Temporary(t.name(), kind(t), of, t.span()));
            brought.put(t.name(), of);
        }
        ImmutableList.Builder<Permit> permits = ImmutableList.builder();
        for (Permit p : procedure.permits()) {
            permits.add(new Permit(
                    p.name(), p.type(), names.term(p.target()),
                    p.heldAt().stream().map(names::devices).collect(ImmutableList.toImmutableList()),
                    names.term(p.holder()), p.with(), p.span()));
        }
        PlainExtent extent = new PlainExtent(network, brought);
        List<Block> body = steps(procedure, names, extent);
        if (reasons.isEmpty()) {
            body.forEach(block -> onSomePhase(block, extent));
        }
        return new Bound(
                procedure,
                network,
                proof.arguments(),
                temporaries.build(),
                permits.build(),
                procedure.outages().stream().map(t -> outage(t, things).toString()).collect(ImmutableList.toImmutableList()),
                procedure.starts().stream()
                        .map(s -> new Procedure.Start(s.given(), names.condition(s.condition()), s.span()))
                        .collect(ImmutableList.toImmutableList()),
                ImmutableList.copyOf(body),
                names.conditions(procedure.ends()));
    }

    /** An outage may name a load of another network on which the procedure is proved, too: it says nothing here. */
    private static Term outage(Term load, Map<String, Term> things) {
        return load instanceof Term.Variable variable ? things.getOrDefault(variable.name(), load) : load;
    }

    /** The kind of what is brought is the one that the network's own equipment lists have under that name. */
    private Kind kind(Temporary temporary) {
        Kind said = temporary.kind();
        Optional<Kind> here = network.kind(said.name());
        if (here.isEmpty()) {
            reasons.add("the equipment that " + network.name() + " uses has no " + said.name() + ", which " + temporary.name() + " is");
        } else if (here.get().base() != said.base()) {
            reasons.add(temporary.name() + " is a " + said.base().phrase() + ", and in the equipment that " + network.name() + " uses "
                    + said.name() + " is a " + here.get().base().phrase());
        }
        return here.orElse(said);
    }

    private void fit(Procedure procedure, Map<String, Term> arguments) {
        for (Procedure.Parameter parameter : procedure.parameters()) {
            Term given = arguments.get(parameter.name());
            if (given == null) {
                reasons.add("nothing is given as " + parameter.name() + " of " + procedure.name());
            } else if (given.type() != parameter.noun().type()) {
                reasons.add(given + " is not " + parameter.noun().type().phrase() + ", as " + parameter.name() + " of " + procedure.name() + " is");
            } else {
                network.element(given.toString()).ifPresent(element -> fit(parameter, element));
            }
        }
        Set<String> written = new LinkedHashSet<>();
        procedure.parameters().forEach(p -> written.add(p.name()));
        procedure.crew().forEach(p -> written.add(p.name()));
        arguments.keySet().stream()
                .filter(name -> !written.contains(name))
                .forEach(name -> reasons.add(procedure.name() + " is not written for anything called " + name));
    }

    private void fit(Procedure.Parameter parameter, Element element) {
        Set<String> kinds = parameter.noun().kinds();
        if (!kinds.isEmpty() && !kinds.contains(element.kind().name())) {
            reasons.add(element.name() + " is a " + element.kind().name() + ", and " + parameter.name() + " is a " + parameter.noun().words());
        }
        boolean otherBuild = element instanceof Element.Device device
                && device.phases().size() > 1
                && parameter.ganged().isPresent()
                && parameter.ganged().get() != device.ganged();
        if (otherBuild) {
            reasons.add(element.name() + (parameter.ganged().get() ? " has single-phase units" : " is ganged") + ", and " + parameter.name()
                    + (parameter.ganged().get() ? " is ganged" : " has single-phase units"));
        }
    }

    /** {@return what the variables of a procedure stand for: what is given for its parameters, and its own equipment, holds and clearances} */
    private Map<String, Term> things(Procedure procedure, Map<String, Term> arguments) {
        Map<String, Term> all = new HashMap<>();
        procedure.parameters().forEach(p -> Optional.ofNullable(arguments.get(p.name())).ifPresent(t -> all.put(p.name(), t)));
        for (Temporary t : procedure.temporaries()) {
            all.put(t.name(), new Term.Name(t.name(), Type.valueOf(t.kind().base().name()), t.span()));
            jobs.add(t.name());
        }
        for (Permit p : procedure.permits()) {
            all.put(p.name(), new Term.Name(p.name(), p.type(), p.span()));
            jobs.add(p.name());
        }
        return all;
    }

    private void known(Term.Name name) {
        boolean there = jobs.contains(name.name())
                || network.element(name.name()).isPresent()
                || network.nodes().containsKey(name.name())
                || network.sites().contains(name.name());
        if (!there) {
            reasons.add("there is no " + name + " in " + network.name());
        }
    }

    /** {@return the steps of a procedure with its names put in, everything written out, and changed as a variant says} */
    private List<Block> steps(Procedure procedure, PlainSubstitution names, PlainExtent extent) {
        List<Block> body = write(procedure.body(), procedure, names, extent);
        PlainEdits edits = new PlainEdits(extent, reasons);
        for (Edit edit : procedure.edits()) {
            body = edits.apply(body, edit, more -> write(more, procedure, names, extent));
        }
        return body;
    }

    private List<Block> write(List<Block> blocks, Procedure in, PlainSubstitution names, PlainExtent extent) {
        List<Block> all = new ArrayList<>();
        blocks.forEach(block -> all.add(write(block, in, names, extent)));
        return all;
    }

    private ImmutableList<Block> parts(List<Block> blocks, Procedure in, PlainSubstitution names, PlainExtent extent) {
        return ImmutableList.copyOf(write(blocks, in, names, extent));
    }

    private Block write(Block block, Procedure in, PlainSubstitution names, PlainExtent extent) {
        if (block instanceof Block.Step step) {
            return names.step(step);
        } else if (block instanceof Block.Group b) {
            return new Block.Group(b.order(), parts(b.parts(), in, names, extent), b.span());
        } else if (block instanceof Block.Stage b) {
            return new Block.Stage(b.title(), parts(b.parts(), in, names, extent), b.span());
        } else if (block instanceof Block.Repeat b) {
            return new Block.Repeat(b.times(), b.exactly(), parts(b.parts(), in, names, extent), b.span());
        } else if (block instanceof Block.IfFound b) {
            return new Block.IfFound(
                    b.item(), b.outcome(), parts(b.then(), in, names, extent), parts(b.otherwise(), in, names, extent), b.span());
        } else if (block instanceof Block.ForEachPhase b) {
            return phases(b, in, names, extent);
        }
        return call((Block.Call) block, in, names, extent);
    }

    private Block phases(Block.ForEachPhase each, Procedure in, PlainSubstitution names, PlainExtent extent) {
        Term of = names.term(each.of());
        List<Conductor> has = extent.phases(of);
        if (has.isEmpty()) {
            reasons.add(of + " has no phases");
        }
        ImmutableList.Builder<Block> all = ImmutableList.builder();
        for (Conductor phase : has) {
            ImmutableList<Block> parts = parts(each.parts(), in, names.with(each.variable(), phase), extent);
            all.add(new Block.Group(Block.Order.IN_ORDER, parts, each.span()));
        }
        return new Block.Group(each.ordered() ? Block.Order.IN_ORDER : Block.Order.ANY_ORDER, all.build(), each.span());
    }

    private Block call(Block.Call call, Procedure in, PlainSubstitution names, PlainExtent extent) {
        Procedure called = call.procedure();
        if (calls.contains(called.name())) {
            reasons.add(called.name() + " calls itself");
            return new Block.Group(Block.Order.IN_ORDER, ImmutableList.of(), call.span());
        }
        calls.push(called.name());
        Map<String, Term> given = new HashMap<>();
        call.arguments().forEach((name, term) -> given.put(name, names.term(term)));
        fit(called, given);
        Map<String, Term> people = new HashMap<>();
        Map<String, String> standIns = new HashMap<>();
        called.crew().forEach(person -> {
            Term here = call.arguments().getOrDefault(person.name(), new Term.Name(person.name(), Type.PERSON, Span.NONE));
            people.put(person.name(), names.term(here));
            standIns.put(person.name(), here.toString());
        });
        PlainSubstitution theirs = new PlainSubstitution(things(called, given), people, reader);
        PlainCalls contract = new PlainCalls(in, names, called, theirs, reasons);
        contract.check(standIns);
        ImmutableList.Builder<Block> all = ImmutableList.builder();
        all.add(contract.begins(call));
        all.addAll(steps(called, theirs, extent));
        all.add(contract.ends(call));
        calls.pop();
        return new Block.Group(Block.Order.IN_ORDER, all.build(), call.span());
    }

    /** A step must be done on some phase, and what is done to a device must be one of the things that its kind can do. */
    private void onSomePhase(Block block, PlainExtent extent) {
        if (block instanceof Block.Step step) {
            Term object = PlainExtent.object(step.action());
            if (object != null && extent.of(step).isEmpty()) {
                String on = step.phases() instanceof PhaseTerm.Given given ? "no phase of " + given : "no phases";
                reasons.add("“" + step.sentence() + "”: " + object + " has " + on);
            }
            if (object != null && step.action() instanceof Action.Operate operate) {
                Optional<Element> device = network.element(object.toString());
                if (device.isEmpty() || device.get().kind().verb(operate.verb()).isEmpty()) {
                    reasons.add("“" + step.sentence() + "”: that cannot be done to " + object);
                }
            }
        } else if (block instanceof Block.Group b) {
            b.parts().forEach(part -> onSomePhase(part, extent));
        } else if (block instanceof Block.Stage b) {
            b.parts().forEach(part -> onSomePhase(part, extent));
        } else if (block instanceof Block.Repeat b) {
            b.parts().forEach(part -> onSomePhase(part, extent));
        } else if (block instanceof Block.IfFound b) {
            b.then().forEach(part -> onSomePhase(part, extent));
            b.otherwise().forEach(part -> onSomePhase(part, extent));
        }
    }
}
