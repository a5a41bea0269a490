package org.keeplit.verdict;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import org.keeplit.outcome.Finding;
import org.keeplit.procedure.Procedure;

/** Compares what a procedure says that it must fail on with what was found. */
final class Expected {
    private Expected() {}

    /**
     * How what was found differs from what was stated.
     *
     * @param missing what was stated and not found, in words
     * @param besides what was found and not stated, in words
     */
    record Differences(ImmutableList<String> missing, ImmutableList<String> besides) {
        static final Differences NONE = new Differences(ImmutableList.of(), ImmutableList.of());

        ImmutableList<String> all() {
            return ImmutableList.<String>builder().addAll(missing).addAll(besides).build();
        }

        /** {@return whether a run that was cut here may still have found what is missing} */
        boolean mayVanish() {
            return besides.isEmpty();
        }
    }

    /** {@return every difference; none if exactly the stated root breaks were found} */
    static Differences differences(List<Procedure.MustFail> stated, List<Finding> found) {
        ImmutableList.Builder<String> missing = ImmutableList.builder();
        ImmutableList.Builder<String> besides = ImmutableList.builder();
        List<Finding> left = new ArrayList<>(found);
        for (Procedure.MustFail must : stated) {
            boolean met = left.removeIf(f -> matches(must, f));
            if (!met) {
                missing.add("it does not fail on " + words(must));
            }
        }
        for (Finding finding : left) {
            besides.add("it also fails on " + words(finding));
        }
        return new Differences(missing.build(), besides.build());
    }

    /** {@return whether a finding is one of those that were stated} */
    static boolean matches(Procedure.MustFail must, Finding finding) {
        return names(must, finding)
                && (must.step().isEmpty() || must.step().get().equals(finding.step()))
                && (must.phase().isEmpty() || must.phase().equals(finding.phase()));
    }

    /** {@return whether it is the rule, or the sort of finding, that was stated, wherever} */
    static boolean names(Procedure.MustFail must, Finding finding) {
        return must.rule().equals(finding.name())
                && (must.rulebook().isEmpty() || must.rulebook().equals(finding.rulebook()));
    }

    /** {@return a break that must be found, as it was stated} */
    static String words(Procedure.MustFail must) {
        return must.rulebook().map(book -> book + "/").orElse("")
                + must.rule()
                + must.step().map(s -> " at " + s).orElse("")
                + must.phase().map(p -> " on phase " + p).orElse("");
    }

    /** {@return a finding as {@code must fail on} would state it} */
    static String words(Finding finding) {
        return finding.name()
                + (finding.step().isEmpty() ? "" : " at " + finding.step())
                + finding.phase().map(p -> " on phase " + p).orElse("");
    }
}
