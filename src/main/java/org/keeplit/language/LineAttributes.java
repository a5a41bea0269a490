package org.keeplit.language;

import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.keeplit.network.Conductor;
import org.keeplit.network.Kind;
import org.keeplit.network.Phases;
import org.keeplit.network.Spacing;
import org.keeplit.network.Trait;
import org.keeplit.text.Span;
import org.keeplit.unit.Dimension;
import org.keeplit.unit.Quantity;

/** Reads what a line section says of its wires and of its impedance. */
final class LineAttributes {
    private static final ImmutableSet<String> SEQUENCE =
            ImmutableSet.of("resistance", "reactance", "zero resistance", "zero reactance");

    private final Attributes into;
    private final Wires wires;

    LineAttributes(Attributes into, Wires wires) {
        this.into = into;
        this.wires = wires;
    }

    /** Reads one attribute here. @return whether it is one of a line section's */
    boolean read(Cursor cursor) {
        return conductor(cursor) || spacing(cursor) || sequence(cursor) || impedance(cursor) || susceptance(cursor);
    }

    private boolean conductor(Cursor cursor) {
        if (!into.name(cursor, "conductor")) {
            return false;
        }
        known(into.word, wires.conductors().keySet(), "conductor", Code.UNKNOWN_CONDUCTOR);
        return true;
    }

    private boolean spacing(Cursor cursor) {
        if (!into.starts(cursor, "spacing")) {
            return false;
        }
        into.spacing = cursor.next("a spacing");
        known(into.spacing, wires.spacings().keySet(), "spacing", Code.UNKNOWN_SPACING);
        return true;
    }

    private static void known(Lexeme name, Set<String> names, String what, Code code) {
        if (!names.contains(name.value())) {
            String written = Cursor.clip(name.value());
            throw new Misread(
                    code.at(name.span(), "no equipment file that this network uses declares a " + what + " " + written)
                            .help(Suggestions.didYouMean(name.value(), names)
                                    .orElse(
                                            names.isEmpty()
                                                    ? "declare it there with a line “" + what + " NAME …”"
                                                    : "there is " + Suggestions.list(names, "and"))));
        }
    }

    /** {@code resistance 0.3 ohm per km} and its like, of the positive and the zero sequence. */
    private boolean sequence(Cursor cursor) {
        for (String figure : SEQUENCE) {
            List<String> words = List.of(figure.split(" "));
            if (cursor.sees(words)) {
                into.once(figure, cursor.here());
                cursor.moveTo(cursor.index() + words.size());
                String what = "the " + figure + " of " + into.element;
                into.figures.put(figure, PerLength.positive(cursor, Dimension.IMPEDANCE, what));
                return true;
            }
        }
        return false;
    }

    /** {@code impedance AB 0.1560 0.5017 ohm per mi}: one entry of the matrix, its resistance and its reactance. */
    private boolean impedance(Cursor cursor) {
        if (!cursor.sees(0, "impedance")) {
            return false;
        }
        Span here = cursor.here();
        cursor.next("");
        String pair = pair(cursor);
        into.once("impedance " + pair, here);
        Lexeme resistance = cursor.next("the resistance between " + pair);
        if (!resistance.isNumber()) {
            throw new Misread(Code.UNEXPECTED
                    .at(resistance.span(), "the resistance is a number, not “" + Cursor.clip(resistance.getText()) + "”")
                    .help("write it such as impedance AB 0.1560 0.5017 ohm per mi"));
        }
        String what = "the reactance " + pair + " of " + into.element;
        double reactance = Figures.read(cursor, Dimension.IMPEDANCE, what).si();
        // The unit stands once, after the second number, and holds for both.
        double unit = Figures.peekUnit(cursor, -1).orElseThrow().factor();
        double metres = PerLength.length(cursor);
        double ohms = Double.parseDouble(resistance.getText()) * unit;
        if (Double.isInfinite(ohms)) {
            throw new Misread(Code.BAD_NUMBER.at(resistance.span(), "this number is too large"));
        }
        if (pair.charAt(0) == pair.charAt(1) && (ohms < 0 || reactance <= 0)) {
            throw new Misread(
                    Code.BAD_NUMBER.at(resistance.span(), "the impedance " + pair + " of " + into.element
                            + " has a resistance of at least zero and a reactance of more than zero"));
        }
        into.figures.put("resistance " + pair, new Quantity(ohms / metres, Dimension.IMPEDANCE));
        into.figures.put("reactance " + pair, new Quantity(reactance / metres, Dimension.IMPEDANCE));
        return true;
    }

    /** {@code susceptance AA 6.3 uS per mi}, or {@code susceptance 4.3 uS per km} of each phase alike. */
    private boolean susceptance(Cursor cursor) {
        if (!cursor.sees(0, "susceptance")) {
            return false;
        }
        Span here = cursor.here();
        cursor.next("");
        if (cursor.need("a susceptance").isNumber()) {
            into.once("susceptance", here);
            String each = "the susceptance of " + into.element;
            into.figures.put("susceptance", PerLength.positive(cursor, Dimension.ADMITTANCE, each));
            return true;
        }
        String pair = pair(cursor);
        into.once("susceptance " + pair, here);
        String what = "the susceptance " + pair + " of " + into.element;
        double siemens = Figures.read(cursor, Dimension.ADMITTANCE, what).si();
        into.figures.put(
                "susceptance " + pair, new Quantity(siemens / PerLength.length(cursor), Dimension.ADMITTANCE));
        return true;
    }

