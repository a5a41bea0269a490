package org.keeplit.drill;

import com.google.common.collect.ImmutableList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.keeplit.explore.Stepper;
import org.keeplit.procedure.Block;
import org.keeplit.program.Act;

/** What helps to choose, in the words of the text. */
final class Hints {
    private Hints() {}

    /** {@return hints for a place} @param acts the acts of the step that the text has next @param options all that may be picked */
    static ImmutableList<String> of(List<Act> acts, List<Drill.Option> options) {
        Set<String> all = new LinkedHashSet<>();
        long right = options.stream().filter(Drill.Option::isRight).count();
        all.add(right == 1 ? "One of these is right." : right + " of these are right.");
        for (Act act : acts) {
            Block.Step step = act.step();
            step.because().ifPresent(all::add);
            step.cautions().forEach(all::add);
            step.requires().forEach(c -> all.add("Before it must be so: " + Stepper.words(c)));
            step.expects().forEach(c -> all.add("After it should be so: " + Stepper.words(c)));
        }
        all.add("It is for " + String.join(" and ", new LinkedHashSet<>(acts.stream().map(Act::actor).toList())) + ".");
        return ImmutableList.copyOf(all);
    }
}
