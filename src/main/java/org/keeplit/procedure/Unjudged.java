package org.keeplit.procedure;

import com.google.common.collect.ImmutableList;
import org.keeplit.text.Span;

/**
 * A procedure, or a file's examples, of which nothing is claimed.
 *
 * @param kind what it is called in a sentence: procedure, variant or examples
 * @param name its name
 * @param reason why
 * @param files the names of the files with mistakes, in the order in which they were read
 * @param span where it is declared
 */
public record Unjudged(String kind, String name, Reason reason, ImmutableList<String> files, Span span) {
    /** Why nothing is claimed. */
    public enum Reason {
        /** A file that it reads has a mistake: what is left of that file need not be what its author wrote. */
        MISTAKES("not judged"),
        /** It does not fit the network, or cannot be begun on it. */
        REFUSED("not judged"),
        /** It does not say where it is to be proved. */
        NO_PLACE("not proved");

        private final String words;

        Reason(String words) {
            this.words = words;
        }

        /** {@return what is said in the place of a verdict} */
        public String words() {
            return words;
        }
    }

    /**
     * {@return a procedure that says nothing about where it is to be proved}
     *
     * @param procedure the procedure
     */
    public static Unjudged withoutPlace(Procedure procedure) {
        return new Unjudged("procedure", procedure.name(), Reason.NO_PLACE, ImmutableList.of(), procedure.span());
    }

    /**
     * {@return a procedure that could not be begun at a place; the mistakes that are told say why}
     *
     * @param one the procedure and the place
     */
    public static Unjudged refused(Instance one) {
        return new Unjudged("procedure", one.words(), Reason.REFUSED, ImmutableList.of(), one.procedure().span());
    }

    /** {@return why, in words} */
    public String because() {
        return switch (reason) {
            case MISTAKES -> String.join(" and ", files) + (files.size() == 1 ? " has mistakes" : " have mistakes");
            case REFUSED -> "it cannot be proved there; the errors say why";
            case NO_PLACE -> "it does not say what it is proved on; add a line such as: proved on NETWORK with R as DEVICE";
        };
    }
}
