package org.keeplit.electric.complex;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

class ComplexMatrixTest {
    private static ComplexMatrix random(Random random, int rows, int columns) {
        return ComplexMatrix.of(
                rows, columns, (i, j) -> new Complex(random.nextDouble() - 0.5, random.nextDouble() - 0.5));
    }

    @Test
    void solvesAsTheDenseSolverDoes() {
        Random random = new Random(3);
        for (int n = 1; n <= 8; n++) {
            ComplexMatrix a = random(random, n, n);
            ComplexMatrix b = random(random, n, 1);
            double[][] rows = new double[n][2 * n];
            double[] right = new double[2 * n];
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    rows[i][2 * j] = a.re(i, j);
                    rows[i][2 * j + 1] = a.im(i, j);
                }
                right[2 * i] = b.re(i, 0);
                right[2 * i + 1] = b.im(i, 0);
            }
            double[] expected = DenseSolver.solve(rows, right);
            ComplexMatrix actual = a.solve(b);
            for (int i = 0; i < n; i++) {
                assertEquals(expected[2 * i], actual.re(i, 0), 1e-10);
                assertEquals(expected[2 * i + 1], actual.im(i, 0), 1e-10);
            }
        }
    }

    @Test
    void aMatrixTimesItsInverseIsOne() {
        ComplexMatrix a = random(new Random(4), 5, 5);
        ComplexMatrix rest = a.times(a.inverse()).plus(
                ComplexMatrix.of(5, 5, (i, j) -> i == j ? Complex.real(-1) : Complex.ZERO));
        assertTrue(rest.largest() < 1e-13);
    }

    @Test
    void singularMatricesAreRefused() {
        assertThrows(ArithmeticException.class, () -> ComplexMatrix.balanced(3, Complex.ONE, Complex.ONE).inverse());
        assertThrows(ArithmeticException.class, () -> ComplexMatrix.zero(2).inverse());
        assertThrows(
                ArithmeticException.class, () -> ComplexMatrix.diagonal(Complex.real(Double.NaN)).inverse());
    }

    @Test
    void symmetryIsWithinATolerance() {
        ComplexMatrix nearly = ComplexMatrix.of(2, 2, (i, j) -> Complex.real(i == j ? 2 : 1 + 0.01 * i));
        assertFalse(nearly.isSymmetric(1e-3));
        assertTrue(nearly.isSymmetric(1e-2));
        assertTrue(nearly.symmetrized().isSymmetric(0));
    }

    @Test
    void reciprocalsSurviveExtremes() {
        Complex tiny = new Complex(3e-200, 4e-200);
        assertEquals(1, tiny.reciprocal().times(tiny).re(), 1e-12);
        assertThrows(IllegalArgumentException.class, Complex.ZERO::reciprocal);
    }

    @Test
    void polarFormGoesBothWays() {
        Complex phasor = Complex.polar(7200, -120);
        assertEquals(7200, phasor.abs(), 1e-9);
        assertEquals(-120, phasor.degrees(), 1e-12);
    }

    private static Complex c(double re, double im) {
        return new Complex(re, im);
    }

    @Test
    void arithmeticOnNumbersDoneByHand() {
        assertEquals(c(4, -2), c(1, 2).plus(c(3, -4)));
        assertEquals(c(-2, 6), c(1, 2).minus(c(3, -4)));
        assertEquals(c(11, 2), c(1, 2).times(c(3, -4)));
        assertEquals(c(2, 4), c(1, 2).times(2));
        assertEquals(c(-1, 2), c(3, 4).over(c(1, -2)));
        assertEquals(c(-1, -2), c(1, 2).negate());
        assertEquals(c(1, -2), c(1, 2).conjugate());
        assertEquals(5, c(3, -4).abs());
        assertTrue(c(1, 2).isFinite());
        assertFalse(c(Double.NaN, 2).isFinite());
        assertFalse(c(1, Double.POSITIVE_INFINITY).isFinite());
        assertTrue(c(0, -0.0).isZero());
        assertFalse(c(1, 0).isZero());
        assertFalse(c(0, 1).isZero());
    }

    /** Rows and columns told apart: two by three, entry = row + i column. */
    @Test
    void matricesOfTwoByThreeDoneByHand() {
        ComplexMatrix a = ComplexMatrix.of(2, 3, Complex::new);
        assertEquals(c(1, 2), a.at(1, 2));
        assertEquals(ComplexMatrix.of(3, 2, (i, j) -> c(j, i)), a.transpose());
        assertEquals(ComplexMatrix.of(2, 3, (i, j) -> c(2 * i, 2 * j)), a.plus(a));
        assertEquals(a.plus(a), a.times(2));
        assertEquals(ComplexMatrix.of(2, 3, (i, j) -> c(-j, i)), a.times(c(0, 1)));
        assertEquals(
                ComplexMatrix.of(1, 2, (i, j) -> c(1, j == 0 ? 2 : 0)), a.pick(new int[] {1}, new int[] {2, 0}));
        // Row r times column c of the transpose: the sum over k of (r + ik)(c + ik).
        assertEquals(
                ComplexMatrix.of(2, 2, (r, s) -> c(3.0 * r * s - 5, 3.0 * r + 3.0 * s)), a.times(a.transpose()));
        assertEquals(ComplexMatrix.of(2, 2, (i, j) -> i == j ? c(1, 1) : c(0, 2)), ComplexMatrix.balanced(2, c(1, 1), c(0, 2)));
        assertEquals(ComplexMatrix.balanced(2, c(3, 1), Complex.ZERO), ComplexMatrix.diagonal(c(3, 1), c(3, 1)));
        assertEquals(Math.sqrt(5), a.largest(), 1e-15);
    }

    @Test
    void matricesAreEqualByShapeAndEntries() {
        ComplexMatrix a = ComplexMatrix.of(2, 3, Complex::new);
        assertEquals(a, a.transpose().transpose());
        assertEquals(a.hashCode(), a.transpose().transpose().hashCode());
        assertFalse(a.equals(a.times(2)));
        assertFalse(ComplexMatrix.of(1, 4, Complex::new).equals(ComplexMatrix.of(2, 2, (i, j) -> c(0, 2 * i + j))));
        assertTrue(a.isFinite());
        assertFalse(a.times(Double.NaN).isFinite());
    }

    @Test
    void shapesThatDoNotFitAreRefused() {
        ComplexMatrix a = ComplexMatrix.of(2, 3, Complex::new);
        ComplexMatrix square = ComplexMatrix.balanced(2, c(2, 0), c(1, 0));
        assertThrows(IllegalArgumentException.class, () -> a.plus(a.transpose()));
        assertThrows(IllegalArgumentException.class, () -> a.plus(ComplexMatrix.of(2, 2, Complex::new)));
        assertThrows(IllegalArgumentException.class, () -> a.times(a));
        assertThrows(IllegalArgumentException.class, a::inverse);
        assertThrows(IllegalArgumentException.class, () -> a.solve(square));
        assertThrows(IllegalArgumentException.class, () -> square.solve(a.transpose()));
        assertFalse(a.isSymmetric(1));
    }

    /** Without a swap of rows the first pivot would be zero, and one small beside the rest would cost the digits. */
    @Test
    void rowsAreSwappedForTheLargestPivot() {
        ComplexMatrix swapped = ComplexMatrix.of(2, 2, (i, j) -> i == j ? Complex.ZERO : Complex.ONE);
        assertEquals(swapped, swapped.inverse());
        ComplexMatrix small = ComplexMatrix.of(2, 2, (i, j) -> c(i == 0 && j == 0 ? 1e-13 : 1, 0));
        ComplexMatrix rest = small.times(small.inverse()).plus(ComplexMatrix.diagonal(c(-1, 0), c(-1, 0)));
        assertTrue(rest.largest() < 1e-12, "left " + rest.largest());
        // What is large in all entries is singular by its ratio, not by its size.
        assertThrows(ArithmeticException.class, () -> ComplexMatrix.diagonal(c(1e9, 0), c(1e-6, 0)).inverse());
    }
}
