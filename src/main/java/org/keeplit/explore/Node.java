package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.List;
import org.keeplit.condition.Truth;

/** A condition whose objects are all known, ready to be judged in a scene. Equal nodes mean the same question. */
interface Node {
    /** {@return whether it is so} @param scene where */
    Truth eval(Scene scene);

    /** Notes what it reads of a state. @param into takes the note */
    default void reads(Reads into) {
        into.everything();
    }

    /** It is always so, or never, or never known. */
    record Constant(Truth truth) implements Node {
        static final Constant TRUE = new Constant(Truth.TRUE);
        static final Constant FALSE = new Constant(Truth.FALSE);

        @Override
        public void reads(Reads into) {}

        @Override
        public Truth eval(Scene scene) {
            return truth;
        }
    }

    /** The opposite. */
    record Not(Node body) implements Node {
        @Override
        public void reads(Reads into) {
            body.reads(into);
        }

        @Override
        public Truth eval(Scene scene) {
            return body.eval(scene).not();
        }
    }

    /** All of them. */
    record All(ImmutableList<Node> parts) implements Node {
        @Override
        public void reads(Reads into) {
            parts.forEach(p -> p.reads(into));
        }

        @Override
        public Truth eval(Scene scene) {
            Truth all = Truth.TRUE;
            for (int i = 0; i < parts.size(); i++) {
                all = all.and(parts.get(i).eval(scene));
                if (all == Truth.FALSE) {
                    return all;
                }
            }
            return all;
        }
    }

    /** At least one of them. */
    record One(ImmutableList<Node> parts) implements Node {
        @Override
        public void reads(Reads into) {
            parts.forEach(p -> p.reads(into));
        }

        @Override
        public Truth eval(Scene scene) {
            Truth one = Truth.FALSE;
            for (int i = 0; i < parts.size(); i++) {
                one = one.or(parts.get(i).eval(scene));
                if (one == Truth.TRUE) {
                    return one;
                }
            }
            return one;
        }
    }

    /**
     * So many of them.
     *
     * @param parts what is counted; equal parts count each
     * @param least how many at least
     * @param most how many at most
     */
    record Count(ImmutableList<Node> parts, int least, int most) implements Node {
        /** {@return the count, settled at once where it can be} @param sure how many are so in any case */
        static Node of(int sure, List<Node> parts, int least, int most) {
            int fewest = Math.max(0, least - sure);
            int left = most == Integer.MAX_VALUE ? most : most - sure;
            if (fewest > parts.size() || left < 0) {
                return Constant.FALSE;
            }
            return fewest == 0 && left >= parts.size()
                    ? Constant.TRUE
                    : new Count(ImmutableList.copyOf(parts), fewest, left);
        }

        @Override
        public void reads(Reads into) {
            parts.forEach(p -> p.reads(into));
        }

        @Override
        public Truth eval(Scene scene) {
            int sure = 0;
            int possible = 0;
            for (Node part : parts) {
                Truth truth = part.eval(scene);
                sure += truth == Truth.TRUE ? 1 : 0;
                possible += truth == Truth.FALSE ? 0 : 1;
            }
            if (possible < least || sure > most) {
                return Truth.FALSE;
            }
            return sure >= least && possible <= most ? Truth.TRUE : Truth.UNKNOWN;
        }
    }

    /** {@return the opposite, as simple as it can be said} */
    static Node not(Node body) {
        if (body instanceof Constant constant) {
            return new Constant(constant.truth().not());
        }
        return body instanceof Not not ? not.body() : new Not(body);
    }

    /** {@return all of them, as simple as it can be said} */
    static Node all(Iterable<Node> parts) {
        ImmutableList.Builder<Node> rest = ImmutableList.builder();
        for (Node part : parts) {
            if (part.equals(Constant.FALSE)) {
                return part;
            } else if (part instanceof All nested) {
                rest.addAll(nested.parts());
            } else if (!part.equals(Constant.TRUE)) {
                rest.add(part);
            }
        }
        ImmutableList<Node> left = distinct(rest.build());
        return left.isEmpty() ? Constant.TRUE : left.size() == 1 ? left.get(0) : new All(left);
    }

    /** {@return at least one of them, as simple as it can be said} */
    static Node one(Iterable<Node> parts) {
        ImmutableList.Builder<Node> rest = ImmutableList.builder();
        for (Node part : parts) {
            if (part.equals(Constant.TRUE)) {
                return part;
            } else if (part instanceof One nested) {
                rest.addAll(nested.parts());
            } else if (!part.equals(Constant.FALSE)) {
                rest.add(part);
            }
        }
        ImmutableList<Node> left = distinct(rest.build());
        return left.isEmpty() ? Constant.FALSE : left.size() == 1 ? left.get(0) : new One(left);
    }

    private static ImmutableList<Node> distinct(ImmutableList<Node> parts) {
        return parts.size() < 2 ? parts : ImmutableSet.copyOf(parts).asList();
    }
}
