package org.keeplit.program;

import com.google.common.collect.HashMultimap;
import com.google.common.collect.SetMultimap;
import java.util.ArrayDeque;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Term;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Phases;
import org.keeplit.network.Side;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Bound;

/**
 * Tells which clamp of a jumper sits on which side of the device that the jumper was brought for, from every place where the procedure or
 * its start puts each clamp.
 */
final class ClampSides {
    private final Bound bound;
    private final SetMultimap<FieldKey.Clamp, Vertex> spots = HashMultimap.create();
    /** The branches at each node; made only for a clamp that is on neither line of the device. */
    private SetMultimap<String, Element.Branch> branches;

    ClampSides(Bound bound, StartValues start) {
        this.bound = bound;
        start.spots().forEach((key, vertex) -> spots.put((FieldKey.Clamp) key, vertex));
        gather(bound.body());
    }

    private void gather(List<Block> blocks) {
        for (Block block : blocks) {
            if (block instanceof Block.Step step) {
                gather(step);
            } else if (block instanceof Block.Group group) {
                gather(group.parts());
            } else if (block instanceof Block.Stage stage) {
                gather(stage.parts());
            } else if (block instanceof Block.Repeat repeat) {
                gather(repeat.parts());
            } else if (block instanceof Block.IfFound choice) {
                gather(choice.then());
                gather(choice.otherwise());
            } else {
                throw new IllegalStateException("not a written-out block: " + block);
            }
        }
    }

    private void gather(Block.Step step) {
        if (step.action() instanceof Action.Install install) {
            for (Conductor phase : phases(step, install.jumper())) {
                put(install.jumper(), phase, 1, install.first());
                put(install.jumper(), phase, 2, install.second());
            }
        } else if (step.action() instanceof Action.Clamp clamp) {
            for (Conductor phase : phases(step, clamp.jumper())) {
                put(clamp.jumper(), phase, clamp.clamp(), clamp.spot());
            }
        }
    }

    private Phases phases(Block.Step step, Term jumper) {
        Phases all = bound.phasesOf(jumper);
        return step.phases() instanceof PhaseTerm.Given given ? given.phases().and(all) : all;
    }

    private void put(Term jumper, Conductor phase, int clamp, Action.Spot spot) {
        spots.put(
                new FieldKey.Clamp(jumper.toString(), phase, clamp),
                Points.vertex(bound, spot.point(), StepActs.single(spot.phase(), phase)));
    }

    /**
     * The clamp on a side.
     *
     * @param family the jumper
     * @param phase its phase
     * @param side the side of the device that it was brought for
     * @return 1 or 2; empty where the two clamps are not always on two different known sides
     */
    Optional<Integer> clampOn(String family, Conductor phase, Side side) {
        Optional<Side> first = side(family, phase, 1);
        Optional<Side> second = side(family, phase, 2);
        if (first.isEmpty() || second.isEmpty() || first.equals(second)) {
            return Optional.empty();
        }
        return Optional.of(first.get() == side ? 1 : 2);
    }

    private Optional<Side> side(String family, Conductor phase, int clamp) {
        Set<Optional<Side>> sides = new HashSet<>();
        for (Vertex vertex : spots.get(new FieldKey.Clamp(family, phase, clamp))) {
            sides.add(bound.temporary(family).flatMap(t -> side(t.of().toString(), vertex)));
        }
        return sides.size() == 1 ? sides.iterator().next() : Optional.empty();
    }

    private Optional<Side> side(String device, Vertex vertex) {
        if (!(bound.network().element(device).orElse(null) instanceof Element.Branch branch)) {
            return Optional.empty();
        } else if (vertex instanceof Vertex.Lead lead) {
            return side(branch, lead.device(), lead.side(), lead.conductor());
        } else if (vertex instanceof Vertex.Bushing bushing) {
            return side(branch, bushing.device(), bushing.side(), bushing.conductor());
        }
        return vertex instanceof Vertex.AtNode at ? side(branch, at.node(), at.conductor()) : Optional.empty();
    }

    private Optional<Side> side(Element.Branch branch, String owner, Side side, Conductor phase) {
        if (owner.equals(branch.name())) {
            return Optional.of(side);
        }
        Element.Branch other = (Element.Branch) bound.network().element(owner).orElseThrow();
        return side(branch, other.node(side), phase);
    }

    private Optional<Side> side(Element.Branch branch, String node, Conductor phase) {
        if (node.equals(branch.from()) || node.equals(branch.to())) {
            return Optional.of(node.equals(branch.from()) ? Side.SOURCE : Side.LOAD);
        }
        boolean source = joined(branch, branch.from(), node, phase);
        boolean load = joined(branch, branch.to(), node, phase);
        return source == load ? Optional.empty() : Optional.of(source ? Side.SOURCE : Side.LOAD);
    }

    /** {@return whether the network in its normal state joins two nodes on a phase with a branch out} */
    private boolean joined(Element.Branch without, String from, String to, Conductor phase) {
        Set<String> met = new HashSet<>(Set.of(from));
        ArrayDeque<String> open = new ArrayDeque<>(met);
        while (!open.isEmpty()) {
            for (Element.Branch branch : branches().get(open.poll())) {
                if (branch != without && conducts(branch, phase)) {
                    for (String end : List.of(branch.from(), branch.to())) {
                        if (met.add(end)) {
                            open.add(end);
                        }
                    }
                }
            }
        }
        return met.contains(to);
    }

    private SetMultimap<String, Element.Branch> branches() {
        if (branches == null) {
            branches = HashMultimap.create();
            for (Element element : bound.network().elements()) {
                if (element instanceof Element.Branch branch) {
                    branches.put(branch.from(), branch);
                    branches.put(branch.to(), branch);
                }
            }
        }
        return branches;
    }

    private static boolean conducts(Element.Branch branch, Conductor phase) {
        if (branch instanceof Element.Device device) {
            return device.closed().contains(phase);
        }
        return !(branch instanceof Element.Transformer) && branch.phases().contains(phase);
    }
}
