package org.keeplit.explore;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.keeplit.program.StateKey;

/** What rules read of a state. Many read the same bits, so that it is found once whether any of them changed. */
final class ReadsInGroups {
    private final long[][] groups;
    private final int[] groupOf;
    private final long[] position;
    private final boolean[] ofPosition;
    private final boolean remembers;

    /**
     * @param rules the rules
     * @param position see {@link Reads#positionOf}
     * @param worth how many rules that read nothing else there must be to remember the positions in which they were kept
     */
    ReadsInGroups(List<RuleInstance> rules, long[] position, int worth) {
        Map<List<Long>, Integer> numbers = new LinkedHashMap<>();
        this.groupOf = new int[rules.size()];
        for (int i = 0; i < groupOf.length; i++) {
            Reads reads = new Reads(position);
            rules.get(i).reads(reads);
            groupOf[i] = numbers.computeIfAbsent(
                    LongStream.of(reads.bits()).boxed().toList(), bits -> numbers.size());
        }
        this.groups = numbers.keySet().stream()
                .map(bits -> bits.stream().mapToLong(Long::longValue).toArray())
                .toArray(long[][]::new);
        this.position = position;
        this.ofPosition = new boolean[groups.length];
        for (int i = 0; i < groups.length; i++) {
            ofPosition[i] = Reads.within(groups[i], position);
        }
        this.remembers = IntStream.of(groupOf).filter(g -> ofPosition[g]).count() >= worth;
    }

    /** {@return whether it is worth it to remember in which positions the rules were kept that read nothing else} */
    boolean remembersPositions() {
        return remembers;
    }

    /** {@return whether a group of rules reads nothing but where contacts and taps stand} */
    boolean isOfPosition(int group) {
        return ofPosition[group];
    }

    /** {@return where contacts and taps stand in a state} */
    StateKey position(long[] state) {
        long[] masked = new long[position.length];
        for (int i = 0; i < masked.length; i++) {
            masked[i] = state[i] & position[i];
        }
        return StateKey.of(masked);
    }

    /** {@return how many groups there are} */
    int groups() {
        return groups.length;
    }

    /** {@return the group of a rule} @param rule its place among the rules */
    int group(int rule) {
        return groupOf[rule];
    }

    /** Tells for each group whether two states differ in what it reads. @param into takes the answers */
    void differ(long[] one, long[] other, boolean[] into) {
        for (int i = 0; i < groups.length; i++) {
            into[i] = Reads.differ(one, other, groups[i]);
        }
    }

    /** {@return whether some rule reads of both of two sets of bits} */
    boolean anyReads(long[] one, long[] other) {
        for (long[] group : groups) {
            if (Reads.meet(group, one) && Reads.meet(group, other)) {
                return true;
            }
        }
        return false;
    }
}
