package org.keeplit.electric.line;

/** A cable of one core with a grounded shield or concentric neutral around it. */
public sealed interface Cable permits ConcentricNeutralCable, TapeShieldCable {
    /** One over the logarithm's scale: two pi times the permittivity of insulation, microfarad per mile. */
    double CAPACITANCE = 77.3619 / (2 * Math.PI * 60);

    /**
     * The core.
     *
     * @return its conductor
     */
    Conductor core();

    /**
     * The shield's resistance.
     *
     * @return ohm per mile
     */
    double shieldOhmsPerMile();

    /**
     * The shield's own geometric mean radius.
     *
     * @return feet
     */
    double shieldGmrFeet();

    /**
     * The distance between core and shield.
     *
     * @return feet
     */
    double shieldRadiusFeet();

    /**
     * The capacitance between core and shield; relative permittivity 2.3.
     *
     * @return microfarad per mile
     */
    double microfaradPerMile();
}
