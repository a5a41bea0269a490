package org.keeplit.plain;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.Predicate;

/** Makes a case on which the evaluators differ as small as it gets by leaving things out. */
final class Minimiser {
    private final Predicate<MadeCase> fails;

    private Minimiser(Predicate<MadeCase> fails) {
        this.fails = fails;
    }

    /** {@return the smallest case found on which they still differ} */
    static MadeCase smallest(MadeCase made, int most) {
        return smallest(made, c -> {
            try {
                return Comparison.of(c.read(), most).kind() == Comparison.Kind.DIFFERENT;
            } catch (IllegalArgumentException e) {
                return false;
            }
        });
    }

    static MadeCase smallest(MadeCase made, Predicate<MadeCase> fails) {
        return new Minimiser(fails).shrink(made);
    }

    private MadeCase shrink(MadeCase made) {
        MadeCase now = made;
        for (MadeCase before = null; before != now; ) {
            before = now;
            MadeCase c = now;
            c = fewer(c, c.rules(), (k, r) -> k.withRules(k.books(), r));
            c = fewer(c, c.books(), (k, b) -> k.withRules(b, k.rules()));
            c = fewer(c, c.ends(), (k, e) -> k.withEnds(k.header(), k.starts(), e));
            c = fewer(c, c.starts(), (k, s) -> k.withEnds(k.header(), s, k.ends()));
            c = fewer(c, c.header(), (k, h) -> k.withEnds(h, k.starts(), k.ends()));
            c = parts(c, c.parts(), c::withParts);
            c = fewer(c, c.elements(), MadeCase::withElements);
            now = c;
        }
        return now;
    }

    private interface With<T> {
        MadeCase with(MadeCase made, List<T> items);
    }

    private <T> MadeCase fewer(MadeCase made, List<T> items, With<T> with) {
        MadeCase now = made;
        List<T> left = new ArrayList<>(items);
        for (int i = left.size() - 1; i >= 0; i--) {
            List<T> less = new ArrayList<>(left);
            less.remove(i);
            MadeCase candidate = with.with(now, less);
            if (fails.test(candidate)) {
                now = candidate;
                left = less;
            }
        }
        return now;
    }

    private MadeCase parts(MadeCase made, List<Part> parts, Function<List<Part>, MadeCase> put) {
        MadeCase now = made;
        List<Part> left = new ArrayList<>(parts);
        for (int i = left.size() - 1; i >= 0; i--) {
            List<Part> less = new ArrayList<>(left);
            Part gone = less.remove(i);
            if (fails.test(put.apply(less))) {
                left = less;
                now = put.apply(left);
            } else if (gone instanceof Part.Group group) {
                List<Part> flat = new ArrayList<>(less);
                flat.addAll(i, group.parts());
                if (fails.test(put.apply(flat))) {
                    left = flat;
                    now = put.apply(left);
                } else {
                    int at = i;
                    List<Part> rest = left;
                    now = parts(now, group.parts(), inside -> {
                        List<Part> with = new ArrayList<>(rest);
                        with.set(at, Part.with(group, inside));
                        return put.apply(with);
                    });
                    left = new ArrayList<>(now.parts().size() == left.size() ? topOf(now, left) : left);
                }
            }
        }
        return now;
    }

    private static List<Part> topOf(MadeCase now, List<Part> otherwise) {
        return now.parts().size() == otherwise.size() ? now.parts() : otherwise;
    }
}
