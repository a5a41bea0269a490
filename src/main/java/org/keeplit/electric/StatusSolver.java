package org.keeplit.electric;

import java.util.Arrays;
import java.util.BitSet;
import org.keeplit.network.Connection;

/** Finds what connectivity says of a set of closed contacts. */
final class StatusSolver {
    private static final byte DEAD = (byte) Level.DEAD.ordinal();
    private static final byte MAY_BE = (byte) Level.MAY_BE.ordinal();
    private static final byte BACKFED = (byte) Level.BACKFED.ordinal();
    private static final byte ENERGIZED = (byte) Level.ENERGIZED.ordinal();

    /** How far one phase lags the one before it on the clock. */
    private static final int PHASE_HOURS = 4;

    private final Cells cells;
    private final int[] component;
    private final byte[] level;
    private final int[] identity;
    private final boolean[] tied;
    private boolean clash;
    private boolean changed;

    private StatusSolver(Cells cells, UnionFind union) {
        this.cells = cells;
        this.component = union.numbered();
        int count = union.count();
        this.level = new byte[count];
        this.identity = new int[count];
        Arrays.fill(identity, Status.NONE);
        this.tied = new boolean[count];
    }

    /**
     * Solves.
     *
     * @param cells the cells
     * @param closed which of {@link Cells#kept} are closed
     * @return what follows
     */
    static Status solve(Cells cells, BitSet closed) {
        UnionFind union = new UnionFind(cells.count());
        for (int i = closed.nextSetBit(0); i >= 0; i = closed.nextSetBit(i + 1)) {
            union.join(cells.keptFrom[i], cells.keptTo[i]);
        }
        StatusSolver solver = new StatusSolver(cells, union);
        solver.seed();
        do {
            solver.changed = false;
            solver.spread();
        } while (solver.changed);
        return new Status(solver.component, solver.level, solver.identity, solver.tied, solver.clash);
    }

    private void seed() {
        tied[component[cells.cell(0)]] = true;
        for (int cell = 0; cell < cells.count(); cell++) {
            if (cells.source[cell] != Status.NONE) {
                energize(component[cell], cells.source[cell]);
            }
            if (cells.generator[cell]) {
                raise(component[cell], MAY_BE);
            }
        }
    }

    private void energize(int at, int by) {
        if (level[at] != ENERGIZED) {
            level[at] = ENERGIZED;
            changed = true;
        }
        if (identity[at] == Status.NONE) {
            identity[at] = by;
            changed = true;
        } else if (identity[at] != by && identity[at] != Status.CLASH) {
            identity[at] = Status.CLASH;
            changed = true;
        }
        clash |= identity[at] == Status.CLASH || tied[at];
    }

    /** Lifts a component that no source energizes; a ground on it holds what is weaker than a source at zero. */
    private void raise(int at, byte to) {
        if (level[at] < to && !tied[at]) {
            level[at] = to;
            changed = true;
        }
    }

    private void spread() {
        for (int[] pair : cells.soft) {
            couple(component[pair[0]], component[pair[1]]);
        }
        for (Coupler coupler : cells.couplers) {
            supply(coupler);
            for (int w = 0; w < coupler.primary().length; w++) {
                backfeed(coupler.primary()[w], coupler.secondary()[Math.min(w, coupler.secondary().length - 1)]);
            }
        }
    }

    private void couple(int one, int other) {
        raise(other, coupled(level[one]));
        raise(one, coupled(level[other]));
    }

    private static byte coupled(byte level) {
        return level == ENERGIZED ? BACKFED : level;
    }

    /** A bank whose primary windings are wholly energized supplies its secondary, turned by its clock. */
    private void supply(Coupler coupler) {
        int windings = coupler.primary().length;
        boolean[] full = new boolean[windings];
        boolean all = true;
        for (int w = 0; w < windings; w++) {
            full[w] = isEnergized(coupler.primary()[w]);
            all &= full[w];
        }
        boolean needsAll = switch (coupler.transformer().primary()) {
            case GROUNDED_WYE -> false;
            case WYE -> true;
            case DELTA -> coupler.transformer().secondary() == Connection.DELTA;
        };
        if (needsAll && !all) {
            return;
        }
        for (int i = 0; i < coupler.to().length; i++) {
            if (coupler.isWindingByWinding() ? full[i] : all) {
                // A coil between the other two phases takes its angle from them, whatever its own phase does.
                int own = coupler.from()[coupler.base()[i]];
                int end = coupler.isWindingByWinding() ? coupler.primary()[i][0] : own;
                int ahead = end == own ? -coupler.hours()[i] : PHASE_HOURS;
                int by = identity[component[end]];
                if (by != Status.NONE && by != Status.CLASH) {
                    energize(
                            component[coupler.to()[i]],
                            Identities.turned(by, coupler.transformer().clock() - ahead));
                }
            }
        }
    }

    /** {@return whether every end of a winding that is not earth is energized; a star point needs no source} */
    private boolean isEnergized(int[] winding) {
        for (int end : winding) {
            if (end >= 0 && !isStar(end) && level[component[end]] != ENERGIZED) {
                return false;
            }
        }
        return true;
    }

    private boolean isStar(int cell) {
        // Star points have the last vertex numbers and are never drawn together with anything.
        return cell >= cells.count() - (cells.grid().vertexCount() - cells.grid().vertices().size());
    }

    private void backfeed(int[] primary, int[] secondary) {
        byte most = DEAD;
        for (int end : primary) {
            most = end < 0 ? most : (byte) Math.max(most, coupled(level[component[end]]));
        }
        for (int end : secondary) {
            most = end < 0 ? most : (byte) Math.max(most, coupled(level[component[end]]));
        }
        for (int end : primary) {
            if (end >= 0) {
                raise(component[end], most);
            }
        }
        for (int end : secondary) {
            if (end >= 0) {
                raise(component[end], most);
            }
        }
    }
}
