package org.keeplit.drill;

import com.google.common.collect.ImmutableList;
import java.util.Optional;
import org.keeplit.outcome.TraceStep;
import org.keeplit.page.Proof;
import org.keeplit.procedure.Instance;

/**
 * A drill on a procedure.
 *
 * @param instance the procedure, where it was explored and from which start
 * @param proof what was proved of it
 * @param hash a short hash of everything that the proof read
 * @param start the number of the first place at which something is asked, and what was done before it
 * @param places where the trainee may stand, by number; at those that no option leads to nothing is asked
 * @param pictures what the places look like, as SVG; places name them by number
 */
public record Drill(
        Instance instance, Proof proof, String hash, Next start, ImmutableList<Place> places, ImmutableList<String> pictures) {

    /**
     * A state between two steps.
     *
     * @param done how many steps are done
     * @param asWritten whether one comes here by doing all steps in the order of the text
     * @param people where everybody is, one line each
     * @param picture the number of its picture; -1 for none
     * @param options what may be picked, in an order that gives nothing away; none at the end
     * @param hint what the text and the proof say that helps to choose
     */
    public record Place(
            int done, boolean asWritten, ImmutableList<String> people, int picture, ImmutableList<Option> options, ImmutableList<String> hint) {

        /** {@return whether something can go wrong here} */
        public boolean isAsked() {
            return options.stream().anyMatch(o -> !o.isRight() && o.ending() != Ending.HARMLESS);
        }
    }

    /** {@return how many places there are at which something is asked} */
    public long asked() {
        return places.stream().filter(Place::isAsked).count();
    }

    /**
     * Something to pick.
     *
     * @param words what is done, who does it first
     * @param ending what comes of it
     * @param now what it changes at once, in words
     * @param told what comes of it in the end, in words; empty for what is right
     * @param why why that matters, and where the rule comes from; empty where no rule speaks
     * @param by the check that catches it, or the rule that it breaks; empty if neither
     * @param later how many acts after the choice that comes up; 0 for at once
     * @param lost who loses supply
     * @param picture the number of the picture of what it leads to; -1 for none
     * @param next for what is right the places to which it may lead, by number; several where it is for a look to find out
     */
    public record Option(
            String words,
            Ending ending,
            ImmutableList<String> now,
            String told,
            String why,
            String by,
            int later,
            ImmutableList<TraceStep.Lost> lost,
            int picture,
            ImmutableList<Next> next) {
        /** {@return whether the procedure allows it here} */
        public boolean isRight() {
            return ending == Ending.RIGHT;
        }

        /** {@return how many customers lose supply} */
        public int customers() {
            return lost.stream().mapToInt(TraceStep.Lost::customers).sum();
        }
    }

    /**
     * Where something right may lead.
     *
     * @param place the number of the place
     * @param found what a look found, if it was one
     * @param then the steps that were done on the way there, as written, since nothing could have gone wrong with them
     */
    public record Next(int place, Optional<String> found, ImmutableList<String> then) {}

    /** What comes of a choice. */
    public enum Ending {
        /** The procedure allows it. */
        RIGHT("right"),
        /** It breaks something. */
        COSTS("harm"),
        /** Somebody looks and finds otherwise before anything is lost. */
        CAUGHT("caught by a check"),
        /** It, or something later, cannot be done, and nothing is lost before. */
        NOTICED("noticed: it cannot be done"),
        /** Nothing comes of it when all else is done as written. */
        HARMLESS("not as written, and nothing came of it"),
        /** It could not be worked out. */
        UNKNOWN("not known");

        private final String words;

        Ending(String words) {
            this.words = words;
        }

        /** {@return what is said of it} */
        public String words() {
            return words;
        }
    }
}
