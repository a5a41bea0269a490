package org.keeplit.program;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Mode;
import org.keeplit.network.Phases;
import org.keeplit.outcome.SlipKind;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.Bound;

/** What can go wrong with one act. */
final class SlipsOfAct {
    private final Program program;
    private final Bound bound;
    private final Act act;
    private final List<Slip> all = new ArrayList<>();

    SlipsOfAct(Program program, Act act) {
        this.program = program;
        this.bound = program.bound();
        this.act = act;
    }

    List<Slip> all() {
        add(SlipKind.LEFT_OUT, "leaves out: " + act.text(), act.primitives());
        if (moves()) {
            add(SlipKind.TWICE, act.text() + ", once more", act.primitives());
            add(SlipKind.EARLY, act.text(), act.primitives());
        }
        if (act.step().action() instanceof Action.Run) {
            // One switch for all phases: it neither comes apart nor moves on one of them.
            return all;
        }
        if (act.primitives().size() > 1) {
            add(SlipKind.APART, "not as one: " + act.text(), act.primitives());
            return all;
        }
        Primitive only = act.primitives().get(0);
        for (Conductor phase : Phases.LIVE) {
            onPhase(only, phase).ifPresent(p -> add(SlipKind.WRONG_PHASE, words(p), List.of(p)));
        }
        neighbour(only).ifPresent(p -> add(SlipKind.NEIGHBOUR, words(p), List.of(p)));
        opposite(only).ifPresent(p -> add(SlipKind.WRONG_WAY, words(p), List.of(p)));
        return all;
    }

    private void add(SlipKind kind, String words, List<Primitive> primitives) {
        all.add(new Slip(kind, act.id(), words, ImmutableList.copyOf(primitives)));
    }

    /** {@return whether the act moves or says something, rather than looking or writing} */
    private boolean moves() {
        return act.primitives().stream()
                .anyMatch(p -> !(p instanceof Primitive.Look
                        || p instanceof Primitive.Prove
                        || p instanceof Primitive.TestDead
                        || p instanceof Primitive.Write
                        || p instanceof Primitive.Await
                        || p instanceof Primitive.Nothing));
    }

    private Optional<Primitive> onPhase(Primitive only, Conductor phase) {
        if (only instanceof Primitive.MovePole p && p.phases().size() == 1 && isOther(p.device(), p.phases(), phase)) {
            return Optional.of(new Primitive.MovePole(p.device(), Phases.of(phase), p.closed()));
        } else if (only instanceof Primitive.MoveEnd p && isOther(p.device(), Phases.of(p.phase()), phase)) {
            Conductor onto = p.onto() == p.phase() ? phase : p.onto();
            return Optional.of(new Primitive.MoveEnd(p.device(), p.side(), phase, p.end(), p.on(), onto));
        } else if (only instanceof Primitive.MoveClamp p) {
            return clampOnPhase(p, phase);
        } else if (only instanceof Primitive.Prove p && isOther(p.subject(), Phases.of(p.phase()), phase)) {
            return Optional.of(new Primitive.Prove(p.proof(), p.subject(), phase));
        } else if (only instanceof Primitive.TestDead p) {
            return beside(p.vertex(), phase).map(Primitive.TestDead::new);
        } else if (only instanceof Primitive.Touch p) {
            return beside(p.vertex(), phase).map(Primitive.Touch::new);
        } else if (only instanceof Primitive.SetMode p && isUnit(p) && isOther(p.device(), p.on(), phase)) {
            return Optional.of(new Primitive.SetMode(p.device(), Phases.of(phase), p.mode(), p.value()));
        }
        return Optional.empty();
    }

    /** The clamp of the right piece goes on the wrong conductor; the clamp of a wrong piece comes off. */
    private Optional<Primitive> clampOnPhase(Primitive.MoveClamp p, Conductor phase) {
        if (p.spot() != null) {
            return beside(p.spot(), phase).map(v -> new Primitive.MoveClamp(p.family(), p.phase(), p.clamp(), v));
        }
        boolean other = phase != p.phase()
                && bound.phasesOf(bound.temporary(p.family()).orElseThrow().of()).contains(phase);
        return other ? Optional.of(new Primitive.MoveClamp(p.family(), phase, p.clamp(), null)) : Optional.empty();
    }

