package org.keeplit.outcome;

import java.util.Optional;
import java.util.function.Supplier;
import org.keeplit.network.Conductor;
import org.keeplit.rule.Rule;

/**
 * What is wrong with an act, or with the end of a procedure.
 *
 * @param kind what sort of thing
 * @param rule the rule, for a broken rule
 * @param unknown whether it is not known to be so, but cannot be shown not to be
 * @param told tells what goes wrong, in words, when it is first asked for
 * @param step the name of the step at which it comes up; empty at the end
 * @param phase the phase, if the binding or the act has one
 */
public record Harm(
        Finding.Kind kind,
        Optional<Rule> rule,
        boolean unknown,
        Supplier<String> told,
        String step,
        Optional<Conductor> phase) {

    /** {@return what goes wrong, in words} */
    public String sentence() {
        return told.get();
    }

    /** {@return the name under which reports know it: the rule's, or the kind's word} */
    public String name() {
        return rule.map(Rule::name).orElse(kind.word());
    }
}
