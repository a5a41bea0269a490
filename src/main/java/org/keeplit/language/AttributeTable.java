package org.keeplit.language;

import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.List;
import java.util.Optional;
import org.keeplit.network.Base;
import org.keeplit.unit.Dimension;

/** Which figures and words the elements of each family may have in a network file, and which they must. */
final class AttributeTable {
    /** The name under which a load's or a bank's kilowatts are kept. */
    static final String ACTIVE = "active power";
    /** The name under which kilovars are kept. */
    static final String REACTIVE = "reactive power";
    /** The name of the current that something carries for good. */
    static final String CONTINUOUS = "continuous";

    /** Ratings that are currents whatever the kind. */
    private static final ImmutableSet<String> CURRENTS =
            ImmutableSet.of(CONTINUOUS, "interrupting", "making", "short-time");

    private static final ImmutableMap<Base, ImmutableMap<String, Dimension>> FIGURES =
            ImmutableMap.<Base, ImmutableMap<String, Dimension>>builder()
                    .put(
                            Base.SOURCE,
                            ImmutableMap.of(
                                    "fault level", Dimension.APPARENT_POWER,
                                    "reactance ratio", Dimension.NUMBER,
                                    "ground fault level", Dimension.APPARENT_POWER,
                                    "voltage", Dimension.VOLTAGE))
                    .put(
                            Base.LINE,
                            ImmutableMap.of(
                                    "length", Dimension.LENGTH,
                                    "ampacity", Dimension.CURRENT))
                    .put(
                            Base.TRANSFORMER,
                            ImmutableMap.of(
                                    "rating", Dimension.APPARENT_POWER,
                                    "low voltage", Dimension.VOLTAGE,
                                    "impedance", Dimension.RATIO,
                                    "resistance", Dimension.RATIO,
                                    // Before its first word alone.
                                    "reactance ratio", Dimension.NUMBER,
                                    "reactance", Dimension.RATIO,
                                    "inrush factor", Dimension.NUMBER))
                    .put(
                            Base.REGULATOR,
                            ImmutableMap.of(
                                    "rating", Dimension.CURRENT,
                                    "range", Dimension.RATIO,
                                    "steps", Dimension.NUMBER,
                                    "setting", Dimension.VOLTAGE,
                                    "bandwidth", Dimension.VOLTAGE,
                                    "voltage ratio", Dimension.NUMBER,
                                    "compensator resistance", Dimension.VOLTAGE,
                                    "compensator reactance", Dimension.VOLTAGE))
                    .put(Base.CAPACITOR, ImmutableMap.of("voltage", Dimension.VOLTAGE))
                    .put(Base.LOAD, ImmutableMap.of("voltage", Dimension.VOLTAGE))
                    .put(Base.GENERATOR, ImmutableMap.of("rating", Dimension.APPARENT_POWER))
                    .put(
                            Base.SWITCH,
                            ImmutableMap.<String, Dimension>builder()
                                    .put("pickup tolerance", Dimension.RATIO)
                                    .put("pickup", Dimension.CURRENT)
                                    .put("ground pickup", Dimension.CURRENT)
                                    .put("coil", Dimension.CURRENT)
                                    .put("minimum trip", Dimension.CURRENT)
                                    .put("rating", Dimension.CURRENT)
                                    .put(CONTINUOUS, Dimension.CURRENT)
                                    .put("interrupting", Dimension.CURRENT)
                                    .put("making", Dimension.CURRENT)
                                    .put("clearing time", Dimension.TIME)
                                    .put("link", Dimension.CURRENT)
                                    .put("impedance", Dimension.IMPEDANCE)
                                    .buildOrThrow())
                    .buildOrThrow();

