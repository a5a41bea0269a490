package org.keeplit.exchange;

import com.google.gson.JsonElement;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.keeplit.recheck.Rechecked;
import org.keeplit.text.Source;
import org.keeplit.text.Span;

/** What came of a proof that was re-checked, in each format. */
final class RecheckWords {
    private static final String REFUSED = " is not what the plain evaluator finds";

    private RecheckWords() {}

    static String text(Answer.OfProof one) {
        Rechecked came = one.came();
        String words = came.place() + ": ";
        return switch (came.status()) {
            case CONFIRMED -> "confirmed  " + words + confirmed(one) + "\n";
            case UNDECIDED -> "undecided  " + words + stopped(one) + "\n";
            case REFUSED -> "REFUSED    " + words + one.path() + REFUSED + "\n"
                    + came.reasons().stream().map(reason -> "           " + reason + "\n").collect(Collectors.joining());
        };
    }

    private static String confirmed(Answer.OfProof one) {
        int events = one.proof().head().events();
        return states(one.came().states())
                + (events == 0 ? ", without events" : ", with at most " + events + (events == 1 ? " event" : " events"))
                + ", nothing broken in any";
    }

    private static String stopped(Answer.OfProof one) {
        return "stopped after " + states(one.came().states()) + " of " + one.proof().count();
    }

    private static String states(int states) {
        return states == 1 ? "1 state" : states + " states";
    }

    static JsonElement json(Answer.OfProof one) {
        return new Tree()
                .put("file", Where.file(one.path().toString()))
                .put("place", one.proof().head().place())
                .put("revision", one.proof().head().revision())
                .put("input", one.proof().head().input())
                .put("events", one.proof().head().events())
                .put("status", Shared.word(one.came().status()))
                .put("states", one.came().states())
                .put("written", one.proof().count())
                .words("reasons", one.came().reasons())
                .done();
    }

    static Case asCase(Answer.OfProof one) {
        Case.About about = new Case.About(
                "recheck/confirmed",
                "A second evaluator finds the states of the proof and no others, and nothing broken in any.",
                "The start is among its states, whatever may follow one of them is, and nothing is broken in any.");
        Case.Came came = switch (one.came().status()) {
            case CONFIRMED -> Case.Came.KEPT;
            case REFUSED -> Case.Came.BROKEN;
            case UNDECIDED -> Case.Came.OPEN;
        };
        String message = switch (one.came().status()) {
            case CONFIRMED -> confirmed(one);
            case REFUSED -> "it" + REFUSED + ": " + String.join("; ", one.came().reasons());
            case UNDECIDED -> stopped(one);
        };
        String place = one.proof().head().place();
        Span file = Span.ofFile(new Source(one.path().toString(), ""));
        return new Case(place, place, "proof", about, came, message, Optional.of(file), List.of());
    }
}
