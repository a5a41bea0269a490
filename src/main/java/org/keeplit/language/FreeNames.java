package org.keeplit.language;

import java.util.List;
import java.util.Optional;
import org.keeplit.text.Source;
import org.keeplit.text.Span;

/** Names from outside of files, as on a command line: whether they can be names, and what was probably meant. */
public final class FreeNames {
    private FreeNames() {}

    /**
     * {@return why something cannot be the name of a new thing, or nothing if it can}
     *
     * @param name the name
     */
    public static Optional<String> mistake(String name) {
        Span place = new Span(new Source("", name), 1, 1, 0);
        List<Lexeme> lexemes = LineReader.inside(name, place);
        if (lexemes.size() != 1 || !name.matches("[A-Za-z][A-Za-z0-9_-]*") || !lexemes.get(0).getText().equals(name)) {
            return Optional.of(lexemes.isEmpty() && name.equals("the")
                    ? "“the” is a word of the language, so it cannot be a name"
                    : "“" + Cursor.clip(name) + "” is no name: letters, digits, hyphens and underscores, a letter first");
        }
        if (lexemes.get(0).isReserved()) {
            return Optional.of("“" + name + "” is a word of the language, so it cannot be a name");
        }
        return lexemes.get(0).isPhases()
                ? Optional.of("“" + name + "” means phases, so it cannot be a name")
                : Optional.empty();
    }

    /**
     * {@return the question whether the nearest name was meant, or nothing if none is near}
     *
     * @param written what is written
     * @param names what could have been meant
     */
    public static Optional<String> didYouMean(String written, Iterable<String> names) {
        return Suggestions.didYouMean(written, names);
    }
}
