package org.keeplit.gridfile;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.keeplit.electric.complex.Complex;
import org.keeplit.network.Conductor;

/** Transformers, as banks of what a network text knows: two windings a unit, or a centre tap. */
final class TransformerTranslator {
    private static final String HEADING = "Transformers.";
    /** By how much a turns ratio may be off before the low voltage is written so that it comes out right. */
    private static final double RATIO = 0.005;
    /** A leakage resistance or reactance of nothing is written as this, in percent. */
    private static final double LEAST = 1e-5;

    private final Work work;
    private final CimModel model;
    private final Voltages voltages;
    private final UnitReader reader;
    private final RegulatorTranslator regulators;

    TransformerTranslator(Work work, Voltages voltages) {
        this.work = work;
        this.model = work.model();
        this.voltages = voltages;
        this.reader = new UnitReader(work);
        this.regulators = new RegulatorTranslator(work);
    }

    void translate() {
        for (CimObject transformer : model.all("PowerTransformer")) {
            List<Unit> units = reader.units(transformer);
            if (units.isEmpty()) {
                continue;
            }
            boolean tapped = units.stream().flatMap(u -> u.windings().stream()).anyMatch(w -> !regulators.changers(w).isEmpty());
            if (tapped && units.stream().allMatch(Unit::isOneToOne)) {
                regulators.translate(transformer, units);
            } else {
                untapped(transformer, units);
                transformer(transformer, units);
            }
        }
    }

    /** Tells of tap changers of transformers that are no regulators. */
    private void untapped(CimObject transformer, List<Unit> units) {
        for (Unit unit : units) {
            for (Winding winding : unit.windings()) {
                for (CimObject changer : regulators.changers(winding)) {
                    double steps = regulators.steps(changer);
                    work.ledger().left(changer, "a network text has taps on regulators only; " + transformer.name() + " is written with its rated voltages, and stands at "
                            + (steps == 0 ? "neutral" : "step " + Work.number(steps) + " from neutral"));
                }
            }
        }
    }

    private void transformer(CimObject transformer, List<Unit> units) {
        if (units.size() == 1 && units.get(0).windings().size() > 2) {
            several(transformer, units.get(0));
        } else if (units.stream().anyMatch(u -> u.windings().size() > 2)) {
            work.ledger().left(transformer, "a bank of several tanks with more than two windings each is not carried");
        } else {
            bank(transformer, units.stream().map(u -> ordered(u.windings())).toList());
        }
    }

    /** {@return windings with the one nearest to a source first} */
    private List<Winding> ordered(List<Winding> windings) {
        List<Winding> sorted = new ArrayList<>(windings);
        sorted.sort(Comparator.comparingInt(w -> work.graph().distance(w.node())));
        return sorted;
    }

    /** A unit of three windings or more: a centre tap, or a bank for each other winding at which something hangs. */
    private void several(CimObject transformer, Unit unit) {
        List<Winding> windings = ordered(unit.windings());
        Winding high = windings.get(0);
        List<Winding> others = windings.subList(1, windings.size());
        boolean legs = others.stream().allMatch(w -> w.live().size() == 1 && w.live().get(0).isLeg() && w.node() == others.get(0).node());
        if (legs && others.size() == 2) {
            centreTapped(transformer, high, others);
            return;
        }
        List<Winding> used = others.stream().filter(w -> work.graph().isShared(w.node())).toList();
        List<Winding> written = used.isEmpty() ? others.subList(0, 1) : used;
        for (Winding low : written) {
            bank(transformer, List.of(List.of(high, low)));
        }
        for (Winding other : others) {
            if (!written.contains(other)) {
                work.ledger().note(transformer, "its winding " + other.end().name() + " is left out: nothing hangs at " + other.node().name());
                work.ledger().left(other.node(), "nothing hangs there");
            }
        }
        if (written.size() > 1) {
            work.ledger().note(transformer, "its " + (written.size() + 1) + " windings are written as " + written.size()
                    + " banks; the leakage that these share is in each of them");
        }
    }

