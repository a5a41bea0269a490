package org.keeplit.explore;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.keeplit.condition.Truth;

/** Kleene's three values in the compiled form of conditions: tables from the definition, and counts by hand. */
class NodeTest {
    private static final Truth T = Truth.TRUE;
    private static final Truth F = Truth.FALSE;
    private static final Truth U = Truth.UNKNOWN;

    /** A question that is settled only in a scene, so that nothing is simplified away; each is equal to itself only. */
    private static Node asked(Truth truth) {
        return new Node() {
            @Override
            public Truth eval(Scene scene) {
                return truth;
            }
        };
    }

    private static Truth all(Truth... parts) {
        return Node.all(asked(parts)).eval(null);
    }

    private static Truth one(Truth... parts) {
        return Node.one(asked(parts)).eval(null);
    }

    private static List<Node> asked(Truth... parts) {
        return List.of(parts).stream().map(NodeTest::asked).toList();
    }

    private static Truth count(int sure, int least, int most, Truth... parts) {
        return Node.Count.of(sure, asked(parts), least, most).eval(null);
    }

    @Test
    void all_of_them_is_the_least_of_their_values() {
        for (Truth[] row : new Truth[][] {{T, T, T}, {T, U, U}, {U, T, U}, {U, U, U}, {F, U, F}, {U, F, F}, {F, T, F}, {T, F, F}, {F, F, F}}) {
            assertEquals(row[2], all(row[0], row[1]), row[0] + " and " + row[1]);
        }
        assertEquals(F, all(T, U, F));
        assertEquals(T, Node.all(List.of()).eval(null));
    }

    @Test
    void one_of_them_is_the_greatest_of_their_values() {
        for (Truth[] row : new Truth[][] {{T, T, T}, {T, U, T}, {U, T, T}, {U, U, U}, {F, U, U}, {U, F, U}, {F, T, T}, {T, F, T}, {F, F, F}}) {
            assertEquals(row[2], one(row[0], row[1]), row[0] + " or " + row[1]);
        }
        assertEquals(T, one(F, U, T));
        assertEquals(F, Node.one(List.of()).eval(null));
    }

    @Test
    void what_is_denied_twice_is_itself() {
        Node node = asked(U);
        assertEquals(node, Node.not(Node.not(node)));
        assertEquals(U, Node.not(node).eval(null));
        assertEquals(F, Node.not(asked(T)).eval(null));
        assertEquals(Node.Constant.FALSE, Node.not(Node.Constant.TRUE));
        assertEquals(Node.Constant.TRUE, Node.not(Node.Constant.FALSE));
    }

    @Test
    void what_is_settled_falls_away() {
        Node node = asked(U);
        Node other = asked(U);
        assertEquals(node, Node.all(List.of(Node.Constant.TRUE, node, node)));
        assertEquals(Node.Constant.FALSE, Node.all(List.of(node, Node.Constant.FALSE)));
        assertEquals(node, Node.one(List.of(Node.Constant.FALSE, node, node)));
        assertEquals(Node.Constant.TRUE, Node.one(List.of(node, Node.Constant.TRUE)));
        // What is never known is neither: it stays, and holds neither truth nor falsehood.
        Node never = new Node.Constant(U);
        assertEquals(U, Node.all(List.of(never, asked(T))).eval(null));
        assertEquals(U, Node.one(List.of(never, asked(F))).eval(null));
        // One of one inside another is one level.
        assertEquals(Node.all(List.of(node, other)), Node.all(List.of(Node.all(List.of(node, other)), node)));
        assertEquals(Node.one(List.of(node, other)), Node.one(List.of(Node.one(List.of(node, other)), node)));
    }

    @Test
    void a_count_is_so_if_every_count_in_between_fits() {
        // At least two.
        int most = Integer.MAX_VALUE;
        assertEquals(T, count(0, 2, most, T, T, F));
        assertEquals(T, count(0, 2, most, T, T, U));
        assertEquals(U, count(0, 2, most, T, U, F));
        assertEquals(F, count(0, 2, most, T, F, F));
        // At most one.
        assertEquals(T, count(0, 0, 1, T, F, F));
        assertEquals(U, count(0, 0, 1, T, U, F));
        assertEquals(F, count(0, 0, 1, T, T, U));
        // Exactly one.
        assertEquals(T, count(0, 1, 1, T, F, F));
        assertEquals(U, count(0, 1, 1, U, F, F));
        assertEquals(U, count(0, 1, 1, T, U, F));
        assertEquals(F, count(0, 1, 1, F, F, F));
        assertEquals(F, count(0, 1, 1, T, T, U));
    }

    @Test
    void those_that_are_so_in_any_case_are_counted_beforehand() {
        assertEquals(U, count(1, 2, Integer.MAX_VALUE, U, F));
        assertEquals(T, count(1, 2, Integer.MAX_VALUE, T, F));
        assertEquals(F, count(1, 2, Integer.MAX_VALUE, F, F));
        assertEquals(T, count(1, 0, 2, T, F));
        assertEquals(F, count(1, 0, 2, T, T));
        // No more than those: none of the others.
        assertEquals(T, count(1, 0, 1, F, F));
        assertEquals(F, count(1, 0, 1, T, F));
        assertEquals(U, count(1, 1, 1, U, F));
        assertEquals(Node.Constant.TRUE, Node.Count.of(2, List.of(asked(U)), 2, Integer.MAX_VALUE));
        assertEquals(Node.Constant.TRUE, Node.Count.of(1, List.of(asked(U)), 0, 2));
        assertEquals(Node.Constant.FALSE, Node.Count.of(0, List.of(asked(U)), 2, Integer.MAX_VALUE));
        assertEquals(Node.Constant.FALSE, Node.Count.of(2, List.of(asked(U)), 0, 1));
        assertEquals(Node.Constant.FALSE, Node.Count.of(1, List.of(), 2, 2));
        assertEquals(U, Node.Count.of(0, List.of(asked(U)), 1, 1).eval(null));
    }

    /** Of questions that ask the same one is left, so what counts as the same decides what is judged. */
    @Test
    void questions_about_different_places_are_different() {
        assertEquals(2, ((Node.All) Node.all(List.of(new Nodes.Shorted(1, 5), new Nodes.Shorted(2, 6)))).parts().size());
        assertEquals(new Nodes.Shorted(1, 5), Node.all(List.of(new Nodes.Shorted(1, 5), new Nodes.Shorted(2, 5))));
    }
}
