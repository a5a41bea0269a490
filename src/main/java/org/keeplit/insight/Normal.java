package org.keeplit.insight;

import java.util.ArrayList;
import java.util.List;
import org.keeplit.explore.Stepper;
import org.keeplit.program.Act;
import org.keeplit.program.Field;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Program;

/**
 * The normal state: everything stands as at the start, nothing temporary is there that was not there then, nobody is up there, nobody
 * holds anything, and no rule about the end is broken unless it was at the start.
 */
final class Normal implements Goal {
    private final Stepper stepper;
    private final List<Field> things = new ArrayList<>();
    private final List<Field> others = new ArrayList<>();
    private final int most;
    private final boolean ends;

    Normal(Stepper stepper) {
        this.stepper = stepper;
        Program program = stepper.program();
        for (Field field : program.layout().fields()) {
            if (isThing(field.key())) {
                things.add(field);
            } else if (isOther(field.key())) {
                others.add(field);
            }
        }
        // Where what is to be put back was out when the crew came, the way back leads to where they found it.
        this.ends = stepper.keepsRulesAtEnd(stepper.start());
        int best = 1;
        for (Act act : program.acts()) {
            best = Math.max(best, changes(act));
        }
        this.most = best;
    }

    static boolean isThing(FieldKey key) {
        return key instanceof FieldKey.Pole
                || key instanceof FieldKey.End
                || key instanceof FieldKey.Clamp
                || key instanceof FieldKey.Placed;
    }

    static boolean isOther(FieldKey key) {
        return key instanceof FieldKey.Mode
                || key instanceof FieldKey.Tagged
                || key instanceof FieldKey.Where
                || key instanceof FieldKey.Permitted;
    }

    private int changes(Act act) {
        long[] writes = stepper.writes(act.id());
        return (int) things.stream().filter(f -> touches(writes, f)).count()
                + (int) others.stream().filter(f -> touches(writes, f)).count();
    }

    static boolean touches(long[] bits, Field field) {
        long[] mine = new long[bits.length];
        field.mark(mine);
        return (bits[field.word()] & mine[field.word()]) != 0;
    }

    @Override
    public int far(long[] state) {
        return count(things, state);
    }

    @Override
    public int rest(long[] state) {
        return count(others, state);
    }

    private static int count(List<Field> fields, long[] state) {
        int count = 0;
        for (int i = 0; i < fields.size(); i++) {
            Field field = fields.get(i);
            int value = field.get(state);
            boolean given = field.key() instanceof FieldKey.Permitted && value == FieldKey.Permitted.RELEASED;
            count += value == field.initial() || given ? 0 : 1;
        }
        return count;
    }

    @Override
    public int atLeast(long[] state) {
        return (far(state) + rest(state) + most - 1) / most;
    }

    @Override
    public boolean isReached(long[] state) {
        return far(state) == 0 && rest(state) == 0 && (!ends || stepper.keepsRulesAtEnd(state));
    }
}