    private void centreTapped(CimObject transformer, Winding high, List<Winding> legs) {
        Optional<Complex> leakage = reader.leakage(high, legs.get(0));
        // From the whole low winding to one leg: R + jX lies as 0.5 R + j 0.8 X on the primary and R + j 0.4 X on each leg.
        Complex z = leakage.map(l -> new Complex(l.re() / 1.5, l.im() / 1.2)).orElse(null);
        reader.leakage(high, legs.get(1));
        reader.leakage(legs.get(0), legs.get(1));
        write(transformer, high, legs.get(0).node(), "centre-tapped", -1, PhaseCodes.words(high.live()), high.rating(),
                legs.get(0).volts() + legs.get(1).volts(), z);
    }

    private void bank(CimObject transformer, List<List<Winding>> units) {
        Winding high = units.get(0).get(0);
        Winding low = units.get(0).get(1);
        if (units.stream().anyMatch(u -> u.get(0).node() != high.node() || u.get(1).node() != low.node())) {
            work.ledger().left(transformer, "its tanks are not all between the same two nodes");
            return;
        }
        if (units.size() == 1 && high.isThreePhase() && low.isThreePhase()) {
            int clock = Math.floorMod(low.clock() - high.clock(), 12);
            write(transformer, high, low.node(), high.joined() + " to " + low.joined(), clock, "ABC", high.rating(), low.volts(), reader.leakage(high, low).orElse(null));
            return;
        }
        if (units.size() == 1 && low.live().stream().allMatch(Conductor::isLeg)) {
            write(transformer, high, low.node(), "centre-tapped", -1, PhaseCodes.words(high.live()), high.rating(), low.volts(), reader.leakage(high, low).orElse(null));
            return;
        }
        singles(transformer, units);
    }

    /** Single-phase units side by side. */
    private void singles(CimObject transformer, List<List<Winding>> units) {
        Winding high = units.get(0).get(0);
        Winding low = units.get(0).get(1);
        Set<Integer> clocks = new HashSet<>();
        Set<Conductor> starts = new LinkedHashSet<>();
        boolean same = units.size() <= 3;
        for (List<Winding> unit : units) {
            same &= unit.get(0).isDelta() == high.isDelta() && unit.get(1).isDelta() == low.isDelta() && isSingle(unit.get(0)) && isSingle(unit.get(1));
            if (same) {
                // Both windings of a tank are in phase.
                clocks.add(Math.floorMod(angle(unit.get(1)) - angle(unit.get(0)), 12));
                starts.add(start(unit.get(0)));
            }
        }
        Optional<String> joined = same && clocks.size() == 1 && starts.size() == units.size()
                ? joined(high, low, units.size(), clocks.iterator().next(), starts)
                : Optional.empty();
        if (joined.isEmpty()) {
            work.ledger().left(transformer, "its " + units.size() + " tanks are joined in no way that a network text knows");
            return;
        }
        String phases = units.size() == 3 ? "ABC" : high.isDelta() ? units.size() == 2 ? "ABC" : PhaseCodes.words(high.live()) : PhaseCodes.words(starts);
        double rating = units.stream().mapToDouble(u -> u.get(0).rating()).sum();
        boolean open = joined.get().startsWith("open") || joined.get().equals("single-phase");
        int clock = open && !joined.get().startsWith("open wye") ? -1 : clocks.iterator().next();
        for (List<Winding> unit : units.subList(1, units.size())) {
            reader.leakage(unit.get(0), unit.get(1));
        }
        write(transformer, high, low.node(), joined.get(), clock, phases, rating, low.lineToLine(), reader.leakage(high, low).orElse(null));
    }

    private Optional<String> joined(Winding high, Winding low, int many, int clock, Set<Conductor> starts) {
        if (many == 3) {
            return Optional.of(high.joined() + " to " + low.joined());
        } else if (many == 1) {
            // A network text has the low side of one unit on the phase on which the high side starts.
            boolean straight = !low.isDelta() && start(low) == start(high) && clock == (high.isDelta() ? 11 : 0);
            return straight ? Optional.of("single-phase") : Optional.empty();
        } else if (!high.isDelta()) {
            return Optional.of(low.isDelta() ? "open wye to open delta" : high.joined() + " to " + low.joined());
        }
        List<String> pairs = starts.stream().sorted().map(s -> s == Conductor.C ? "CA" : s == Conductor.A ? "AB" : "BC").toList();
        return low.isDelta() && clock == 0 ? Optional.of("open delta to open delta, windings " + pairs.get(0) + " and " + pairs.get(1)) : Optional.empty();
    }

