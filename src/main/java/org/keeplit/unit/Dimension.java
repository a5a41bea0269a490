package org.keeplit.unit;

/** What a quantity measures. */
public enum Dimension {
    /** Electric current, in ampere. */
    CURRENT("a current", "A"),
    /** Voltage, in volt. */
    VOLTAGE("a voltage", "V"),
    /** Resistance, reactance or impedance, in ohm. */
    IMPEDANCE("an impedance", "ohm"),
    /** Susceptance or admittance, in siemens. */
    ADMITTANCE("an admittance", "S"),
    /** Active power, in watt. */
    ACTIVE_POWER("an active power", "W"),
    /** Reactive power, in var. */
    REACTIVE_POWER("a reactive power", "var"),
    /** Apparent power, in volt-ampere. */
    APPARENT_POWER("an apparent power", "VA"),
    /** Length, in metre. */
    LENGTH("a length", "m"),
    /** Time, in second. */
    TIME("a time", "s"),
    /** Frequency, in hertz. */
    FREQUENCY("a frequency", "Hz"),
    /** Plain angle, in degree. */
    ANGLE("an angle", "degrees"),
    /** A ratio; the SI value of 5 % is 0.05. */
    RATIO("a ratio", "%"),
    /** A plain number, such as a count. */
    NUMBER("a number", "");

    private final String phrase;
    private final String si;

    Dimension(String phrase, String si) {
        this.phrase = phrase;
        this.si = si;
    }

    /** {@return the dimension with its article, as messages name it} */
    public String phrase() {
        return phrase;
    }

    /** {@return the unit in which the inside of the program keeps it} */
    public String si() {
        return si;
    }
}
