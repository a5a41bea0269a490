package org.keeplit.electric;

/** Disjoint sets over small numbers. */
final class UnionFind {
    private final int[] parent;

    UnionFind(int size) {
        parent = new int[size];
        for (int i = 0; i < size; i++) {
            parent[i] = i;
        }
    }

    int find(int x) {
        int root = x;
        while (parent[root] != root) {
            parent[root] = parent[parent[root]];
            root = parent[root];
        }
        return root;
    }

    /** Joins two sets; the smaller number stays the root, so that roots do not depend on the order of joins. */
    void join(int x, int y) {
        int a = find(x);
        int b = find(y);
        if (a < b) {
            parent[b] = a;
        } else {
            parent[a] = b;
        }
    }

    int count() {
        int count = 0;
        for (int i = 0; i < parent.length; i++) {
            if (find(i) == i) {
                count++;
            }
        }
        return count;
    }

    /** {@return for each element the number of its set, numbered from 0 in the order of their roots} */
    int[] numbered() {
        int[] number = new int[parent.length];
        int next = 0;
        for (int i = 0; i < parent.length; i++) {
            int root = find(i);
            number[i] = root == i ? next++ : number[root];
        }
        return number;
    }
}
