package org.keeplit.electric.sparse;

/**
 * A complex symmetric matrix A and its factorisation A = L D L^T (L with unit diagonal, no
 * conjugation, pivots taken from the diagonal in the order of the analysis).
 *
 * <p>Pivots from the diagonal are safe here: the matrices are nodal admittances of passive
 * equipment, whose real part is positive semidefinite, held at each vertex by a small conductance
 * (George, Ikramov and Kucherov, On the growth factor in Gaussian elimination for generalized Higham
 * matrices, SIAM J. Matrix Anal. Appl. 23, 2002).
 *
 * <p>When entries change, {@link #refresh} computes anew only the columns on the paths from the
 * changed columns to the root of the elimination tree, which are the only ones that a low-rank
 * change of A can touch. Every column is computed in one fixed order from A, so that a refreshed
 * factor is, bit for bit, the factor of the changed matrix, whatever came before. (The bordering
 * form of a low-rank update, subtracting a closed contact's admittance again, loses all digits when
 * the contact was the only path.) Not safe for use by several threads.
 */
public final class LdltFactor {
    private final SymbolicLdlt symbolic;
    private final int size;
    /** A: diagonal, then places of L; re and im alternate, as in all arrays of values here. */
    private final double[] entries;
    private final double[] lower;
    private final double[] pivot;
    private final double[] reciprocal;

    /** Columns that no longer fit A. */
    private final MarkedSet stale;
    /** Columns and entries that may differ from what they were at the last reset. */
    private final MarkedSet dirtyColumns;
    private final MarkedSet dirtyEntries;
    private final int[] where;

    /**
     * The zero matrix with a pattern; set its entries, then {@link #refresh}.
     *
     * @param symbolic the pattern
     */
    public LdltFactor(SymbolicLdlt symbolic) {
        this(
                symbolic,
                new double[2 * symbolic.entries()],
                new double[2 * symbolic.factorSize()],
                new double[2 * symbolic.size()],
                new double[2 * symbolic.size()]);
        for (int j = 0; j < size; j++) {
            touch(j);
        }
    }

    private LdltFactor(
            SymbolicLdlt symbolic, double[] entries, double[] lower, double[] pivot, double[] reciprocal) {
        this.symbolic = symbolic;
        size = symbolic.size();
        this.entries = entries;
        this.lower = lower;
        this.pivot = pivot;
        this.reciprocal = reciprocal;
        stale = new MarkedSet(size);
        dirtyColumns = new MarkedSet(size);
        dirtyEntries = new MarkedSet(symbolic.entries());
        where = new int[size];
    }

    /**
     * A copy to work on; {@link #reset} brings it back.
     *
     * @return a factor of its own with the same values
     */
    public LdltFactor copy() {
        return new LdltFactor(symbolic, entries.clone(), lower.clone(), pivot.clone(), reciprocal.clone());
    }

    /**
     * The analysis that this factor belongs to.
     *
     * @return the pattern
     */
    public SymbolicLdlt symbolic() {
        return symbolic;
    }

    /**
     * Sets an entry of A.
     *
     * @param entry its number, from the analysis
     * @param re the real part
     * @param im the imaginary part
     */
    public void set(int entry, double re, double im) {
        if (entries[2 * entry] != re || entries[2 * entry + 1] != im) {
            entries[2 * entry] = re;
            entries[2 * entry + 1] = im;
            dirtyEntries.add(entry);
            touch(symbolic.column(entry));
        }
    }

    private void touch(int column) {
        for (int j = column; j >= 0 && stale.add(j); j = symbolic.parent[j]) {
            dirtyColumns.add(j);
        }
    }

    /**
     * Brings the factor up to date with the entries set.
     *
     * @return the number of columns computed
     * @throws SingularMatrixException if a pivot vanishes; the factor is then of no use until reset
     */
    public int refresh() {
        int count = stale.count();
        stale.sort();
        for (int k = 0; k < count; k++) {
            computeColumn(stale.member(k));
        }
        stale.clear();
        return count;
    }

    /**
     * Takes back every change since the copy or the last reset.
     *
     * @param base the factor that this one was copied from, unchanged since
     */
    public void reset(LdltFactor base) {
        for (int k = 0; k < dirtyEntries.count(); k++) {
            copyPairs(base.entries, entries, dirtyEntries.member(k), 1);
        }
        for (int k = 0; k < dirtyColumns.count(); k++) {
            int j = dirtyColumns.member(k);
            copyPairs(base.pivot, pivot, j, 1);
            copyPairs(base.reciprocal, reciprocal, j, 1);
            int start = symbolic.columnStart[j];
            copyPairs(base.lower, lower, start, symbolic.columnStart[j + 1] - start);
        }
        stale.clear();
        dirtyColumns.clear();
        dirtyEntries.clear();
    }

