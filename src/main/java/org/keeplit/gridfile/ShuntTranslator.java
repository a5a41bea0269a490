package org.keeplit.gridfile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.StringJoiner;
import org.keeplit.network.Conductor;

/** What hangs on one node: sources, consumers and capacitors. */
final class ShuntTranslator {
    private static final int MOST_CUSTOMERS = 1_000_000;

    private final Work work;
    private final CimModel model;
    private final Voltages voltages;

    ShuntTranslator(Work work, Voltages voltages) {
        this.work = work;
        this.model = work.model();
        this.voltages = voltages;
    }

    void translate() {
        model.all("EnergySource").forEach(this::source);
        for (String type : List.of("EnergyConsumer", "ConformLoad", "NonConformLoad")) {
            model.all(type).forEach(this::consumer);
        }
        model.all("LinearShuntCompensator").forEach(this::capacitor);
    }

    private Optional<String> node(CimObject shunt) {
        return work.graph().nodes(shunt, 1).map(at -> work.graph().name(at.get(0)));
    }

    private void source(CimObject source) {
        Optional<String> node = node(source);
        if (node.isEmpty()) {
            return;
        }
        String name = work.names().of(source.name(), "source");
        work.ledger().element(source, name);
        double nominal = model.positive(source, "nominalVoltage", "volts");
        double stated = model.number(source, "voltageMagnitude", nominal);
        double r = model.number(source, "r", 0);
        double x = model.number(source, "x", 0);
        double r0 = model.number(source, "r0", r);
        double x0 = model.number(source, "x0", x);
        List<String> attributes = new ArrayList<>();
        attributes.add(work.kind("EnergySource", "source") + " " + name + " at " + node.get());
        attributes.add("phases ABC");
        attributes.add("supply " + name);
        double ohms = Math.hypot(r, x);
        if (ohms == 0) {
            work.ledger().note(source, "it has no impedance, so it is written with a fault level of 1000000 MVA");
            attributes.add("fault level 1000000 MVA");
        } else {
            double squared = stated * stated;
            attributes.add("fault level " + Work.number(squared / ohms / 1e6) + " MVA");
            attributes.add("ground fault level " + Work.number(3 * squared / Math.hypot(2 * r + r0, 2 * x + x0) / 1e6) + " MVA");
            attributes.add(r > 0 ? "reactance ratio " + Work.number(x / r) : "reactance ratio 1000");
            if (r == 0 || Math.abs(Math.atan2(x0, r0) - Math.atan2(x, r)) > 0.01) {
                work.ledger().note(source, "the ratio of its zero-sequence reactance to resistance, " + Work.number(x0 / Math.max(r0, 1e-9))
                        + ", is taken as that of the positive sequence; the ground fault level is kept");
            }
        }
        attributes.add(Math.abs(stated - voltages.system()) > 1e-9 * stated ? "voltage " + Work.number(stated / 1000) + " kV" : "");
        if (Math.abs(model.number(source, "voltageAngle", 0)) > 1e-9) {
            work.ledger().note(source, "its angle of " + Work.number(Math.toDegrees(model.number(source, "voltageAngle", 0)))
                    + " degrees is not carried: angles are told from the sources");
        }
        work.line("Sources.", attributes);
    }

