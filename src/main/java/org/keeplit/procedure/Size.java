package org.keeplit.procedure;

import com.google.common.math.LongMath;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;

/** How many steps a procedure comes to when repetitions and calls are written out, told before anything is. */
public final class Size {
    /** For each phase of what has three. */
    private static final int PHASES = 3;

    private final Map<Procedure, Long> known = new IdentityHashMap<>();

    private Size() {}

    /**
     * {@return how many steps it comes to at most; the greatest number if there are more}
     *
     * @param procedure the procedure
     */
    public static long of(Procedure procedure) {
        Size size = new Size();
        long all = size.body(procedure);
        for (Edit edit : procedure.edits()) {
            if (edit instanceof Edit.Replace replace) {
                all = LongMath.saturatedAdd(all, size.of(replace.blocks()));
            } else if (edit instanceof Edit.Insert insert) {
                all = LongMath.saturatedAdd(all, size.of(insert.blocks()));
            }
        }
        return all;
    }

    /** A procedure that is called again and again is counted once. */
    private long body(Procedure procedure) {
        Long before = known.get(procedure);
        if (before == null) {
            before = of(procedure.body());
            known.put(procedure, before);
        }
        return before;
    }

    private long of(List<Block> blocks) {
        long all = 0;
        for (Block block : blocks) {
            all = LongMath.saturatedAdd(all, of(block));
        }
        return all;
    }

    private long of(Block block) {
        if (block instanceof Block.Group group) {
            return of(group.parts());
        } else if (block instanceof Block.Stage stage) {
            return of(stage.parts());
        } else if (block instanceof Block.Repeat repeat) {
            return LongMath.saturatedMultiply(repeat.times(), of(repeat.parts()));
        } else if (block instanceof Block.IfFound choice) {
            return LongMath.saturatedAdd(of(choice.then()), of(choice.otherwise()));
        } else if (block instanceof Block.ForEachPhase each) {
            return LongMath.saturatedMultiply(PHASES, of(each.parts()));
        } else if (block instanceof Block.Call call) {
            return body(call.procedure());
        }
        return 1;
    }
}
