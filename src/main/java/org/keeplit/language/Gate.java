package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import java.util.LinkedHashSet;
import java.util.Set;
import org.keeplit.procedure.Unjudged;
import org.keeplit.text.Problem;

/**
 * The gate before every verdict: what reads a file with a mistake anywhere in it is not judged. A mistake may have swallowed anything.
 */
final class Gate {
    private Gate() {}

    /** {@return what stands in the given files and cannot be judged, in their order} */
    static ImmutableList<Unjudged> unjudged(Shelf shelf, Session session) {
        ImmutableList.Builder<Unjudged> all = ImmutableList.builder();
        // What a library file that cannot be read says is not known, so anything may depend on it.
        Set<String> unreadable = new LinkedHashSet<>();
        shelf.problems().stream()
                .filter(p -> p.severity() == Problem.Severity.ERROR)
                .forEach(p -> unreadable.add(p.span().source().name()));
        for (Draft draft : shelf.given()) {
            for (Item item : draft.items()) {
                boolean isJudged = item.kind() == FileKind.PROCEDURE || item.kind() == FileKind.EXAMPLES;
                Set<String> faulty = isJudged ? faulty(session.allNeeded(item)) : new LinkedHashSet<>();
                if (isJudged) {
                    faulty.addAll(unreadable);
                }
                if (!faulty.isEmpty()) {
                    String kind = item.isVariant() ? "variant" : item.kind().word();
                    all.add(new Unjudged(
                            kind, item.name().value(), Unjudged.Reason.MISTAKES, ImmutableList.copyOf(faulty), item.name().span()));
                }
            }
        }
        return all.build();
    }

    private static Set<String> faulty(Set<Item> items) {
        Set<String> all = new LinkedHashSet<>();
        for (Item item : items) {
            if (item.report().errors() > 0) {
                all.add(item.report().source().name());
            }
        }
        return all;
    }
}
