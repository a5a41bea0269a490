package org.keeplit.electric.sparse;

import java.util.Arrays;

/** Vertices in doubly linked lists by degree; the smallest degree is found in amortised constant time. */
final class DegreeBuckets {
    private static final int NONE = -1;

    private final int[] first;
    private final int[] next;
    private final int[] previous;
    private final int[] degree;
    private int smallest;
    private int count;

    DegreeBuckets(int size) {
        first = new int[size + 1];
        Arrays.fill(first, NONE);
        next = new int[size];
        previous = new int[size];
        degree = new int[size];
    }

    boolean isEmpty() {
        return count == 0;
    }

    int degree(int vertex) {
        return degree[vertex];
    }

    void add(int vertex, int newDegree) {
        count++;
        degree[vertex] = newDegree;
        previous[vertex] = NONE;
        next[vertex] = first[newDegree];
        if (first[newDegree] != NONE) {
            previous[first[newDegree]] = vertex;
        }
        first[newDegree] = vertex;
        smallest = Math.min(smallest, newDegree);
    }

    void move(int vertex, int newDegree) {
        remove(vertex);
        add(vertex, newDegree);
    }

    int removeSmallest() {
        while (first[smallest] == NONE) {
            smallest++;
        }
        int vertex = first[smallest];
        remove(vertex);
        return vertex;
    }

    private void remove(int vertex) {
        count--;
        if (previous[vertex] == NONE) {
            first[degree[vertex]] = next[vertex];
        } else {
            next[previous[vertex]] = next[vertex];
        }
        if (next[vertex] != NONE) {
            previous[next[vertex]] = previous[vertex];
        }
    }
}
