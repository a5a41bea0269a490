package org.keeplit.verdict;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import org.keeplit.explore.Finding;
import org.keeplit.procedure.Procedure;

/** Compares what a procedure says that it must fail on with what was found. */
final class Expected {
    private Expected() {}

    /** {@return every difference, in words; none if exactly the stated root breaks were found} */
    static ImmutableList<String> differences(List<Procedure.MustFail> stated, List<Finding> found) {
        ImmutableList.Builder<String> all = ImmutableList.builder();
        List<Finding> left = new ArrayList<>(found);
        for (Procedure.MustFail must : stated) {
            boolean met = left.removeIf(f -> matches(must, f));
            if (!met) {
                all.add("it does not fail on " + words(must));
            }
        }
        for (Finding finding : left) {
            all.add("it also fails on " + words(finding));
        }
        return all.build();
    }

    private static boolean matches(Procedure.MustFail must, Finding finding) {
        return must.rule().equals(finding.name())
                && (must.step().isEmpty() || must.step().get().equals(finding.step()))
                && (must.phase().isEmpty() || must.phase().equals(finding.phase()));
    }

    /** {@return a break that must be found, as it was stated} */
    static String words(Procedure.MustFail must) {
        return must.rule()
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
