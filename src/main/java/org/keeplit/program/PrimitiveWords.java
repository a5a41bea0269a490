package org.keeplit.program;

import java.util.Optional;
import org.keeplit.network.Element;
import org.keeplit.network.Network;
import org.keeplit.network.Phases;
import org.keeplit.procedure.Action;

/** Says what a primitive does, for acts that no text calls for. */
final class PrimitiveWords {
    private PrimitiveWords() {}

    /** {@return what it does, in words; nothing for what has no words but those of a text} @param network whose devices it names */
    static Optional<String> of(Primitive primitive, Network network) {
        if (primitive instanceof Primitive.MovePole p) {
            return Optional.of((p.closed() ? "closes " : "opens ") + p.device() + on(p.phases(), p.device(), network));
        } else if (primitive instanceof Primitive.MoveEnd p) {
            return Optional.of((p.on() ? "puts on" : "takes off") + " the " + p.side().word() + " lead of " + p.device()
                    + " at the " + p.end().word() + " end on phase " + p.phase()
                    + (p.onto() == p.phase() || !p.on() ? "" : ", onto phase " + p.onto()));
        } else if (primitive instanceof Primitive.MoveClamp p) {
            return Optional.of(
                    p.spot() == null
                            ? "takes clamp " + p.clamp() + " of " + p.family() + " for phase " + p.phase() + " off"
                            : "puts clamp " + p.clamp() + " of " + p.family() + " for phase " + p.phase() + " on "
                                    + p.spot());
        } else if (primitive instanceof Primitive.SetMode p) {
            return Optional.of("sets " + p.mode() + " of " + p.device() + " to " + p.value()
                    + on(Phases.of(p.phase()), p.device(), network));
        } else if (primitive instanceof Primitive.Carry p) {
            return Optional.of("brings " + p.device() + on(p.phases(), p.device(), network) + ": " + p.place().phrase());
        } else if (primitive instanceof Primitive.GoUp p) {
            return Optional.of("goes aloft at " + p.site());
        } else if (primitive instanceof Primitive.ComeDown) {
            return Optional.of("comes down");
        } else if (primitive instanceof Primitive.Speak p) {
            return Optional.of(speech(p.speech()) + " " + p.permit());
        } else if (primitive instanceof Primitive.MoveTag p) {
            return Optional.of((p.on() ? "tags " : "takes the tag off ") + p.device());
        } else if (primitive instanceof Primitive.Prove p) {
            return Optional.of("proves " + p.subject() + " " + proof(p.proof()) + " on phase " + p.phase());
        } else if (primitive instanceof Primitive.TestDead p) {
            return Optional.of("tests " + p.vertex() + " dead");
        } else if (primitive instanceof Primitive.Touch p) {
            return Optional.of("works on " + p.vertex());
        }
        return Optional.empty();
    }

    /** {@return words that begin with a verb, made to agree with who does it} @param actor one person, or several joined by "and" */
    static String agreeing(String actor, String words) {
        if (!actor.contains(" and ")) {
            return words;
        }
        int end = words.indexOf(' ') < 0 ? words.length() : words.indexOf(' ');
        String verb = words.substring(0, end);
        return (verb.equals("goes") ? "go" : verb.replaceFirst("s$", "")) + words.substring(end);
    }

    /** {@return the phase, where the device has units that move alone} */
    private static String on(Phases phases, String device, Network network) {
        boolean alone = network.element(device).map(PrimitiveWords::isWhole).orElse(false);
        return alone ? "" : " on phase " + phases;
    }

    private static boolean isWhole(Element element) {
        return element instanceof Element.Device device && device.ganged() || element.phases().size() == 1;
    }

    static String proof(Action.Proof proof) {
        return switch (proof) {
            case OPEN -> "open";
            case CLOSED -> "closed";
            case CARRYING -> "carries current";
            case IN_PHASE -> "in phase";
            case NEUTRAL -> "at neutral";
        };
    }

    static String speech(Action.Speech speech) {
        return switch (speech) {
            case ASK -> "asks for";
            case ISSUE -> "issues";
            case REPEAT -> "repeats";
            case CONFIRM -> "confirms";
            case RELEASE -> "releases";
        };
    }
}