    private static void copyPairs(double[] from, double[] to, int first, int count) {
        System.arraycopy(from, 2 * first, to, 2 * first, 2 * count);
    }

    /** Left-looking: column j of A less what the columns left of it put there. */
    private void computeColumn(int j) {
        int start = symbolic.columnStart[j];
        int end = symbolic.columnStart[j + 1];
        System.arraycopy(entries, 2 * (size + start), lower, 2 * start, 2 * (end - start));
        for (int p = start; p < end; p++) {
            where[symbolic.row[p]] = p;
        }
        double dRe = entries[2 * j];
        double dIm = entries[2 * j + 1];
        for (int r = symbolic.rowStart[j]; r < symbolic.rowStart[j + 1]; r++) {
            int k = symbolic.rowColumn[r];
            int q = symbolic.rowPosition[r];
            double lRe = lower[2 * q];
            double lIm = lower[2 * q + 1];
            double tRe = lRe * pivot[2 * k] - lIm * pivot[2 * k + 1];
            double tIm = lRe * pivot[2 * k + 1] + lIm * pivot[2 * k];
            dRe -= lRe * tRe - lIm * tIm;
            dIm -= lRe * tIm + lIm * tRe;
            for (int p = q + 1; p < symbolic.columnStart[k + 1]; p++) {
                int target = where[symbolic.row[p]];
                lower[2 * target] -= lower[2 * p] * tRe - lower[2 * p + 1] * tIm;
                lower[2 * target + 1] -= lower[2 * p] * tIm + lower[2 * p + 1] * tRe;
            }
        }
        setPivot(j, dRe, dIm);
        scale(start, end, reciprocal[2 * j], reciprocal[2 * j + 1]);
    }

    private void setPivot(int j, double re, double im) {
        double norm = re * re + im * im;
        // Written so that a NaN is refused too.
        if (!(norm > Double.MIN_NORMAL && norm < Double.MAX_VALUE)) {
            throw new SingularMatrixException(symbolic.vertex(j));
        }
        pivot[2 * j] = re;
        pivot[2 * j + 1] = im;
        reciprocal[2 * j] = re / norm;
        reciprocal[2 * j + 1] = -im / norm;
    }

    private void scale(int start, int end, double re, double im) {
        for (int p = start; p < end; p++) {
            double lRe = lower[2 * p];
            double lIm = lower[2 * p + 1];
            lower[2 * p] = lRe * re - lIm * im;
            lower[2 * p + 1] = lRe * im + lIm * re;
        }
    }

    /**
     * Solves A x = b in place.
     *
     * @param x b on entry, the solution on return: re and im alternate, in elimination order ({@link
     *     SymbolicLdlt#place})
     */
    public void solve(double[] x) {
        forward(x);
        backward(x);
    }

    private void forward(double[] x) {
        int[] columnStart = symbolic.columnStart;
        int[] row = symbolic.row;
        for (int j = 0; j < size; j++) {
            double xRe = x[2 * j];
            double xIm = x[2 * j + 1];
            if (xRe == 0 && xIm == 0) {
                continue;
            }
            for (int p = columnStart[j]; p < columnStart[j + 1]; p++) {
                int i = 2 * row[p];
                x[i] -= lower[2 * p] * xRe - lower[2 * p + 1] * xIm;
                x[i + 1] -= lower[2 * p] * xIm + lower[2 * p + 1] * xRe;
            }
            x[2 * j] = xRe * reciprocal[2 * j] - xIm * reciprocal[2 * j + 1];
            x[2 * j + 1] = xRe * reciprocal[2 * j + 1] + xIm * reciprocal[2 * j];
        }
    }

    private void backward(double[] x) {
        int[] columnStart = symbolic.columnStart;
        int[] row = symbolic.row;
        for (int j = size - 1; j >= 0; j--) {
            double xRe = x[2 * j];
            double xIm = x[2 * j + 1];
            for (int p = columnStart[j]; p < columnStart[j + 1]; p++) {
                int i = 2 * row[p];
                xRe -= lower[2 * p] * x[i] - lower[2 * p + 1] * x[i + 1];
                xIm -= lower[2 * p] * x[i + 1] + lower[2 * p + 1] * x[i];
            }
            x[2 * j] = xRe;
            x[2 * j + 1] = xIm;
        }
    }
}
