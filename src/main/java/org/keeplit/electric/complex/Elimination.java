package org.keeplit.electric.complex;

/** Gauss-Jordan elimination with partial pivoting, for matrices of a handful of rows. */
final class Elimination {
    /** A pivot below this part of the largest entry is rounding. */
    private static final double SMALLEST_PIVOT = 1e-14;

    private Elimination() {}

    static ComplexMatrix solve(ComplexMatrix matrix, ComplexMatrix right) {
        int n = matrix.rows();
        Complex[][] a = augmented(matrix, right);
        double smallest = SMALLEST_PIVOT * matrix.largest();
        for (int k = 0; k < n; k++) {
            int pivot = k;
            for (int i = k + 1; i < n; i++) {
                if (a[i][k].abs() > a[pivot][k].abs()) {
                    pivot = i;
                }
            }
            // Written so that a NaN is refused too.
            if (!(a[pivot][k].abs() > smallest)) {
                throw new ArithmeticException("The matrix is singular.");
            }
            Complex[] row = a[pivot];
            a[pivot] = a[k];
            a[k] = row;
            eliminate(a, k);
        }
        return ComplexMatrix.of(n, right.columns(), (i, j) -> a[i][n + j]);
    }

    private static Complex[][] augmented(ComplexMatrix matrix, ComplexMatrix right) {
        int n = matrix.rows();
        Complex[][] a = new Complex[n][n + right.columns()];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < a[i].length; j++) {
                a[i][j] = j < n ? matrix.at(i, j) : right.at(i, j - n);
            }
        }
        return a;
    }

    private static void eliminate(Complex[][] a, int k) {
        Complex scale = a[k][k].reciprocal();
        for (int j = k; j < a[k].length; j++) {
            a[k][j] = a[k][j].times(scale);
        }
        for (int i = 0; i < a.length; i++) {
            Complex factor = a[i][k];
            if (i != k && !factor.isZero()) {
                for (int j = k; j < a[i].length; j++) {
                    a[i][j] = a[i][j].minus(factor.times(a[k][j]));
                }
            }
        }
    }
}
