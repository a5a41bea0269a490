package org.keeplit.plain;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.network.Conductor;
import org.keeplit.network.Phases;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Edit;

/** The changes of a variant, made one after another to steps in which everything is written out. */
final class PlainEdits {
    private final PlainExtent extent;
    private final List<String> reasons;

    /** @param reasons gets what cannot be done */
    PlainEdits(PlainExtent extent, List<String> reasons) {
        this.extent = extent;
        this.reasons = reasons;
    }

    /** {@return the steps after a change} @param inner writes out the steps that a change brings */
    List<Block> apply(List<Block> body, Edit edit, Function<List<Block>, List<Block>> inner) {
        if (edit instanceof Edit.Without e) {
            return replace(body, e.step(), hit -> List.of());
        } else if (edit instanceof Edit.Replace e) {
            List<Block> instead = called(inner.apply(e.blocks()), e.step().label());
            return replace(body, e.step(), hit -> instead);
        } else if (edit instanceof Edit.OtherPhase e) {
            PhaseTerm there = new PhaseTerm.Given(Phases.of(e.instead()));
            return replace(body, e.step(), hit -> List.of(onPhase(hit, there)));
        } else if (edit instanceof Edit.Insert e) {
            return place(apart(body, e.anchor()), e.anchor(), e.before(), inner.apply(e.blocks()));
        }
        return move(body, (Edit.Move) edit);
    }

    /** A single step that stands in for another and has no label of its own goes by the label of that one. */
    private static List<Block> called(List<Block> instead, String label) {
        if (instead.size() != 1) {
            return instead;
        } else if (instead.get(0) instanceof Block.Step step) {
            return List.of(step.label().isEmpty() ? step.withLabel(Optional.of(label)) : step);
        } else if (instead.get(0) instanceof Block.Group group && isSentence(group, Optional.empty())) {
            List<Block> parts = new ArrayList<>();
            group.parts().forEach(part -> parts.add(((Block.Step) part).withLabel(Optional.of(label))));
            return List.of(new Block.Group(group.order(), list(parts), group.span()));
        }
        return instead;
    }

    /** Of pieces on one phase each, and places on one phase each, each piece goes to the place on its phase. */
    private List<Block> move(List<Block> body, Edit.Move edit) {
        List<Block> whole = apart(body, edit.step());
        List<Block> pieces = new ArrayList<>();
        List<Block> left = replace(whole, edit.step(), hit -> {
            pieces.add(hit);
            return List.of();
        });
        List<Block> anchors = new ArrayList<>();
        left = replace(left, edit.anchor(), hit -> {
            anchors.add(hit);
            return List.of(hit);
        });
        boolean paired = pieces.size() > 1
                && pieces.size() == anchors.size()
                && pieces.stream().allMatch(piece -> anchors.stream().filter(a -> sameOne(a, piece)).count() == 1);
        if (!paired) {
            return place(left, edit.anchor(), edit.before(), only(whole, edit.step()));
        }
        return replace(left, edit.anchor(), hit -> {
            List<Block> all = new ArrayList<>(pieces.stream().filter(piece -> sameOne(hit, piece)).toList());
            all.add(edit.before() ? all.size() : 0, hit);
            return all;
        });
    }

    /** {@return the steps with each part that is meant as a step of its own} */
    private List<Block> apart(List<Block> body, Edit.Ref ref) {
        return replace(body, ref, List::of);
    }

    /** {@return of some steps only those that are meant, in the groups that give them their order} */
    private List<Block> only(List<Block> blocks, Edit.Ref ref) {
        List<Block> all = new ArrayList<>();
        for (Block block : blocks) {
            if (isMeant(block, ref)) {
                all.add(block);
            } else if (block instanceof Block.Group group && group.order() != Block.Order.IN_ORDER) {
                List<Block> parts = new ArrayList<>();
                for (Block part : group.parts()) {
                    List<Block> some = only(List.of(part), ref);
                    if (!some.isEmpty()) {
                        parts.add(some.size() == 1 ? some.get(0) : new Block.Group(Block.Order.IN_ORDER, list(some), part.span()));
                    }
                }
                if (!parts.isEmpty()) {
                    all.add(parts.size() == 1 ? parts.get(0) : new Block.Group(group.order(), list(parts), group.span()));
                }
            } else {
                inside(block).forEach(some -> all.addAll(only(some, ref)));
            }
        }
        return all;
    }

