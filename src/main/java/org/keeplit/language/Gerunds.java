package org.keeplit.language;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.keeplit.condition.ActKind;

/** The words by which moments are named: {@code opening}, {@code putting the ground end on with}. */
final class Gerunds {
    private static final Map<ActKind, List<String>> WORDS = new LinkedHashMap<>();

    static {
        for (ActKind act : ActKind.values()) {
            String said = act == ActKind.TAPPING ? "running" : act.words();
            WORDS.put(
                    act,
                    Arrays.stream(said.split(" ")).filter(w -> !w.equals("the")).toList());
        }
    }

    private Gerunds() {}

    /** {@return whether a moment is named here} */
    static boolean start(Cursor cursor) {
        return WORDS.values().stream().anyMatch(cursor::sees);
    }

    /** {@return the kinds of moment named here, joined by {@code or}} */
    static List<ActKind> read(Cursor cursor) {
        List<ActKind> acts = new ArrayList<>();
        int start = cursor.index();
        do {
            acts.add(one(cursor));
        } while (cursor.take("or"));
        if (acts.stream().map(ActKind::takesText).distinct().count() > 1) {
            throw new Misread(Code.WRONG_SORT
                    .at(cursor.from(start), "these moments do not go with the same things")
                    .help("“doing”, “recording” and “inspecting” go with a text in quotes"));
        }
        return acts;
    }

    /** {@return the kind of moment named here, the longest that fits} */
    private static ActKind one(Cursor cursor) {
        ActKind best = null;
        int longest = 0;
        for (ActKind act : ActKind.values()) {
            List<String> said = WORDS.get(act);
            if (said.size() > longest && cursor.sees(said)) {
                best = act;
                longest = said.size();
            }
        }
        if (best == null) {
            Lexeme here = cursor.need("a moment such as opening or clamping");
            List<String> known =
                    WORDS.values().stream().map(w -> String.join(" ", w)).toList();
            throw new Misread(Code.UNKNOWN_MOMENT
                    .at(here.span(), "“" + Cursor.clip(here.getText()) + "” is no moment that a rule can bind to")
                    .help(Suggestions.didYouMean(here.getText(), known)
                            .orElse("the moments are " + String.join(", ", known))));
        }
        cursor.moveTo(cursor.index() + longest);
        return best;
    }

    /** {@return the text that a moment of words is about} */
    static String text(Cursor cursor, List<ActKind> acts) {
        Lexeme text = cursor.next("a text in quotes");
        if (!text.isText()) {
            throw new Misread(Code.MISSING_QUOTE
                    .at(text.span(), "what “" + acts.get(0).words() + "” is about is written in quotes")
                    .help("such as " + acts.get(0).words() + " \"job briefing\""));
        }
        return text.value();
    }

    /** {@return the setting that a moment changes}; the word {@code of} is passed, too */
    static String mode(Cursor cursor, List<ActKind> acts, Scope scope) {
        if (acts.size() > 1) {
            throw new Misread(cursor.problem(Code.UNEXPECTED, "“setting” stands alone in a head")
                    .help("write a rule of its own for it"));
        }
        Lexeme here = cursor.need("a setting");
        String mode = scope.vocabulary()
                .mode(cursor)
                .orElseThrow(() -> new Misread(Code.UNKNOWN_MODE
                        .at(here.span(), "there is no setting “" + Cursor.clip(here.getText()) + "”")
                        .help(Suggestions.didYouMean(
                                        here.getText(), scope.vocabulary().modes())
                                .orElse("the settings are "
                                        + Suggestions.list(scope.vocabulary().modes(), "and")))));
        cursor.expect("“of”", "of");
        return mode;
    }

    /** {@return the value that the setting takes} */
    static String value(Cursor cursor, String mode, Scope scope) {
        cursor.expect("“to” and a value", "to");
        Lexeme value = cursor.next("a value of " + mode);
        if (!scope.vocabulary().values(mode).contains(value.value())) {
            throw new Misread(Code.UNKNOWN_MODE
                    .at(value.span(), mode + " is never “" + Cursor.clip(value.value()) + "”")
                    .help("it is " + Suggestions.list(scope.vocabulary().values(mode), "or")));
        }
        return value.value();
    }
}
