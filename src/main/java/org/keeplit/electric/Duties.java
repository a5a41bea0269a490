package org.keeplit.electric;

import java.util.function.Supplier;
import org.keeplit.network.ClosingDuty;
import org.keeplit.network.OpeningDuty;

/**
 * The decision table for what opening and closing ask of a contact. The first line that fits counts.
 *
 * <p>Opening a closed contact:
 * <ol>
 *   <li>the place is short-circuited: fault break;
 *   <li>nothing is or may be alive there: nothing, unless a ground holds down what is backfed without it: load break;
 *   <li>both sides stay as alive as before: parallel break, unless they are backfed and come apart: load break;
 *   <li>else by the heaviest thing on what becomes less alive: load, capacitor bank, transformer, cable, line, or
 *       only bushing, lead and jumper.
 * </ol>
 *
 * <p>Closing an open contact:
 * <ol>
 *   <li>one side alive (or it may be) and the other tied to a ground: onto a ground;
 *   <li>both sides joined already: parallel make if alive, else nothing;
 *   <li>both dead: nothing;
 *   <li>both energized by sources: joining two supplies if those differ, cross-phase if phase or angle differ,
 *       else parallel make, unless two voltages then meet elsewhere, which is cross-phase too;
 *   <li>a generator may run on one side and the other is alive or may be too: joining two supplies;
 *   <li>two voltages then meet elsewhere: cross-phase;
 *   <li>else energizing load if load comes alive with it, and energizing if not.
 * </ol>
 */
final class Duties {
    private Duties() {}

    static OpeningDuty opening(Cells cells, Analysis now, Contact contact, Supplier<Analysis> opened) {
        if (!now.isClosed(contact)) {
            return OpeningDuty.NOTHING;
        }
        if (now.shorted(contact.a())) {
            return OpeningDuty.FAULT;
        }
        Level before = now.level(contact.a());
        if (before == Level.DEAD && !now.tiedToGround(contact.a())) {
            return OpeningDuty.NOTHING;
        }
        Analysis then = opened.get();
        Level a = then.level(contact.a());
        Level b = then.level(contact.b());
        if (before == Level.DEAD) {
            // A ground holds down what a coil or a load between phases feeds: the current goes to earth through here.
            return a.max(b).isAlive() ? OpeningDuty.LOAD : OpeningDuty.NOTHING;
        }
        if (a == before && b == before) {
            // What is fed backwards from two sides does not stand at one voltage.
            boolean apart = before == Level.BACKFED
                    && !then.status().joined(then.cells().cell(contact.a()), then.cells().cell(contact.b()));
            return apart ? OpeningDuty.LOAD : OpeningDuty.PARALLEL;
        }
        return heaviest(lost(cells, now, then));
    }

    /** {@return what hangs on the cells that become less alive, as bits of duties} */
    private static int lost(Cells cells, Analysis now, Analysis then) {
        int content = 0;
        if (then.cells() == cells && now.cells() == cells) {
            for (int cell = 0; cell < cells.count(); cell++) {
                if (then.status().level(cell).compareTo(now.status().level(cell)) < 0) {
                    content |= cells.content[cell];
                }
            }
            return content;
        }
        // What nothing moves is asked on the whole grid, which has cells of its own: compare by vertex.
        Cells fine = then.cells() == cells ? now.cells() : then.cells();
        for (int vertex = 0; vertex < cells.grid().vertexCount(); vertex++) {
            if (then.level(vertex).compareTo(now.level(vertex)) < 0) {
                content |= fine.content[fine.cell(vertex)];
            }
        }
        return content;
    }

    private static OpeningDuty heaviest(int content) {
        OpeningDuty[] byWeight = {
            OpeningDuty.LOAD, OpeningDuty.CAPACITOR, OpeningDuty.TRANSFORMER, OpeningDuty.CABLE, OpeningDuty.LINE
        };
        for (OpeningDuty duty : byWeight) {
            if ((content & 1 << duty.ordinal()) != 0) {
                return duty;
            }
        }
        return OpeningDuty.BUSHING;
    }

    static ClosingDuty closing(Cells cells, Analysis now, Contact contact, Supplier<Analysis> closed) {
        if (now.isClosed(contact)) {
            return ClosingDuty.NOTHING;
        }
        Level a = now.level(contact.a());
        Level b = now.level(contact.b());
        boolean live = a != Level.DEAD || b != Level.DEAD;
        if (live && (now.tiedToGround(contact.a()) || now.tiedToGround(contact.b()))) {
            return ClosingDuty.GROUND;
        }
        if (!live) {
            return ClosingDuty.NOTHING;
        }
        int one = cells.cell(contact.a());
        int other = cells.cell(contact.b());
        if (now.status().joined(one, other)) {
            return ClosingDuty.PARALLEL;
        }
        if (a == Level.ENERGIZED && b == Level.ENERGIZED) {
            int left = now.status().identity(one);
            int right = now.status().identity(other);
            if (left != right) {
                boolean same = left >= 0 && right >= 0 && Identities.sameSupply(left, right);
                return same ? ClosingDuty.CROSS : ClosingDuty.JOIN;
            }
            return meetsElsewhere(now, closed.get()) ? ClosingDuty.CROSS : ClosingDuty.PARALLEL;
        }
        if (a == Level.MAY_BE && b != Level.DEAD || b == Level.MAY_BE && a != Level.DEAD) {
            return ClosingDuty.JOIN;
        }
        if (meetsElsewhere(now, closed.get())) {
            return ClosingDuty.CROSS;
        }
        // What comes alive by closing is what would be lost by opening again.
        boolean load = (lost(cells, closed.get(), now) & 1 << OpeningDuty.LOAD.ordinal()) != 0;
        return load ? ClosingDuty.PICKUP : ClosingDuty.ENERGIZE;
    }

    private static boolean meetsElsewhere(Analysis now, Analysis then) {
        return then.status().shortedAnywhere() && !now.status().shortedAnywhere();
    }
}
