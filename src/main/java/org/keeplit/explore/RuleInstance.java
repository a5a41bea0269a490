package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.stream.Collectors;
import org.keeplit.condition.Truth;
import org.keeplit.rule.Rule;

/**
 * A rule with its variables bound.
 *
 * @param number the rule's number in the run
 * @param rule the rule
 * @param moment what is so in the state that an act leaves where that act brings it up; always so, unless it is judged after acts
 * @param scope when it is judged
 * @param excuse what excuses; never, if the rule has no {@code unless}
 * @param body what is required
 * @param environments what its variables stand for; more than one where the model cannot tell them apart
 */
record RuleInstance(
        int number,
        Rule rule,
        Node moment,
        Node scope,
        Node excuse,
        Node body,
        ImmutableList<Environment> environments) {

    /** {@return whether it asks for something that must come before the end} */
    boolean isDuty() {
        return rule.form() == Rule.Form.EVENTUALLY;
    }

    /** Notes what it reads of a state. @param into takes the note */
    void reads(Reads into) {
        moment.reads(into);
        scope.reads(into);
        excuse.reads(into);
        body.reads(into);
    }

    /** {@return what its variables stand for, those of each phase by themselves} */
    Collection<ImmutableList<Environment>> byPhase() {
        if (environments.size() == 1) {
            return List.of(environments);
        }
        return environments.stream()
                .collect(Collectors.groupingBy(
                        Environment::phase, LinkedHashMap::new, ImmutableList.<Environment>toImmutableList()))
                .values();
    }

    /** {@return whether its case has come up} */
    boolean isExercised(Scene scene) {
        return scope.eval(scene) == Truth.TRUE && excuse.eval(scene) != Truth.TRUE;
    }

    /** {@return whether it is kept; unknown if that cannot be shown} */
    Truth judge(Scene scene) {
        Truth outside = scope.eval(scene).not();
        if (outside == Truth.TRUE) {
            return outside;
        }
        return outside.or(body.eval(scene)).or(excuse.eval(scene));
    }
}