    private void consumer(CimObject consumer) {
        Optional<String> node = node(consumer);
        Map<Conductor, double[]> powers = new LinkedHashMap<>();
        for (CimObject part : model.pointing(consumer, "EnergyConsumerPhase", "EnergyConsumer")) {
            work.ledger().part(part);
            PhaseCodes.one(model, part, "phase").ifPresent(p -> powers.put(p, new double[] {
                model.number(part, "p", model.number(part, "pfixed", 0)), model.number(part, "q", model.number(part, "qfixed", 0))
            }));
        }
        powers.remove(Conductor.N);
        if (node.isEmpty()) {
            return;
        }
        String name = work.names().of(consumer.name(), "load");
        work.ledger().element(consumer, name);
        boolean delta = model.choice(consumer, "phaseConnection").orElse("Y").equals("D");
        double p = model.number(consumer, "p", model.number(consumer, "pfixed", powers.values().stream().mapToDouble(w -> w[0]).sum()));
        double q = model.number(consumer, "q", model.number(consumer, "qfixed", powers.values().stream().mapToDouble(w -> w[1]).sum()));
        List<String> attributes = new ArrayList<>();
        attributes.add(work.kind("EnergyConsumer", "load") + " " + name + " at " + node.get());
        attributes.add("phases " + phases(powers, delta));
        attributes.add(connection(consumer, delta));
        attributes.add(response(consumer));
        attributes.add(power(consumer, powers, delta, p, q));
        double said = model.number(consumer, "customerCount", 0);
        int customers = (int) Math.min(MOST_CUSTOMERS, Math.max(1, said));
        if (customers != said) {
            work.ledger().note(consumer, "it stands for " + Work.number(said) + " customers, or does not say; it is written with " + customers);
        }
        attributes.add(customers + (customers == 1 ? " customer" : " customers"));
        work.line("Loads.", attributes);
    }

    /** {@return the phases of a consumer; in delta a part on one phase lies between that and the next} */
    private static String phases(Map<Conductor, double[]> powers, boolean delta) {
        if (powers.isEmpty()) {
            return "ABC";
        }
        List<Conductor> all = new ArrayList<>(powers.keySet());
        if (delta) {
            powers.keySet().stream().filter(p -> !p.isLeg()).map(ShuntTranslator::next).forEach(all::add);
        }
        return PhaseCodes.words(all);
    }

    private static Conductor next(Conductor phase) {
        return switch (phase) {
            case A -> Conductor.B;
            case B -> Conductor.C;
            default -> Conductor.A;
        };
    }

    private String connection(CimObject consumer, boolean delta) {
        boolean grounded = model.flag(consumer, "grounded", true);
        String kind = model.choice(consumer, "phaseConnection").orElse("Y");
        return delta ? "delta" : grounded || !kind.equals("Y") ? "" : "ungrounded wye";
    }

    /** {@return how the power follows the voltage: what most of it does, told if some does otherwise} */
    private String response(CimObject consumer) {
        Optional<CimObject> response = model.follow(consumer, "LoadResponse");
        if (response.isEmpty()) {
            return "";
        }
        CimObject one = response.get();
        work.ledger().part(one);
        boolean exponents = model.flag(one, "exponentModel", false);
        double z = model.number(one, "pConstantImpedance", 0);
        double i = model.number(one, "pConstantCurrent", 0);
        double power = model.number(one, "pConstantPower", 0);
        double exponent = model.number(one, "pVoltageExponent", 0);
        double reactive = exponents
                ? model.number(one, "qVoltageExponent", 0)
                : share(model.number(one, "qConstantImpedance", 0), model.number(one, "qConstantCurrent", 0), model.number(one, "qConstantPower", 0));
        double active = exponents ? exponent : share(z, i, power);
        if (active != Math.rint(active) || active < 0 || active > 2 || reactive != active) {
            work.ledger().note(consumer, "its response “" + one.name() + "” is a mixture, of which the nearest is taken: active power with exponent "
                    + Work.number(active) + ", reactive with " + Work.number(reactive));
        }
        return active < 0.5 ? "" : active < 1.5 ? "constant current" : "constant impedance";
    }

    /** {@return the exponent of the voltage that a mixture comes to at nominal voltage} */
    private static double share(double z, double i, double p) {
        double all = z + i + p;
        return all == 0 ? 0 : (2 * z + i) / all;
    }

