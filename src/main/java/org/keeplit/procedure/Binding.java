package org.keeplit.procedure;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.keeplit.condition.Noun;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Kind;
import org.keeplit.network.Network;
import org.keeplit.text.Problem;
import org.keeplit.text.Problems;
import org.keeplit.text.Span;

/** Binds a procedure to a network. */
public final class Binding {
    private final Procedure procedure;
    private final Network network;
    private final Problems problems;
    private ImmutableList<Permit> permits = ImmutableList.of();
    /** The procedure whose steps are being bound: the one itself, or one that it calls. */
    private Procedure caller;
    /** Whether a call does not find what the called procedure was written for. */
    private boolean broken;

    private Binding(Procedure procedure, Network network, Problems problems) {
        this.procedure = procedure;
        this.caller = procedure;
        this.network = network;
        this.problems = problems;
    }

    /**
     * Binds.
     *
     * @param procedure the procedure
     * @param network the network
     * @param proof which objects its parameters stand for
     * @param problems collects what does not fit
     * @return the bound procedure, or nothing if something does not fit
     */
    public static Optional<Bound> bind(
            Procedure procedure, Network network, Procedure.Proof proof, Problems problems) {
        return new Binding(procedure, network, problems).bind(proof);
    }

    private Optional<Bound> bind(Procedure.Proof proof) {
        Problems mine = new Problems();
        for (Procedure.Parameter parameter : procedure.parameters()) {
            checkArgument(parameter, proof, mine);
        }
        mine.sorted().forEach(problems::add);
        if (mine.hasErrors()) {
            return Optional.empty();
        }
        Substitution substitution = new Substitution(named(proof), Map.of());
        ImmutableList<Temporary> temporaries = procedure.temporaries().stream()
                .map(t -> new Temporary(t.name(), kind(t, mine), substitution.term(t.of()), t.span()))
                .collect(ImmutableList.toImmutableList());
        if (mine.hasErrors()) {
            mine.sorted().forEach(problems::add);
            return Optional.empty();
        }
        permits = procedure.permits().stream()
                .map(p -> permit(p, substitution))
                .collect(ImmutableList.toImmutableList());
        ImmutableList<Block> body = blocks(procedure.body(), substitution, temporaries);
        ImmutableList<Edit> edits = procedure.edits().stream()
                .map(e -> edit(e, substitution, temporaries))
                .collect(ImmutableList.toImmutableList());
        if (broken) {
            return Optional.empty();
        }
        Problems editing = new Problems();
        body = Editing.apply(body, edits, t -> Bound.phasesOf(network, temporaries, t), editing);
        editing.sorted().forEach(problems::add);
        if (editing.hasErrors()) {
            return Optional.empty();
        }
        return Optional.of(new Bound(
                procedure,
                network,
                ImmutableMap.copyOf(proof.arguments()),
                temporaries,
                permits,
                procedure.outages().stream()
                        .map(t -> substitution.term(t).toString())
                        .collect(ImmutableList.toImmutableList()),
                procedure.starts().stream()
                        .map(s -> new Procedure.Start(s.given(), substitution.condition(s.condition()), s.span()))
                        .collect(ImmutableList.toImmutableList()),
                body,
                substitution.conditions(procedure.ends())));
    }

    /** {@return the kind that the equipment of the network declares: another list may declare one of the same name} */
    private Kind kind(Temporary temporary, Problems mine) {
        String name = temporary.kind().name();
        Optional<Kind> kind = network.kind(name).filter(k -> k.base() == temporary.kind().base());
        if (kind.isEmpty()) {
            mine.add(Problem.error(
                            "wrong-kind",
                            temporary.span(),
                            "the equipment that " + network.name() + " uses has no " + name + " that is a "
                                    + temporary.kind().base().phrase())
                    .help("declare the kind there, or bring another one"));
        }
        return kind.orElse(temporary.kind());
    }

