package org.keeplit.electric.sparse;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.keeplit.electric.complex.DenseSolver;

class LdltFactorTest {
    /** A random symmetric pattern with values that are diagonally dominant, or nearly so. */
    private static final class Sample {
        final int size;
        final long[] pairs;
        final double[][] dense;

        Sample(Random random, int size, int extra) {
            this.size = size;
            pairs = new long[size - 1 + extra];
            dense = new double[size][2 * size];
            for (int k = 0; k < pairs.length; k++) {
                int i = k < size - 1 ? k + 1 : random.nextInt(size);
                int j = k < size - 1 ? random.nextInt(k + 1) : random.nextInt(size);
                pairs[k] = SymbolicLdlt.pair(i, j);
                if (i != j) {
                    branch(i, j, random.nextDouble(), random.nextDouble() - 0.5);
                }
            }
            for (int i = 0; i < size; i++) {
                dense[i][2 * i] += 1e-3;
            }
        }

        void branch(int i, int j, double re, double im) {
            int[][] places = {{i, i, 1}, {j, j, 1}, {i, j, -1}, {j, i, -1}};
            for (int[] place : places) {
                dense[place[0]][2 * place[1]] += place[2] * re;
                dense[place[0]][2 * place[1] + 1] += place[2] * im;
            }
        }

        void copyTo(LdltFactor factor) {
            SymbolicLdlt symbolic = factor.symbolic();
            for (int i = 0; i < size; i++) {
                factor.set(symbolic.entry(i, i), dense[i][2 * i], dense[i][2 * i + 1]);
            }
            for (long pair : pairs) {
                int i = (int) (pair >>> 32);
                int j = (int) pair;
                factor.set(symbolic.entry(i, j), dense[i][2 * j], dense[i][2 * j + 1]);
            }
        }
    }

    private static double[] solve(LdltFactor factor, double[] b) {
        SymbolicLdlt symbolic = factor.symbolic();
        double[] x = new double[b.length];
        for (int k = 0; k < symbolic.size(); k++) {
            x[2 * k] = b[2 * symbolic.vertex(k)];
            x[2 * k + 1] = b[2 * symbolic.vertex(k) + 1];
        }
        factor.solve(x);
        double[] result = new double[b.length];
        for (int k = 0; k < symbolic.size(); k++) {
            result[2 * symbolic.vertex(k)] = x[2 * k];
            result[2 * symbolic.vertex(k) + 1] = x[2 * k + 1];
        }
        return result;
    }

    private static double[] randomVector(Random random, int size) {
        return random.doubles(2L * size, -1, 1).toArray();
    }

    @Test
    void solvesAsTheDenseSolverDoes() {
        Random random = new Random(1);
        for (int run = 0; run < 200; run++) {
            int size = 1 + random.nextInt(60);
            Sample sample = new Sample(random, size, random.nextInt(2 * size));
            LdltFactor factor = new LdltFactor(SymbolicLdlt.analyse(size, sample.pairs));
            sample.copyTo(factor);
            factor.refresh();
            double[] b = randomVector(random, size);
            double[] expected = DenseSolver.solve(sample.dense, b);
            assertArrayEquals(expected, solve(factor, b), 1e-8 * (1 + largest(expected)), "run " + run);
        }
    }

    private static double largest(double[] values) {
        double largest = 0;
        for (double value : values) {
            largest = Math.max(largest, Math.abs(value));
        }
        return largest;
    }

    @Test
    void refreshedFactorEqualsAFreshOneBitForBit() {
        Random random = new Random(2);
        Sample sample = new Sample(random, 80, 60);
        SymbolicLdlt symbolic = SymbolicLdlt.analyse(80, sample.pairs);
        LdltFactor base = new LdltFactor(symbolic);
        sample.copyTo(base);
        base.refresh();
        LdltFactor work = base.copy();
        double[] b = randomVector(random, 80);
        double[] before = solve(base, b);
        for (int run = 0; run < 100; run++) {
            Sample changed = new Sample(new Random(2), 80, 60);
            for (int change = 0; change < 1 + run % 4; change++) {
                long pair = sample.pairs[random.nextInt(sample.pairs.length)];
                changed.branch((int) (pair >>> 32), (int) pair, 1e4 * random.nextDouble(), random.nextDouble());
                changed.copyTo(work);
                work.refresh();
            }
            LdltFactor fresh = new LdltFactor(symbolic);
            changed.copyTo(fresh);
            fresh.refresh();
            assertArrayEquals(solve(fresh, b), solve(work, b), 0.0, "run " + run);
            work.reset(base);
            assertArrayEquals(before, solve(work, b), 0.0, "after reset, run " + run);
        }
    }

    /** One number at a time, an entry off the diagonal as well as on it; what is set again to what it was is changed nowhere. */
    @Test
    void oneEntrySetAloneAndTakenBackLeavesNoTrace() {
        int size = 30;
        Sample sample = new Sample(new Random(5), size, 20);
        SymbolicLdlt symbolic = SymbolicLdlt.analyse(size, sample.pairs);
        LdltFactor base = new LdltFactor(symbolic);
        sample.copyTo(base);
        base.refresh();
        LdltFactor work = base.copy();
        double[] b = randomVector(new Random(6), size);
        double[] before = solve(base, b);
        for (long pair : sample.pairs) {
            for (int part = 0; part < 4; part++) {
                int i = (int) (pair >>> 32);
                int j = part < 2 ? (int) pair : i;
                double re = sample.dense[i][2 * j] + (part % 2 == 0 ? 1 : 0);
                double im = sample.dense[i][2 * j + 1] + (part % 2 == 1 ? 1 : 0);
                LdltFactor fresh = new LdltFactor(symbolic);
                sample.copyTo(fresh);
                fresh.set(symbolic.entry(i, j), re, im);
                fresh.refresh();
                work.set(symbolic.entry(i, j), re, im);
                work.refresh();
                assertArrayEquals(solve(fresh, b), solve(work, b), 0.0, "entry " + i + ", " + j);
                work.reset(base);
                // What was taken back must not come up again with what is set next.
                work.refresh();
                assertArrayEquals(before, solve(work, b), 0.0, "after reset of " + i + ", " + j);
                assertEquals(0, work.refresh());
            }
        }
    }

