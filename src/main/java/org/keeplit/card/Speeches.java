package org.keeplit.card;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import org.keeplit.condition.Type;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.Permit;
import org.keeplit.program.Act;
import org.keeplit.program.Points;
import org.keeplit.program.Primitive;
import org.keeplit.program.Program;

/**
 * What crew and desk say to one another about a hold or a clearance. The grant is repeated word for word and the repetition confirmed;
 * the holder alone gives it back. The wording is common practice, no source.
 */
final class Speeches {
    private final Program program;

    Speeches(Program program) {
        this.program = program;
    }

    /** {@return what is said in an act and what answers it, a line each; none if nothing of the kind is said} */
    ImmutableList<String> of(Act act) {
        ImmutableList.Builder<String> all = ImmutableList.builder();
        for (Primitive primitive : act.primitives()) {
            if (primitive instanceof Primitive.Speak speak) {
                program.bound().permit(speak.permit()).ifPresent(permit -> all.addAll(lines(act.actor(), speak.speech(), permit)));
            }
        }
        return all.build();
    }

    private List<String> lines(String actor, Action.Speech speech, Permit permit) {
        String holder = permit.holder().toString();
        String grant = grant(permit);
        String name = word(permit) + " " + permit.name();
        return switch (speech) {
            case ASK -> List.of(actor + ": \u201CThis is " + actor + ". I ask for " + grant + ".\u201D",
                    "desk writes it down and says it back before anything is switched.");
            case ISSUE -> List.of(actor + ": \u201C" + upper(grant) + ", to " + holder + ", number ____, at __:__.\u201D",
                    "Not in force until " + holder + " has repeated it word for word and " + actor + " has confirmed it.");
            case REPEAT -> List.of(actor + ": \u201CI repeat: " + grant + ", to " + holder + ", number ____, at __:__.\u201D",
                    "Any word that differs: start again from the grant.");
            case CONFIRM -> List.of(actor + ": \u201CThat is correct. " + name + " is in force at __:__.\u201D");
            case RELEASE -> List.of(actor + ": \u201CAll are down and clear. I release " + grant + ", number ____, at __:__.\u201D",
                    "desk repeats it word for word before anything is restored.");
        };
    }

    /** {@return the grant in words: what, for which line, held where} */
    private String grant(Permit permit) {
        String site = Points.site(program.bound(), permit.target());
        List<String> devices = new ArrayList<>(program.heldAt().getOrDefault(permit.name(), ImmutableList.of()));
        String at = devices.isEmpty() ? "" : ", held at " + String.join(" and ", devices);
        return word(permit).toLowerCase(java.util.Locale.ROOT) + " " + permit.name() + " for the line at " + site + ", both sides of "
                + permit.target() + at;
    }

    private static String word(Permit permit) {
        return permit.type() == Type.HOLD ? "Hold" : "Clearance";
    }

    private static String upper(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }
}
