package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Supplier;
import org.keeplit.network.Kind;
import org.keeplit.network.Verb;
import org.keeplit.procedure.Action;
import org.keeplit.unit.Dimension;

/**
 * The words of a step around its holes, such as {@code takes|take tag off {set}}.
 *
 * @param parts words and holes in order
 * @param phased whether the step is done phase by phase
 * @param frame makes the action from what fills the holes
 */
record StepPattern(ImmutableList<Part> parts, boolean phased, Frame frame) {
    /** Makes the action of a step; more than one when the step names several objects. */
    interface Frame {
        /** {@return the actions} */
        List<Action> build(Match match, StepText step);
    }

    /** A piece of a pattern. */
    sealed interface Part {}

    /** One of some words, such as the forms after one person and after several. */
    record Word(ImmutableSet<String> forms) implements Part {}

    /** What fills a hole. */
    enum Hole implements Part {
        /** A term. */
        TERM,
        /** A term, perhaps with its own phase. */
        SPOT,
        /** Devices: a list of terms and of {@code every device that feeds X}. */
        SET,
        /** A text in quotes. */
        TEXT,
        /** A time. */
        TIME,
        /** A figure of the state, with its phases. */
        FIGURE,
        /** A condition, to the end of the line. */
        CONDITION
    }

    /** What filled the holes, in order. */
    record Match(List<Object> holes, int words) {
        TermText term(int hole) {
            return (TermText) holes.get(hole);
        }

        <T> T get(int hole, Class<T> type) {
            return type.cast(holes.get(hole));
        }
    }

    /** A pattern did not fit; how far it got and what it wanted there, in words that are only put together for those who ask. */
    record Miss(int at, Supplier<String> words, Misread why) {
        String wanted() {
            return words.get();
        }
    }

    /** {@return a pattern from its text} */
    static StepPattern of(String text, Frame frame) {
        ImmutableList.Builder<Part> parts = ImmutableList.builder();
        for (String word : text.split(" ")) {
            parts.add(
                    word.startsWith("{")
                            ? Hole.valueOf(word.substring(1, word.length() - 1).toUpperCase(Locale.ROOT))
                            : new Word(ImmutableSet.copyOf(word.split("\\|"))));
        }
        return new StepPattern(parts.build(), true, frame);
    }

    /** {@return a pattern for a step that is done once, not phase by phase} */
    static StepPattern once(String text, Frame frame) {
        return new StepPattern(of(text, frame).parts(), false, frame);
    }

    /** {@return the patterns of the verbs that kinds declare; kinds with the same words share one} */
    static List<StepPattern> ofKinds(Iterable<Kind> kinds) {
        Map<ImmutableList<String>, Map<Kind, Verb>> byWords = new LinkedHashMap<>();
        for (Kind kind : kinds) {
            for (Verb verb : kind.verbs()) {
                for (Verb.Form form : List.of(verb.one(), verb.several())) {
                    ImmutableList<String> words = ImmutableList.<String>builder()
                            .addAll(form.before())
                            .add("{set}")
                            .addAll(form.after())
                            .build();
                    byWords.computeIfAbsent(words, w -> new LinkedHashMap<>()).putIfAbsent(kind, verb);
                }
            }
        }
        List<StepPattern> patterns = new ArrayList<>();
        byWords.forEach((words, verbs) -> patterns.add(of(String.join(" ", words), new KindFrame(verbs))));
        return patterns;
    }

    /** {@return the forms of its first word} */
    ImmutableSet<String> firstForms() {
        return ((Word) parts.get(0)).forms();
    }

    /**
     * Tries the pattern here; the cursor moves past what fits, or goes back.
     *
     * @param misses takes up why it does not fit
     * @return what filled the holes, or null
     */
    Match match(Cursor cursor, StepText step, List<Miss> misses) {
        int start = cursor.index();
        List<Object> holes = new ArrayList<>();
        int words = 0;
        for (Part part : parts) {
            int at = cursor.index();
            if (part instanceof Word word) {
                Lexeme here = cursor.peek(0);
                if (here == null || here.isText() || !word.forms().contains(here.getText())) {
                    misses.add(new Miss(at, () -> wordsFrom(part), null));
                    cursor.moveTo(start);
                    return null;
                }
                cursor.next("");
                words++;
                continue;
            }
            try {
                holes.add(filler((Hole) part, cursor, step).get());
            } catch (Misread misread) {
                misses.add(new Miss(at, () -> "", misread));
                cursor.moveTo(start);
                return null;
            }
        }
        return new Match(holes, words);
    }

    /** {@return the words from a piece to the next hole} */
    private String wordsFrom(Part part) {
        StringBuilder words = new StringBuilder();
        for (Part next : parts.subList(parts.indexOf(part), parts.size())) {
            if (!(next instanceof Word word)) {
                break;
            }
            words.append(words.isEmpty() ? "" : " ")
                    .append(word.forms().iterator().next());
        }
        return Suggestions.withThe(words.toString());
    }

    private static Supplier<Object> filler(Hole hole, Cursor cursor, StepText step) {
        return switch (hole) {
            case TERM -> () -> step.terms().read(cursor, "what the step is done to");
            case SPOT -> () -> step.readSpot(cursor);
            case SET -> () -> step.readSet(cursor);
            case TEXT -> () -> step.readText(cursor);
            case TIME -> () -> Figures.positive(cursor, Dimension.TIME, "the time");
            case FIGURE -> () -> new FigureReader(step.scope()).measured(cursor);
            case CONDITION -> () -> step.readCondition(cursor);
        };
    }
}
