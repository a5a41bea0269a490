package org.keeplit.gridfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.keeplit.electric.complex.Complex;
import org.keeplit.network.Conductor;

/** Reads transformers as units of windings: by tanks and what their data sheets say, or by the ends of a whole transformer. */
final class UnitReader {
    private final Work work;
    private final CimModel model;

    UnitReader(Work work) {
        this.work = work;
        this.model = work.model();
    }

    /** {@return the units of a transformer; empty, and told, if something is missing} */
    List<Unit> units(CimObject transformer) {
        work.graph().terminals(transformer);
        List<Unit> units = new ArrayList<>();
        boolean whole = true;
        for (CimObject tank : model.pointing(transformer, "TransformerTank", "PowerTransformer")) {
            work.ledger().part(tank);
            Optional<Unit> unit = tank(tank);
            unit.ifPresent(units::add);
            whole &= unit.isPresent();
        }
        List<CimObject> ends = model.pointing(transformer, "PowerTransformerEnd", "PowerTransformer");
        if (!ends.isEmpty()) {
            List<Winding> windings = new ArrayList<>();
            for (CimObject end : ends) {
                work.ledger().part(end);
                winding(end, end, List.of(Conductor.A, Conductor.B, Conductor.C)).ifPresent(windings::add);
            }
            whole &= windings.size() == ends.size();
            units.add(new Unit(transformer, windings));
        }
        if (units.stream().anyMatch(u -> u.windings().size() < 2) || units.isEmpty() && whole) {
            model.mark("wrong-terminals", transformer, transformer + " has fewer than two windings", "it needs TransformerTanks with their ends, or PowerTransformerEnds");
            return List.of();
        }
        return whole ? units : List.of();
    }

    private Optional<Unit> tank(CimObject tank) {
        Optional<CimObject> sheet = model.follow(tank, "TransformerTankInfo");
        sheet = sheet.isPresent() ? sheet : model.follow(tank, "AssetDatasheet");
        List<CimObject> infos = sheet.map(s -> model.pointing(s, "TransformerEndInfo", "TransformerTankInfo")).orElse(List.of());
        List<CimObject> ends = model.pointing(tank, "TransformerTankEnd", "TransformerTank");
        if (sheet.isEmpty() || infos.size() < ends.size()) {
            model.mark("missing-figure", tank, tank + " has " + ends.size() + " ends, and its data sheet describes " + infos.size(),
                    "it refers to a TransformerTankInfo with a TransformerEndInfo for each end");
            return Optional.empty();
        }
        work.ledger().part(sheet.get());
        List<Winding> windings = new ArrayList<>();
        for (int i = 0; i < ends.size(); i++) {
            CimObject end = ends.get(i);
            work.ledger().part(end);
            work.ledger().part(infos.get(i));
            String code = model.choice(end, "orderedPhases").or(() -> model.choice(end, "phases")).orElse("ABC");
            Optional<List<Conductor>> phases = PhaseCodes.parse(code);
            if (phases.isEmpty()) {
                model.mark("bad-phase", end, "the phases of " + end + " are " + CimModel.clip(code), "phases are made of A, B, C, N, s1 and s2");
            } else {
                winding(end, infos.get(i), phases.get()).ifPresent(windings::add);
            }
        }
        return windings.size() == ends.size() ? Optional.of(new Unit(tank, windings)) : Optional.empty();
    }

    private Optional<Winding> winding(CimObject end, CimObject info, List<Conductor> phases) {
        Optional<CimObject> terminal = model.follow(end, "Terminal");
        if (terminal.isEmpty()) {
            model.mark("wrong-terminals", end, end + " is at no Terminal", "");
            return Optional.empty();
        }
        work.ledger().part(terminal.get());
        String kind = model.choice(info, "connectionKind").orElse(phases.size() > 2 ? "Y" : "I");
        boolean neutral = model.flag(end, "grounded", kind.endsWith("n") || phases.contains(Conductor.N));
        if (model.number(end, "rground", 0) != 0 || model.number(end, "xground", 0) != 0) {
            work.ledger().note(end, "its neutral is taken as grounded solidly: " + Work.number(model.number(end, "rground", 0)) + " + j "
                    + Work.number(model.number(end, "xground", 0)) + " ohm between neutral and ground are not carried");
        }
        return work.graph().node(terminal.get()).map(node -> new Winding(end, info, node, phases,
                kind.startsWith("D") ? 'D' : kind.startsWith("I") ? 'I' : 'Y', (int) model.number(info, "phaseAngleClock", 0), neutral,
                model.positive(info, "ratedU", "volts"), model.positive(info, "ratedS", "volt-amperes")));
    }

    /** {@return the leakage impedance between two windings in parts of the first one's rating; empty if nothing states it} */
    Optional<Complex> leakage(Winding a, Winding b) {
        double base = a.volts() * a.volts() / a.rating();
        for (boolean turned : new boolean[] {false, true}) {
            Winding from = turned ? b : a;
            Winding to = turned ? a : b;
            double own = from.volts() * from.volts() / from.rating();
            double scale = a.rating() / from.rating();
            for (CimObject mesh : model.pointing(from.end(), "TransformerMeshImpedance", "FromTransformerEnd")) {
                if (model.text(mesh, "ToTransformerEnd").filter(to.end().id()::equals).isPresent()) {
                    work.ledger().part(mesh);
                    return Optional.of(new Complex(model.number(mesh, "r", 0), model.number(mesh, "x", 0)).times(scale / own));
                }
            }
            for (CimObject test : model.pointing(from.info(), "ShortCircuitTest", "EnergisedEnd")) {
                if (model.text(test, "GroundedEnds").filter(to.info().id()::equals).isPresent()) {
                    work.ledger().part(test);
                    double whole = model.number(test, "leakageImpedance", 0) / own * scale;
                    // Its loss is in kilowatts at its base power.
                    double power = model.number(test, "basePower", from.rating());
                    double r = Math.min(whole, model.number(test, "loss", 0) * 1000 / power * a.rating() / power);
                    return Optional.of(new Complex(r, Math.sqrt(Math.max(0, whole * whole - r * r))));
                }
            }
        }
        Complex sum = star(a).plus(star(b).times(a.rating() / b.rating()));
        if (sum.abs() == 0) {
            sum = own(a).plus(own(b).times(a.rating() / b.rating()));
        }
        return sum.abs() > 0 && base > 0 ? Optional.of(sum) : Optional.empty();
    }

    /** {@return what a winding says of its own leg of a star equivalent, in parts of its rating} */
    private Complex star(Winding winding) {
        double base = winding.volts() * winding.volts() / winding.rating();
        for (CimObject leg : model.pointing(winding.end(), "TransformerStarImpedance", "TransformerEnd")) {
            work.ledger().part(leg);
            return new Complex(model.number(leg, "r", 0), model.number(leg, "x", 0)).times(1 / base);
        }
        return Complex.ZERO;
    }

    private Complex own(Winding winding) {
        double base = winding.volts() * winding.volts() / winding.rating();
        return new Complex(model.number(winding.info(), "r", 0), model.number(winding.info(), "x", 0)).times(1 / base);
    }
}
