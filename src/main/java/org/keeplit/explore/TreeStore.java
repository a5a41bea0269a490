package org.keeplit.explore;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * States as trees of pairs: a word of the state that was met before is a number, two numbers that were met together before are a number
 * again, and so on up to the last pair, which alone is kept for each state. States that crews reach side by side share nearly all of their
 * parts. The table that finds a state again has, beside its number, some bits of its hash, so that it is rarely compared in vain.
 *
 * <p>After the tree compression of explicit-state model checkers: S. Blom, B. Lisser, J. van de Pol, M. Weber, "A database approach to
 * distributed state-space generation", 2007 (from memory).
 */
final class TreeStore implements StateStore {
    private static final int SMALLEST = 64;
    /** How many bits of a hash stand beside a number. */
    private static final int TAG = 5;

    private final int words;
    /** The two parts of each inner part; parts below {@code words} are the words themselves. The last two parts make the state. */
    private final int[][] inner;

    private final int left;
    private final int right;
    private final Numbering[] numbers;
    private final Look own;
    private final Parents parents = new Parents();
    /** One more than the edge. */
    private final PackedNumbers edges = new PackedNumbers(4);

    private PackedNumbers roots = new PackedNumbers(2);
    private int rightBits = 1;
    private int leftBits = 1;
    /** For each place of the table one more than the number of a state, under some bits of its hash; 0 for none. */
    private PackedNumbers table = table(SMALLEST);

    private int numberBits = bits(SMALLEST);
    private int size;

    TreeStore(int words) {
        this.words = words;
        List<int[]> joins = new ArrayList<>();
        int half = (words + 1) / 2;
        this.left = part(0, half, joins);
        this.right = words == 1 ? left : part(half, words, joins);
        this.inner = joins.toArray(int[][]::new);
        this.numbers = new Numbering[words + inner.length];
        Arrays.setAll(numbers, i -> new Numbering());
        this.own = new Look();
    }

    /** Halves some words until single ones are left; {@return the part that holds them all} */
    private int part(int from, int to, List<int[]> joins) {
        if (to - from == 1) {
            return from;
        }
        int half = (from + to + 1) / 2;
        int[] two = {part(from, half, joins), part(half, to, joins)};
        joins.add(two);
        return words + joins.size() - 1;
    }

    /** Where the parts of the state that was looked at last are, so that of the next one only what differs is looked up. */
    private final class Look implements Finder {
        private final long[] last = new long[words];
        private final int[] at = new int[words + inner.length];
        private final boolean[] changed = new boolean[words + inner.length];

        Look() {
            Arrays.fill(at, -1);
        }

        @Override
        public int find(long[] state) {
            if (words == 1) {
                last[0] = state[0];
                return number(last[0]);
            }
            for (int i = 0; i < words; i++) {
                changed[i] = at[i] < 0 || last[i] != state[i];
                if (changed[i]) {
                    last[i] = state[i];
                    at[i] = numbers[i].find(state[i]);
                }
            }
            for (int k = 0; k < inner.length; k++) {
                int part = words + k;
                int one = inner[k][0];
                int other = inner[k][1];
                changed[part] = at[part] < 0 || changed[one] || changed[other];
                if (changed[part]) {
                    at[part] = at[one] < 0 || at[other] < 0 ? -1 : numbers[part].find(pair(at[one], at[other]));
                }
            }
            return at[left] < 0 || at[right] < 0 ? -1 : number(root());
        }

        /** {@return the last pair of the state that was looked for last; the state itself where it has one word} */
        long root() {
            return words == 1 ? last[0] : pair(at[left], at[right]);
        }

        /** Adds the parts of the state that was looked for last. */
        void add() {
            for (int i = 0; words > 1 && i < words; i++) {
                at[i] = at[i] < 0 ? numbers[i].add(last[i]) : at[i];
            }
            for (int k = 0; k < inner.length; k++) {
                at[words + k] = at[words + k] < 0
                        ? numbers[words + k].add(pair(at[inner[k][0]], at[inner[k][1]]))
                        : at[words + k];
            }
        }
    }

    private static long pair(int one, int other) {
        return (long) one << 32 | other;
    }

