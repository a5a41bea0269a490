package org.keeplit.electric.line;

/**
 * A cable with a neutral of strands wound around it (Kersting, section 4.2.1).
 *
 * @param core the phase conductor
 * @param strand one strand of the neutral
 * @param strands how many there are
 * @param outsideInches diameter over the neutral strands
 */
public record ConcentricNeutralCable(Conductor core, Conductor strand, int strands, double outsideInches)
        implements Cable {
    @Override
    public double shieldOhmsPerMile() {
        return strand.ohmsPerMile() / strands;
    }

    @Override
    public double shieldGmrFeet() {
        return StrictMath.pow(
                strand.gmrFeet() * strands * StrictMath.pow(shieldRadiusFeet(), strands - 1), 1.0 / strands);
    }

    @Override
    public double shieldRadiusFeet() {
        return (outsideInches - strand.diameterInches()) / 24;
    }

    @Override
    public double microfaradPerMile() {
        double radius = 12 * shieldRadiusFeet();
        double within = StrictMath.log(2 * radius / core.diameterInches());
        double between = StrictMath.log(strands * strand.diameterInches() / (2 * radius)) / strands;
        return CAPACITANCE / (within - between);
    }
}
