package org.keeplit.procedure;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.Optional;
import org.keeplit.condition.Condition;
import org.keeplit.text.Span;

/**
 * A small procedure that shows what a rule asks: it keeps it, or breaks it for a stated reason.
 *
 * @param procedure the procedure; its name and title are the example's title, and what it must fail on is said there too
 * @param of the names of the rules that it is about; empty for all of the rulebooks
 * @param breaks what it must break, and why; empty for an example that must hold
 */
public record Example(Procedure procedure, ImmutableList<String> of, ImmutableList<Breaks> breaks) {

    /**
     * A root break that must be found, with its reason.
     *
     * @param what the rule, the step and the phase
     * @param bindings what variables of the rule stand for, as findings name it
     * @param because what is so where the rule is judged, said with the rule's variables
     * @param says the sentence that the rule says, word by word
     */
    public record Breaks(
            Procedure.MustFail what,
            ImmutableMap<String, String> bindings,
            ImmutableList<Condition> because,
            Optional<String> says) {}

    /** {@return what it is called} */
    public String title() {
        return procedure.name();
    }

    /** {@return whether it must hold} */
    public boolean mustHold() {
        return breaks.isEmpty();
    }

    /** {@return where it was written} */
    public Span span() {
        return procedure.span();
    }
}
