package org.keeplit.language;

import com.google.common.collect.ImmutableMap;
import org.keeplit.network.Conductor;
import org.keeplit.network.Connection;
import org.keeplit.network.Phases;
import org.keeplit.text.Span;
import org.keeplit.unit.Dimension;
import org.keeplit.unit.Quantity;

/** Reads how the windings of a transformer bank are joined. */
final class TransformerAttributes {
    /** By which phase a winding from phase to phase starts; each lies between a phase and the next. */
    private static final ImmutableMap<String, Conductor> WINDINGS =
            ImmutableMap.of("AB", Conductor.A, "BC", Conductor.B, "AC", Conductor.C);
    /** A voltage from phase to phase leads that of its first phase by one hour. */
    private static final int PHASE_TO_PHASE = 11;

    private final Attributes into;
    private Span said;
    private boolean single;
    private boolean openPrimary;
    private boolean openSecondary;
    private Span windingsSpan;

    TransformerAttributes(Attributes into) {
        this.into = into;
    }

    /** Reads one attribute here. @return whether it is one of a transformer's */
    boolean read(Cursor cursor) {
        return clock(cursor) || single(cursor) || windings(cursor) || connections(cursor);
    }

    private boolean clock(Cursor cursor) {
        Span here = cursor.here();
        if (!into.starts(cursor, "clock")) {
            return false;
        }
        Quantity hours = Figures.read(cursor, Dimension.NUMBER, "the clock of " + into.element);
        if (hours.si() != Math.rint(hours.si()) || hours.si() < 0 || hours.si() > 11) {
            throw new Misread(
                    Code.BAD_NUMBER.at(here, "the clock of " + into.element + " is a whole number from 0 to 11"));
        }
        into.clock = (int) hours.si();
        return true;
    }

    /** {@code single-phase}: one winding, from a phase to the neutral or to another phase; or {@code centre-tapped}. */
    private boolean single(Cursor cursor) {
        Span here = cursor.here();
        boolean tapped = cursor.take("centre-tapped");
        if (!tapped && !cursor.take("single-phase")) {
            return false;
        }
        into.centreTapped = tapped;
        into.once("connection", here);
        said = here;
        single = true;
        return true;
    }

    /** {@code windings AB and BC}: the two units of an open delta. */
    private boolean windings(Cursor cursor) {
        Span here = cursor.here();
        if (!into.starts(cursor, "windings")) {
            return false;
        }
        windingsSpan = here;
        into.windings = winding(cursor);
        cursor.expect("“and” and the other winding", "and");
        into.windings = into.windings.or(winding(cursor));
        if (into.windings.size() != 2) {
            throw new Misread(Code.DUPLICATE.at(cursor.from(1), "the two windings lie between different phases"));
        }
        return true;
    }

    private static Phases winding(Cursor cursor) {
        Lexeme pair = cursor.next("two phases, such as AB,");
        Conductor start = Phases.parse(pair.getText())
                .map(p -> WINDINGS.get(p.toString()))
                .orElseThrow(() -> new Misread(Code.UNKNOWN_PHASE
                        .at(pair.span(), "no winding lies between “" + Cursor.clip(pair.getText()) + "”")
                        .help("windings are AB, BC and CA")));
        return Phases.of(start);
    }

    private boolean connections(Cursor cursor) {
        Span here = cursor.here();
        openPrimary = cursor.take("open");
        if (!(openPrimary ? open(cursor) : into.joined(cursor))) {
            return false;
        }
        said = here;
        Connection first = into.connection;
        cursor.expect("“to” and the connection of the other side", "to");
        into.seen.remove("connection");
        openSecondary = cursor.take("open");
        if (!(openSecondary ? open(cursor) : into.joined(cursor))) {
            throw cursor.unexpected("delta, grounded wye or ungrounded wye");
        }
        into.secondary = into.connection;
        into.connection = first;
        return true;
    }