    private boolean isUnit(Primitive.SetMode p) {
        Element element = element(p.device()).orElseThrow();
        Mode mode = element.kind().mode(p.mode()).orElseThrow();
        return Pickups.hasUnits(element) && Units.mode(element, mode, p.phase()) == p.phase() && mode.each();
    }

    private boolean isOther(String subject, Phases meant, Conductor phase) {
        Phases has = element(subject)
                .map(Element::phases)
                .orElseGet(() -> bound.temporary(subject)
                        .map(t -> bound.phasesOf(t.of()))
                        .orElse(Phases.NONE));
        return has.contains(phase) && !meant.contains(phase);
    }

    private Optional<Vertex> beside(Vertex vertex, Conductor phase) {
        if (vertex.conductor() == phase || !vertex.conductor().isPhase()) {
            return Optional.empty();
        } else if (vertex instanceof Vertex.AtNode node) {
            return hasPhase(node.node(), phase) ? Optional.of(new Vertex.AtNode(node.node(), phase)) : Optional.empty();
        } else if (vertex instanceof Vertex.Bushing bushing) {
            return isOther(bushing.device(), Phases.NONE, phase)
                    ? Optional.of(new Vertex.Bushing(bushing.device(), bushing.side(), phase))
                    : Optional.empty();
        }
        return Optional.empty();
    }

    private boolean hasPhase(String node, Conductor phase) {
        return Optional.ofNullable(bound.network().nodes().get(node))
                .map(phases -> phases.contains(phase))
                .orElse(false);
    }

    private Optional<Primitive> neighbour(Primitive only) {
        if (only instanceof Primitive.MovePole p) {
            return next(p.device()).filter(e -> e.phases().containsAll(p.phases()))
                    .map(e -> new Primitive.MovePole(e.name(), ganged(e) ? e.phases() : p.phases(), p.closed()));
        } else if (only instanceof Primitive.SetMode p) {
            return next(p.device()).map(e -> Primitive.SetMode.of(
                    e, e.kind().mode(p.mode()).orElseThrow(), p.phase(), p.value()));
        } else if (only instanceof Primitive.MoveTag p) {
            return next(p.device()).map(e -> new Primitive.MoveTag(e.name(), p.on()));
        }
        return Optional.empty();
    }

    private static boolean ganged(Element element) {
        return element instanceof Element.Device device && device.ganged();
    }

    /** {@return the next device of the same kind and build in the order of the network} */
    private Optional<Element> next(String device) {
        Element own = element(device).orElseThrow();
        List<Element> alike = bound.network().all(Element.class)
                .filter(e -> e.kind().name().equals(own.kind().name()) && ganged(e) == ganged(own))
                .toList();
        int at = alike.indexOf(own);
        return alike.size() < 2 ? Optional.empty() : Optional.of(alike.get((at + 1) % alike.size()));
    }

    private Optional<Primitive> opposite(Primitive only) {
        if (only instanceof Primitive.MovePole p) {
            return Optional.of(new Primitive.MovePole(p.device(), p.phases(), !p.closed()));
        } else if (only instanceof Primitive.MoveTag p) {
            return Optional.of(new Primitive.MoveTag(p.device(), !p.on()));
        } else if (only instanceof Primitive.SetMode p) {
            Mode mode = element(p.device()).orElseThrow().kind().mode(p.mode()).orElseThrow();
            return mode.values().stream()
                    .filter(v -> !v.equals(p.value()))
                    .findFirst()
                    .map(v -> new Primitive.SetMode(p.device(), p.on(), p.mode(), v));
        }
        return Optional.empty();
    }

    private Optional<Element> element(String name) {
        return bound.network().element(name);
    }

    private String words(Primitive primitive) {
        return PrimitiveWords.of(primitive, bound.network())
                .map(words -> PrimitiveWords.agreeing(act.actor(), words))
                .orElse(act.text());
    }
}
