package org.keeplit.explore;

import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import org.keeplit.condition.Truth;
import org.keeplit.electric.Analysis;
import org.keeplit.electric.Contact;
import org.keeplit.electric.Electric;
import org.keeplit.electric.SiteGraph;
import org.keeplit.electric.flow.FlowResult;
import org.keeplit.electric.flow.FlowSolution;
import org.keeplit.electric.flow.FlowState;
import org.keeplit.electric.flow.NoConvergence;
import org.keeplit.electric.power.PowerModel;
import org.keeplit.electric.power.PowerStates;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Mode;
import org.keeplit.program.Field;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Layout;

/** A state with what follows from it electrically, worked out when first asked for. Moved from state to state. */
final class Scene {
    private final Layout layout;
    private final Electric electric;
    private final Field[] contactFields;
    private final int[] contactValues;
    private final boolean[] constant;
    private final SiteGraph.Taps taps = this::neutral;
    private final BitSet closed = new BitSet();
    private final Positions positions;
    private final KeptPositions keptPositions = new KeptPositions();
    private final List<Field> remoteFields = new ArrayList<>();
    private final ImmutableSet<String> alwaysRemote;
    private final Map<BitSet, ImmutableSet<String>> mayClose = new HashMap<>();
    private final Supplier<PowerStates> power;
    private final Map<Seen, PowerStates.Least> least;
    /** Asked for once a place, not once a figure: a rule over all lines asks thousands of times. */
    private final Optional<FlowSolution>[] flows;

    private final FlowState[] flowStates;
    /** Whether either of both has anything. */
    private boolean flowAsked;
    private String trouble;
    private long[] state;
    private Analysis analysis;

    Scene(World world) {
        this.layout = world.program().layout();
        this.electric = world.electric();
        this.power = world::powerStates;
        this.least = electric.beside(Leasts.class, Leasts::new).all;
        int cases = PowerModel.cases(world.bound().network());
        this.flows = newFlows(cases);
        this.flowStates = new FlowState[cases];
        int count = electric.cells().kept().size();
        this.contactFields = new Field[count];
        this.contactValues = new int[count];
        this.constant = new boolean[count];
        for (int i = 0; i < count; i++) {
            Contact contact = electric.cells().kept().get(i);
            contactFields[i] = layout.field(contact.key()).orElse(null);
            contactValues[i] = contact.value();
            constant[i] = layout.constant(contact.key()) == contact.value();
        }
        long[] masks = new long[layout.words()];
        for (Field field : contactFields) {
            if (field != null) {
                field.mark(masks);
            }
        }
        this.positions = new Positions(masks);
        ImmutableSet.Builder<String> always = ImmutableSet.builder();
        electric.cells().grid().network().all(Element.Device.class).forEach(d -> {
            if (d.kind().mode(Mode.REMOTE).isPresent()) {
                FieldKey key = new FieldKey.Mode(d.name(), d.phases().list().get(0), Mode.REMOTE);
                if (layout.field(key).isPresent()) {
                    remoteFields.add(layout.field(key).get());
                } else if (layout.constant(key) == 0) {
                    always.add(d.name());
                }
            }
        });
        this.alwaysRemote = always.build();
    }

    @SuppressWarnings({"unchecked", "rawtypes"})
    private static Optional<FlowSolution>[] newFlows(int cases) {
        return new Optional[cases];
    }

    /** Looks at another state; the array is not copied. */
    Scene at(long[] next) {
        state = next;
        analysis = null;
        trouble = null;
        if (flowAsked) {
            Arrays.fill(flows, null);
            Arrays.fill(flowStates, null);
            flowAsked = false;
        }
        return this;
    }

    long[] state() {
        return state;
    }

    /** {@return the positions in which rules were found kept that read nothing else} */
    KeptPositions keptPositions() {
        return keptPositions;
    }

    Layout layout() {
        return layout;
    }

    Analysis analysis() {
        if (analysis == null) {
            analysis = positions.find(state);
        }
        if (analysis == null) {
            for (int i = 0; i < contactFields.length; i++) {
                closed.set(
                        i, contactFields[i] == null ? constant[i] : contactFields[i].get(state) == contactValues[i]);
            }
            analysis = electric.at(closed);
            positions.put(state, analysis);
        }
        return analysis;
    }

