package org.keeplit.gridfile;

import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.keeplit.network.Conductor;
import org.keeplit.network.Kind;
import org.keeplit.network.Trait;

/** Switches of all classes, in their normal positions. */
final class SwitchTranslator {
    /** The classes, with the kind that is usual for each. A cut and a jumper of a line have no interrupter, as a disconnect. */
    static final ImmutableMap<String, String> KINDS = ImmutableMap.<String, String>builder()
            .put("Switch", "switch")
            .put("LoadBreakSwitch", "switch")
            .put("ProtectedSwitch", "switch")
            .put("Breaker", "breaker")
            .put("DisconnectingCircuitBreaker", "breaker")
            .put("Recloser", "recloser")
            .put("Fuse", "cutout")
            .put("Disconnector", "disconnect")
            .put("Sectionaliser", "sectionalizer")
            .put("Cut", "disconnect")
            .put("Jumper", "disconnect")
            .buildOrThrow();

    private static final String HEADING = "Switching devices, in their normal positions.";

    private final Work work;
    private final CimModel model;
    private final Limits limits;
    private final Map<CimObject, Integer> standing = new HashMap<>();
    private final Map<CimObject, String> sites = new HashMap<>();

    SwitchTranslator(Work work, Limits limits) {
        this.work = work;
        this.model = work.model();
        this.limits = limits;
    }

    /** {@return whether a switch is normally open on all of its phases} */
    static boolean isOpen(CimModel model, CimObject device) {
        List<CimObject> parts = model.pointing(device, "SwitchPhase", "Switch");
        return KINDS.containsKey(device.type())
                && (parts.isEmpty() ? normallyOpen(model, device) : parts.stream().allMatch(p -> normallyOpen(model, p)));
    }

    private static boolean normallyOpen(CimModel model, CimObject device) {
        return model.says(device, "normalOpen") ? model.flag(device, "normalOpen", false) : isOpenNow(model, device).orElse(false);
    }

    /** {@return whether it is open at the moment of the model, if that is said} */
    private static Optional<Boolean> isOpenNow(CimModel model, CimObject device) {
        if (model.says(device, "closed")) {
            return Optional.of(!model.flag(device, "closed", true));
        }
        return model.says(device, "open") ? Optional.of(model.flag(device, "open", false)) : Optional.empty();
    }

    void translate() {
        for (String type : KINDS.keySet()) {
            model.all(type).forEach(d -> model.follow(d, "Location").ifPresent(l -> standing.merge(l, 1, Integer::sum)));
        }
        for (String type : KINDS.keySet()) {
            model.all(type).forEach(this::device);
        }
    }

    private void device(CimObject device) {
        Optional<List<CimObject>> at = work.graph().nodes(device, 2);
        List<CimObject> parts = model.pointing(device, "SwitchPhase", "Switch");
        Map<Conductor, Boolean> open = new LinkedHashMap<>();
        for (CimObject part : parts) {
            work.ledger().part(part);
            PhaseCodes.one(model, part, "phaseSide1").filter(p -> p != Conductor.N).ifPresent(p -> open.put(p, normallyOpen(model, part)));
            crossed(device, part);
            now(part);
        }
        if (parts.isEmpty()) {
            boolean all = normallyOpen(model, device);
            List.of(Conductor.A, Conductor.B, Conductor.C).forEach(p -> open.put(p, all));
            now(device);
        }
        if (at.isEmpty() || open.isEmpty()) {
            return;
        }
        Kind kind = work.kinds().get(work.kind(device.type(), KINDS.get(device.type())));
        boolean turned = work.graph().isTurned(at.get().get(0), at.get().get(1));
        String from = work.graph().name(at.get().get(turned ? 1 : 0));
        String to = work.graph().name(at.get().get(turned ? 0 : 1));
        if (from.equals(to)) {
            model.mark("wrong-terminals", device, device + " has both sides at one node, " + from, "");
            return;
        }
        String name = work.names().of(device.name(), KINDS.get(device.type()));
        work.ledger().element(device, name);
        List<String> attributes = new ArrayList<>();
        attributes.add(kind.name() + " " + name + " from " + from + " to " + to);
        attributes.add("phases " + PhaseCodes.words(open.keySet()));
        attributes.add(poles(device, kind, open, !parts.isEmpty()));
        attributes.add(position(open));
        OptionalDouble rated = model.number(device, "ratedCurrent");
        double carries = rated.isPresent() && rated.getAsDouble() > 0 ? rated.getAsDouble() : limits.normal(work.graph().terminals(device)).orElse(0);
        attributes.add(carries > 0 ? "continuous " + Work.number(carries) + " A" : "");
        double breaks = model.number(device, "breakingCapacity", 0);
        attributes.add(breaks > 0 ? "interrupting " + Work.number(breaks) + " A" : "");
        attributes.add(site(device, name));
        work.line(HEADING, attributes);
    }

    /** Tells of phases that change places from one side to the other: a network text has no such device. */
    private void crossed(CimObject device, CimObject part) {
        Optional<String> other = model.choice(part, "phaseSide2");
        if (other.isPresent() && !other.equals(model.choice(part, "phaseSide1"))) {
            work.ledger().note(device, "phase " + model.choice(part, "phaseSide1").orElse("?") + " is " + other.get()
                    + " on its other side; it is written without that change");
        }
    }

    /** Tells of a position at the moment of the model that is not the normal one. */
    private void now(CimObject device) {
        Optional<Boolean> now = isOpenNow(model, device);
        if (model.says(device, "normalOpen") && now.isPresent() && now.get() != normallyOpen(model, device)) {
            work.ledger().note(device, "it is " + (now.get() ? "open" : "closed") + " at the moment of the model, and written as it normally is");
        }
    }

    private String poles(CimObject device, Kind kind, Map<Conductor, Boolean> open, boolean byPhase) {
        boolean units = kind.has(Trait.SINGLE_PHASE_UNITS);
        boolean ganged = kind.has(Trait.GANGED);
        boolean mixed = open.values().stream().distinct().count() > 1;
        if (mixed && !units) {
            work.ledger().note(device, "it stands open on some phases only, and the kind " + kind.name() + " moves all poles together; another kind is chosen with --kind "
                    + device.type() + "=KIND");
        }
        return open.size() > 1 && units && ganged ? byPhase ? "single-phase units" : "ganged" : "";
    }

    private static String position(Map<Conductor, Boolean> open) {
        List<Conductor> on = open.entrySet().stream().filter(Map.Entry::getValue).map(Map.Entry::getKey).toList();
        return on.isEmpty() ? "" : on.size() == open.size() ? "open" : "open on " + PhaseCodes.words(on);
    }

    /** {@return where it stands, if others stand there, too} */
    private String site(CimObject device, String name) {
        Optional<CimObject> location = model.follow(device, "Location").filter(l -> standing.getOrDefault(l, 0) > 1);
        return location.map(l -> "at " + sites.computeIfAbsent(l, where -> {
            work.ledger().part(where);
            return work.names().of(where.name(), "site");
        })).orElse("");
    }
}
