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
}