    @Override
    public int size() {
        return size;
    }

    @Override
    public int find(long[] state) {
        return own.find(state);
    }

    @Override
    public Finder finder() {
        return new Look();
    }

    /** {@return the number of the state of a root, or -1} */
    private int number(long root) {
        long hash = Spread.hash(root);
        int length = table.size();
        int slot = Spread.slot(hash, length);
        while (true) {
            long entry = table.get(slot);
            if (entry == 0) {
                return -1;
            }
            if (entry >>> numberBits == tag(hash)) {
                int number = (int) (entry & (1L << numberBits) - 1) - 1;
                if (root(number) == root) {
                    return number;
                }
            }
            slot = slot + 1 == length ? 0 : slot + 1;
        }
    }

    /** {@return a state's root} */
    private long root(int number) {
        long root = roots.get(number);
        return words == 1 ? root : pair((int) (root >>> rightBits), (int) (root & (1L << rightBits) - 1));
    }

    private static long tag(long hash) {
        return hash & (1 << TAG) - 1;
    }

    @Override
    public int add(long[] state, int parent, int edge) {
        own.find(state);
        own.add();
        long root = own.root();
        if (words > 1) {
            widen((int) (root >>> 32), (int) root);
        }
        if (size >= table.size() / 20L * 17) {
            grow();
        }
        roots.append(words == 1 ? root : root >>> 32 << rightBits | root & 0xFFFFFFFFL);
        parents.append(parent);
        edges.append(edge + 1L);
        put(root, size);
        return size++;
    }

    private void put(long root, int number) {
        long hash = Spread.hash(root);
        int length = table.size();
        int slot = Spread.slot(hash, length);
        while (table.get(slot) != 0) {
            slot = slot + 1 == length ? 0 : slot + 1;
        }
        table.set(slot, tag(hash) << numberBits | number + 1);
    }

    /** Makes room for the numbers of two parts beside each other. */
    private void widen(int one, int other) {
        if (one >>> leftBits == 0 && other >>> rightBits == 0) {
            return;
        }
        int left = Math.max(leftBits, 32 - Integer.numberOfLeadingZeros(one));
        int right = Math.max(rightBits, 32 - Integer.numberOfLeadingZeros(other));
        PackedNumbers wider = new PackedNumbers(left + right);
        for (int i = 0; i < size; i++) {
            long root = root(i);
            wider.append(root >>> 32 << right | root & 0xFFFFFFFFL);
        }
        roots = wider;
        leftBits = left;
        rightBits = right;
    }

    private void grow() {
        table = null;
        int length = (int) Math.min(Integer.MAX_VALUE - 8L, size / 17L * 20 * 5 / 4 + SMALLEST);
        numberBits = bits(length);
        table = table(length);
        for (int i = 0; i < size; i++) {
            put(root(i), i);
        }
    }

    private static PackedNumbers table(int length) {
        return PackedNumbers.zeros(length, TAG + bits(length));
    }

    private static int bits(int length) {
        return 32 - Integer.numberOfLeadingZeros(length);
    }

    @Override
    public void load(int number, long[] into) {
        long root = root(number);
        if (words == 1) {
            into[0] = root;
        } else {
            load(left, (int) (root >>> 32), into);
            load(right, (int) root, into);
        }
    }

    private void load(int part, int number, long[] into) {
        long key = numbers[part].key(number);
        if (part < words) {
            into[part] = key;
        } else {
            int[] two = inner[part - words];
            load(two[0], (int) (key >>> 32), into);
            load(two[1], (int) key, into);
        }
    }

    @Override
    public int parent(int number) {
        return parents.get(number);
    }

    @Override
    public int edge(int number) {
        return (int) edges.get(number) - 1;
    }

    @Override
    public void reach(int number, int parent, int edge) {
        parents.set(number, parent);
        edges.set(number, edge + 1L);
    }

    @Override
    public long bytes() {
        long bytes = roots.bytes() + edges.bytes() + parents.bytes() + table.bytes();
        for (Numbering each : numbers) {
            bytes += each.bytes();
        }
        return bytes;
    }
}
