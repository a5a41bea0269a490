package org.keeplit.electric.flow;

/**
 * Anderson's mixing for a fixed-point iteration x = g(x) that is slow: the next x is made from the
 * last few, so that their residuals g - x would cancel if g were linear (Anderson, Iterative
 * procedures for nonlinear integral equations, J. ACM 12, 1965). Weights make the components alike.
 */
final class Mixing {
    private static final int DEPTH = 3;

    private final double[][] residualSteps = new double[DEPTH][];
    private final double[][] valueSteps = new double[DEPTH][];
    private double[] lastResidual;
    private double[] lastValue;
    private int steps;

    /** Forgets what came before. */
    void reset() {
        lastResidual = null;
        steps = 0;
    }

    /**
     * Takes one step.
     *
     * @param x where g was taken; overwritten with the next x
     * @param g what came out
     * @param weights a factor for each pair of components
     * @param length how many components count
     */
    void mix(double[] x, double[] g, double[] weights, int length) {
        double[] residual = new double[length];
        double[] value = new double[length];
        for (int k = 0; k < length; k++) {
            value[k] = g[k];
            residual[k] = g[k] - x[k];
        }
        if (lastResidual != null) {
            residualSteps[steps % DEPTH] = difference(residual, lastResidual);
            valueSteps[steps % DEPTH] = difference(value, lastValue);
            steps++;
        }
        lastResidual = residual;
        lastValue = value;
        double[] factor = factors(weights);
        for (int k = 0; k < length; k++) {
            x[k] = value[k];
            for (int i = 0; i < factor.length; i++) {
                x[k] -= factor[i] * valueSteps[i][k];
            }
        }
    }

    private static double[] difference(double[] a, double[] b) {
        double[] result = new double[a.length];
        for (int k = 0; k < a.length; k++) {
            result[k] = a[k] - b[k];
        }
        return result;
    }

    /** Least squares: the combination of residual steps that comes nearest to the last residual. */
    private double[] factors(double[] weights) {
        int m = Math.min(steps, DEPTH);
        double[][] a = new double[m][m + 1];
        for (int i = 0; i < m; i++) {
            for (int j = 0; j < m; j++) {
                a[i][j] = product(residualSteps[i], residualSteps[j], weights);
            }
            // Keeps the system solvable when steps are nearly parallel.
            a[i][i] *= 1 + 1e-10;
            a[i][m] = product(residualSteps[i], lastResidual, weights);
        }
        for (int k = 0; k < m; k++) {
            for (int i = k + 1; i < m && a[k][k] > 0; i++) {
                double factor = a[i][k] / a[k][k];
                for (int j = k; j <= m; j++) {
                    a[i][j] -= factor * a[k][j];
                }
            }
        }
        double[] result = new double[m];
        for (int i = m - 1; i >= 0; i--) {
            double sum = a[i][m];
            for (int j = i + 1; j < m; j++) {
                sum -= a[i][j] * result[j];
            }
            result[i] = a[i][i] > 0 ? sum / a[i][i] : 0;
        }
        return result;
    }

    private static double product(double[] a, double[] b, double[] weights) {
        double sum = 0;
        for (int k = 0; k < a.length; k++) {
            sum += a[k] * b[k] * weights[k / 2];
        }
        return sum;
    }
}