    /** {@return the lists of steps of which a block is made} */
    private static List<List<Block>> inside(Block block) {
        if (block instanceof Block.Group b) {
            return List.of(b.parts());
        } else if (block instanceof Block.Stage b) {
            return List.of(b.parts());
        } else if (block instanceof Block.Repeat b) {
            return List.of(b.parts());
        } else if (block instanceof Block.IfFound b) {
            return List.of(b.then(), b.otherwise());
        }
        return List.of();
    }

    private boolean has(Block block, Edit.Ref ref) {
        return isMeant(block, ref) || inside(block).stream().anyMatch(some -> some.stream().anyMatch(b -> has(b, ref)));
    }

    private boolean isMeant(Block block, Edit.Ref ref) {
        if (block instanceof Block.Step step) {
            return step.label().equals(Optional.of(ref.label()))
                    && ref.phase().map(p -> extent.of(step).equals(Phases.of(p))).orElse(true);
        }
        return ref.phase().isEmpty() && block instanceof Block.Group group && isSentence(group, Optional.of(ref.label()));
    }

    /** Puts more steps before all that is meant, or after all of it: outside a group in which the crew has the choice what comes first. */
    private List<Block> place(List<Block> blocks, Edit.Ref ref, boolean before, List<Block> more) {
        List<Integer> at = new ArrayList<>();
        for (int i = 0; i < blocks.size(); i++) {
            if (has(blocks.get(i), ref)) {
                at.add(i);
            }
        }
        if (at.isEmpty()) {
            return blocks;
        }
        int next = before ? at.get(0) : at.get(at.size() - 1);
        Block block = blocks.get(next);
        List<Block> all = new ArrayList<>(blocks);
        boolean choice = isMeant(block, ref)
                || block instanceof Block.Group group
                        && group.order() != Block.Order.IN_ORDER
                        && group.parts().stream().filter(part -> has(part, ref)).count() > 1
                || block instanceof Block.IfFound
                        && inside(block).stream().allMatch(some -> some.stream().anyMatch(b -> has(b, ref)));
        if (choice) {
            all.addAll(before ? next : next + 1, more);
        } else {
            all.set(next, placeIn(block, ref, before, more));
        }
        return all;
    }

    private Block placeIn(Block block, Edit.Ref ref, boolean before, List<Block> more) {
        if (block instanceof Block.Group group && group.order() != Block.Order.IN_ORDER) {
            List<Block> parts = new ArrayList<>();
            for (Block part : group.parts()) {
                List<Block> now = place(List.of(part), ref, before, more);
                parts.add(now.size() == 1 ? now.get(0) : new Block.Group(Block.Order.IN_ORDER, list(now), part.span()));
            }
            return new Block.Group(group.order(), list(parts), group.span());
        } else if (block instanceof Block.Group b) {
            return new Block.Group(b.order(), list(place(b.parts(), ref, before, more)), b.span());
        } else if (block instanceof Block.Stage b) {
            return new Block.Stage(b.title(), list(place(b.parts(), ref, before, more)), b.span());
        } else if (block instanceof Block.Repeat b) {
            return new Block.Repeat(b.times(), b.exactly(), list(place(b.parts(), ref, before, more)), b.span());
        }
        Block.IfFound b = (Block.IfFound) block;
        return new Block.IfFound(
                b.item(), b.outcome(), list(place(b.then(), ref, before, more)), list(place(b.otherwise(), ref, before, more)), b.span());
    }

    private boolean sameOne(Block a, Block b) {
        return a instanceof Block.Step one
                && b instanceof Block.Step other
                && extent.of(one).size() == 1
                && extent.of(one).equals(extent.of(other));
    }

    private static Block onPhase(Block hit, PhaseTerm phase) {
        return ((Block.Step) hit).withPhases(phase);
    }

