package org.keeplit.explore;

import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.keeplit.condition.Truth;
import org.keeplit.electric.Analysis;
import org.keeplit.electric.Level;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Mode;
import org.keeplit.procedure.Action;
import org.keeplit.program.Field;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Layout;
import org.keeplit.program.Primitive;
import org.keeplit.program.Units;
import org.keeplit.program.Vertex;

/**
 * What follows an act by itself: a test for dead that became doubtful, a waiting time that starts anew, a
 * regulator whose control is free to step.
 */
final class Settling {
    /** @param testers who makes it somewhere in the run */
    private record DeadTest(Field field, int vertex, ImmutableSet<String> testers) {}

    private record Discharge(Field field, int vertex) {}

    private record FreeTap(Field tap, Field proof, Node automatic) {}

    private final List<DeadTest> tests = new ArrayList<>();
    private final List<Discharge> discharges = new ArrayList<>();
    private final List<FreeTap> taps = new ArrayList<>();

    Settling(World world, AtomCompiler atoms) {
        Layout layout = world.program().layout();
        for (int vertex = 0; vertex < world.grid().vertices().size(); vertex++) {
            Vertex there = world.grid().vertices().get(vertex);
            Optional<Field> field = layout.field(Units.provedDead(there));
            if (field.isPresent()) {
                tests.add(new DeadTest(field.get(), vertex, testers(world, there)));
            }
        }
        world.bound().network().all(Element.Capacitor.class).forEach(bank -> {
            for (Conductor phase : bank.phases()) {
                int vertex = world.grid()
                        .number(new Vertex.AtNode(bank.node(), phase))
                        .orElseThrow();
                layout.field(new FieldKey.Waited(bank.name(), phase))
                        .ifPresent(f -> discharges.add(new Discharge(f, vertex)));
            }
        });
        world.bound().network().all(Element.Regulator.class).forEach(regulator -> {
            for (Conductor phase : regulator.phases()) {
                layout.field(new FieldKey.Tap(regulator.name(), phase))
                        .ifPresent(f -> taps.add(new FreeTap(
                                f,
                                layout.field(new FieldKey.Proved(Action.Proof.NEUTRAL.name(), regulator.name(), phase))
                                        .orElse(null),
                                automatic(atoms, regulator, phase))));
            }
        });
    }

    private static ImmutableSet<String> testers(World world, Vertex there) {
        return world.program().acts().stream()
                .filter(act -> act.primitives().contains(new Primitive.TestDead(there)))
                .flatMap(act -> Events.actors(act).stream())
                .collect(ImmutableSet.toImmutableSet());
    }

    /** Something moved, or time passed. @param by who did it; nobody, if it came by itself */
    record Disturbance(ImmutableSet<String> by) {
        /** It came by itself. */
        static final Disturbance BY_ITSELF = new Disturbance(ImmutableSet.of());

        /** {@return whether a test that some people make grows stale with it: what another crew does elsewhere does not matter} */
        private boolean concerns(ImmutableSet<String> testers) {
            return by.isEmpty() || by.stream().anyMatch(testers::contains);
        }
    }

    /** Notes the tests for dead that grow stale with something. @param bits takes the note */
    void staleAfter(Disturbance disturbance, long[] bits) {
        tests.stream().filter(t -> disturbance.concerns(t.testers)).forEach(t -> t.field.mark(bits));
    }

    /** A control steps by itself while it is on automatic and has its supply. */
    private static Node automatic(AtomCompiler atoms, Element.Regulator regulator, Conductor phase) {
        List<Node> all = new ArrayList<>();
        for (String name : List.of(Mode.CONTROL, Mode.CONTROL_POWER)) {
            regulator
                    .kind()
                    .mode(name)
                    .ifPresent(m -> all.add(atoms.is(
                            new FieldKey.Mode(regulator.name(), Units.mode(regulator, m, phase), name), 0)));
        }
        return all.isEmpty() ? Node.Constant.FALSE : Node.all(all);
    }

    /** {@return whether nothing in the run needs settling} */
    boolean isIdle() {
        return tests.isEmpty() && discharges.isEmpty() && taps.isEmpty();
    }

    /**
     * Settles a raw state in place.
     *
     * @param before what held electrically before the act
     * @param scene looks at the raw state
     * @param disturbance what makes tests for dead stale; null if nothing moved and no time passed
     */
    void settle(Analysis before, Scene scene, Disturbance disturbance) {
        long[] state = scene.state();
        for (FreeTap tap : taps) {
            if (tap.automatic.eval(scene) != Truth.FALSE) {
                tap.tap.set(state, FieldKey.Tap.ANY);
                if (tap.proof != null) {
                    tap.proof.set(state, 0);
                }
            }
        }
        for (DeadTest test : tests) {
            if (test.field.get(state) == 1) {
                Level now = scene.analysis().level(test.vertex);
                boolean rose = now.compareTo(before.level(test.vertex)) > 0;
                // A test is for the ground that follows at once; only a ground keeps it from growing stale.
                boolean doubtful = disturbance != null
                        && disturbance.concerns(test.testers)
                        && !scene.analysis().groundedForPeople(test.vertex);
                if (rose || now.isAlive() || doubtful) {
                    test.field.set(state, 0);
                }
            }
        }
        for (Discharge discharge : discharges) {
            if (scene.analysis().level(discharge.vertex) != Level.DEAD) {
                discharge.field.set(state, 0);
            }
        }
    }
}
