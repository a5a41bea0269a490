package org.keeplit.language;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Type;
import org.keeplit.network.Conductor;
import org.keeplit.network.Phases;
import org.keeplit.text.Problem;

/** Reads phases, which stand only after {@code on}, {@code phase} and {@code phases}. */
final class PhaseReader {
    private PhaseReader() {}

    /** {@return the phases written here: {@code ABC}, {@code A}, {@code A and B} or {@code A, B and C}} */
    static Phases letters(Cursor cursor) {
        Phases all = one(cursor);
        while (true) {
            int connective = cursor.sees(0, ",") && cursor.sees(1, "and")
                    ? 2
                    : cursor.sees(0, ",") || cursor.sees(0, "and") ? 1 : 0;
            Lexeme next = cursor.peek(connective);
            if (connective == 0 || next == null || !next.isPhases()) {
                return all;
            }
            cursor.moveTo(cursor.index() + connective);
            all = all.or(one(cursor));
        }
    }

    private static Phases one(Cursor cursor) {
        Lexeme lexeme = cursor.next("a phase");
        if (lexeme.isText()) {
            throw new Misread(unknown(lexeme, List.of()));
        }
        return Phases.parse(lexeme.getText()).orElseThrow(() -> new Misread(unknown(lexeme, List.of())));
    }

    /** {@return the single phase that a word names} */
    static Conductor single(Lexeme lexeme) {
        Phases phases = Phases.parse(lexeme.getText())
                .filter(p -> p.size() == 1 && !p.equals(Phases.N))
                .orElseThrow(() -> new Misread(unknown(lexeme, List.of())));
        return phases.list().get(0);
    }

    /** {@return the phases after {@code on} if that stands here, else all} */
    static PhaseTerm optional(Cursor cursor, Scope scope) {
        return cursor.take("on") ? term(cursor, scope) : PhaseTerm.ALL;
    }

    /** {@return the phases written here, {@code all phases} and variables included} */
    static PhaseTerm term(Cursor cursor, Scope scope) {
        if (cursor.take("all", "phases")) {
            return new PhaseTerm.All(true);
        }
        if (!cursor.take("phases")) {
            cursor.take("phase");
        }
        Lexeme lexeme = cursor.need("a phase");
        if (lexeme.isVariable()) {
            cursor.next("");
            boolean phase = scope.typeOf(lexeme.getText())
                    .map(t -> t == Type.PHASE)
                    .orElse(scope.isForgiving());
            if (!phase) {
                throw new Misread(unknown(lexeme, scope.variables(Type.PHASE)));
            }
            return new PhaseTerm.Variable(lexeme.getText());
        }
        return new PhaseTerm.Given(letters(cursor));
    }

    private static Problem unknown(Lexeme lexeme, List<String> variables) {
        String written = Cursor.clip(lexeme.getText());
        Problem problem = Code.UNKNOWN_PHASE.at(lexeme.span(), "there is no phase “" + written + "”");
        if (written.equals("all")) {
            return problem.help("write all phases");
        }
        if (Phases.parse(written.toUpperCase(Locale.ROOT)).isPresent()) {
            return problem.help("phases are written in capitals: " + written.toUpperCase(Locale.ROOT));
        }
        List<String> options = new ArrayList<>(List.of("A", "B", "C"));
        options.addAll(variables);
        return problem.help("here a phase is " + Suggestions.list(options, "or"));
    }
}
