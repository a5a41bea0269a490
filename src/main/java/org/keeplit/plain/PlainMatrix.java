package org.keeplit.plain;

import java.util.Arrays;

/** A full square matrix of complex numbers, solved by Gaussian elimination with the largest pivot of each column. */
final class PlainMatrix {
    private final double[][] re;
    private final double[][] im;

    PlainMatrix(int size) {
        this.re = new double[size][size];
        this.im = new double[size][size];
    }

    private PlainMatrix(double[][] re, double[][] im) {
        this.re = re;
        this.im = im;
    }

    int size() {
        return re.length;
    }

    PlainMatrix copy() {
        return new PlainMatrix(
                Arrays.stream(re).map(double[]::clone).toArray(double[][]::new),
                Arrays.stream(im).map(double[]::clone).toArray(double[][]::new));
    }

    Cx at(int row, int column) {
        return new Cx(re[row][column], im[row][column]);
    }

    void add(int row, int column, Cx value) {
        re[row][column] += value.re();
        im[row][column] += value.im();
    }

    PlainMatrix times(double factor) {
        PlainMatrix scaled = new PlainMatrix(size());
        for (int i = 0; i < size(); i++) {
            for (int j = 0; j < size(); j++) {
                scaled.add(i, j, at(i, j).times(factor));
            }
        }
        return scaled;
    }

    PlainMatrix inverse() {
        int n = size();
        Cx[][] units = new Cx[n][n];
        for (int i = 0; i < n; i++) {
            Arrays.fill(units[i], Cx.ZERO);
            units[i][i] = Cx.ONE;
        }
        Cx[][] columns = solve(units);
        PlainMatrix inverse = new PlainMatrix(n);
        for (int j = 0; j < n; j++) {
            for (int i = 0; i < n; i++) {
                inverse.add(i, j, columns[j][i]);
            }
        }
        return inverse;
    }

    Cx[] solve(Cx[] right) {
        return solve(new Cx[][] {right})[0];
    }

    /** {@return what this matrix must be multiplied with to give each of some vectors; not a number if nothing does} */
    Cx[][] solve(Cx[][] rights) {
        PlainMatrix work = copy();
        Cx[][] answers = Arrays.stream(rights).map(Cx[]::clone).toArray(Cx[][]::new);
        int n = size();
        for (int k = 0; k < n; k++) {
            work.pivot(k, answers);
            Cx pivot = work.at(k, k);
            for (int i = k + 1; i < n; i++) {
                if (work.re[i][k] != 0 || work.im[i][k] != 0) {
                    Cx factor = work.at(i, k).over(pivot);
                    work.subtract(i, k, factor);
                    for (Cx[] answer : answers) {
                        answer[i] = answer[i].minus(factor.times(answer[k]));
                    }
                }
            }
        }
        for (Cx[] answer : answers) {
            for (int i = n - 1; i >= 0; i--) {
                Cx sum = answer[i];
                for (int j = i + 1; j < n; j++) {
                    sum = sum.minus(work.at(i, j).times(answer[j]));
                }
                answer[i] = sum.over(work.at(i, i));
            }
        }
        return answers;
    }

    private void pivot(int k, Cx[][] answers) {
        int best = k;
        for (int i = k + 1; i < size(); i++) {
            if (at(i, k).size() > at(best, k).size()) {
                best = i;
            }
        }
        double[] row = re[k];
        re[k] = re[best];
        re[best] = row;
        row = im[k];
        im[k] = im[best];
        im[best] = row;
        for (Cx[] answer : answers) {
            Cx held = answer[k];
            answer[k] = answer[best];
            answer[best] = held;
        }
    }

    /** Takes a multiple of row k from row i, from column k on. */
    private void subtract(int i, int k, Cx factor) {
        double a = factor.re();
        double b = factor.im();
        for (int j = k; j < size(); j++) {
            double x = re[k][j];
            double y = im[k][j];
            if (x != 0 || y != 0) {
                re[i][j] -= a * x - b * y;
                im[i][j] -= a * y + b * x;
            }
        }
    }
}
