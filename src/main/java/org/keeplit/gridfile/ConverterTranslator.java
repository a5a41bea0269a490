package org.keeplit.gridfile;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.keeplit.network.Conductor;

/**
 * Customers' generators: solar, wind, storage and machines. Each is a possible source, whatever it does at the moment, so each
 * becomes a generator; what storage draws while it is charged is not carried, since a load of a network text has customers.
 */
final class ConverterTranslator {
    private static final ImmutableList<String> UNITS = ImmutableList.of("PhotovoltaicUnit", "BatteryUnit", "PowerElectronicsWindUnit");

    /** What a network text asks of a generator at least, in watts. */
    private static final double LEAST = 1;

    private final Work work;
    private final CimModel model;

    ConverterTranslator(Work work) {
        this.work = work;
        this.model = work.model();
    }

    void translate() {
        model.all("PowerElectronicsConnection").forEach(this::converter);
        model.all("SynchronousMachine").forEach(m -> machine(m, true));
        model.all("AsynchronousMachine").forEach(m -> machine(m, false));
    }

    private void converter(CimObject converter) {
        Map<Conductor, Double> phases = new LinkedHashMap<>();
        for (CimObject part : model.pointing(converter, "PowerElectronicsConnectionPhase", "PowerElectronicsConnection")) {
            work.ledger().part(part);
            PhaseCodes.one(model, part, "phase").filter(p -> p != Conductor.N).ifPresent(p -> phases.put(p, model.number(part, "p", 0)));
        }
        List<CimObject> units = units(converter);
        units.forEach(work.ledger()::part);
        double p = model.number(converter, "p", 0);
        double q = model.number(converter, "q", 0);
        boolean battery = units.stream().anyMatch(u -> u.type().equals("BatteryUnit"));
        boolean discharging = units.stream().anyMatch(u -> model.choice(u, "batteryState").orElse("").equals("discharging"));
        boolean draws = battery && !discharging;
        write(converter, phases, draws ? 0 : Math.abs(p), draws ? 0 : q, model.number(converter, "ratedS", 0), sort(units));
        if (draws && p != 0) {
            work.ledger().note(converter, "it is not discharging, so it is a generator of 1 W, a possible source all the same; the " + Work.number(Math.abs(p) / 1000) + " kW that it draws at the moment are not carried");
        }
    }

    private static String sort(List<CimObject> units) {
        return units.isEmpty() ? "generator" : switch (units.get(0).type()) {
            case "PhotovoltaicUnit" -> "solar";
            case "BatteryUnit" -> "storage";
            default -> "wind";
        };
    }

    private List<CimObject> units(CimObject converter) {
        List<CimObject> all = new ArrayList<>();
        model.follow(converter, "PowerElectronicsUnit").ifPresent(all::add);
        for (String type : UNITS) {
            all.addAll(model.pointing(converter, type, "PowerElectronicsConnection"));
        }
        return all;
    }

    /** A machine: one that draws is a motor, if it can be nothing else. */
    private void machine(CimObject machine, boolean synchronous) {
        double p = model.number(machine, "p", 0);
        double q = model.number(machine, "q", 0);
        boolean motor = !synchronous && p > 0 && !model.choice(machine, "asynchronousMachineType").orElse("motor").equals("generator");
        double rated = model.number(machine, "ratedS", 0);
        if (!motor) {
            write(machine, Map.of(), Math.abs(p), -q, rated, "generator");
            return;
        }
        Optional<String> node = work.graph().nodes(machine, 1).map(at -> work.graph().name(at.get(0)));
        if (node.isPresent()) {
            String name = work.names().of(machine.name(), "motor");
            work.ledger().element(machine, name);
            work.line("Loads.", List.of("load " + name + " at " + node.get(), "phases ABC", "delta", "motor",
                    Work.number(p / 1000) + " kW", Work.number(q / 1000) + " kvar", "1 customer"));
        }
    }

    private void write(CimObject object, Map<Conductor, Double> phases, double watts, double vars, double rated, String sort) {
        Optional<String> node = work.graph().nodes(object, 1).map(at -> work.graph().name(at.get(0)));
        if (node.isEmpty()) {
            return;
        }
        String name = work.names().of(object.name(), sort);
        work.ledger().element(object, name);
        String on = phases.isEmpty() ? "ABC" : PhaseCodes.words(phases.keySet());
        work.line("Customers' generators and storage.", List.of(
                work.kind(object.type(), "generator") + " " + name + " at " + node.get(),
                "phases " + on,
                Work.number(Math.max(LEAST, watts) / 1000) + " kW",
                vars == 0 ? "" : Work.number(vars / 1000) + " kvar",
                rated > 0 ? "rating " + Work.number(rated / 1000) + " kVA" : ""));
        if (phases.values().stream().distinct().count() > 1) {
            work.ledger().note(object, "its power is not the same on each phase, and is written as a whole");
        }
    }
}