    /** {@return two phases, in the order of the alphabet} */
    private static String pair(Cursor cursor) {
        Lexeme letters = cursor.next("two phases, such as AB,");
        String text = letters.getText();
        boolean two = text.length() == 2 && text.chars().allMatch(c -> "ABC".indexOf(c) >= 0);
        if (!two) {
            throw new Misread(Code.UNKNOWN_PHASE
                    .at(letters.span(), "“" + Cursor.clip(text) + "” are no two phases")
                    .help("write AA for the own impedance of phase A, AB for the one between A and B"));
        }
        return text.charAt(0) <= text.charAt(1) ? text : text.charAt(1) + text.substring(0, 1);
    }

    /** Looks at all attributes together, once the phases are known. */
    void finish(Lexeme name, Kind kind, Report report) {
        boolean sequence = SEQUENCE.stream().anyMatch(into.figures::containsKey);
        boolean matrix = into.figures.keySet().stream().anyMatch(f -> f.matches("resistance [ABC]{2}"));
        if (into.word == null && !sequence && !matrix) {
            report.add(Code.MISSING_IMPEDANCE
                    .at(name.span(), "the " + kind.name() + " " + name.value() + " says nothing of its impedance")
                    .help("add its conductor, or resistance and reactance, such as resistance 0.3 ohm per km"));
        }
        if (sequence && matrix) {
            report.add(Code.DUPLICATE.at(
                    name.span(),
                    "the impedance of " + name.value() + " is given twice, as a matrix and by resistance and reactance"));
        }
        if (sequence) {
            together(name, "resistance", "reactance", report);
        } else if (into.figures.containsKey("susceptance") && (into.word != null || matrix)) {
            report.add(Code.MISSING_IMPEDANCE
                    .at(name.span(), name.value() + " says its susceptance, and not its resistance and reactance")
                    .help("add them, or leave the susceptance to the conductor or the matrix"));
        }
        if (into.figures.containsKey("zero resistance") || into.figures.containsKey("zero reactance")) {
            together(name, "zero resistance", "zero reactance", report);
        }
        if (into.phases != null) {
            complete(name, "resistance", "impedance", report);
            complete(name, "susceptance", "susceptance", report);
            checkSpacing(name, report);
        }
    }

    private void together(Lexeme name, String first, String second, Report report) {
        ImmutableMap.of(first, second, second, first).forEach((there, missing) -> {
            if (!into.figures.containsKey(missing)) {
                report.add(Code.MISSING_IMPEDANCE
                        .at(name.span(), name.value() + " does not say its " + missing)
                        .help("add it, such as " + missing + " 0.4 ohm per km"));
            }
        });
    }

    /** A matrix has all pairs of the line's phases, and no others. */
    private void complete(Lexeme name, String figure, String what, Report report) {
        Set<String> wanted = new LinkedHashSet<>();
        for (Conductor one : into.phases.and(Phases.ABC)) {
            for (Conductor other : into.phases.and(Phases.ABC)) {
                if (one.compareTo(other) <= 0) {
                    wanted.add(one.name() + other.name());
                }
            }
        }
        Set<String> said = new LinkedHashSet<>();
        into.figures.keySet().stream()
                .filter(f -> f.matches(figure + " [ABC]{2}"))
                .forEach(f -> said.add(f.substring(figure.length() + 1)));
        if (said.isEmpty()) {
            return;
        }
        List<String> missing = wanted.stream().filter(p -> !said.contains(p)).toList();
        if (!missing.isEmpty()) {
            report.add(Code.MISSING_IMPEDANCE
                    .at(name.span(), name.value() + " does not say its " + what + " "
                            + Suggestions.list(missing, "and"))
                    .help("a matrix has an entry for each two of the phases " + into.phases));
        }
        List<String> strange = said.stream().filter(p -> !wanted.contains(p)).toList();
        if (!strange.isEmpty()) {
            report.add(Code.UNKNOWN_PHASE.at(
                    name.span(),
                    name.value() + " says its " + what + " " + Suggestions.list(strange, "and")
                            + ", and it has the phases " + into.phases + " only"));
        }
    }

    private void checkSpacing(Lexeme name, Report report) {
        if (into.spacing == null) {
            return;
        }
        Spacing spacing = wires.spacings().get(into.spacing.value());
        if (!spacing.conductors().containsAll(into.phases)) {
            report.add(Code.UNKNOWN_SPACING
                    .at(
                            into.spacing.span(),
                            "the spacing " + spacing.name() + " has places for " + spacing.conductors() + ", and "
                                    + name.value() + " has the phases " + into.phases)
                    .help(wires.usual(into.phases)
                            .map(fit -> "there is " + fit + " for these")
                            .orElse("declare one that has them all")));
        }
        if (into.word == null) {
            report.add(Code.MISSING_ATTRIBUTE
                    .at(into.spacing.span(), "a spacing tells nothing without a conductor")
                    .help("add it, such as conductor acsr-336"));
        }
    }

    /** {@return the spacing that was said, or the usual one of its phases for an overhead line with a conductor} */
    Optional<String> spacing(Kind kind) {
        if (into.spacing != null || into.word == null || kind.has(Trait.CABLE)) {
            return Optional.ofNullable(into.spacing).map(Lexeme::value);
        }
        return wires.usual(into.phases);
    }
}
