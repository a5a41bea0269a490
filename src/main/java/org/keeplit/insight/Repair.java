package org.keeplit.insight;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.keeplit.explore.Stepper;
import org.keeplit.outcome.Harm;
import org.keeplit.program.Act;
import org.keeplit.program.Field;
import org.keeplit.program.Orders;
import org.keeplit.program.Primitive;
import org.keeplit.program.Program;
import org.keeplit.rule.Rule;

/** Does an act, after whatever looking, proving and writing down it takes for nothing to go wrong with it. */
final class Repair {
    /** How many looks are put before an act at most. */
    private static final int DEEP = 8;

    private final Stepper stepper;
    private final List<Orders.Move> looks = new ArrayList<>();
    private final List<Orders.Move> moving = new ArrayList<>();
    private final long[][] writes;
    private long tried;

    Repair(Stepper stepper) {
        this.stepper = stepper;
        Program program = stepper.program();
        this.writes = new long[program.acts().size()][];
        for (Act act : program.acts()) {
            writes[act.id()] = stepper.writes(act.id());
            if (isMoving(program, act)) {
                moving.add(Orders.Move.atWill(act));
            } else if (act.primitives().stream().allMatch(Repair::isLook)) {
                looks.add(Orders.Move.atWill(act));
            }
        }
    }

    /** What was done, and the state that it leads to. */
    record Done(List<Orders.Move> moves, long[] state) {}

    /** {@return the acts that change how things stand} */
    List<Orders.Move> moving() {
        return moving;
    }

    /** {@return the acts that only find out or write down} */
    List<Orders.Move> looks() {
        return looks;
    }

    /** {@return how many acts were tried} */
    long tried() {
        return tried;
    }

    long[] writes(Orders.Move move) {
        return writes[move.act().id()];
    }

    private boolean isMoving(Program program, Act act) {
        boolean fixed = act.primitives().stream()
                .anyMatch(p -> p instanceof Primitive.ComeOut || p instanceof Primitive.Await || p instanceof Primitive.Touch);
        if (fixed) {
            return false;
        }
        for (Field field : program.layout().fields()) {
            if ((Normal.isThing(field.key()) || Normal.isOther(field.key())) && Normal.touches(writes[act.id()], field)) {
                return true;
            }
        }
        return act.primitives().stream().anyMatch(Primitive.RunToNeutral.class::isInstance);
    }

    private static boolean isLook(Primitive primitive) {
        return primitive instanceof Primitive.Look
                || primitive instanceof Primitive.Prove
                || primitive instanceof Primitive.TestDead
                || primitive instanceof Primitive.Write
                || primitive instanceof Primitive.Pass
                || primitive instanceof Primitive.Nothing;
    }

    /** {@return the one state that an act surely leads to; nothing if anything may go wrong, or may come by itself or not} */
    Optional<long[]> surely(long[] state, Orders.Move move) {
        return sure(attempt(state, move));
    }

    private Stepper.Tried attempt(long[] state, Orders.Move move) {
        tried++;
        return stepper.attempt(state, move);
    }

    private static Optional<long[]> sure(Stepper.Tried tried) {
        return tried.isSafe() && tried.states().size() == 1 ? Optional.of(tried.states().get(0)) : Optional.empty();
    }

    /** What came of trying to do an act. @param done nothing if it cannot be done @param asked the bits that decide why not */
    record Result(Optional<Done> done, long[] asked) {}

    /**
     * Does an act, after whatever looks it takes.
     *
     * @param tidy whether what is still owed is looked at first: once something has moved on, it may be too late for that
     */
    Result perform(long[] state, Orders.Move move, boolean tidy) {
        Done first = tidy ? tidied(state) : new Done(List.of(), state);
        List<Orders.Move> before = new ArrayList<>(first.moves);
        long[] now = first.state;
        Stepper.Tried tried = attempt(now, move);
        for (int depth = 0; depth <= DEEP; depth++) {
            Optional<long[]> end = sure(tried);
            if (end.isPresent()) {
                before.add(move);
                return new Result(Optional.of(new Done(before, end.get())), new long[0]);
            }
            Look better = tried.asked().length == 0 || depth == DEEP ? null : better(now, move, tried);
            if (better == null) {
                break;
            }
            before.add(better.look);
            now = better.state;
            tried = better.then;
        }
        return new Result(Optional.empty(), tried.asked());
    }

    /** A look that helps. @param state where it leads @param then what the act leads to there */
    private record Look(Orders.Move look, long[] state, Stepper.Tried then) {}

    private Look better(long[] state, Orders.Move move, Stepper.Tried without) {
        Look best = null;
        int least = badness(without);
        for (Orders.Move look : looks) {
            if (look.act() == move.act() || !meet(writes(look), without.asked())) {
                continue;
            }
            Optional<long[]> seen = surely(state, look);
            if (seen.isEmpty()) {
                continue;
            }
            Stepper.Tried then = attempt(seen.get(), move);
            int bad = badness(then);
            if (bad < least) {
                least = bad;
                best = new Look(look, seen.get(), then);
                if (bad == 0) {
                    return best;
                }
            }
        }
        return best;
    }

    /** {@return less, the later it is that something goes wrong, and the fewer things do; 0 if nothing does} */
    private static int badness(Stepper.Tried tried) {
        if (sure(tried).isPresent()) {
            return 0;
        }
        int worst = 1;
        for (Harm harm : tried.harms()) {
            worst = Math.max(worst, stage(harm));
        }
        return worst + tried.count();
    }

    private static int stage(Harm harm) {
        return switch (harm.kind()) {
            case CANNOT -> 5_000;
            case RULE -> harm.rule().map(Rule::form).orElseThrow() == Rule.Form.BEFORE ? 4_000 : 1_000;
            case REQUIREMENT -> 3_000;
            case STOP -> 2_000;
            case FLASH, EXPECTATION, ENDING, STUCK -> 1_000;
        };
    }

    static boolean meet(long[] one, long[] other) {
        for (int i = 0; i < Math.min(one.length, other.length); i++) {
            if ((one[i] & other[i]) != 0) {
                return true;
            }
        }
        return false;
    }

    /** {@return looks after which no rule about the end is broken; nothing if there are none} */
    Optional<Done> end(long[] state) {
        Done done = tidied(state);
        return stepper.brokenAtEnd(done.state) == 0 ? Optional.of(done) : Optional.empty();
    }

    /** Looks as long as that leaves fewer rules about the end broken. */
    private Done tidied(long[] state) {
        List<Orders.Move> done = new ArrayList<>();
        long[] now = state;
        int broken = stepper.brokenAtEnd(now);
        boolean better = broken > 0;
        while (better) {
            better = false;
            for (Orders.Move look : looks) {
                Optional<long[]> seen = broken == 0 ? Optional.empty() : surely(now, look);
                int left = seen.map(stepper::brokenAtEnd).orElse(broken);
                if (left < broken) {
                    done.add(look);
                    now = seen.get();
                    broken = left;
                    better = true;
                }
            }
        }
        return new Done(done, now);
    }
}
