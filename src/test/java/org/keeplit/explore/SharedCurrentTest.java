package org.keeplit.explore;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.keeplit.electric.complex.Complex;

/** The bounds of a sum, some of whose parts are had in any share, against trying many shares. */
class SharedCurrentTest {
    private static final int STEPS = 20;

    @Property(tries = 300, seed = "11")
    void boundsHoldAndAreReached(
            @ForAll @Size(2) List<@DoubleRange(min = -50, max = 50) Double> whole,
            @ForAll @Size(max = 6) List<@DoubleRange(min = -50, max = 50) Double> flat) {
        Complex known = new Complex(whole.get(0), whole.get(1));
        List<Complex> parts = java.util.stream.IntStream.range(0, flat.size() / 2)
                .mapToObj(i -> new Complex(flat.get(2 * i), flat.get(2 * i + 1)))
                .toList();
        double[] bounds = SharedCurrent.bounds(known, parts);
        double least = Double.MAX_VALUE;
        double greatest = 0;
        int count = (int) Math.pow(STEPS + 1, parts.size());
        for (int i = 0; i < count; i++) {
            Complex sum = known;
            int rest = i;
            for (Complex part : parts) {
                sum = sum.plus(part.times(rest % (STEPS + 1) / (double) STEPS));
                rest /= STEPS + 1;
            }
            least = Math.min(least, sum.abs());
            greatest = Math.max(greatest, sum.abs());
        }
        double step = parts.stream().mapToDouble(Complex::abs).sum() / STEPS;
        assertTrue(bounds[0] <= least + 1e-9 && least <= bounds[0] + step + 1e-9, bounds[0] + " beside " + least);
        assertTrue(Math.abs(bounds[1] - greatest) < 1e-9, bounds[1] + " beside " + greatest);
    }
}