    /** Puts something in the place of a step, wherever it stands; a part of it on one phase is first made a step of its own. */
    private List<Block> replace(List<Block> body, Edit.Ref ref, Function<Block, List<Block>> change) {
        int[] hits = {0};
        List<Block> all = blocks(body, ref, hit -> {
            hits[0]++;
            return change.apply(hit);
        });
        if (hits[0] == 0) {
            reasons.add("there is no step " + ref + " to change");
        }
        return all;
    }

    private List<Block> blocks(List<Block> blocks, Edit.Ref ref, Function<Block, List<Block>> change) {
        List<Block> all = new ArrayList<>();
        blocks.forEach(block -> all.addAll(block(block, ref, change)));
        return all;
    }

    private List<Block> block(Block block, Edit.Ref ref, Function<Block, List<Block>> change) {
        if (block instanceof Block.Step step) {
            boolean meant = step.label().equals(Optional.of(ref.label()));
            return !meant ? List.of(step) : ref.phase().isEmpty() ? change.apply(step) : part(step, ref.phase().get(), change);
        } else if (block instanceof Block.Group group) {
            return ref.phase().isEmpty() && isSentence(group, Optional.of(ref.label())) ? change.apply(group) : group(group, ref, change);
        } else if (block instanceof Block.Stage stage) {
            return List.of(new Block.Stage(stage.title(), list(blocks(stage.parts(), ref, change)), stage.span()));
        } else if (block instanceof Block.Repeat repeat) {
            List<Block> parts = blocks(repeat.parts(), ref, change);
            return parts.isEmpty()
                    ? List.of()
                    : List.of(new Block.Repeat(repeat.times(), repeat.exactly(), list(parts), repeat.span()));
        }
        Block.IfFound choice = (Block.IfFound) block;
        return List.of(new Block.IfFound(
                choice.item(), choice.outcome(), list(blocks(choice.then(), ref, change)),
                list(blocks(choice.otherwise(), ref, change)), choice.span()));
    }

    /** A sentence about several devices is one step. */
    private static boolean isSentence(Block.Group group, Optional<String> label) {
        return group.parts().size() > 1
                && group.parts().stream().allMatch(part -> part instanceof Block.Step step
                        && step.label().equals(label)
                        && step.span().equals(((Block.Step) group.parts().get(0)).span()));
    }

    private List<Block> group(Block.Group group, Edit.Ref ref, Function<Block, List<Block>> change) {
        List<Block> parts = new ArrayList<>();
        for (Block part : group.parts()) {
            List<Block> now = block(part, ref, change);
            if (group.order() == Block.Order.IN_ORDER || now.size() <= 1) {
                parts.addAll(now);
            } else {
                parts.add(new Block.Group(Block.Order.IN_ORDER, list(now), part.span()));
            }
        }
        return parts.isEmpty() ? List.of() : List.of(new Block.Group(group.order(), list(parts), group.span()));
    }

    private List<Block> part(Block.Step step, Conductor phase, Function<Block, List<Block>> change) {
        Phases has = extent.of(step);
        if (!has.contains(phase)) {
            return List.of(step);
        }
        List<Block> now = change.apply(has.size() == 1 ? step : on(step, Phases.of(phase)));
        if (has.size() == 1) {
            return now;
        }
        Phases others = new Phases(has.mask() & ~Phases.of(phase).mask());
        if (now.isEmpty()) {
            return List.of(on(step, others));
        } else if (!step.ordered()) {
            Block beside = now.size() == 1 ? now.get(0) : new Block.Group(Block.Order.IN_ORDER, list(now), step.span());
            return List.of(new Block.Group(Block.Order.TOGETHER, ImmutableList.of(on(step, others), beside), step.span()));
        }
        Phases earlier = new Phases(others.mask() & Phases.of(phase).mask() - 1);
        Phases later = new Phases(others.mask() & ~earlier.mask());
        List<Block> all = new ArrayList<>();
        if (!earlier.isEmpty()) {
            all.add(on(step, earlier));
        }
        all.addAll(now);
        if (!later.isEmpty()) {
            all.add(on(step, later));
        }
        return all;
    }

    private static Block.Step on(Block.Step step, Phases phases) {
        return step.withPhases(new PhaseTerm.Given(phases));
    }

    private static ImmutableList<Block> list(List<Block> all) {
        return ImmutableList.copyOf(all);
    }
}
