package org.keeplit.electric.sparse;

import java.util.Arrays;

/**
 * The pattern of a symmetric matrix, its fill-reducing order and the pattern of its factor L, found
 * once and shared by every factorisation of matrices with that pattern. Immutable.
 *
 * <p>An <em>entry</em> is a number for a place that can hold a value: entry k below {@link #size()}
 * is the diagonal of the k-th row in elimination order, the entries above are the places of L by
 * column. Rows and columns of the matrix itself are called <em>vertices</em> here, in the caller's
 * numbering; {@link #place} goes from that numbering to the elimination order.
 */
public final class SymbolicLdlt {
    final int[] columnStart;
    final int[] row;
    /** For each row the columns left of it that are not empty there, and where in the column. */
    final int[] rowStart;
    final int[] rowColumn;
    final int[] rowPosition;
    /** The elimination tree; -1 at a root. */
    final int[] parent;

    private final int size;
    private final int[] place;
    private final int[] vertex;

    private SymbolicLdlt(int size, int[] order, int[] start, int[] neighbour) {
        this.size = size;
        vertex = order;
        place = new int[size];
        for (int k = 0; k < size; k++) {
            place[order[k]] = k;
        }
        parent = new int[size];
        int[][] columns = columns(start, neighbour);
        columnStart = new int[size + 1];
        for (int j = 0; j < size; j++) {
            columnStart[j + 1] = columnStart[j] + columns[j].length;
        }
        row = new int[columnStart[size]];
        for (int j = 0; j < size; j++) {
            System.arraycopy(columns[j], 0, row, columnStart[j], columns[j].length);
        }
        rowStart = new int[size + 1];
        rowColumn = new int[row.length];
        rowPosition = new int[row.length];
        fillRows();
    }

    /**
     * Analyses a pattern.
     *
     * @param size the number of rows
     * @param pairs the places off the diagonal that may hold a value: (i, j) as i * 2^32 + j; either
     *     half, duplicates allowed
     * @return the analysis
     */
    public static SymbolicLdlt analyse(int size, long[] pairs) {
        long[] both = new long[2 * pairs.length];
        for (int k = 0; k < pairs.length; k++) {
            both[2 * k] = pairs[k];
            both[2 * k + 1] = pair((int) pairs[k], (int) (pairs[k] >>> 32));
        }
        Arrays.sort(both);
        int[] start = new int[size + 1];
        int[] neighbour = new int[both.length];
        int count = 0;
        for (int k = 0; k < both.length; k++) {
            int i = (int) (both[k] >>> 32);
            int j = (int) both[k];
            if (i != j && (k == 0 || both[k] != both[k - 1])) {
                neighbour[count++] = j;
                start[i + 1] = count;
            }
        }
        for (int i = 0; i < size; i++) {
            start[i + 1] = Math.max(start[i + 1], start[i]);
        }
        int[] order = MinimumDegree.order(size, start, neighbour);
        return new SymbolicLdlt(size, order, start, neighbour);
    }

    /**
     * Packs a place for {@link #analyse}.
     *
     * @param i a row
     * @param j a column
     * @return i * 2^32 + j
     */
    public static long pair(int i, int j) {
        return ((long) i << 32) | j;
    }

    /**
     * The number of rows.
     *
     * @return rows and columns of the matrix
     */
    public int size() {
        return size;
    }

    /**
     * The number of places of L below the diagonal.
     *
     * @return the size of the factor
     */
    public int factorSize() {
        return row.length;
    }

    /**
     * The number of entries, diagonal included.
     *
     * @return {@link #size()} + {@link #factorSize()}
     */
    public int entries() {
        return size + row.length;
    }

    /**
     * Where a vertex stands in the elimination order.
     *
     * @param v a vertex
     * @return its place
     */
    public int place(int v) {
        return place[v];
    }

    /**
     * Which vertex stands at a place.
     *
     * @param k a place in the elimination order
     * @return the vertex
     */
    public int vertex(int k) {
        return vertex[k];
    }

    /**
     * The entry of a pair of vertices.
     *
     * @param i a vertex
     * @param j a vertex, i allowed
     * @return its entry
     * @throws IllegalArgumentException if the pattern has no such place
     */
    public int entry(int i, int j) {
        int low = Math.min(place[i], place[j]);
        int high = Math.max(place[i], place[j]);
        if (low == high) {
            return low;
        }
        int found = Arrays.binarySearch(row, columnStart[low], columnStart[low + 1], high);
        if (found < 0) {
            throw new IllegalArgumentException("The pattern has no place (" + i + ", " + j + ").");
        }
        return size + found;
    }

    /** The column, in elimination order, that an entry belongs to. */
    int column(int entry) {
        if (entry < size) {
            return entry;
        }
        int position = entry - size;
        int low = 0;
        int high = size;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (columnStart[middle] <= position) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** Each column of L: its own places and what its children in the elimination tree hand up. */
    private int[][] columns(int[] start, int[] neighbour) {
        int[][] columns = new int[size][];
        int[] firstChild = new int[size];
        int[] nextChild = new int[size];
        int[] mark = new int[size];
        int[] found = new int[size];
        Arrays.fill(firstChild, -1);
        Arrays.fill(mark, -1);
        for (int j = 0; j < size; j++) {
            int count = 0;
            for (int k = start[vertex[j]]; k < start[vertex[j] + 1]; k++) {
                int i = place[neighbour[k]];
                if (i > j) {
                    mark[i] = j;
                    found[count++] = i;
                }
            }
            for (int child = firstChild[j]; child >= 0; child = nextChild[child]) {
                for (int i : columns[child]) {
                    if (i > j && mark[i] != j) {
                        mark[i] = j;
                        found[count++] = i;
                    }
                }
            }
            columns[j] = Arrays.copyOf(found, count);
            Arrays.sort(columns[j]);
            parent[j] = count == 0 ? -1 : columns[j][0];
            if (count > 0) {
                nextChild[j] = firstChild[parent[j]];
                firstChild[parent[j]] = j;
            }
        }
        return columns;
    }

    private void fillRows() {
        for (int i : row) {
            rowStart[i + 1]++;
        }
        for (int i = 0; i < size; i++) {
            rowStart[i + 1] += rowStart[i];
        }
        int[] fill = Arrays.copyOf(rowStart, size);
        for (int j = 0; j < size; j++) {
            for (int p = columnStart[j]; p < columnStart[j + 1]; p++) {
                int slot = fill[row[p]]++;
                rowColumn[slot] = j;
                rowPosition[slot] = p;
            }
        }
    }
}
