package org.keeplit.electric.flow;

/** Union-find over 0..size-1; the smallest member stands for its set, so that the result has one form. */
final class DisjointSets {
    private final int[] parent;

    DisjointSets(int size) {
        parent = new int[size];
        for (int i = 0; i < size; i++) {
            parent[i] = i;
        }
    }

    int find(int member) {
        int root = member;
        while (parent[root] != root) {
            parent[root] = parent[parent[root]];
            root = parent[root];
        }
        return root;
    }

    void join(int a, int b) {
        int rootA = find(a);
        int rootB = find(b);
        parent[Math.max(rootA, rootB)] = Math.min(rootA, rootB);
    }
}