    /** {@return the arguments, and what the procedure declares: its names may look like variables too} */
    private Map<String, Term> named(Procedure.Proof proof) {
        Map<String, Term> all = declared();
        all.putAll(proof.arguments());
        return all;
    }

    /** {@return what the procedure itself declares} */
    private Map<String, Term> declared() {
        Map<String, Term> all = new HashMap<>();
        for (Temporary temporary : procedure.temporaries()) {
            Type type = Type.valueOf(temporary.kind().base().name());
            all.put(temporary.name(), new Term.Name(temporary.name(), type, temporary.span()));
        }
        for (Permit permit : procedure.permits()) {
            all.put(permit.name(), new Term.Name(permit.name(), permit.type(), permit.span()));
        }
        for (Person person : procedure.crew()) {
            all.put(person.name(), new Term.Name(person.name(), Type.PERSON, person.span()));
        }
        return all;
    }

    private void checkArgument(Procedure.Parameter parameter, Procedure.Proof proof, Problems mine) {
        Term argument = proof.arguments().get(parameter.name());
        if (argument == null) {
            mine.add(Problem.error(
                            "missing-argument",
                            proof.span(),
                            procedure.name() + " is written for a " + parameter.noun().words() + " "
                                    + parameter.name() + ", and this line does not say which one that is")
                    .help("add: with … as " + parameter.name()));
            return;
        }
        fits(procedure.name(), parameter, argument, argument.span(), mine);
    }

    /** Tells where an object is not what a parameter is written for. @param at where it was given */
    private void fits(String owner, Procedure.Parameter parameter, Term argument, Span at, Problems mine) {
        Optional<Element> element = network.element(argument.toString());
        if (element.isEmpty()) {
            if (!network.nodes().containsKey(argument.toString())) {
                mine.add(Problem.error(
                        "unknown-device", at, "there is no " + argument + " in " + network.name()));
            }
            return;
        }
        Noun noun = parameter.noun();
        String kind = element.get().kind().name();
        if (!noun.kinds().isEmpty() && !noun.kinds().contains(kind)) {
            mine.add(Problem.error(
                    "wrong-kind",
                    at,
                    owner + " is written for a " + noun.words() + ", and " + argument + " is a " + kind));
        }
        if (parameter.ganged().isPresent()
                && element.get() instanceof Element.Device device
                && device.ganged() != parameter.ganged().get()) {
            mine.add(Problem.error(
                    "wrong-build",
                    at,
                    owner + " is written for "
                            + (parameter.ganged().get() ? "poles that move together" : "single-phase units")
                            + ", and " + argument + " has "
                            + (device.ganged() ? "poles that move together" : "single-phase units")));
        }
    }

    static Permit permit(Permit permit, Substitution substitution) {
        return new Permit(
                permit.name(),
                permit.type(),
                substitution.term(permit.target()),
                permit.heldAt().stream().map(substitution::devices).collect(ImmutableList.toImmutableList()),
                substitution.term(permit.holder()),
                permit.with(),
                permit.span());
    }

    private Edit edit(Edit edit, Substitution substitution, ImmutableList<Temporary> temporaries) {
        if (edit instanceof Edit.Replace replace) {
            return new Edit.Replace(
                    replace.step(), blocks(replace.blocks(), substitution, temporaries), replace.span());
        } else if (edit instanceof Edit.Insert insert) {
            return new Edit.Insert(
                    insert.before(),
                    insert.anchor(),
                    blocks(insert.blocks(), substitution, temporaries),
                    insert.span());
        }
        return edit;
    }

    private ImmutableList<Block> blocks(
            List<Block> blocks, Substitution substitution, ImmutableList<Temporary> temporaries) {
        return blocks.stream()
                .map(b -> block(b, substitution, temporaries))
                .collect(ImmutableList.toImmutableList());
    }