    private static boolean isSingle(Winding winding) {
        int live = winding.live().size();
        return winding.live().stream().noneMatch(Conductor::isLeg) && (winding.isDelta() ? live == 2 : live == 1);
    }

    /** {@return by how many hours a winding's voltage leads that of phase A} */
    private static int angle(Winding winding) {
        Conductor first = winding.live().get(0);
        if (!winding.isDelta()) {
            return -first.clock();
        }
        // From a phase to the next it leads that phase by one hour, to the one before it lags by one.
        boolean next = Math.floorMod(winding.live().get(1).clock() - first.clock(), 12) == 4;
        return -first.clock() + (next ? 1 : -1);
    }

    /** {@return the phase on which a winding starts: of two the one before the other} */
    private static Conductor start(Winding winding) {
        List<Conductor> live = winding.live();
        boolean turned = winding.isDelta() && Math.floorMod(live.get(1).clock() - live.get(0).clock(), 12) != 4;
        return live.get(turned ? 1 : 0);
    }

    private void write(
            CimObject transformer, Winding high, CimObject lowNode, String joined, int clock, String phases, double rating, double lowVolts, Complex leakage) {
        String from = work.graph().name(high.node());
        String to = work.graph().name(lowNode);
        if (from.equals(to)) {
            model.mark("wrong-terminals", transformer, transformer + " has both sides at one node, " + from, "");
            return;
        }
        String name = work.names().of(transformer.name(), "transformer");
        work.ledger().element(transformer, name);
        boolean shifts = joined.contains("delta") && !joined.matches("(open )?delta to (open )?delta.*");
        if (clock >= 0 && clock % 2 != (shifts ? 1 : 0)) {
            model.mark("bad-figure", transformer, transformer + " is " + joined + " with clock " + clock + ", and such a bank has an " + (shifts ? "odd" : "even") + " number",
                    "look at the phaseAngleClock of its ends");
        }
        List<String> attributes = new ArrayList<>();
        attributes.add(work.kind("PowerTransformer", "transformer") + " " + name + " from " + from + " to " + to);
        attributes.add("phases " + phases);
        attributes.add(joined);
        attributes.add(clock > 0 || clock == 0 && shifts ? "clock " + clock : "");
        attributes.add("rating " + Work.number(rating / 1000) + " kVA");
        attributes.add("low voltage " + Work.number(low(transformer, high, lowVolts) / 1000) + " kV");
        if (leakage == null) {
            work.ledger().note(transformer, "nothing states its leakage impedance; it is written with 5 %, which is usual");
            attributes.add("impedance 5 %");
        } else {
            attributes.add("resistance " + Work.number(Math.max(LEAST, leakage.re() * 100)) + " %");
            attributes.add("reactance " + Work.number(Math.max(LEAST, leakage.im() * 100)) + " %");
        }
        work.line(HEADING, attributes);
    }

    /** {@return the low voltage, so that the turns ratio comes out right from the nominal voltage of the high side} */
    private double low(CimObject transformer, Winding high, double lowVolts) {
        double nominal = voltages.of(high.node());
        double rated = high.lineToLine();
        if (nominal <= 0 || Math.abs(rated / nominal - 1) < 1e-6) {
            return lowVolts;
        }
        boolean far = Math.abs(rated / nominal - 1) > RATIO;
        work.ledger().note(transformer, "its high winding is rated for " + Work.number(rated) + " V from phase to phase where " + Work.number(nominal) + " V are nominal; "
                + (far ? "its low voltage is written so that the turns ratio is right" : "its turns ratio is taken from the nominal voltage"));
        return far ? lowVolts * nominal / rated : lowVolts;
    }
}
