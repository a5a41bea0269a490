package org.keeplit.gridfile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.keeplit.network.Conductor;

/** Step-voltage regulators: transformers of one voltage with tap changers. */
final class RegulatorTranslator {
    private final Work work;
    private final CimModel model;

    RegulatorTranslator(Work work) {
        this.work = work;
        this.model = work.model();
    }

    /** {@return the tap changers of a winding} */
    List<CimObject> changers(Winding winding) {
        return model.pointing(winding.end(), "RatioTapChanger", "TransformerEnd");
    }

    /** {@return by how many steps a tap changer stands above neutral} */
    double steps(CimObject changer) {
        double neutral = model.number(changer, "neutralStep", 0);
        return model.number(changer, "step", model.number(changer, "normalStep", neutral)) - neutral;
    }

    /** Writes a bank. @param units its units, each of one voltage */
    void translate(CimObject transformer, List<Unit> units) {
        Map<List<CimObject>, List<Unit>> between = new LinkedHashMap<>();
        for (Unit unit : units) {
            between.computeIfAbsent(unit.windings().stream().map(Winding::node).toList(), n -> new ArrayList<>()).add(unit);
        }
        between.values().forEach(bank -> bank(transformer, bank));
    }

    private void bank(CimObject transformer, List<Unit> units) {
        Winding one = units.get(0).windings().get(0);
        Winding other = units.get(0).windings().get(1);
        boolean turned = work.graph().isTurned(one.node(), other.node());
        String from = work.graph().name(turned ? other.node() : one.node());
        String to = work.graph().name(turned ? one.node() : other.node());
        if (from.equals(to)) {
            model.mark("wrong-terminals", transformer, transformer + " has both sides at one node, " + from, "");
            return;
        }
        Set<Conductor> phases = new LinkedHashSet<>();
        Map<Conductor, Integer> taps = new TreeMap<>();
        List<CimObject> controls = new ArrayList<>();
        CimObject first = null;
        for (Unit unit : units) {
            phases.addAll(one.isThreePhase() ? unit.windings().get(0).live() : unit.windings().get(0).live().subList(0, 1));
            for (Winding winding : unit.windings()) {
                for (CimObject changer : changers(winding)) {
                    work.ledger().part(changer);
                    first = first == null ? changer : first;
                    // Raising the tap raises the side that it is on; a network text raises the load side.
                    boolean load = (winding == unit.windings().get(1)) != turned;
                    winding.live().forEach(p -> taps.put(p, (int) Math.rint(load ? steps(changer) : -steps(changer))));
                    step(changer);
                    model.follow(changer, "TapChangerControl").ifPresent(controls::add);
                }
            }
        }
        controls.forEach(work.ledger()::part);
        if (units.stream().anyMatch(u -> u.windings().get(0).isDelta())) {
            work.ledger().left(transformer, "a network text has regulators from phase to ground only, and its are between phases");
            return;
        }
        String name = work.names().of(transformer.name(), "regulator");
        work.ledger().element(transformer, name);
        work.ledger().note(transformer, "its leakage impedance is not carried: the load flow has regulators without");
        List<String> attributes = new ArrayList<>();
        attributes.add(work.kind("RatioTapChanger", "regulator") + " " + name + " from " + from + " to " + to);
        attributes.add("phases " + PhaseCodes.words(phases));
        double rating = model.number(first, "ctRating", 0);
        attributes.add("rating " + Work.number(rating > 0 ? rating : one.rating() / one.volts()) + " A");
        control(first, controls, attributes);
        taps.forEach((phase, tap) -> attributes.add("tap " + phase + " " + tap));
        work.line("Regulators; taps as they stand in the model.", attributes);
    }

    /** Tells of steps that the load flow does not have. */
    private void step(CimObject changer) {
        double increment = model.number(changer, "stepVoltageIncrement", 0.625);
        double high = model.number(changer, "highStep", 16);
        double low = model.number(changer, "lowStep", -16);
        if (increment != 0.625 || high - low != 32) {
            work.ledger().note(changer, "it has " + Work.number(high - low) + " steps of " + Work.number(increment) + " %, and is written with 32 of 0.625 %, which is what the load flow knows");
        }
    }

    private void control(CimObject changer, List<CimObject> controls, List<String> attributes) {
        Optional<CimObject> control = controls.stream().findFirst();
        boolean automatic = control.isPresent() && model.flag(control.get(), "enabled", true) && model.flag(changer, "controlEnabled", true) && model.flag(changer, "ltcFlag", true);
        attributes.add(automatic ? "" : "control manual");
        if (control.isEmpty()) {
            return;
        }
        CimObject c = control.get();
        double ratio = model.number(changer, "ptRatio", 0);
        double target = model.number(c, "targetValue", 0);
        attributes.add(ratio > 0 ? "voltage ratio " + Work.number(ratio) : "");
        attributes.add(target > 0 ? "setting " + Work.number(target) + " V" : "");
        double band = model.number(c, "targetDeadband", 0);
        attributes.add(band > 0 ? "bandwidth " + Work.number(band) + " V" : "");
        if (model.flag(c, "lineDropCompensation", false)) {
            attributes.add("compensator resistance " + Work.number(model.number(c, "lineDropR", 0)) + " V");
            attributes.add("compensator reactance " + Work.number(model.number(c, "lineDropX", 0)) + " V");
        }
        for (CimObject next : controls) {
            for (String attribute : List.of("targetValue", "targetDeadband", "lineDropR", "lineDropX")) {
                if (model.number(next, attribute, 0) != model.number(c, attribute, 0)) {
                    work.ledger().note(next, "its " + attribute + " is not that of " + c.name() + ", and a regulator bank has one for all its phases: that of " + c.name());
                }
            }
        }
    }
}