    /** A change that was not yet worked into the factor is taken back like any other. */
    @Test
    void aChangeThatWasNeverRefreshedIsTakenBackToo() {
        Sample sample = new Sample(new Random(7), 20, 10);
        LdltFactor base = new LdltFactor(SymbolicLdlt.analyse(20, sample.pairs));
        sample.copyTo(base);
        base.refresh();
        LdltFactor work = base.copy();
        work.set(3, 5, 5);
        work.reset(base);
        assertEquals(0, work.refresh());
        work.set(3, 5, 5);
        assertTrue(work.refresh() > 0);
    }

    @Test
    void whatIsSetToWhatItIsCostsNothing() {
        Sample sample = new Sample(new Random(8), 20, 10);
        LdltFactor factor = new LdltFactor(SymbolicLdlt.analyse(20, sample.pairs));
        sample.copyTo(factor);
        factor.refresh();
        sample.copyTo(factor);
        assertEquals(0, factor.refresh());
    }

    @Test
    void pivotsThatOverflowOrVanishAreRefused() {
        for (double value : new double[] {0, 1e-160, 1e160, Double.NaN}) {
            LdltFactor factor = new LdltFactor(SymbolicLdlt.analyse(1, new long[0]));
            factor.set(0, value, 0);
            assertThrows(SingularMatrixException.class, factor::refresh, "pivot " + value);
        }
    }

    @Test
    void aRightHandSideWithZerosIsSolvedAsAnyOther() {
        int size = 12;
        Sample sample = new Sample(new Random(9), size, 6);
        LdltFactor factor = new LdltFactor(SymbolicLdlt.analyse(size, sample.pairs));
        sample.copyTo(factor);
        factor.refresh();
        for (int k = 0; k < 2 * size; k++) {
            double[] unit = new double[2 * size];
            unit[k] = 1;
            double[] expected = DenseSolver.solve(sample.dense, unit);
            assertArrayEquals(expected, solve(factor, unit), 1e-8 * (1 + largest(expected)), "unit " + k);
        }
    }

    @Test
    void refreshTouchesOnlyThePathToTheRoot() {
        int size = 1000;
        Random random = new Random(3);
        Sample tree = new Sample(random, size, 0);
        LdltFactor factor = new LdltFactor(SymbolicLdlt.analyse(size, tree.pairs));
        tree.copyTo(factor);
        assertEquals(size, factor.refresh());
        assertEquals(0, factor.refresh());
        factor.set(factor.symbolic().entry(500, 500), 7, 1);
        int columns = factor.refresh();
        assertTrue(columns > 0 && columns < 100, "columns computed: " + columns);
    }

    @Test
    void treesFactorWithoutFill() {
        Sample tree = new Sample(new Random(4), 5000, 0);
        assertEquals(4999, SymbolicLdlt.analyse(5000, tree.pairs).factorSize());
    }

    @Test
    void aVertexThatNothingJoinsBringsNoFill() {
        SymbolicLdlt symbolic = SymbolicLdlt.analyse(4, new long[] {SymbolicLdlt.pair(0, 1), SymbolicLdlt.pair(1, 3)});
        assertEquals(2, symbolic.factorSize());
        assertEquals(6, symbolic.entries());
        for (int v = 0; v < 4; v++) {
            assertEquals(v, symbolic.vertex(symbolic.place(v)));
        }
        assertThrows(IllegalArgumentException.class, () -> symbolic.entry(2, 3));
    }

    @Test
    @Timeout(10)
    void hubsOfManyNeighboursCostNoFillAndNoTime() {
        int size = 200_000;
        long[] pairs = new long[2 * (size - 2)];
        for (int k = 0; k < size - 2; k++) {
            pairs[2 * k] = SymbolicLdlt.pair(0, k + 2);
            pairs[2 * k + 1] = SymbolicLdlt.pair(1, k + 2);
        }
        assertEquals(pairs.length + 1, SymbolicLdlt.analyse(size, pairs).factorSize());
    }

    @Test
    void gridsKeepTheirFillModest() {
        int side = 40;
        long[] pairs = new long[2 * side * side];
        int count = 0;
        for (int i = 0; i < side * side; i++) {
            if (i % side != 0) {
                pairs[count++] = SymbolicLdlt.pair(i, i - 1);
            }
            if (i >= side) {
                pairs[count++] = SymbolicLdlt.pair(i, i - side);
            }
        }
        int fill = SymbolicLdlt.analyse(side * side, java.util.Arrays.copyOf(pairs, count)).factorSize();
        // Row by row the factor would hold about side^3 = 64,000 places.
        assertTrue(fill < 25_000, "places: " + fill);
    }

    @Test
    void namesTheVertexThatNothingHolds() {
        LdltFactor factor = new LdltFactor(SymbolicLdlt.analyse(2, new long[0]));
        factor.set(factor.symbolic().entry(0, 0), 1, 0);
        SingularMatrixException error = assertThrows(SingularMatrixException.class, factor::refresh);
        assertEquals(1, error.vertex());
    }
}
