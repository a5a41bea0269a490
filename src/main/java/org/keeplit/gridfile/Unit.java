package org.keeplit.gridfile;

import java.util.List;

/**
 * One tank, or a transformer that is described as a whole.
 *
 * @param tank the tank, or the transformer
 * @param windings its windings by their number, at least two
 */
record Unit(CimObject tank, List<Winding> windings) {
    /** {@return whether it has one voltage on both sides, as regulators have} */
    boolean isOneToOne() {
        return windings.size() == 2 && Math.abs(windings.get(0).volts() / windings.get(1).volts() - 1) < 0.01;
    }
}
