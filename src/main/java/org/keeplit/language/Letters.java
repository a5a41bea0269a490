package org.keeplit.language;

import com.google.common.collect.ImmutableMap;
import java.util.Locale;
import java.util.Optional;
import org.keeplit.text.Problem;
import org.keeplit.text.Span;

/** Letters that look like others, and characters that mean nothing here: each is pointed out by its name. */
final class Letters {
    // The letters of the Cyrillic and Greek alphabets that print like a Latin one.
    private static final String CYRILLIC = "аАвВеЕкКмМнНоОрРсСтТуУхХіІјЈѕЅԁԛԝһ";
    private static final String LIKE_CYRILLIC = "aABBeEkKmMHHoOpPcCTTyYxXiIjJsSdqwh";
    private static final String GREEK = "αΑΒΕΖΗΙΚΜΝοΟρΡΤΥυΧνι";
    private static final String LIKE_GREEK = "aABEZHIKMNoOpPTYuXvi";
    private static final ImmutableMap<Integer, String> LIKE = likes();
    private static final ImmutableMap<Integer, String> TYPED = ImmutableMap.<Integer, String>builder()
            .put((int) '\u201c', "the plain quote \"")
            .put((int) '\u201d', "the plain quote \"")
            .put((int) '\u201e', "the plain quote \"")
            .put((int) '\u00ab', "the plain quote \"")
            .put((int) '\u00bb', "the plain quote \"")
            .put((int) '\'', "the plain quote \"")
            .put((int) '\u2018', "the plain quote \"")
            .put((int) '\u2019', "the plain quote \"")
            .put((int) '\u2010', "the plain hyphen -")
            .put((int) '\u2011', "the plain hyphen -")
            .put((int) '\u2012', "the plain hyphen -")
            .put((int) '\u2013', "the plain hyphen -")
            .put((int) '\u2014', "the plain hyphen -")
            .put((int) '\u2212', "the plain hyphen -")
            .put((int) '\u00a0', "a plain space")
            .put((int) '\u202f', "a plain space")
            .put((int) '\u2126', "the word ohm")
            .put((int) '\u03a9', "the word ohm")
            .put((int) ';', "a comma, or start a new line")
            .buildOrThrow();

    private Letters() {}

    private static ImmutableMap<Integer, String> likes() {
        ImmutableMap.Builder<Integer, String> all = ImmutableMap.builder();
        for (int i = 0; i < CYRILLIC.length(); i++) {
            all.put((int) CYRILLIC.charAt(i), String.valueOf(LIKE_CYRILLIC.charAt(i)));
        }
        for (int i = 0; i < GREEK.length(); i++) {
            all.put((int) GREEK.charAt(i), String.valueOf(LIKE_GREEK.charAt(i)));
        }
        return all.buildOrThrow();
    }

    /** {@return what is wrong with the letters of a word} */
    static Optional<Problem> inWord(String word, Span span) {
        int plain = 0;
        while (plain < word.length() && word.charAt(plain) < 128) {
            plain++;
        }
        if (plain == word.length()) {
            return Optional.empty();
        }
        for (int i = 0; i < word.length(); i += Character.charCount(word.codePointAt(i))) {
            int character = word.codePointAt(i);
            if (character >= 128 && !Character.isLetterOrDigit(character)) {
                Span here = new Span(span.source(), span.line(), span.column() + i, Character.charCount(character));
                return Optional.of(stranger(character, here));
            }
        }
        return lookAlike(word, span);
    }

    /**
     * Looks for a letter that prints like a Latin one in a word that would be read as Latin: one that has Latin
     * letters too, or only letters that look Latin. A word wholly in another alphabet is left alone.
     */
    private static Optional<Problem> lookAlike(String word, Span span) {
        boolean latin = word.chars().anyMatch(c -> c < 128 && Character.isLetter(c));
        boolean allAlike = word.codePoints().filter(Character::isLetter).allMatch(LIKE::containsKey);
        if (!latin && !allAlike) {
            return Optional.empty();
        }
        for (int i = 0; i < word.length(); i++) {
            String like = LIKE.get((int) word.charAt(i));
            if (like != null) {
                Span letter = new Span(span.source(), span.line(), span.column() + i, 1);
                return Optional.of(Code.LOOK_ALIKE
                        .at(
                                letter,
                                "“" + word.charAt(i) + "” in “" + Cursor.clip(word) + "” is a " + name(word.charAt(i))
                                        + ", which only looks like “" + like + "”")
                        .help("type “" + like + "” on a Latin keyboard"));
            }
        }
        return Optional.empty();
    }

    /** {@return the problem that a character has no meaning here} */
    static Problem stranger(int character, Span span) {
        String shown = Character.isISOControl(character) || Character.getType(character) == Character.FORMAT
                ? "there is a character here that does not print: " + name(character)
                : "“" + Character.toString(character) + "” (" + name(character) + ") means nothing here";
        Problem problem = Code.STRANGE_CHARACTER.at(span, shown);
        String typed = TYPED.get(character);
        return typed == null ? problem : problem.help("write " + typed);
    }

    /** Tells a name that begins with a capital, since a capital begins a variable. */
    static void small(Lexeme name, Report report) {
        if (!name.isText() && Character.isUpperCase(name.getText().charAt(0))) {
            report.add(Code.NAME_CASE
                    .at(
                            name.span(),
                            "“" + Cursor.clip(name.getText()) + "” begins with a capital, which only variables do")
                    .help("write " + Cursor.clip(name.getText().toLowerCase(Locale.ROOT))));
        }
    }

    private static String name(int character) {
        String name = Character.getName(character);
        if (Character.isISOControl(character)) {
            return String.format("control character U+%04X", character);
        }
        return name == null ? "character number " + character : name.toLowerCase(Locale.ROOT);
    }
}
