package org.keeplit.exchange;

import java.util.List;
import org.keeplit.procedure.Unjudged;
import org.keeplit.text.Problem;

/** Writes what a command tells, in one format. The same answer and problems give the same bytes. */
public interface Reporter {
    /**
     * Writes an answer.
     *
     * @param answer the answer; an empty one is a valid document, too
     * @param unjudged the procedures and examples of which nothing is claimed
     * @param problems what is wrong with the files, in their order
     * @return the whole text, with a line end at its end
     */
    String tell(Answer answer, List<Unjudged> unjudged, List<Problem> problems);
}