    private Block block(Block block, Substitution substitution, ImmutableList<Temporary> temporaries) {
        if (block instanceof Block.Step step) {
            return substitution.step(step);
        } else if (block instanceof Block.Group group) {
            return new Block.Group(
                    group.order(), blocks(group.parts(), substitution, temporaries), group.span());
        } else if (block instanceof Block.Stage stage) {
            return new Block.Stage(stage.title(), blocks(stage.parts(), substitution, temporaries), stage.span());
        } else if (block instanceof Block.Repeat repeat) {
            return new Block.Repeat(
                    repeat.times(),
                    repeat.exactly(),
                    blocks(repeat.parts(), substitution, temporaries),
                    repeat.span());
        } else if (block instanceof Block.IfFound choice) {
            return new Block.IfFound(
                    choice.item(),
                    choice.outcome(),
                    blocks(choice.then(), substitution, temporaries),
                    blocks(choice.otherwise(), substitution, temporaries),
                    choice.span());
        } else if (block instanceof Block.ForEachPhase each) {
            return eachPhase(each, substitution, temporaries);
        } else if (block instanceof Block.Call call) {
            return call(call, substitution, temporaries);
        }
        throw new IllegalStateException("a block of an unknown shape: " + block);
    }

    private Block eachPhase(Block.ForEachPhase each, Substitution substitution, ImmutableList<Temporary> temporaries) {
        ImmutableList.Builder<Block> parts = ImmutableList.builder();
        for (Conductor phase : Bound.phasesOf(network, temporaries, substitution.term(each.of()))) {
            if (phase == Conductor.N) {
                continue;
            }
            parts.add(new Block.Group(
                    Block.Order.IN_ORDER,
                    blocks(each.parts(), substitution.with(each.variable(), phase), temporaries),
                    each.span()));
        }
        Block.Order order = each.ordered() ? Block.Order.IN_ORDER : Block.Order.ANY_ORDER;
        return new Block.Group(order, parts.build(), each.span());
    }

    private Block call(Block.Call call, Substitution substitution, ImmutableList<Temporary> temporaries) {
        // What the caller declares serves the called procedure too, under the same names unless the call says otherwise.
        Map<String, Term> arguments = declared();
        Procedure callee = call.procedure();
        // Who goes by the same name in both is whoever that is further out, where the caller is called, too.
        callee.crew().forEach(p -> arguments.put(p.name(), substitution.term(new Term.Name(p.name(), Type.PERSON, p.span()))));
        call.arguments().forEach((name, term) -> arguments.put(name, substitution.term(term)));
        Substitution inner = new Substitution(arguments, Map.of());
        Problems mine = new Problems();
        callee.parameters().forEach(p -> fits(callee.name(), p, arguments.get(p.name()), call.span(), mine));
        CallContract contract = new CallContract(call, inner, mine);
        // A called procedure gets what its own caller declares, and nothing that is declared further out.
        Set<String> brought = Stream.concat(
                        caller.temporaries().stream().map(Temporary::name), caller.permits().stream().map(Permit::name))
                .collect(Collectors.toSet());
        contract.check(
                temporaries.stream().filter(t -> brought.contains(t.name())).toList(),
                permits.stream().filter(p -> brought.contains(p.name())).toList(),
                procedure.crew());
        Procedure before = caller;
        caller = callee;
        ImmutableList<Edit> edits = callee.edits().stream()
                .map(e -> edit(e, inner, temporaries))
                .collect(ImmutableList.toImmutableList());
        ImmutableList<Block> steps = Editing.apply(
                blocks(callee.body(), inner, temporaries), edits, t -> Bound.phasesOf(network, temporaries, t), mine);
        caller = before;
        mine.sorted().forEach(problem -> {
            problems.add(problem);
            broken = true;
        });
        ImmutableList.Builder<Block> parts = ImmutableList.builder();
        parts.add(contract.begin());
        parts.addAll(steps);
        parts.add(contract.end());
        return new Block.Stage(callee.title(), parts.build(), call.span());
    }
}
