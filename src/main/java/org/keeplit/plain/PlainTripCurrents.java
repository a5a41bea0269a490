package org.keeplit.plain;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;

/** The currents by which devices trip, each known only as far as it is known how jumpers and contacts share it. */
final class PlainTripCurrents {
    private final Scenery scenery;
    private final Names names;
    private final List<Element.Device> devices;
    private final Map<BitSet, Map<String, List<Range>>> known = new HashMap<>();

    PlainTripCurrents(Scenery scenery, List<Element.Device> devices) {
        this.scenery = scenery;
        this.names = scenery.names();
        this.devices = devices;
    }

    /** A current is somewhere between two values. */
    record Range(double least, double most) {}

    /** {@return the currents of every unit and every residual, in each load case; null if a load flow does not settle} */
    Map<String, List<Range>> in(Asking asking) {
        BitSet position = new BitSet();
        List<Joint> joints = scenery.wiring().joints();
        for (int i = 0; i < joints.size(); i++) {
            position.set(i, asking.circuit().isClosed(joints.get(i)));
        }
        // The taps that are known to stand on neutral count too.
        int bit = joints.size();
        for (Joint joint : joints) {
            if (joint.part() == Joint.Part.REGULATOR) {
                position.set(bit++, asking.circuit().isNeutral(joint.owner(), joint.phase()));
            }
        }
        if (!known.containsKey(position)) {
            known.put(position, findCurrents(asking.circuit()));
        }
        return known.get(position);
    }

    private Map<String, List<Range>> findCurrents(Circuit circuit) {
        Map<String, List<Range>> all = new HashMap<>();
        Map<Set<Joint>, List<PlainFlow>> flows = new HashMap<>();
        for (Element.Device device : devices) {
            Set<Joint> around = new HashSet<>();
            Set<Conductor> shared = new HashSet<>();
            for (Conductor phase : device.phases()) {
                if (phase.isPhase() && circuit.isClosed(pole(device, phase))) {
                    List<Joint> ways = circuit.waysAround(device, phase);
                    around.addAll(ways);
                    if (!ways.isEmpty()) {
                        shared.add(phase);
                    }
                }
            }
            // Most devices have no way around them, and share one load flow.
            for (PlainFlow flow : flows.computeIfAbsent(around, a -> flows(circuit, a))) {
                if (!flow.settled()) {
                    return null;
                }
                note(device, flow, circuit, shared, all);
            }
        }
        return all;
    }

    private List<PlainFlow> flows(Circuit circuit, Set<Joint> opened) {
        return scenery.wiring().pieces().cases().stream()
                .map(asked -> new PlainFlow(
                        names.bound().network(),
                        scenery.wiring().pieces(),
                        regulator -> scenery.taps().at(regulator, circuit, asked),
                        scenery.wiring().joints(),
                        j -> circuit.isClosed(j) && !opened.contains(j),
                        asked))
                .toList();
    }

    private Joint pole(Element.Device device, Conductor phase) {
        return Asking.pole(scenery.wiring(), device.name(), phase);
    }

    private void note(
            Element.Device device, PlainFlow flow, Circuit circuit, Set<Conductor> shared, Map<String, List<Range>> all) {
        Cx known = Cx.ZERO;
        List<Cx> parts = new ArrayList<>();
        double least = 0;
        double most = 0;
        for (Conductor phase : device.phases()) {
            Cx current = phase.isPhase() && circuit.isClosed(pole(device, phase))
                    ? flow.through(pole(device, phase))
                    : Cx.ZERO;
            Range range = new Range(shared.contains(phase) ? 0 : current.size(), current.size());
            least = Math.max(least, range.least());
            most = Math.max(most, range.most());
            if (!device.ganged()) {
                add(all, device.name() + " " + phase, range);
            }
            if (shared.contains(phase)) {
                parts.add(current);
            } else {
                known = known.plus(current);
            }
        }
        if (device.ganged()) {
            add(all, device.name() + " " + device.phases().list().get(0), new Range(least, most));
        }
        add(all, device.name() + " ground", sum(known, parts));
    }

    private static void add(Map<String, List<Range>> all, String event, Range range) {
        all.computeIfAbsent(event, e -> new ArrayList<>()).add(range);
    }

    /** The sum when some currents are had in any part: the least is found by going downhill, one part after another. */
    private static Range sum(Cx known, List<Cx> parts) {
        double most = 0;
        for (int taken = 0; taken < 1 << parts.size(); taken++) {
            Cx sum = known;
            for (int i = 0; i < parts.size(); i++) {
                sum = (taken & 1 << i) == 0 ? sum : sum.plus(parts.get(i));
            }
            most = Math.max(most, sum.size());
        }
        double[] share = new double[parts.size()];
        Cx sum = known;
        for (int round = 0; round < 5_000; round++) {
            for (int i = 0; i < share.length; i++) {
                Cx part = parts.get(i);
                Cx others = sum.minus(part.times(share[i]));
                double square = part.size() * part.size();
                double best = square == 0 ? 0 : -(others.re() * part.re() + others.im() * part.im()) / square;
                share[i] = Math.min(1, Math.max(0, best));
                sum = others.plus(part.times(share[i]));
            }
        }
        return new Range(sum.size(), most);
    }
}
