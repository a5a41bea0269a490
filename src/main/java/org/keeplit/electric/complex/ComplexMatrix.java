package org.keeplit.electric.complex;

import static com.google.common.base.Preconditions.checkArgument;

import java.util.Arrays;

/** A small dense complex matrix, immutable. Meant for a handful of phases, not for networks. */
public final class ComplexMatrix {
    private final int rows;
    private final int columns;
    private final double[] values;

    private ComplexMatrix(int rows, int columns, double[] values) {
        this.rows = rows;
        this.columns = columns;
        this.values = values;
    }

    /** Gives the entry at a row and a column. */
    @FunctionalInterface
    public interface Entry {
        /**
         * The entry.
         *
         * @param row from 0
         * @param column from 0
         * @return the value there
         */
        Complex at(int row, int column);
    }

    /**
     * Fills a matrix.
     *
     * @param rows the number of rows
     * @param columns the number of columns
     * @param entry gives each entry
     * @return the matrix
     */
    public static ComplexMatrix of(int rows, int columns, Entry entry) {
        double[] values = new double[2 * rows * columns];
        for (int i = 0; i < rows; i++) {
            for (int j = 0; j < columns; j++) {
                Complex value = entry.at(i, j);
                values[2 * (i * columns + j)] = value.re();
                values[2 * (i * columns + j) + 1] = value.im();
            }
        }
        return new ComplexMatrix(rows, columns, values);
    }

    /**
     * A square matrix of zeros.
     *
     * @param size rows and columns
     * @return the matrix
     */
    public static ComplexMatrix zero(int size) {
        return new ComplexMatrix(size, size, new double[2 * size * size]);
    }

    /**
     * A diagonal matrix.
     *
     * @param diagonal the diagonal
     * @return the matrix
     */
    public static ComplexMatrix diagonal(Complex... diagonal) {
        return of(diagonal.length, diagonal.length, (i, j) -> i == j ? diagonal[i] : Complex.ZERO);
    }

    /**
     * A matrix with one value on the diagonal and one beside it, as balanced impedances have.
     *
     * @param size rows and columns
     * @param self the diagonal value
     * @param mutual the value elsewhere
     * @return the matrix
     */
    public static ComplexMatrix balanced(int size, Complex self, Complex mutual) {
        return of(size, size, (i, j) -> i == j ? self : mutual);
    }

    /**
     * The number of rows.
     *
     * @return rows
     */
    public int rows() {
        return rows;
    }

    /**
     * The number of columns.
     *
     * @return columns
     */
    public int columns() {
        return columns;
    }

    /**
     * One entry.
     *
     * @param row from 0
     * @param column from 0
     * @return the value there
     */
    public Complex at(int row, int column) {
        return new Complex(re(row, column), im(row, column));
    }

    /**
     * The real part of one entry.
     *
     * @param row from 0
     * @param column from 0
     * @return its real part
     */
    public double re(int row, int column) {
        return values[2 * (row * columns + column)];
    }

    /**
     * The imaginary part of one entry.
     *
     * @param row from 0
     * @param column from 0
     * @return its imaginary part
     */
    public double im(int row, int column) {
        return values[2 * (row * columns + column) + 1];
    }

    /**
     * Adds.
     *
     * @param other a matrix of the same shape
     * @return this + other
     */
    public ComplexMatrix plus(ComplexMatrix other) {
        checkArgument(rows == other.rows && columns == other.columns, "The shapes differ.");
        return of(rows, columns, (i, j) -> at(i, j).plus(other.at(i, j)));
    }

    /**
     * Scales.
     *
     * @param factor the factor
     * @return this times factor
     */
    public ComplexMatrix times(Complex factor) {
        return of(rows, columns, (i, j) -> at(i, j).times(factor));
    }

    /**
     * Scales by a real factor.
     *
     * @param factor the factor
     * @return this times factor
     */
    public ComplexMatrix times(double factor) {
        return times(Complex.real(factor));
    }

    /**
     * Multiplies.
     *
     * @param other a matrix with as many rows as this has columns
     * @return this times other
     */
    public ComplexMatrix times(ComplexMatrix other) {
        checkArgument(columns == other.rows, "The shapes do not fit.");
        return of(rows, other.columns, (i, j) -> {
            Complex sum = Complex.ZERO;
            for (int k = 0; k < columns; k++) {
                sum = sum.plus(at(i, k).times(other.at(k, j)));
            }
            return sum;
        });
    }

    /**
     * Swaps rows and columns, without conjugation.
     *
     * @return the transpose
     */
    public ComplexMatrix transpose() {
        return of(columns, rows, (i, j) -> at(j, i));
    }

    /**
     * Picks rows and columns by index, in the order given.
     *
     * @param rowIndices the rows
     * @param columnIndices the columns
     * @return the matrix of the entries picked
     */
    public ComplexMatrix pick(int[] rowIndices, int[] columnIndices) {
        return of(rowIndices.length, columnIndices.length, (i, j) -> at(rowIndices[i], columnIndices[j]));
    }

    /**
     * The inverse, by elimination with partial pivoting.
     *
     * @return the inverse
     * @throws ArithmeticException if the matrix is singular to working precision
     */
    public ComplexMatrix inverse() {
        checkArgument(rows == columns, "Only a square matrix has an inverse.");
        return solve(of(rows, rows, (i, j) -> i == j ? Complex.ONE : Complex.ZERO));
    }

    /**
     * Solves this X = right by elimination with partial pivoting.
     *
     * @param right the right-hand sides, one a column
     * @return X
     * @throws ArithmeticException if this matrix is singular to working precision
     */
    public ComplexMatrix solve(ComplexMatrix right) {
        checkArgument(rows == columns && right.rows == rows, "The shapes do not fit.");
        return Elimination.solve(this, right);
    }

    /**
     * The largest absolute value of an entry.
     *
     * @return that value, 0 for a matrix of zeros
     */
    public double largest() {
        double largest = 0;
        for (int k = 0; k < values.length; k += 2) {
            largest = Math.max(largest, Math.hypot(values[k], values[k + 1]));
        }
        return largest;
    }

    /**
     * Says whether the matrix equals its transpose, as reciprocal equipment has it.
     *
     * @param tolerance the largest difference allowed, as a part of the largest entry
     * @return true if it does
     */
    public boolean isSymmetric(double tolerance) {
        double bound = tolerance * largest();
        for (int i = 0; i < rows; i++) {
            for (int j = 0; j < i; j++) {
                if (rows != columns || at(i, j).minus(at(j, i)).abs() > bound) {
                    return false;
                }
            }
        }
        return rows == columns;
    }

    /**
     * The mean of the matrix and its transpose.
     *
     * @return a matrix that is exactly symmetric
     */
    public ComplexMatrix symmetrized() {
        return of(rows, columns, (i, j) -> at(i, j).plus(at(j, i)).times(0.5));
    }

    /**
     * Says whether every entry is finite.
     *
     * @return false if there is a NaN or an infinity
     */
    public boolean isFinite() {
        return Arrays.stream(values).allMatch(Double::isFinite);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ComplexMatrix that
                && rows == that.rows
                && columns == that.columns
                && Arrays.equals(values, that.values);
    }

    @Override
    public int hashCode() {
        return 31 * (31 * rows + columns) + Arrays.hashCode(values);
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < rows; i++) {
            for (int j = 0; j < columns; j++) {
                text.append(j == 0 ? "" : " ").append(at(i, j));
            }
            text.append('\n');
        }
        return text.toString();
    }
}