    /** Reads what is open: a wye, whose neutral is then grounded, or a delta. */
    private boolean open(Cursor cursor) {
        into.once("connection", cursor.here());
        if (cursor.take("wye")) {
            into.connection = Connection.GROUNDED_WYE;
        } else {
            cursor.expect("wye or delta", "delta");
            into.connection = Connection.DELTA;
        }
        return true;
    }

    /** Looks at all attributes together, once the phases are known. */
    void finish(Lexeme name, Report report) {
        checkResistance(name, report);
        if (into.phases == null || said == null) {
            return;
        }
        Phases phases = into.phases.and(Phases.ABC);
        if (single) {
            finishSingle(phases);
        } else if (openPrimary != openSecondary) {
            throw wrong(name, "both sides of an open bank are open");
        } else if (openPrimary && into.connection == Connection.DELTA) {
            if (!phases.equals(Phases.ABC)) {
                throw wrong(name, "an open delta stands on three phases");
            }
            into.windings = into.windings == null ? Phases.parse("AB").orElseThrow() : into.windings;
        } else if (openPrimary && phases.size() != 2) {
            throw wrong(name, "an open wye stands on two phases");
        } else if (into.windings != null) {
            throw new Misread(Code.WRONG_BUILD
                    .at(windingsSpan, "only an open delta says which windings it has")
                    .help("leave them out: they follow from the phases"));
        }
        if (into.windings == null) {
            into.windings = phases;
        }
        if (!single) {
            checkClock(name, report);
        }
    }

    private void checkResistance(Lexeme name, Report report) {
        Quantity whole = into.figures.get("impedance");
        Quantity resistance = into.figures.get("resistance");
        if (whole != null && resistance != null && resistance.si() > whole.si()) {
            report.add(Code.BAD_NUMBER.at(
                    name.span(),
                    "the resistance of " + name.value() + ", " + resistance + ", is more than its impedance, " + whole));
        }
    }

    private Misread wrong(Lexeme name, String rule) {
        return new Misread(Code.WRONG_BUILD.at(said, rule + ", and " + name.value() + " does not: phases "
                + into.phases));
    }

    private void finishSingle(Phases phases) {
        if (phases.size() > 2 || into.windings != null || into.clock >= 0) {
            throw new Misread(Code.WRONG_BUILD
                    .at(said, "a " + (into.centreTapped ? "centre-tapped" : "single-phase") + " transformer has one winding, to the neutral or between two phases")
                    .help("write phases A or phases AB, without windings and clock"));
        }
        into.secondary = Connection.GROUNDED_WYE;
        into.connection = phases.size() == 1 ? Connection.GROUNDED_WYE : Connection.DELTA;
        into.windings = phases.size() == 1 ? phases : Phases.of(WINDINGS.get(phases.toString()));
        into.clock = phases.size() == 1 ? 0 : PHASE_TO_PHASE;
    }

    private void checkClock(Lexeme name, Report report) {
        boolean shifts = (into.connection == Connection.DELTA) != (into.secondary == Connection.DELTA);
        if (shifts && into.clock < 0) {
            report.add(Code.MISSING_ATTRIBUTE
                    .at(name.span(), name.value() + " does not say by how much its low side lags")
                    .help("add the clock number, such as clock 1 for 30 degrees"));
        } else if (openPrimary && openSecondary && into.connection == into.secondary && into.clock > 0) {
            throw new Misread(Code.WRONG_BUILD
                    .at(said, "an open delta to an open delta has clock 0, and " + name.value() + " says " + into.clock)
                    .help("leave the clock out"));
        } else if (into.clock >= 0 && into.clock % 2 != (shifts ? 1 : 0)) {
            throw new Misread(Code.WRONG_BUILD
                    .at(
                            said,
                            "no bank joined like " + name.value() + " has clock " + into.clock + ": with "
                                    + (shifts ? "a delta on one side only the number is odd" : "both sides alike the number is even"))
                    .help("write " + (shifts ? "clock 1 or another odd number" : "clock 0 or another even number")
                            + ", or look at the connection"));
        }
    }
}
