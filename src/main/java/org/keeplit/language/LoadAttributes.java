package org.keeplit.language;

import java.util.LinkedHashMap;
import java.util.Map;
import org.keeplit.network.Conductor;
import org.keeplit.network.Connection;
import org.keeplit.network.LoadModel;
import org.keeplit.network.Phases;
import org.keeplit.text.Span;
import org.keeplit.unit.Dimension;
import org.keeplit.unit.Quantity;

/** Reads what a load says of its customers and of its power. */
final class LoadAttributes {
    private final Attributes into;
    private final Map<Phases, Lexeme> powers = new LinkedHashMap<>();

    LoadAttributes(Attributes into) {
        this.into = into;
    }

    /** Reads one attribute here. @return whether it is one of a load's */
    boolean read(Cursor cursor) {
        return motor(cursor) || along(cursor) || critical(cursor) || constant(cursor) || power(cursor);
    }

    private boolean motor(Cursor cursor) {
        boolean here = into.starts(cursor, "motor");
        into.motor |= here;
        return here;
    }

    private boolean along(Cursor cursor) {
        if (!into.starts(cursor, "along")) {
            return false;
        }
        into.along = cursor.next("the line section along which it is spread");
        return true;
    }

    private boolean critical(Cursor cursor) {
        if (!into.starts(cursor, "critical")) {
            return false;
        }
        into.critical = cursor.next("who depends on it, in quotes");
        if (!into.critical.isText()) {
            throw new Misread(Code.MISSING_QUOTE
                    .at(into.critical.span(), "who depends on " + into.element + " is written in quotes")
                    .help("such as critical \"milking parlour\""));
        }
        return true;
    }

    /** {@code constant current}: how its power follows the voltage. */
    private boolean constant(Cursor cursor) {
        if (!into.starts(cursor, "constant")) {
            return false;
        }
        for (LoadModel model : LoadModel.values()) {
            if (cursor.take(model.word())) {
                into.model = model;
                return true;
            }
        }
        Lexeme word = cursor.next("power, current or impedance");
        throw new Misread(Code.UNKNOWN_WORD
                .at(word.span(), "no load has a constant “" + Cursor.clip(word.getText()) + "”")
                .help("write constant power, constant current or constant impedance"));
    }

    /** {@code A 160 kW 110 kvar}: the power of one phase, in delta of two. */
    private boolean power(Cursor cursor) {
        Lexeme label = cursor.need("an attribute");
        if (!label.isPhases()) {
            return false;
        }
        cursor.next("");
        Phases phases = Phases.parse(label.getText()).orElseThrow();
        if (powers.putIfAbsent(phases, label) != null) {
            throw new Misread(Code.DUPLICATE.at(
                    label.span(), "the power of " + into.element + " on " + label.getText() + " is said twice"));
        }
        String where = " of " + into.element + " on " + label.getText();
        put(AttributeTable.ACTIVE, phases, Figures.read(cursor, Dimension.ACTIVE_POWER, "the active power" + where));
        if (!cursor.done() && cursor.need("").isNumber()) {
            put(
                    AttributeTable.REACTIVE,
                    phases,
                    Figures.read(cursor, Dimension.REACTIVE_POWER, "the reactive power" + where));
        }
        return true;
    }

    private void put(String power, Phases phases, Quantity quantity) {
        into.figures.put(power + " " + label(phases), quantity);
    }

    /** {@return how the power between two phases, or of one, is labelled: in the order of the rotation} */
    private static String label(Phases phases) {
        return phases.toString().equals("AC") ? "CA" : phases.toString();
    }

    /** Looks at all attributes together: the powers of its phases make up the whole. */
    void finish(Report report) {
        if (powers.isEmpty()) {
            return;
        }
        if (into.figures.containsKey(AttributeTable.ACTIVE) || into.figures.containsKey(AttributeTable.REACTIVE)) {
            report.add(Code.DUPLICATE.at(
                    powers.values().iterator().next().span(),
                    "the power of " + into.element + " is said for the whole and again phase by phase"));
            return;
        }
        int wires = into.connection() == Connection.DELTA ? 2 : 1;
        powers.forEach((phases, label) -> check(phases, label, wires, report));
        sum(AttributeTable.ACTIVE, Dimension.ACTIVE_POWER);
        sum(AttributeTable.REACTIVE, Dimension.REACTIVE_POWER);
        if (into.figures.get(AttributeTable.ACTIVE).si() <= 0) {
            Span span = powers.values().iterator().next().span();
            report.add(Code.BAD_NUMBER.at(span, "the active power of " + into.element + " must be more than zero"));
        }
    }

    private void check(Phases phases, Lexeme label, int wires, Report report) {
        if (phases.size() != wires || phases.contains(Conductor.N)) {
            report.add(Code.UNKNOWN_PHASE
                    .at(label.span(), wires == 2
                            ? "in delta a power is said from phase to phase, such as AB"
                            : "a power is said of one phase, such as A"));
        } else if (into.phases != null && !into.phases.containsAll(phases)) {
            report.add(Code.UNKNOWN_PHASE.at(
                    label.span(), into.element + " has the phases " + into.phases + " only"));
        }
    }

    private void sum(String power, Dimension dimension) {
        double all = 0;
        for (Phases phases : powers.keySet()) {
            Quantity one = into.figures.get(power + " " + label(phases));
            all += one == null ? 0 : one.si();
        }
        if (all != 0) {
            into.figures.put(power, new Quantity(all, dimension));
        } else if (power.equals(AttributeTable.ACTIVE)) {
            into.figures.put(power, new Quantity(0, dimension));
        }
    }
}
