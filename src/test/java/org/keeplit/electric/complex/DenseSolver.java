package org.keeplit.electric.complex;

/** Gaussian elimination with partial pivoting on a dense complex matrix: the tests' own oracle. */
public final class DenseSolver {
    private DenseSolver() {}

    /**
     * Solves a x = b; a and b are not changed.
     *
     * @param a the matrix by rows, re and im alternating
     * @param b the right-hand side, re and im alternating
     * @return x
     */
    public static double[] solve(double[][] a, double[] b) {
        int n = a.length;
        double[][] m = new double[n][];
        for (int i = 0; i < n; i++) {
            m[i] = java.util.Arrays.copyOf(a[i], 2 * n + 2);
            m[i][2 * n] = b[2 * i];
            m[i][2 * n + 1] = b[2 * i + 1];
        }
        for (int k = 0; k < n; k++) {
            int best = k;
            for (int i = k + 1; i < n; i++) {
                if (Math.hypot(m[i][2 * k], m[i][2 * k + 1]) > Math.hypot(m[best][2 * k], m[best][2 * k + 1])) {
                    best = i;
                }
            }
            double[] swap = m[k];
            m[k] = m[best];
            m[best] = swap;
            for (int i = k + 1; i < n; i++) {
                subtract(m[i], m[k], k, n);
            }
        }
        return backSubstitute(m, n);
    }

    private static void subtract(double[] target, double[] pivotRow, int k, int n) {
        double[] factor = divide(target[2 * k], target[2 * k + 1], pivotRow[2 * k], pivotRow[2 * k + 1]);
        if (factor[0] == 0 && factor[1] == 0) {
            return;
        }
        for (int j = k; j <= n; j++) {
            target[2 * j] -= factor[0] * pivotRow[2 * j] - factor[1] * pivotRow[2 * j + 1];
            target[2 * j + 1] -= factor[0] * pivotRow[2 * j + 1] + factor[1] * pivotRow[2 * j];
        }
    }

    private static double[] backSubstitute(double[][] m, int n) {
        double[] x = new double[2 * n];
        for (int i = n - 1; i >= 0; i--) {
            double re = m[i][2 * n];
            double im = m[i][2 * n + 1];
            for (int j = i + 1; j < n; j++) {
                re -= m[i][2 * j] * x[2 * j] - m[i][2 * j + 1] * x[2 * j + 1];
                im -= m[i][2 * j] * x[2 * j + 1] + m[i][2 * j + 1] * x[2 * j];
            }
            double[] value = divide(re, im, m[i][2 * i], m[i][2 * i + 1]);
            x[2 * i] = value[0];
            x[2 * i + 1] = value[1];
        }
        return x;
    }

    private static double[] divide(double aRe, double aIm, double bRe, double bIm) {
        double norm = bRe * bRe + bIm * bIm;
        return new double[] {(aRe * bRe + aIm * bIm) / norm, (aIm * bRe - aRe * bIm) / norm};
    }
}
