package org.keeplit.procedure;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/** Where steps go that are done before or after others: before the first of them can come, or after the last of them has. */
final class Placing {
    private Placing() {}

    /** {@return the steps with more of them beside all that are meant} */
    static ImmutableList<Block> beside(List<Block> blocks, Predicate<Block> meant, boolean before, List<Block> more) {
        List<Integer> having = IntStream.range(0, blocks.size()).filter(i -> holds(blocks.get(i), meant)).boxed().toList();
        if (having.isEmpty()) {
            return ImmutableList.copyOf(blocks);
        }
        int at = having.get(before ? 0 : having.size() - 1);
        return ImmutableList.<Block>builder()
                .addAll(blocks.subList(0, at))
                .addAll(besideOne(blocks.get(at), meant, before, more))
                .addAll(blocks.subList(at + 1, blocks.size()))
                .build();
    }

    private static List<Block> besideOne(Block block, Predicate<Block> meant, boolean before, List<Block> more) {
        if (!meant.test(block)) {
            if (block instanceof Block.Stage stage) {
                return List.of(new Block.Stage(stage.title(), beside(stage.parts(), meant, before, more), stage.span()));
            } else if (block instanceof Block.Repeat repeat) {
                return List.of(new Block.Repeat(
                        repeat.times(), repeat.exactly(), beside(repeat.parts(), meant, before, more), repeat.span()));
            } else if (block instanceof Block.Group group && group.order() == Block.Order.IN_ORDER) {
                return List.of(new Block.Group(group.order(), beside(group.parts(), meant, before, more), group.span()));
            } else if (block instanceof Block.Group group && count(group.parts(), meant) == 1) {
                ImmutableList.Builder<Block> parts = ImmutableList.builder();
                group.parts().forEach(part -> parts.add(holds(part, meant) ? sequence(beside(List.of(part), meant, before, more)) : part));
                return List.of(new Block.Group(group.order(), parts.build(), group.span()));
            } else if (block instanceof Block.IfFound choice && (count(choice.then(), meant) == 0 || count(choice.otherwise(), meant) == 0)) {
                return List.of(new Block.IfFound(
                        choice.item(), choice.outcome(), beside(choice.then(), meant, before, more),
                        beside(choice.otherwise(), meant, before, more), choice.span()));
            }
        }
        // One step, or several that may come in any order, or in either branch: beside the whole.
        List<Block> all = new ArrayList<>(more);
        all.add(before ? more.size() : 0, block);
        return all;
    }

    private static long count(List<Block> parts, Predicate<Block> meant) {
        return parts.stream().filter(part -> holds(part, meant)).count();
    }

    private static boolean holds(Block block, Predicate<Block> meant) {
        return !all(List.of(block), meant).isEmpty();
    }

    private static Block sequence(List<Block> parts) {
        return parts.size() == 1
                ? parts.get(0)
                : new Block.Group(Block.Order.IN_ORDER, ImmutableList.copyOf(parts), parts.get(0).span());
    }

    /** {@return the steps that are meant, and no others, in the order that their groups give them} */
    static ImmutableList<Block> only(List<Block> blocks, Predicate<Block> meant) {
        ImmutableList.Builder<Block> all = ImmutableList.builder();
        for (Block block : blocks) {
            if (meant.test(block)) {
                all.add(block);
            } else if (block instanceof Block.Group group && group.order() != Block.Order.IN_ORDER) {
                List<Block> parts = group.parts().stream()
                        .map(part -> only(List.of(part), meant))
                        .filter(some -> !some.isEmpty())
                        .map(Placing::sequence)
                        .toList();
                if (parts.size() == 1) {
                    all.add(parts.get(0));
                } else if (!parts.isEmpty()) {
                    all.add(new Block.Group(group.order(), ImmutableList.copyOf(parts), group.span()));
                }
            } else {
                all.addAll(only(parts(block), meant));
            }
        }
        return all.build();
    }

    /** {@return the steps that are meant, in the order of the text} */
    static List<Block> all(List<Block> blocks, Predicate<Block> meant) {
        List<Block> all = new ArrayList<>();
        for (Block block : blocks) {
            if (meant.test(block)) {
                all.add(block);
            } else {
                all.addAll(all(parts(block), meant));
            }
        }
        return all;
    }

    private static List<Block> parts(Block block) {
        if (block instanceof Block.Group group) {
            return group.parts();
        } else if (block instanceof Block.Stage stage) {
            return stage.parts();
        } else if (block instanceof Block.Repeat repeat) {
            return repeat.parts();
        } else if (block instanceof Block.IfFound choice) {
            return ImmutableList.<Block>builder().addAll(choice.then()).addAll(choice.otherwise()).build();
        }
        return List.of();
    }
}
