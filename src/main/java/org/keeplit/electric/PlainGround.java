package org.keeplit.electric;

import java.util.Arrays;
import java.util.BitSet;

/** Which vertices plain conductor joins to an applied ground. */
final class PlainGround {
    private PlainGround() {}

    /** {@return a status over vertices in which only the grounds mean anything} */
    static Status solve(Grid grid, BitSet closed, Cells whole) {
        UnionFind union = new UnionFind(grid.vertexCount());
        for (Grid.Wire wire : grid.wires()) {
            if (wire.plain()) {
                union.join(wire.a(), wire.b());
            }
        }
        for (Contact contact : grid.contacts()) {
            if (contact.isPlain() && closed.get(whole.index(contact.id()))) {
                union.join(contact.a(), contact.b());
            }
        }
        int[] component = union.numbered();
        boolean[] tied = new boolean[union.count()];
        tied[component[0]] = true;
        int[] none = new int[tied.length];
        Arrays.fill(none, Status.NONE);
        return new Status(component, new byte[tied.length], none, tied, false);
    }
}
