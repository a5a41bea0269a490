package org.keeplit.log;

import com.google.common.collect.ImmutableList;
import java.util.Optional;
import org.keeplit.page.Proof;
import org.keeplit.procedure.Instance;

/**
 * A log sheet.
 *
 * @param instance the procedure, where it was explored and from which start
 * @param proof what was proved of it
 * @param hash a short hash of everything that the proof read
 * @param whole what is written down of the whole job
 * @param lines a line for each step, in the order of the text
 */
public record Sheet(
        Instance instance, Proof proof, String hash, ImmutableList<Item> whole, ImmutableList<Line> lines) {
    /** What a sheet says of itself: which job, which input. */
    static final String JOB = "job";

    static final String INPUT = "input";

    /**
     * A step to be logged.
     *
     * @param id its number, as on the cards; of the steps of one choice with a second number after a point
     * @param step its number in the program
     * @param words what is done
     * @param who by whom
     * @param items what is written down with it
     */
    public record Line(String id, int step, String words, ImmutableList<String> who, ImmutableList<Item> items) {}

    /** What sort of thing is written down. */
    public enum Sort {
        /** Words, as the procedure asks for them. */
        RECORD,
        /** What an inspection found: one of its outcomes. */
        FOUND,
        /** A measured figure with its unit. */
        MEASURED,
        /** The number of a hold or clearance. */
        NUMBER,
        /** A reading of a counter. */
        COUNTER,
        /** What says which job and which input it is. */
        ABOUT
    }

    /**
     * Something to write down.
     *
     * @param name its name
     * @param sort what sort of thing
     * @param about what it is of: the device and phase of a counter, the hold of a number, the outcomes of an inspection; else empty
     * @param hint what is expected, if that can be said
     */
    public record Item(String name, Sort sort, ImmutableList<String> about, String hint) {}

    /** {@return a line} @param id its number */
    public Optional<Line> line(String id) {
        return lines.stream().filter(l -> l.id().equals(id)).findFirst();
    }
}
