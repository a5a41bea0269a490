package org.keeplit.procedure;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Term;
import org.keeplit.network.Conductor;
import org.keeplit.network.Phases;
import org.keeplit.text.Problem;
import org.keeplit.text.Problems;

/** Applies edits to the written-out steps of a bound procedure. */
public final class Editing {
    private final Function<Term, Phases> phasesOf;
    private final Problems problems;

    private Editing(Function<Term, Phases> phasesOf, Problems problems) {
        this.phasesOf = phasesOf;
        this.problems = problems;
    }

    /**
     * Applies edits one after another.
     *
     * @param body the steps
     * @param edits the edits
     * @param phasesOf the phases of an object
     * @param problems collects edits that name no step
     * @return the edited steps
     */
    public static ImmutableList<Block> apply(
            ImmutableList<Block> body, List<Edit> edits, Function<Term, Phases> phasesOf, Problems problems) {
        Editing editing = new Editing(phasesOf, problems);
        ImmutableList<Block> now = body;
        for (Edit edit : edits) {
            now = editing.apply(now, edit);
        }
        return now;
    }

    private ImmutableList<Block> apply(ImmutableList<Block> body, Edit edit) {
        if (edit instanceof Edit.Without without) {
            return replace(body, without.step(), step -> ImmutableList.of());
        } else if (edit instanceof Edit.Replace replace) {
            return replace(body, replace.step(), step -> relabelled(replace.blocks(), step));
        } else if (edit instanceof Edit.OtherPhase other) {
            return replace(body, other.step(), step -> ImmutableList.of(on((Block.Step) step, Phases.of(other.instead()))));
        } else if (edit instanceof Edit.Insert insert) {
            return Placing.beside(apart(body, insert.anchor()), meant(insert.anchor()), insert.before(), insert.blocks());
        } else if (edit instanceof Edit.Move move) {
            return moved(apart(body, move.step()), move);
        }
        throw new IllegalStateException("an edit of an unknown shape: " + edit);
    }

    /** A step that is written out phase by phase goes phase by phase beside another that is; else all of it goes beside all of the other. */
    private ImmutableList<Block> moved(ImmutableList<Block> body, Edit.Move move) {
        Predicate<Block> step = meant(move.step());
        Predicate<Block> anchor = meant(move.anchor());
        ImmutableList<Block> pieces = Placing.only(body, step);
        ImmutableList<Block> rest = apart(replace(body, move.step(), s -> ImmutableList.of()), move.anchor());
        Map<Phases, Block> byPhase = byPhase(body, step);
        if (byPhase.size() < 2 || !byPhase.keySet().equals(byPhase(rest, anchor).keySet())) {
            return Placing.beside(rest, anchor, move.before(), pieces);
        }
        return replace(rest, move.anchor(), s -> {
            Block piece = byPhase.get(phases((Block.Step) s));
            return move.before() ? ImmutableList.of(piece, s) : ImmutableList.of(s, piece);
        });
    }

    /** {@return the pieces of a step by their phase; empty if two have one, or one has several} */
    private Map<Phases, Block> byPhase(List<Block> body, Predicate<Block> meant) {
        Map<Phases, Block> all = new LinkedHashMap<>();
        for (Block piece : Placing.all(body, meant)) {
            Phases on = piece instanceof Block.Step step ? phases(step) : Phases.NONE;
            if (on.size() != 1 || all.put(on, piece) != null) {
                return Map.of();
            }
        }
        return all;
    }

    /** {@return what a reference means, once its phase is a step of its own} */
    private Predicate<Block> meant(Edit.Ref ref) {
        return block -> label(block).equals(Optional.of(ref.label()))
                && (ref.phase().isEmpty() || block instanceof Block.Step step && phases(step).equals(Phases.of(ref.phase().get())));
    }

    /** {@return the steps with the part of a step that is meant as a step of its own} */
    private ImmutableList<Block> apart(ImmutableList<Block> body, Edit.Ref ref) {
        return replace(body, ref, ImmutableList::of);
    }

    /** What stands in for a step keeps its label, so that {@code must fail on … at} still finds it. */
    private static ImmutableList<Block> relabelled(ImmutableList<Block> blocks, Block step) {
        return blocks.size() == 1 && label(blocks.get(0)).isEmpty()
                ? ImmutableList.of(relabelled(blocks.get(0), label(step)))
                : blocks;
    }

    private static Block relabelled(Block block, Optional<String> label) {
        if (block instanceof Block.Step step) {
            return step.withLabel(label);
        } else if (block instanceof Block.Group group && isSentence(group)) {
            ImmutableList.Builder<Block> parts = ImmutableList.builder();
            group.parts().forEach(part -> parts.add(relabelled(part, label)));
            return new Block.Group(group.order(), parts.build(), group.span());
        }
        return block;
    }

    /** {@return whether a group is one sentence about several objects: its steps stand or fall together where no phase is said} */
    private static boolean isSentence(Block.Group group) {
        return !group.parts().isEmpty()
                && group.parts().stream().allMatch(p -> p instanceof Block.Step && p.span().equals(group.span()));
    }

    private static Optional<String> label(Block block) {
        if (block instanceof Block.Group group && isSentence(group)) {
            return label(group.parts().get(0));
        }
        return block instanceof Block.Step step ? step.label() : Optional.empty();
    }

