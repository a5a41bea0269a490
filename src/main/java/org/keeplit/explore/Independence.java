package org.keeplit.explore;

import java.util.ArrayList;
import java.util.List;
import org.keeplit.network.Mode;
import org.keeplit.program.Act;
import org.keeplit.program.Field;
import org.keeplit.program.FieldKey;

/**
 * Which acts do not touch each other: neither reads or changes what the other changes, and no rule that binds states reads what both
 * change. Whichever of two such acts comes first, everything judged goes the same way.
 */
final class Independence {
    private final Machine machine;
    /** What decides about everything electrical, and about what comes by itself. */
    private final long[] electric;
    /** What of it may make something come by itself. Reclosing may be allowed as often as anybody likes while nothing has tripped. */
    private final long[] triggers;
    /** What may change by itself after it. */
    private final long[] follows;

    private final long[][] reads;
    private final long[][] writes;

    Independence(Machine machine) {
        this.machine = machine;
        long[] position = Reads.positionOf(machine.world());
        this.electric = position.clone();
        this.triggers = position.clone();
        this.follows = new long[position.length];
        for (Field field : machine.world().program().layout().fields()) {
            FieldKey key = field.key();
            if (key instanceof FieldKey.Mode || key instanceof FieldKey.Failed || key instanceof FieldKey.Tap) {
                field.mark(electric);
                if (!(key instanceof FieldKey.Mode mode && mode.mode().equals(Mode.RECLOSING))) {
                    field.mark(triggers);
                }
            }
            if (key instanceof FieldKey.Pole
                    || key instanceof FieldKey.Tap
                    || key instanceof FieldKey.Proved
                    || key instanceof FieldKey.Waited) {
                field.mark(follows);
            }
        }
        List<Act> acts = machine.world().program().acts();
        this.reads = new long[acts.size()][];
        this.writes = new long[acts.size()][];
        for (Act act : acts) {
            note(act, position);
        }
    }

    private void note(Act act, long[] position) {
        ActCompiler.Compiled compiled = machine.act(act.id());
        Reads read = new Reads(position);
        List<Node> nodes = new ArrayList<>(List.of(compiled.possible(), compiled.seen(), compiled.awaited()));
        nodes.addAll(machine.requires(act.stepNumber()));
        nodes.addAll(machine.expects(act.stepNumber()));
        nodes.forEach(n -> n.reads(read));
        machine.before(act.id()).forEach(i -> i.reads(read));
        machine.after(act.id()).forEach(i -> i.reads(read));
        long[] written = new long[position.length];
        for (Op op : compiled.ops()) {
            op.field().mark(written);
        }
        if (compiled.disturbance() != null) {
            long[] stale = new long[position.length];
            machine.settling().staleAfter(compiled.disturbance(), stale);
            if (Reads.meet(stale, stale)) {
                add(written, stale);
                add(read.bits(), stale);
                add(read.bits(), position);
            }
        }
        if (Reads.meet(written, triggers)) {
            add(written, follows);
            add(read.bits(), electric);
            add(read.bits(), follows);
        }
        machine.remembering().touches(act.id(), written, read, position);
        reads[act.id()] = read.bits();
        writes[act.id()] = written;
    }

    private static void add(long[] into, long[] bits) {
        for (int i = 0; i < into.length; i++) {
            into[i] |= bits[i];
        }
    }

    /** {@return whether two acts do not touch each other} @param one an act's number @param other another's */
    boolean of(int one, int other) {
        return !Reads.meet(writes[one], writes[other])
                && !Reads.meet(writes[one], reads[other])
                && !Reads.meet(reads[one], writes[other])
                && !machine.readsInStates().anyReads(writes[one], writes[other]);
    }
}