    private String power(CimObject consumer, Map<Conductor, double[]> powers, boolean delta, double p, double q) {
        double sum = powers.values().stream().mapToDouble(w -> w[0]).sum();
        boolean single = powers.size() < 2;
        if (p < 0 || sum < 0 || powers.values().stream().anyMatch(w -> w[0] < 0)) {
            work.ledger().note(consumer, "its active power is below zero somewhere; what feeds in is a generator, and it is written with 0");
        }
        double kw = Math.max(0, p) / 1000;
        if (single) {
            if (kw == 0) {
                work.ledger().note(consumer, "it draws no active power, and is written with 1 W, so that its customers are counted");
            }
            return Work.number(kw == 0 ? 0.001 : kw) + " kW" + (q == 0 ? "" : ", " + Work.number(q / 1000) + " kvar");
        }
        StringJoiner all = new StringJoiner(", ");
        boolean first = true;
        for (Map.Entry<Conductor, double[]> part : powers.entrySet()) {
            Conductor phase = part.getKey();
            String label = delta ? phase.isLeg() ? "X1X3" : pair(phase) : phase.toString();
            double own = Math.max(0, part.getValue()[0]);
            if (first && powers.values().stream().allMatch(w -> w[0] <= 0)) {
                work.ledger().note(consumer, "it draws no active power, and is written with 1 W, so that its customers are counted");
                own = 1;
            }
            first = false;
            all.add(label + " " + Work.number(own / 1000) + " kW" + (part.getValue()[1] == 0 ? "" : " " + Work.number(part.getValue()[1] / 1000) + " kvar"));
        }
        return all.toString();
    }

    private static String pair(Conductor phase) {
        return phase == Conductor.C ? "CA" : "" + phase + next(phase);
    }

    private void capacitor(CimObject bank) {
        Optional<String> node = node(bank);
        List<CimObject> parts = model.pointing(bank, "LinearShuntCompensatorPhase", "ShuntCompensator");
        Map<Conductor, Double> siemens = new LinkedHashMap<>();
        for (CimObject part : parts) {
            work.ledger().part(part);
            double sections = sections(bank, part);
            PhaseCodes.one(model, part, "phase").ifPresent(p -> siemens.put(p, model.number(part, "bPerSection", 0) * sections));
        }
        if (node.isEmpty()) {
            return;
        }
        if (parts.isEmpty()) {
            double each = model.number(bank, "bPerSection", 0) * sections(bank, bank);
            List.of(Conductor.A, Conductor.B, Conductor.C).forEach(p -> siemens.put(p, each));
        } else {
            // Said of the whole, too; the phases count.
            model.number(bank, "bPerSection", 0);
            sections(bank, bank);
        }
        boolean delta = model.choice(bank, "phaseConnection").orElse("Y").equals("D");
        boolean grounded = model.flag(bank, "grounded", true);
        double volts = voltages.of(work.graph().nodes(bank, 1).orElseThrow().get(0), bank);
        Map<Double, List<Conductor>> alike = new LinkedHashMap<>();
        siemens.forEach((phase, b) -> alike.computeIfAbsent(b, k -> new ArrayList<>()).add(phase));
        for (Map.Entry<Double, List<Conductor>> same : alike.entrySet()) {
            double kvar = same.getKey() * volts * volts / 3 * same.getValue().size() / 1000;
            if (kvar <= 0) {
                work.ledger().left(bank, "it is normally out, or has no susceptance");
                continue;
            }
            String name = work.names().of(bank.name(), "capacitor");
            work.ledger().element(bank, name);
            work.line("Capacitor banks.", List.of(
                    work.kind("LinearShuntCompensator", "capacitor") + " " + name + " at " + node.get(),
                    "phases " + PhaseCodes.words(same.getValue()),
                    delta ? "delta" : grounded ? "grounded wye" : "ungrounded wye",
                    Work.number(kvar) + " kvar"));
        }
        double rated = model.number(bank, "nomU", volts);
        double across = siemens.size() == 1 ? volts / Math.sqrt(3) : volts;
        if (Math.abs(rated / across - 1) > 1e-4) {
            work.ledger().note(bank, "its kilovars are those at the nominal voltage of its node, " + Work.number(across) + " V; it is rated for " + Work.number(rated) + " V");
        }
    }

    /** {@return the sections that are normally in} */
    private double sections(CimObject bank, CimObject part) {
        double now = model.number(part, "sections", 1);
        double normal = model.number(part, "normalSections", now);
        if (now != normal) {
            work.ledger().note(part, Work.number(now) + " of its sections are in at the moment of the model, and it is written as it normally is, with " + Work.number(normal));
        }
        return normal;
    }
}
