package org.keeplit.language;

import java.util.LinkedHashMap;
import java.util.Map;
import org.keeplit.network.Conductor;
import org.keeplit.network.Phases;
import org.keeplit.text.Span;
import org.keeplit.unit.Dimension;
import org.keeplit.unit.Quantity;

/** Reads on which taps a regulator stands: {@code tap 5} for all phases, or {@code tap A 5, tap B 0}. */
final class RegulatorAttributes {
    /** The steps of a regulator that does not say how many it has, both ways together. */
    private static final int STEPS = 32;

    private final Attributes into;
    private final Map<String, Lexeme> taps = new LinkedHashMap<>();

    RegulatorAttributes(Attributes into) {
        this.into = into;
    }

    /** Reads one attribute here. @return whether it is one of a regulator's */
    boolean read(Cursor cursor) {
        Span here = cursor.here();
        if (!cursor.take("tap")) {
            return into.name(cursor, "at");
        }
        Lexeme next = cursor.need("a tap");
        String phase = "";
        if (next.isPhases()) {
            phase = cursor.next("").getText();
            if (phase.length() > 1 || phase.equals("N")) {
                throw new Misread(Code.UNKNOWN_PHASE
                        .at(next.span(), "each phase has its own tap, and “" + phase + "” is not one phase")
                        .help("write tap A 5, tap B 4, or one tap for all: tap 5"));
            }
        }
        into.once(("tap " + phase).trim(), here);
        Lexeme tap = cursor.next("a tap");
        if (!tap.getText().matches("-?[0-9]{1,3}")) {
            throw new Misread(Code.BAD_NUMBER
                    .at(tap.span(), "a tap is a whole number, not “" + Cursor.clip(tap.getText()) + "”")
                    .help("0 is neutral; taps that lower the voltage are less than 0"));
        }
        taps.put(phase, tap);
        return true;
    }

    /** Looks at all attributes together, once the phases are known. */
    void finish(Report report) {
        if (into.phases == null || taps.isEmpty()) {
            return;
        }
        if (taps.containsKey("") && taps.size() > 1) {
            report.add(Code.DUPLICATE.at(
                    taps.get("").span(), "the tap of " + into.element + " is said for all phases and again for one"));
            return;
        }
        Quantity steps = into.figures.get("steps");
        int most = (int) (steps == null ? STEPS : steps.si()) / 2;
        taps.forEach((phase, lexeme) -> {
            int tap = Integer.parseInt(lexeme.getText());
            if (Math.abs(tap) > most) {
                report.add(Code.BAD_NUMBER.at(
                        lexeme.span(), "the taps of " + into.element + " go from -" + most + " to " + most));
            }
            Phases on = phase.isEmpty()
                    ? into.phases.and(Phases.ABC)
                    : Phases.parse(phase).orElseThrow();
            if (!into.phases.containsAll(on)) {
                report.add(Code.UNKNOWN_PHASE.at(
                        lexeme.span(), into.element + " has the phases " + into.phases + " only"));
            }
            for (Conductor one : on) {
                into.figures.put("tap " + one, new Quantity(tap, Dimension.NUMBER));
            }
        });
    }
}
