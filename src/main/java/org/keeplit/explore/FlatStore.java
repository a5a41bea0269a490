package org.keeplit.explore;

import java.util.Arrays;

/** States as they are, one after another in pages; an open-addressed table finds them again. For comparison with {@link TreeStore}. */
final class FlatStore implements StateStore {
    private static final int PAGE_BITS = 12;
    private static final int PAGE = 1 << PAGE_BITS;

    private final int words;
    private long[][] pages = new long[16][];
    private int[] parents = new int[1024];
    private int[] edges = new int[1024];
    private int[] table = new int[4096];
    private int size;

    FlatStore(int words) {
        this.words = words;
        Arrays.fill(table, -1);
    }

    @Override
    public int size() {
        return size;
    }

    @Override
    public int find(long[] state) {
        return table[slot(state)];
    }

    @Override
    public Finder finder() {
        return this::find;
    }

    @Override
    public int add(long[] state, int parent, int edge) {
        if (size >= table.length / 2) {
            grow();
        }
        int number = size++;
        int page = number >>> PAGE_BITS;
        if (page >= pages.length) {
            pages = Arrays.copyOf(pages, pages.length * 2);
        }
        if (pages[page] == null) {
            pages[page] = new long[PAGE * words];
        }
        System.arraycopy(state, 0, pages[page], (number & PAGE - 1) * words, words);
        if (number >= parents.length) {
            parents = Arrays.copyOf(parents, number * 2);
            edges = Arrays.copyOf(edges, number * 2);
        }
        parents[number] = parent;
        edges[number] = edge;
        table[slot(state)] = number;
        return number;
    }

    @Override
    public void load(int number, long[] into) {
        System.arraycopy(pages[number >>> PAGE_BITS], (number & PAGE - 1) * words, into, 0, words);
    }

    @Override
    public int parent(int number) {
        return parents[number];
    }

    @Override
    public int edge(int number) {
        return edges[number];
    }

    @Override
    public void reach(int number, int parent, int edge) {
        parents[number] = parent;
        edges[number] = edge;
    }

    @Override
    public long bytes() {
        long states = 0;
        for (long[] page : pages) {
            states += page == null ? 0 : 8L * page.length;
        }
        return states + 4L * (parents.length + edges.length + table.length);
    }

    private int slot(long[] state) {
        int mask = table.length - 1;
        int slot = hash(state) & mask;
        while (table[slot] >= 0 && !holds(table[slot], state)) {
            slot = slot + 1 & mask;
        }
        return slot;
    }

    private boolean holds(int number, long[] state) {
        long[] page = pages[number >>> PAGE_BITS];
        int at = (number & PAGE - 1) * words;
        for (int i = 0; i < words; i++) {
            if (page[at + i] != state[i]) {
                return false;
            }
        }
        return true;
    }

    private int hash(long[] state) {
        long hash = 0x9E3779B97F4A7C15L;
        for (int i = 0; i < words; i++) {
            hash = (hash ^ state[i]) * 0xBF58476D1CE4E5B9L;
            hash ^= hash >>> 31;
        }
        return (int) (hash ^ hash >>> 32);
    }

    private void grow() {
        table = new int[table.length * 2];
        Arrays.fill(table, -1);
        long[] state = new long[words];
        for (int number = 0; number < size; number++) {
            load(number, state);
            table[slot(state)] = number;
        }
    }
}