    /** {@return the load-flow model} */
    PowerModel power() {
        return power.get().model();
    }

    /** {@return how many load cases the network declares} */
    int loadCases() {
        return flows.length;
    }

    /** {@return the load flow of this state; null if there is none, which is then noted} */
    FlowSolution flow(int loadCase) {
        if (flows[loadCase] == null) {
            flowAsked = true;
            flows[loadCase] = Optional.ofNullable(solve(flowState(loadCase)));
        }
        return flows[loadCase].orElse(null);
    }

    /** {@return the load flow once a contact is open or closed, with all that moves with it; null as above} */
    FlowSolution flow(int loadCase, Contact contact, boolean closed) {
        return solve(power.get().switched(flowState(loadCase), contact, closed));
    }

    /** {@return the load flow with some contacts taken as open; null as above} */
    FlowSolution flowWithout(List<Contact> opened, int loadCase) {
        return opened.isEmpty()
                ? flow(loadCase)
                : solve(power.get().without(flowState(loadCase), opened));
    }

    private FlowSolution solve(FlowState asked) {
        FlowResult result = power.get().solve(asked);
        if (result instanceof NoConvergence none) {
            note("the load flow does not converge (" + none.reason() + ")");
        }
        return result.solution().orElse(null);
    }

    /** {@return what the load flow reads of this state} */
    FlowState flowState(int loadCase) {
        if (flowStates[loadCase] == null) {
            flowAsked = true;
            flowStates[loadCase] = power.get()
                    .state(
                            analysis().closed(),
                            loadCase,
                            (regulator, phase) -> neutral(regulator, phase) == Truth.TRUE);
        }
        return flowStates[loadCase];
    }

    /** {@return the largest fault current at a vertex, in ampere} */
    double faultCurrent(int vertex) {
        return power.get().faultCurrent(flowState(0), vertex);
    }

    /** {@return the least that a device sees of faults beyond another, asked once for a set of closed contacts} */
    PowerStates.Least leastFault(FaultAmounts.Sight sight) {
        Seen seen = new Seen(sight, flowState(0));
        PowerStates.Least known = least.get(seen);
        if (known == null) {
            known = sight.find(this);
            least.put(seen, known);
        }
        return known;
    }

    private record Seen(FaultAmounts.Sight sight, FlowState state) {}

    /** What was seen of faults, kept for all runs on one grid from one start. */
    private static final class Leasts {
        private final Map<Seen, PowerStates.Least> all = new ConcurrentHashMap<>();
    }

    /** {@return the load flows of this run} */
    PowerStates powerStates() {
        return power.get();
    }

    /** Notes that a figure says nothing, for or against. */
    void note(String what) {
        trouble = what;
    }

    /** {@return what could not be worked out since the scene last moved, or null} */
    String trouble() {
        return trouble;
    }

    /** {@return the devices that somebody may close from elsewhere} */
    ImmutableSet<String> mayClose() {
        if (remoteFields.isEmpty()) {
            return alwaysRemote;
        }
        BitSet on = new BitSet();
        for (int i = 0; i < remoteFields.size(); i++) {
            on.set(i, remoteFields.get(i).get(state) == 0);
        }
        return mayClose.computeIfAbsent(on, this::remoteDevices);
    }

    private ImmutableSet<String> remoteDevices(BitSet on) {
        ImmutableSet.Builder<String> all = ImmutableSet.builder();
        all.addAll(alwaysRemote);
        on.stream().forEach(i -> all.add(((FieldKey.Mode) remoteFields.get(i).key()).device()));
        return all.build();
    }

    SiteGraph.Taps taps() {
        return taps;
    }

    private Truth neutral(String regulator, Conductor phase) {
        int tap = layout.value(state, new FieldKey.Tap(regulator, phase));
        return tap == FieldKey.Tap.NEUTRAL ? Truth.TRUE : Truth.UNKNOWN;
    }
}
