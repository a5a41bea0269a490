package org.keeplit.explore;

import java.util.Optional;
import org.keeplit.network.Conductor;
import org.keeplit.program.Act;

/** Says what went wrong. */
final class BreakWords {
    private BreakWords() {}

    /** {@return what went wrong, in the rule's or the writer's words} @param scene looks at the state in which it was judged */
    static String sentence(Explaining explaining, Judging.Break broken, Optional<Act> act, Scene scene) {
        String who = act.map(a -> a.actor() + " " + a.text()).orElse("");
        return switch (broken.kind()) {
            case RULE -> explaining.fill(broken.instance().rule().says(), broken.environment(), scene);
            case REQUIREMENT -> "what this step requires is not so: " + who;
            case STOP -> "the crew stops, because it is not so: " + who;
            case CANNOT -> "this cannot be done: " + who;
            case EXPECTATION -> "what is expected after this step is not so: " + who;
            case ENDING -> "what must hold at the end does not";
            case FLASH -> "two voltages, or a voltage and a ground, meet: " + who;
            case STUCK -> "somebody waits for what never comes: " + who;
        };
    }

    /** {@return the phase that the rule's variables name, or the one that the act is done on} */
    static Optional<Conductor> phase(Judging.Break broken, Optional<Act> act) {
        return broken.environment().phase().or(() -> act.flatMap(Act::phase));
    }
}
