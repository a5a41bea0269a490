package org.keeplit.explore;

import java.util.ArrayList;
import java.util.List;
import org.keeplit.condition.Truth;
import org.keeplit.program.Act;
import org.keeplit.program.Field;
import org.keeplit.program.FieldKey;

/** Takes what a run remembers from each state to the next. */
final class Remembering {
    private final List<Memory> memories;
    private final List<Field> fields = new ArrayList<>();
    private final Node[][] sets;
    private final Node[][] clears;
    private final List<Node> bodies = new ArrayList<>();

    Remembering(World world, Memories memories, ConditionCompiler conditions) {
        this.memories = memories.all();
        List<Act> acts = world.program().acts();
        this.sets = new Node[acts.size()][this.memories.size()];
        this.clears = new Node[acts.size()][this.memories.size()];
        for (int i = 0; i < this.memories.size(); i++) {
            Memory memory = this.memories.get(i);
            fields.add(world.program().layout().field(new FieldKey.Remembered(i)).orElseThrow());
            bodies.add(memory.body() == null
                    ? Node.Constant.FALSE
                    : conditions.compile(memory.body(), memory.environment()));
            for (Act act : acts) {
                sets[act.id()][i] = memories.sets(memory, act);
                clears[act.id()][i] = memories.clears(memory, act);
            }
        }
    }

    boolean isIdle() {
        return memories.isEmpty();
    }

    /**
     * Tells which moments an act is, judged in the state that it leaves.
     *
     * @param act the act's number
     * @param before looks at that state
     * @return for each memory 1 if the act sets it, 2 if it clears it, 3 for both
     */
    int[] moments(int act, Scene before) {
        int[] came = new int[memories.size()];
        for (int i = 0; i < came.length; i++) {
            boolean set = sets[act][i].eval(before) == Truth.TRUE;
            boolean clear = clears[act][i].eval(before) == Truth.TRUE;
            came[i] = (set ? 1 : 0) | (clear ? 2 : 0);
        }
        return came;
    }

    /** {@return whether an act may be a moment of which something is remembered} */
    boolean isMoment(int act) {
        for (int i = 0; i < memories.size(); i++) {
            if (isMoment(act, i)) {
                return true;
            }
        }
        return false;
    }

    private boolean isMoment(int act, int i) {
        return !sets[act][i].equals(Node.Constant.FALSE) || !clears[act][i].equals(Node.Constant.FALSE);
    }

    /** Notes what an act may change of what is remembered. @param bits takes the note, word by word */
    void writes(int act, long[] bits) {
        for (int i = 0; i < memories.size(); i++) {
            if (isMoment(act, i)) {
                fields.get(i).mark(bits);
            }
        }
    }

    /** Notes what is read to go on from state to state. @param into takes the note */
    void reads(Reads into) {
        bodies.forEach(body -> body.reads(into));
        for (int act = 0; act < sets.length; act++) {
            for (int i = 0; i < memories.size(); i++) {
                sets[act][i].reads(into);
                clears[act][i].reads(into);
            }
        }
    }

    /**
     * Notes what of what is remembered an act may change, and what that depends on.
     *
     * @param act the act's number
     * @param written the bits that it changes otherwise; takes the note
     * @param read takes the note
     * @param position see {@link Reads#positionOf}
     */
    void touches(int act, long[] written, Reads read, long[] position) {
        boolean more = true;
        while (more) {
            more = false;
            for (int i = 0; i < memories.size(); i++) {
                Reads body = new Reads(position);
                bodies.get(i).reads(body);
                long[] own = new long[written.length];
                fields.get(i).mark(own);
                if ((isMoment(act, i) || Reads.meet(written, body.bits())) && !Reads.meet(written, own)) {
                    fields.get(i).mark(written);
                    read.field(fields.get(i));
                    bodies.get(i).reads(read);
                    sets[act][i].reads(read);
                    clears[act][i].reads(read);
                    more = true;
                }
            }
        }
    }

    /** {@return what is told of a reaction, which is no moment} */
    int[] noMoment() {
        return new int[memories.size()];
    }

    /**
     * Goes on to a new state, in place.
     *
     * @param came what {@link #moments} told; none for a state that no act leads to
     * @param after looks at the new state, whose other fields are final
     */
    void advance(int[] came, Scene after) {
        long[] state = after.state();
        for (int i = 0; i < came.length; i++) {
            Field field = fields.get(i);
            boolean set = (came[i] & 1) != 0;
            boolean clear = (came[i] & 2) != 0;
            int was = field.get(state);
            int is = switch (memories.get(i).kind()) {
                case HAPPENED -> clear ? 0 : set ? 1 : was;
                case OPEN -> set ? 1 : clear ? 0 : was;
                case PENDING -> (set ? 1 : clear ? 0 : was) == 1 && bodies.get(i).eval(after) != Truth.TRUE ? 1 : 0;
                case SINCE -> (set ? Truth.TRUE : Truth.values()[was]).and(bodies.get(i).eval(after)).ordinal();
            };
            field.set(state, is);
        }
    }
}
