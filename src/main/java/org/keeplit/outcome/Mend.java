package org.keeplit.outcome;

import com.google.common.collect.ImmutableList;
import org.keeplit.procedure.Procedure;
import org.keeplit.text.Source;

/**
 * What came of the try to mend a procedure.
 *
 * @param procedure the procedure, as it was
 * @param holds whether it holds as it is, so that there is nothing to mend
 * @param cut whether a limit was reached before it was known whether it holds; then nothing was tried
 * @param source the file as it was
 * @param mends changes after each of which it holds, the smallest first; none if none was found
 * @param tried how many changed texts were proved
 * @param whole whether every change of one step was tried, so that fewer changes than the first of these do not do
 */
public record Mend(
        Procedure procedure,
        boolean holds,
        boolean cut,
        Source source,
        ImmutableList<Change> mends,
        int tried,
        boolean whole) {
    /**
     * What came of a procedure of which it is known whether it holds.
     *
     * @param procedure the procedure, as it was
     * @param holds whether it holds as it is
     * @param source the file as it was
     * @param mends changes after each of which it holds
     * @param tried how many changed texts were proved
     * @param whole whether every change of one step was tried
     */
    public Mend(Procedure procedure, boolean holds, Source source, ImmutableList<Change> mends, int tried, boolean whole) {
        this(procedure, holds, false, source, mends, tried, whole);
    }

    /**
     * A changed text.
     *
     * @param edits what was changed, in words, one for each change
     * @param text the whole file with the changes
     */
    public record Change(ImmutableList<String> edits, String text) {}
}