    private static final ImmutableMap<Base, ImmutableSet<String>> WORDS =
            ImmutableMap.<Base, ImmutableSet<String>>builder()
                    .put(Base.SOURCE, ImmutableSet.of("supply"))
                    .put(
                            Base.LINE,
                            ImmutableSet.of(
                                    "conductor",
                                    "spacing",
                                    "resistance",
                                    "reactance",
                                    "zero resistance",
                                    "zero reactance",
                                    "impedance",
                                    "susceptance"))
                    .put(
                            Base.TRANSFORMER,
                            ImmutableSet.of("delta to grounded wye", "single-phase", "centre-tapped", "windings", "clock"))
                    .put(Base.REGULATOR, ImmutableSet.of("at", "tap"))
                    .put(Base.CAPACITOR, ImmutableSet.of("kvar", "grounded wye", "ungrounded wye", "delta"))
                    .put(
                            Base.LOAD,
                            ImmutableSet.of(
                                    "kW",
                                    "kvar",
                                    "constant",
                                    "customers",
                                    "along",
                                    "critical",
                                    "motor",
                                    "grounded wye",
                                    "ungrounded wye",
                                    "delta"))
                    .put(Base.GENERATOR, ImmutableSet.of("kW", "kvar"))
                    .put(Base.SWITCH, ImmutableSet.of("at", "open", "closed", "ganged", "single-phase units"))
                    .buildOrThrow();

    private static final ImmutableMap<Base, ImmutableSet<String>> MUST = ImmutableMap.of(
            Base.SOURCE, ImmutableSet.of("supply"),
            Base.LINE, ImmutableSet.of("length"),
            Base.TRANSFORMER, ImmutableSet.of("connection", "rating", "impedance"),
            Base.CAPACITOR, ImmutableSet.of(REACTIVE, "connection"),
            Base.LOAD, ImmutableSet.of(ACTIVE, "customers"),
            Base.GENERATOR, ImmutableSet.of(ACTIVE));

    private AttributeTable() {}

    /** {@return the figures with names that a family may have} */
    static ImmutableMap<String, Dimension> figures(Base base) {
        return FIGURES.getOrDefault(base, ImmutableMap.of());
    }

    /** {@return the powers that a family may have; they are written by their units, without a name} */
    static ImmutableMap<String, Dimension> powers(Base base) {
        return switch (base) {
            case LOAD, GENERATOR -> ImmutableMap.of(
                    ACTIVE, Dimension.ACTIVE_POWER, REACTIVE, Dimension.REACTIVE_POWER);
            case CAPACITOR -> ImmutableMap.of(REACTIVE, Dimension.REACTIVE_POWER);
            default -> ImmutableMap.of();
        };
    }

    /** {@return whether a figure is a current that a nameplate states, and is said with {@code rating}} */
    static boolean isCurrentRating(String name) {
        return CURRENTS.contains(name);
    }

    /** {@return what a rating of a kind measures, if its name says that} */
    static Optional<Dimension> rating(Base base, String name) {
        return CURRENTS.contains(name)
                ? Optional.of(Dimension.CURRENT)
                : Optional.ofNullable(figures(base).get(name));
    }

    /** {@return what a family must have besides its phases} */
    static ImmutableSet<String> must(Base base) {
        return MUST.getOrDefault(base, ImmutableSet.of());
    }

    /** {@return everything that a family may have, for advice} */
    static List<String> all(Base base) {
        return ImmutableSet.<String>builder()
                .add("phases")
                .addAll(figures(base).keySet())
                .addAll(WORDS.getOrDefault(base, ImmutableSet.of()))
                .build()
                .asList();
    }

    /** {@return how a required attribute is written} */
    static String example(Base base, String attribute) {
        return switch (attribute) {
            case "rating" -> "rating 500 kVA";
            case "impedance" -> "impedance 5 %, or resistance and reactance";
            case "supply" -> "supply mill";
            case "length" -> "length 1.2 km";
            case "connection" -> base == Base.TRANSFORMER ? "delta to grounded wye" : "grounded wye or ungrounded wye";
            case REACTIVE -> "300 kvar";
            case ACTIVE -> "210 kW";
            case "customers" -> "12 customers";
            default -> "phases ABC";
        };
    }

    /** {@return the mistake that a family has no such attribute} */
    static Misread unknown(Base base, List<Lexeme> words) {
        String written = Vocabulary.join(words);
        List<String> known = all(base);
        // A number and its unit are not what is unknown.
        int many = 1;
        while (many < words.size() && !words.get(many).isNumber()) {
            many++;
        }
        return new Misread(Code.UNKNOWN_ATTRIBUTE
                .at(
                        Line.spanOf(words.subList(0, many)),
                        Suggestions.a(base.phrase()) + " has no attribute “" + Cursor.clip(written) + "”")
                .help(Suggestions.nearest(written, known)
                        .or(() -> Suggestions.nearest(words.get(0).getText(), known))
                        .map(near -> "did you mean " + near + "?")
                        .orElse("it can have " + String.join(", ", known))));
    }
}
