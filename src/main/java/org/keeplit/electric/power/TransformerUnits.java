package org.keeplit.electric.power;

import java.util.function.ToIntBiFunction;
import java.util.function.ToIntFunction;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.flow.FlowModel;
import org.keeplit.electric.flow.Winding;
import org.keeplit.network.Conductor;
import org.keeplit.network.Connection;
import org.keeplit.network.Element;

/**
 * The windings of a bank's units. A unit has one winding a side and starts on one phase; what a delta's winding lies
 * between, and which way round the secondary is, follows from the clock: a winding of a wye shares its core with one of a
 * delta that is 30 degrees before or behind it, and a turned secondary adds half a turn.
 */
final class TransformerUnits {
    private static final double SQRT3 = Math.sqrt(3);

    private final Element.Transformer bank;
    private final ToIntBiFunction<String, Conductor> terminals;
    private final ToIntFunction<String> neutrals;
    private final boolean turned;

    TransformerUnits(
            Element.Transformer bank, ToIntBiFunction<String, Conductor> terminals, ToIntFunction<String> neutrals) {
        this.bank = bank;
        this.terminals = terminals;
        this.neutrals = neutrals;
        boolean mixed = (bank.primary() == Connection.DELTA) != (bank.secondary() == Connection.DELTA);
        int clock = Math.floorMod(bank.clock(), 12);
        boolean whole = bank.windings().size() == 3;
        boolean built = !whole || (mixed ? clock % 6 == 1 || clock % 6 == 5 : clock % 6 == 0);
        if (!built) {
            throw new PowerException("transformer " + bank.name() + " has clock " + clock
                    + ", which three single-phase windings joined phase by phase cannot give");
        }
        this.turned = whole && (mixed ? clock == 5 || clock == 7 : clock == 6);
    }

    /** {@return a unit's source-side winding with half of its impedance} */
    Winding primary(Conductor start, double lineToLine, Complex perUnit, double voltAmperes) {
        return winding(start, true, lineToLine, perUnit, voltAmperes);
    }

    /** {@return a unit's load-side winding with the other half} */
    Winding secondary(Conductor start, double lineToLine, Complex perUnit, double voltAmperes) {
        return winding(start, false, lineToLine, perUnit, voltAmperes);
    }

    private Winding winding(
            Conductor start, boolean primary, double lineToLine, Complex perUnit, double voltAmperes) {
        Connection connection = primary ? bank.primary() : bank.secondary();
        String node = primary ? bank.from() : bank.to();
        double volts = connection == Connection.DELTA ? lineToLine : lineToLine / SQRT3;
        Complex leakage = perUnit.times(0.5 * volts * volts / voltAmperes);
        int here = terminals.applyAsInt(node, start);
        int there = switch (connection) {
            case GROUNDED_WYE -> FlowModel.GROUND;
            case WYE -> neutrals.applyAsInt(bank.name() + (primary ? " primary" : " secondary") + " neutral");
            case DELTA -> terminals.applyAsInt(node, neighbour(start, primary));
        };
        return turned && !primary
                ? new Winding(there, here, volts, leakage)
                : new Winding(here, there, volts, leakage);
    }

    private Conductor neighbour(Conductor start, boolean primary) {
        int lag = Math.floorMod(primary ? bank.clock() : -bank.clock(), 6);
        boolean before = bank.windings().size() == 3 && lag == 1;
        return Conductor.values()[(start.ordinal() + (before ? 2 : 1)) % 3];
    }
}
