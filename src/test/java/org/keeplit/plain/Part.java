package org.keeplit.plain;

import java.util.ArrayList;
import java.util.List;

/** A part of a made procedure. */
sealed interface Part {
    /** A step. @param sentence the step @param clauses the lines below it */
    record Step(String sentence, List<String> clauses) implements Part {}

    /** A group. @param head its line @param parts what is inside @param otherwise the other way, null for none */
    record Group(String head, List<Part> parts, List<Part> otherwise) implements Part {}

    static Part step(String sentence) {
        return new Step(sentence, List.of());
    }

    static Part step(String sentence, String clause) {
        return new Step(sentence, List.of(clause));
    }

    static Part group(String head, List<Part> parts) {
        return new Group(head, List.copyOf(parts), null);
    }

    static Part group(String head, Part... parts) {
        return new Group(head, List.of(parts), null);
    }

    /** {@return the lines of the text} */
    default List<String> lines() {
        List<String> all = new ArrayList<>();
        if (this instanceof Step step) {
            all.add(step.sentence());
            all.addAll(step.clauses());
        } else if (this instanceof Group group) {
            all.add(group.head());
            group.parts().forEach(p -> all.addAll(p.lines()));
            if (group.otherwise() != null) {
                all.add("otherwise");
                group.otherwise().forEach(p -> all.addAll(p.lines()));
            }
            all.add("end");
        }
        return all;
    }

    /** {@return the same with other parts inside} */
    static Group with(Group group, List<Part> parts) {
        return new Group(group.head(), List.copyOf(parts), group.otherwise());
    }
}
