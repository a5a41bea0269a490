package org.keeplit.electric.line;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.complex.ComplexMatrix;

/**
 * Computed constants of configurations 601 to 607 against the printed matrices (IEEE PES 13-node
 * feeder, 2004; spacings 500 to 520 of the same data). Upper triangle by rows: R, X in ohm per mile,
 * B in microsiemens per mile.
 */
class LineConstantsTest {
    private static Conductor conductor(String name) {
        return ConductorTable.find(name).orElseThrow();
    }

    private static Wire wire(String name, double x, double y) {
        return new Wire(conductor(name), x, y);
    }

    /** Spacing 500: three phases at 28 ft, at 0, 2.5 and 7 ft; neutral at 24 ft, 4 ft. */
    private static LineConstants spacing500(String phase, String neutral, double... positions) {
        List<Wire> phases = java.util.Arrays.stream(positions).mapToObj(x -> wire(phase, x, 28)).toList();
        return OverheadLine.of(phases, List.of(wire(neutral, 4, 24)), Earth.USUAL);
    }

    /** Spacing 510: the phase at 29 ft, half a foot beside the neutral at 24 ft. */
    private static LineConstants spacing510(String both) {
        return OverheadLine.of(List.of(wire(both, 0.5, 29)), List.of(wire(both, 0, 24)), Earth.USUAL);
    }

    /** Within some ohm, and a part of the largest susceptance. */
    private static void compare(LineConstants computed, double ohms, double part, double[][] printed) {
        ComplexMatrix z = computed.impedance();
        double largest = java.util.Arrays.stream(printed).mapToDouble(entry -> entry[2]).max().orElseThrow();
        int row = 0;
        for (int i = 0; i < z.rows(); i++) {
            for (int j = i; j < z.rows(); j++) {
                String place = "(" + i + ", " + j + ")";
                assertEquals(printed[row][0], z.re(i, j), ohms, "R " + place);
                assertEquals(printed[row][1], z.im(i, j), ohms, "X " + place);
                assertEquals(printed[row][2], computed.shunt().im(i, j) * 1e6, part * largest, "B " + place);
                row++;
            }
        }
        assertEquals(printed.length, row);
    }

    @Test
    void configuration601() {
        // Phases B, A, C along the crossarm.
        compare(spacing500("556.5 26/7 ACSR", "4/0 6/1 ACSR", 2.5, 0, 7), 0.00015, 0.00005, new double[][] {
            {0.3465, 1.0179, 6.2998}, {0.1560, 0.5017, -1.9958}, {0.1580, 0.4236, -1.2595},
            {0.3375, 1.0478, 5.9597}, {0.1535, 0.3849, -0.7417}, {0.3414, 1.0348, 5.6386}
        });
    }

    @Test
    void configuration602() {
        // Phases C, A, B along the crossarm.
        compare(spacing500("4/0 6/1 ACSR", "4/0 6/1 ACSR", 2.5, 7, 0), 0.00015, 0.00005, new double[][] {
            {0.7526, 1.1814, 5.6990}, {0.1580, 0.4236, -1.0817}, {0.1560, 0.5017, -1.6905},
            {0.7475, 1.1983, 5.1795}, {0.1535, 0.3849, -0.6588}, {0.7436, 1.2112, 5.4246}
        });
    }

    /** Spacing 505: two phases at 28 ft, 0 and 7 ft; neutral at 24 ft, 4 ft. */
    private static LineConstants spacing505(double first, double second) {
        return OverheadLine.of(
                List.of(wire("1/0 6/1 ACSR", first, 28), wire("1/0 6/1 ACSR", second, 28)),
                List.of(wire("1/0 6/1 ACSR", 4, 24)), Earth.USUAL);
    }

    @Test
    void configuration603() {
        compare(spacing505(7, 0), 0.00015, 0.00005, new double[][] {
            {1.3294, 1.3471, 4.7097}, {0.2066, 0.4591, -0.8999}, {1.3238, 1.3569, 4.6658}
        });
    }

    @Test
    void configuration604() {
        compare(spacing505(0, 7), 0.00015, 0.00005, new double[][] {
            {1.3238, 1.3569, 4.6658}, {0.2066, 0.4591, -0.8999}, {1.3294, 1.3471, 4.7097}
        });
    }

    @Test
    void configuration605() {
        compare(spacing510("1/0 6/1 ACSR"), 0.00015, 0.00005, new double[][] {{1.3292, 1.3475, 4.5193}});
    }

