package org.keeplit.insight;

import java.util.ArrayList;
import java.util.List;
import org.keeplit.explore.Stepper;
import org.keeplit.program.Act;
import org.keeplit.program.Field;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Program;
import org.keeplit.program.StartValues;

/**
 * Back to normal: everything stands as the network normally does, nothing temporary is there, nobody is up there, nobody holds anything, and
 * no rule about the end is broken. Where the procedure begins otherwise, back to where it began is as good.
 */
final class Normal implements Goal {
    private final Stepper stepper;
    private final List<Field> things = new ArrayList<>();
    private final List<Field> others = new ArrayList<>();
    private final StartValues network;
    private final int most;
    private final boolean ends;

    Normal(Stepper stepper) {
        this.stepper = stepper;
        Program program = stepper.program();
        this.network = StartValues.ofNetwork(program.bound());
        for (Field field : program.layout().fields()) {
            if (isThing(field.key())) {
                things.add(field);
            } else if (isOther(field.key())) {
                others.add(field);
            }
        }
        this.ends = stepper.brokenAtEnd(stepper.start()) == 0;
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
        return Math.min(count(things, state, true), count(things, state, false));
    }

    @Override
    public int rest(long[] state) {
        return Math.min(count(others, state, true), count(others, state, false));
    }

    /** {@return how many fields are not as at the start, or not as the network normally is} */
    private int count(List<Field> fields, long[] state, boolean start) {
        int count = 0;
        for (int i = 0; i < fields.size(); i++) {
            Field field = fields.get(i);
            int value = field.get(state);
            boolean same = value == (start ? field.initial() : network.value(field.key()));
            count += same || field.key() instanceof FieldKey.Permitted && isFree(value) ? 0 : 1;
        }
        return count;
    }

    /** Who only asked holds nothing. */
    private static boolean isFree(int permitted) {
        return permitted == FieldKey.Permitted.NONE
                || permitted == FieldKey.Permitted.ASKED
                || permitted == FieldKey.Permitted.RELEASED;
    }

    @Override
    public int atLeast(long[] state) {
        int start = count(things, state, true) + count(others, state, true);
        int normal = count(things, state, false) + count(others, state, false);
        return (Math.min(start, normal) + most - 1) / most;
    }

    @Override
    public boolean isReached(long[] state) {
        boolean start = count(things, state, true) + count(others, state, true) == 0;
        boolean normal = count(things, state, false) + count(others, state, false) == 0;
        return (start && !ends) || (start || normal) && stepper.brokenAtEnd(state) == 0;
    }
}
