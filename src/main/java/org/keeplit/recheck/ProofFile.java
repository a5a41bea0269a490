package org.keeplit.recheck;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import com.google.common.hash.Hashing;
import java.util.TreeMap;
import java.nio.charset.StandardCharsets;
import org.keeplit.page.InputHash;
import org.keeplit.procedure.Instance;
import org.keeplit.rule.Rulebook;

/**
 * A written proof: all states of a procedure on its place, in words.
 *
 * @param head what it is of
 * @param start what the facts are at the start that may change: {@code FACT} to {@code VALUE}
 * @param facts what may be otherwise than at the start, each as {@code FACT is VALUE}; states name them by number, from 1
 * @param states the states by their words, in the order of the file
 */
public record ProofFile(
        Head head, ImmutableMap<String, String> start, ImmutableList<String> facts, ImmutableMap<String, Held> states) {

    /** The version of this form. */
    public static final int VERSION = 2;

    /**
     * What a proof is of.
     *
     * @param place the procedure and where it is, in words
     * @param revision the procedure's revision
     * @param input the hash of all that was read for it
     * @param files the files that were read, each with its own hash
     * @param rulebooks the rulebooks that it keeps
     * @param events how many events may happen at most
     */
    public record Head(
            String place, String revision, String input, ImmutableList<String> files, ImmutableList<String> rulebooks, int events) {
        /**
         * {@return what a proof of a procedure says that it is of}
         *
         * @param instance the procedure and where it is
         * @param events how many events may happen at most
         */
        public static Head of(Instance instance, int events) {
            return new Head(
                    instance.words(),
                    instance.procedure().revision().toString(),
                    InputHash.of(instance),
                    ImmutableList.copyOf(InputHash.files(instance)),
                    instance.procedure().keeps().stream().map(Rulebook::name).collect(ImmutableList.toImmutableList()),
                    events);
        }
    }

    /**
     * How often a state stands in a proof.
     *
     * @param times how many states there are that only differ in what rules remember
     * @param line the line where it stands, from 1; 0 before it is written
     */
    public record Held(int times, int line) {}

    /** {@return how many states there are} */
    public long count() {
        return states.values().stream().mapToLong(Held::times).sum();
    }

    /** {@return the text of the file; states and values at the start stand in the order of their words, so that a proof has one text} */
    public String text() {
        StringBuilder text = new StringBuilder();
        line(text, "keeplit proof", Integer.toString(VERSION));
        line(text, "place", head.place);
        line(text, "revision", head.revision);
        line(text, "input", head.input);
        head.files.forEach(f -> line(text, "file", f));
        head.rulebooks.forEach(b -> line(text, "rulebook", b));
        line(text, "events", Integer.toString(head.events));
        line(text, "states", Long.toString(count()));
        new TreeMap<>(start).forEach((fact, value) -> line(text, "start", fact + " is " + value));
        for (int i = 0; i < facts.size(); i++) {
            line(text, "fact", (i + 1) + " " + facts.get(i));
        }
        new TreeMap<>(states).forEach((words, held) -> line(text, "state", words + (held.times == 1 ? "" : " x " + held.times)));
        line(text, "seal", seal(text.toString()));
        return text.toString();
    }

    /** {@return what the last line says of all the lines before it} @param text these lines, with their ends */
    static String seal(String text) {
        return Hashing.sha256().hashString(text, StandardCharsets.UTF_8).toString();
    }

    private static void line(StringBuilder text, String word, String rest) {
        text.append(word).append(' ').append(rest).append('\n');
    }
}