    /**
     * Configurations 300 to 304 of the 34-node feeder (IEEE PES, 2004), on the same spacings. The
     * diameters behind the sheet's susceptances are not printed; they fit to 0.3 percent.
     */
    @Test
    void configurationsOfThe34NodeFeeder() {
        compare(spacing500("1/0 6/1 ACSR", "1/0 6/1 ACSR", 2.5, 0, 7), 0.00015, 0.003, new double[][] {
            {1.3368, 1.3343, 5.3350}, {0.2101, 0.5779, -1.5313}, {0.2130, 0.5015, -0.9943},
            {1.3238, 1.3569, 5.0979}, {0.2066, 0.4591, -0.6212}, {1.3294, 1.3471, 4.8880}
        });
        compare(spacing500("#2 6/1 ACSR", "#2 6/1 ACSR", 2.5, 0, 7), 0.00015, 0.003, new double[][] {
            {1.9300, 1.4115, 5.1207}, {0.2327, 0.6442, -1.4364}, {0.2359, 0.5691, -0.9402},
            {1.9157, 1.4281, 4.9055}, {0.2288, 0.5238, -0.5951}, {1.9219, 1.4209, 4.7154}
        });
        compare(spacing510("#4 6/1 ACSR"), 0.00015, 0.003, new double[][] {{2.7995, 1.4855, 4.2251}});
        compare(spacing510("#2 6/1 ACSR"), 0.00015, 0.003, new double[][] {{1.9217, 1.4212, 4.3637}});
    }

    @Test
    void configuration606() {
        // 250,000 AA with 13 strands of #14 copper, 1.29 in over the strands; 6 in apart.
        Cable cable = new ConcentricNeutralCable(
                conductor("250 AA"), new Conductor("#14 Cu", 14.8722, 0.00208, 0.0641), 13, 1.29);
        compare(UndergroundLine.of(List.of(new UndergroundLine.Laid(cable, -0.5, -4),
                new UndergroundLine.Laid(cable, 0, -4), new UndergroundLine.Laid(cable, 0.5, -4)), List.of(),
                Earth.USUAL), 0.0005, 0.005, new double[][] {
            {0.7982, 0.4463, 96.8897}, {0.3192, 0.0328, 0}, {0.2849, -0.0143, 0},
            {0.7891, 0.4041, 96.8897}, {0.3192, 0.0328, 0}, {0.7982, 0.4463, 96.8897}
        });
    }

    @Test
    void configuration607() {
        // 1/0 AA with a tape of 5 mil, 0.88 in over the tape; the 1/0 copper neutral 1 in away.
        Cable cable = new TapeShieldCable(conductor("1/0 AA"), 0.88, 5);
        LineConstants computed = UndergroundLine.of(List.of(new UndergroundLine.Laid(cable, 0, -4)),
                List.of(wire("1/0 Cu", 1.0 / 12, -4)), Earth.USUAL);
        compare(computed, 0.0005, 0.005, new double[][] {{1.3425, 0.5124, 88.9912}});
    }

    /** By hand, from the primitive matrix: a cable, its shield and two bare neutrals, reduced one after another. */
    @Test
    void aCableBesideTwoNeutrals() {
        Cable cable = new TapeShieldCable(conductor("1/0 AA"), 0.88, 5);
        double[][] at = {{0, -4}, {0, -4}, {0.5, -4}, {2, -3.5}};
        double[] ohms = {0.97, cable.shieldOhmsPerMile(), 0.607, 0.592};
        double[] gmr = {0.0111, cable.shieldGmrFeet(), 0.01113, 0.00814};
        Complex[][] z = new Complex[4][4];
        for (int i = 0; i < 4; i++) {
            for (int j = 0; j < 4; j++) {
                double feet = i == j ? gmr[i] : i + j == 1 ? cable.shieldRadiusFeet() : Math.hypot(at[i][0] - at[j][0], at[i][1] - at[j][1]);
                z[i][j] = new Complex((i == j ? ohms[i] : 0) + 0.0953016, 0.1213422 * (Math.log(1 / feet) + 7.6786 + 0.5 * Math.log(100 / 60.0)));
            }
        }
        for (int out = 3; out > 0; out--) {
            for (int i = 0; i < out; i++) {
                for (int j = 0; j < out; j++) {
                    z[i][j] = z[i][j].minus(z[i][out].times(z[out][j]).over(z[out][out]));
                }
            }
        }
        LineConstants computed = UndergroundLine.of(List.of(new UndergroundLine.Laid(cable, 0, -4)),
                List.of(wire("1/0 Cu", 0.5, -4), wire("4/0 6/1 ACSR", 2, -3.5)), Earth.USUAL);
        assertEquals(z[0][0].re(), computed.impedance().re(0, 0), 1e-6);
        assertEquals(z[0][0].im(), computed.impedance().im(0, 0), 1e-6);
    }

    @Test
    void wiresThatCannotHangSoAreRefused() {
        List<Wire> twice = List.of(wire("4/0 6/1 ACSR", 0, 28), wire("1/0 6/1 ACSR", 3, 28), wire("4/0 6/1 ACSR", 0, 28));
        assertEquals("Wires 1 and 3 are in one place.", assertThrows(IllegalArgumentException.class, () -> OverheadLine.of(twice, List.of(), Earth.USUAL)).getMessage());
        List<Wire> onTheGround = List.of(wire("4/0 6/1 ACSR", 0, 0));
        assertThrows(IllegalArgumentException.class, () -> OverheadLine.of(onTheGround, List.of(), Earth.USUAL));
        assertEquals(1, OverheadLine.of(List.of(wire("4/0 6/1 ACSR", 0, 28)), List.of(), Earth.USUAL).impedance().rows());
    }
}
