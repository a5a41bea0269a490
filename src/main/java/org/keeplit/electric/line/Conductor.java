package org.keeplit.electric.line;

/**
 * A bare conductor.
 *
 * @param name its name in the trade
 * @param ohmsPerMile resistance at 50 degrees Celsius, 60 Hz
 * @param gmrFeet geometric mean radius
 * @param diameterInches outside diameter
 */
public record Conductor(String name, double ohmsPerMile, double gmrFeet, double diameterInches) {}
