package org.keeplit.explore;

import java.util.ArrayList;
import java.util.List;
import org.keeplit.network.Base;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Mode;
import org.keeplit.network.Place;
import org.keeplit.program.Field;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Program;
import org.keeplit.program.Vertex;

/** Says what the fields of a state mean. */
final class StateWords {
    private final Program program;

    StateWords(Program program) {
        this.program = program;
    }

    /** {@return the changes between two states, in words; proofs and records are left out} */
    List<String> changes(long[] before, long[] after) {
        List<String> all = new ArrayList<>();
        for (Field field : program.layout().fields()) {
            int was = field.get(before);
            int is = field.get(after);
            if (was != is) {
                String words = words(field.key(), is);
                if (!words.isEmpty()) {
                    all.add(words);
                }
            }
        }
        return all;
    }

    /** {@return a field's value in words, or nothing for fields that people do not see} */
    String words(FieldKey key, int value) {
        if (key instanceof FieldKey.Pole pole) {
            return pole.device() + phase(pole.device(), pole.phase()) + (value == 1 ? " closed" : " open");
        } else if (key instanceof FieldKey.End end) {
            return "the " + end.side().word() + " lead of " + end.device() + " on phase " + end.phase()
                    + (value == 0 ? " off at its " : " on at its ") + end.end().word() + " end";
        } else if (key instanceof FieldKey.Clamp clamp) {
            return clamp(clamp, value);
        } else if (key instanceof FieldKey.Mode mode) {
            Mode kind = program.bound().network().element(mode.device()).orElseThrow().kind()
                    .mode(mode.mode())
                    .orElseThrow();
            return mode.mode() + " of " + mode.device() + (kind.each() ? phase(mode.device(), mode.phase()) : "")
                    + " " + kind.values().get(value);
        } else if (key instanceof FieldKey.Tap tap) {
            return tap.regulator() + " on phase " + tap.phase()
                    + (value == FieldKey.Tap.NEUTRAL ? " at neutral" : " free to step");
        } else if (key instanceof FieldKey.Placed placed) {
            return placed.device() + phase(placed.device(), placed.phase()) + " " + Place.values()[value].phrase();
        } else if (key instanceof FieldKey.Where where) {
            return where.person() + (value == 0
                    ? " on the ground"
                    : value > program.sites().size() ? " gone" : " aloft at " + program.sites().get(value - 1));
        } else if (key instanceof FieldKey.CutOff cut) {
            return cut.person() + (value == 1 ? " out of reach" : " in reach");
        } else if (key instanceof FieldKey.Failed failed) {
            return failed.device() + (value == 1 ? " will not trip" : " will trip");
        } else if (key instanceof FieldKey.Permitted permitted) {
            return permitted.permit() + " " + permitted(value);
        } else if (key instanceof FieldKey.Tagged tagged) {
            return value == 1 ? "a tag on " + tagged.device() : "no tag on " + tagged.device();
        } else if (key instanceof FieldKey.Found found && value > 0) {
            return found.item() + ": " + program.outcomes(found.item()).get(value - 1);
        } else if (key instanceof FieldKey.Count count && value > 0) {
            return "counter of " + count.device() + phase(count.device(), count.phase()) + " up by " + value;
        } else if (key instanceof FieldKey.Waited waited && value > 0) {
            return waited.capacitor() + " on phase " + waited.phase() + " dead for " + value + " min";
        }
        return "";
    }

    private String phase(String device, Conductor phase) {
        boolean ganged = program.bound().network().element(device).orElseThrow()
                        instanceof Element.Device d
                && d.ganged();
        return ganged ? "" : " on phase " + phase;
    }

    private String clamp(FieldKey.Clamp clamp, int value) {
        Base base = program.bound().temporary(clamp.family()).orElseThrow().kind().base();
        if (base == Base.MOBILE && clamp.clamp() == 1) {
            return clamp.family() + (value == 0 ? " stopped" : " running") + " on phase " + clamp.phase();
        }
        String end = base == Base.GROUND
                ? clamp.clamp() == 1 ? "ground end" : "line end"
                : base == Base.MOBILE ? "cable" : clamp.clamp() == 1 ? "first clamp" : "second clamp";
        String which = "the " + end + " of " + clamp.family() + " for phase " + clamp.phase();
        if (value == 0) {
            return which + " off";
        }
        Vertex at = program.spots().get(clamp).get(value - 1);
        return which + " on " + at;
    }

    private static String permitted(int value) {
        return switch (value) {
            case FieldKey.Permitted.NONE -> "not asked for";
            case FieldKey.Permitted.ASKED -> "asked for";
            case FieldKey.Permitted.ISSUED -> "issued";
            case FieldKey.Permitted.REPEATED -> "repeated";
            case FieldKey.Permitted.IN_FORCE -> "in force";
            default -> "released";
        };
    }
}