    private ImmutableList<Block> replace(
            ImmutableList<Block> body, Edit.Ref ref, Function<Block, ImmutableList<Block>> by) {
        int[] count = {0};
        ImmutableList<Block> result = replaceIn(body, ref, by, count);
        if (count[0] == 0) {
            List<String> labels = new ArrayList<>();
            labels(body, labels);
            problems.add(Problem.error("unknown-step", ref.span(), "no step is labelled " + ref)
                    .help("the labelled steps are " + String.join(", ", labels)));
        }
        return result;
    }

    private ImmutableList<Block> replaceIn(
            List<Block> blocks, Edit.Ref ref, Function<Block, ImmutableList<Block>> by, int[] count) {
        ImmutableList.Builder<Block> all = ImmutableList.builder();
        for (Block block : blocks) {
            all.addAll(replaceOne(block, ref, by, count));
        }
        return all.build();
    }

    private List<Block> replaceOne(
            Block block, Edit.Ref ref, Function<Block, ImmutableList<Block>> by, int[] count) {
        if (block instanceof Block.Step step) {
            return replaceStep(step, ref, by, count);
        } else if (block instanceof Block.Group group
                && isSentence(group)
                && ref.phase().isEmpty()
                && label(group).equals(Optional.of(ref.label()))) {
            count[0]++;
            return by.apply(group);
        } else if (block instanceof Block.Group group) {
            // A part of a group that becomes several blocks must stay one part, or its order would be lost.
            ImmutableList.Builder<Block> parts = ImmutableList.builder();
            for (Block part : group.parts()) {
                List<Block> now = replaceOne(part, ref, by, count);
                if (group.order() == Block.Order.IN_ORDER || now.size() <= 1) {
                    parts.addAll(now);
                } else {
                    parts.add(new Block.Group(Block.Order.IN_ORDER, ImmutableList.copyOf(now), part.span()));
                }
            }
            return some(parts.build(), all -> new Block.Group(group.order(), all, group.span()));
        } else if (block instanceof Block.Stage stage) {
            return List.of(
                    new Block.Stage(stage.title(), replaceIn(stage.parts(), ref, by, count), stage.span()));
        } else if (block instanceof Block.Repeat repeat) {
            return some(
                    replaceIn(repeat.parts(), ref, by, count),
                    all -> new Block.Repeat(repeat.times(), repeat.exactly(), all, repeat.span()));
        } else if (block instanceof Block.IfFound choice) {
            return List.of(new Block.IfFound(
                    choice.item(),
                    choice.outcome(),
                    replaceIn(choice.then(), ref, by, count),
                    replaceIn(choice.otherwise(), ref, by, count),
                    choice.span()));
        }
        throw new IllegalStateException("not a written-out block: " + block);
    }

    private List<Block> replaceStep(
            Block.Step step, Edit.Ref ref, Function<Block, ImmutableList<Block>> by, int[] count) {
        if (!step.label().equals(Optional.of(ref.label()))) {
            return List.of(step);
        }
        if (ref.phase().isEmpty()) {
            count[0]++;
            return by.apply(step);
        }
        Conductor phase = ref.phase().get();
        Phases phases = phases(step);
        if (!phases.contains(phase)) {
            return List.of(step);
        }
        count[0]++;
        Phases others = new Phases(phases.mask() & ~Phases.of(phase).mask());
        if (others.isEmpty()) {
            return by.apply(step);
        }
        ImmutableList<Block> now = by.apply(on(step, Phases.of(phase)));
        if (now.isEmpty()) {
            return List.of(on(step, others));
        } else if (!step.ordered()) {
            // The text gives the phases no order, and an edit of one of them gives it none against the others.
            Block part = now.size() == 1 ? now.get(0) : new Block.Group(Block.Order.IN_ORDER, now, step.span());
            return List.of(new Block.Group(Block.Order.TOGETHER, ImmutableList.of(on(step, others), part), step.span()));
        }
        ImmutableList.Builder<Block> all = ImmutableList.builder();
        Phases earlier = new Phases(others.mask() & (1 << phase.ordinal()) - 1);
        Phases later = new Phases(others.mask() & ~earlier.mask());
        if (!earlier.isEmpty()) {
            all.add(on(step, earlier));
        }
        all.addAll(now);
        if (!later.isEmpty()) {
            all.add(on(step, later));
        }
        return all.build();
    }

    /** A group in which nothing is left is no group: an empty branch is gone past, and nothing else is to be found in it. */
    private static List<Block> some(ImmutableList<Block> parts, Function<ImmutableList<Block>, Block> group) {
        return parts.isEmpty() ? List.of() : List.of(group.apply(parts));
    }

    private Phases phases(Block.Step step) {
        Optional<Phases> has = Actions.object(step.action()).map(phasesOf);
        return step.phases() instanceof PhaseTerm.Given given
                ? has.map(given.phases()::and).orElse(given.phases())
                : has.orElse(Phases.NONE);
    }

    private static Block.Step on(Block.Step step, Phases phases) {
        return step.withPhases(new PhaseTerm.Given(phases));
    }

    private static void labels(List<Block> blocks, List<String> labels) {
        for (Block block : blocks) {
            if (block instanceof Block.Step step) {
                step.label().filter(l -> !labels.contains(l)).ifPresent(labels::add);
            } else if (block instanceof Block.Group group) {
                labels(group.parts(), labels);
            } else if (block instanceof Block.Stage stage) {
                labels(stage.parts(), labels);
            } else if (block instanceof Block.Repeat repeat) {
                labels(repeat.parts(), labels);
            } else if (block instanceof Block.IfFound choice) {
                labels(choice.then(), labels);
                labels(choice.otherwise(), labels);
            }
        }
    }
}
