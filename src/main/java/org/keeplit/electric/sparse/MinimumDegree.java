package org.keeplit.electric.sparse;

import java.util.Arrays;

/**
 * The minimum degree order of a symmetric pattern, on a quotient graph: an eliminated vertex stays
 * as an "element", the clique of its neighbours, and takes in the elements that it touched (George
 * and Liu, The Evolution of the Minimum Degree Ordering Algorithm, SIAM Review 31, 1989). Degrees
 * are exact; feeders are nearly trees, so that their neighbourhoods stay small.
 */
final class MinimumDegree {
    private final int size;
    private final int[][] variables;
    private final int[][] elements;
    private final int[] variableCount;
    private final int[] elementCount;
    /** The clique of an eliminated vertex; null before elimination and after absorption. */
    private final int[][] members;
    private final boolean[] eliminated;
    private final DegreeBuckets buckets;
    private final int[] mark;
    private int stamp;

    private MinimumDegree(int size, int[] start, int[] neighbour) {
        this.size = size;
        variables = new int[size][];
        elements = new int[size][];
        variableCount = new int[size];
        elementCount = new int[size];
        members = new int[size][];
        eliminated = new boolean[size];
        mark = new int[size];
        buckets = new DegreeBuckets(size);
        for (int v = size - 1; v >= 0; v--) {
            if (!isHub(v, start)) {
                variables[v] = Arrays.stream(neighbour, start[v], start[v + 1])
                        .filter(w -> !isHub(w, start)).toArray();
                variableCount[v] = variables[v].length;
                elements[v] = new int[2];
                buckets.add(v, variableCount[v]);
            }
        }
    }

    /**
     * A vertex of so many neighbours that it comes last in any good order (a busbar of thousands of
     * laterals, a neutral shared by all); looking at it again at every elimination would take long.
     */
    private boolean isHub(int v, int[] start) {
        return start[v + 1] - start[v] > Math.max(64, 10 * Math.sqrt(size));
    }

    /**
     * Orders the vertices.
     *
     * @param size the number of vertices
     * @param start where each vertex's neighbours start in {@code neighbour}; size + 1 entries
     * @param neighbour the neighbours, without the vertex itself, each once, both ways
     * @return the vertices in the order of elimination; the same for the same input
     */
    static int[] order(int size, int[] start, int[] neighbour) {
        MinimumDegree state = new MinimumDegree(size, start, neighbour);
        int[] order = new int[size];
        int count = 0;
        while (!state.buckets.isEmpty()) {
            order[count] = state.buckets.removeSmallest();
            state.eliminate(order[count++]);
        }
        for (int v = 0; v < size; v++) {
            if (state.isHub(v, start)) {
                order[count++] = v;
            }
        }
        return order;
    }

    private void eliminate(int pivot) {
        int[] clique = clique(pivot);
        eliminated[pivot] = true;
        for (int k = 0; k < elementCount[pivot]; k++) {
            members[elements[pivot][k]] = null;
        }
        members[pivot] = clique;
        variables[pivot] = null;
        elements[pivot] = null;
        int cliqueStamp = stamp;
        for (int v : clique) {
            prune(v, pivot, cliqueStamp);
        }
        for (int v : clique) {
            buckets.move(v, degree(v));
        }
    }

    /** The live neighbours of a vertex, each marked with the current stamp. */
    private int[] clique(int pivot) {
        stamp++;
        mark[pivot] = stamp;
        int[] found = new int[Math.min(size, buckets.degree(pivot))];
        int count = 0;
        for (int k = 0; k < variableCount[pivot]; k++) {
            count = visit(variables[pivot][k], found, count);
        }
        for (int k = 0; k < elementCount[pivot]; k++) {
            for (int v : members[elements[pivot][k]]) {
                count = visit(v, found, count);
            }
        }
        return count == found.length ? found : Arrays.copyOf(found, count);
    }

    private int visit(int v, int[] found, int count) {
        if (eliminated[v] || mark[v] == stamp) {
            return count;
        }
        mark[v] = stamp;
        found[count] = v;
        return count + 1;
    }

    /** Drops from v's lists what the new element already says. */
    private void prune(int v, int pivot, int cliqueStamp) {
        int kept = 0;
        for (int k = 0; k < variableCount[v]; k++) {
            int w = variables[v][k];
            if (mark[w] != cliqueStamp && !eliminated[w]) {
                variables[v][kept++] = w;
            }
        }
        variableCount[v] = kept;
        kept = 0;
        for (int k = 0; k < elementCount[v]; k++) {
            int e = elements[v][k];
            if (members[e] != null) {
                elements[v][kept++] = e;
            }
        }
        if (kept == elements[v].length) {
            elements[v] = Arrays.copyOf(elements[v], 2 * kept);
        }
        elements[v][kept] = pivot;
        elementCount[v] = kept + 1;
    }

    private int degree(int v) {
        stamp++;
        mark[v] = stamp;
        int degree = variableCount[v];
        for (int k = 0; k < variableCount[v]; k++) {
            mark[variables[v][k]] = stamp;
        }
        for (int k = 0; k < elementCount[v]; k++) {
            for (int w : members[elements[v][k]]) {
                if (mark[w] != stamp) {
                    mark[w] = stamp;
                    degree++;
                }
            }
        }
        return degree;
    }
}
