package org.keeplit.language;

import java.util.List;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Term;
import org.keeplit.network.Element;
import org.keeplit.network.Phases;
import org.keeplit.network.Side;
import org.keeplit.text.Span;

/** Finds questions about a phase that the thing asked does not have, where the text names both. */
final class PhaseCheck {
    private PhaseCheck() {}

    /**
     * Checks one question.
     *
     * @param of what is asked
     * @param phase on which phases
     * @param on where these stand
     * @param scope tells the elements of the networks
     * @throws Misread if no network has an element of that name with one of the phases
     */
    static void check(Term of, PhaseTerm phase, Span on, Scope scope) {
        if (!(phase instanceof PhaseTerm.Given given)) {
            return;
        }
        Term named = of;
        boolean loadSide = false;
        if (of instanceof Term.LineOf line) {
            named = line.of();
            loadSide = line.side() == Side.LOAD;
        } else if (of instanceof Term.LeadOf lead) {
            named = lead.of();
        } else if (of instanceof Term.BushingOf bushing) {
            named = bushing.of();
        }
        if (!(named instanceof Term.Name name)) {
            return;
        }
        boolean far = loadSide;
        List<Phases> there = scope.networks().stream()
                .flatMap(n -> n.element(name.name()).stream())
                .map(e -> far && e instanceof Element.Transformer t ? t.secondaryPhases() : e.phases())
                .toList();
        if (!there.isEmpty() && there.stream().allMatch(p -> p.and(given.phases()).isEmpty())) {
            throw new Misread(Code.WRONG_BUILD.at(
                    on, name.name() + " has no phase " + given.phases() + ": it has " + there.get(0)));
        }
    }
}
