package org.keeplit.electric.line;

/**
 * A cable with a copper tape around it (Kersting, section 4.2.2).
 *
 * @param core the phase conductor
 * @param shieldInches outside diameter of the tape
 * @param tapeMils thickness of the tape, thousandths of an inch
 */
public record TapeShieldCable(Conductor core, double shieldInches, double tapeMils) implements Cable {
    @Override
    public double shieldOhmsPerMile() {
        // Copper at 50 degrees Celsius.
        return 18.826 / (shieldInches * tapeMils);
    }

    @Override
    public double shieldGmrFeet() {
        return shieldRadiusFeet();
    }

    @Override
    public double shieldRadiusFeet() {
        return (shieldInches / 2 - tapeMils / 2000) / 12;
    }

    @Override
    public double microfaradPerMile() {
        return CAPACITANCE / StrictMath.log(24 * shieldRadiusFeet() / core.diameterInches());
    }
}
