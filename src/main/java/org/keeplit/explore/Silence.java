package org.keeplit.explore;

import java.util.BitSet;
import java.util.List;
import org.keeplit.program.Act;

/**
 * Which acts nothing notices: no rule is judged at them, nothing that anybody asks for reads what they change, and they can always
 * be done. Whenever such an act comes, everything else goes the same way.
 */
final class Silence {
    private final BitSet silent = new BitSet();

    Silence(Machine machine) {
        Reads reads = new Reads(Reads.positionOf(machine.world()));
        read(machine.inStates(), reads);
        read(machine.atStart(), reads);
        read(machine.atEnd(), reads);
        machine.ends().forEach(n -> n.reads(reads));
        for (Act act : machine.world().program().acts()) {
            ActCompiler.Compiled compiled = machine.act(act.id());
            read(machine.before(act.id()), reads);
            read(machine.after(act.id()), reads);
            List.of(compiled.possible(), compiled.seen(), compiled.awaited()).forEach(n -> n.reads(reads));
            machine.requires(act.stepNumber()).forEach(n -> n.reads(reads));
            machine.expects(act.stepNumber()).forEach(n -> n.reads(reads));
        }
        machine.remembering().reads(reads);
        for (Act act : machine.world().program().acts()) {
            silent.set(act.id(), isSilent(machine, act, reads.bits()));
        }
    }

    private static void read(List<RuleInstance> instances, Reads into) {
        instances.forEach(i -> i.reads(into));
    }

    private static boolean isSilent(Machine machine, Act act, long[] read) {
        ActCompiler.Compiled compiled = machine.act(act.id());
        boolean asked = !machine.before(act.id()).isEmpty()
                || !machine.after(act.id()).isEmpty()
                || !machine.requires(act.stepNumber()).isEmpty()
                || !machine.expects(act.stepNumber()).isEmpty()
                || machine.remembering().isMoment(act.id());
        boolean free = List.of(compiled.possible(), compiled.seen(), compiled.awaited()).stream()
                .allMatch(Node.Constant.TRUE::equals);
        if (asked || !free || compiled.disturbance() != null) {
            return false;
        }
        long[] changed = new long[read.length];
        for (Op op : compiled.ops()) {
            op.field().mark(changed);
        }
        return !Reads.meet(changed, read);
    }

    boolean of(int act) {
        return silent.get(act);
    }
}
