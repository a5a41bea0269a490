package org.keeplit.plain;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.keeplit.condition.Figure;
import org.keeplit.condition.Measure;
import org.keeplit.network.ClosingDuty;
import org.keeplit.network.Conductor;
import org.keeplit.network.Connection;
import org.keeplit.network.Element;
import org.keeplit.network.OpeningDuty;
import org.keeplit.network.Trait;
import org.keeplit.unit.Quantity;

/** The figures of switching, of short circuits and of trapped charge, in one state. */
final class PlainSwitching {
    private static final double SQRT3 = Math.sqrt(3);

    private final PlainFigures figures;

    PlainSwitching(PlainFigures figures) {
        this.figures = figures;
    }

    static double across(PlainFlow flow, Joint contact) {
        return flow.volts(contact.a()).minus(flow.volts(contact.b())).size();
    }

    /** {@return the degrees between both sides; 0 where one is dead} */
    static double angle(PlainFlow flow, Joint contact) {
        Cx a = flow.volts(contact.a());
        Cx b = flow.volts(contact.b());
        if (a.size() == 0 || b.size() == 0) {
            return 0;
        }
        double apart = Math.toDegrees(Math.atan2(a.im(), a.re()) - Math.atan2(b.im(), b.re()));
        return Math.abs(Math.IEEEremainder(apart, 360));
    }

    /** {@return the recovery voltage, the closing current, or that times the cold load factor} */
    double after(Measure measure, Joint contact, int loadCase) {
        PlainFlow flow = figures.flow(loadCase, contact, measure != Measure.RECOVERY);
        if (!flow.settled()) {
            return Double.NaN;
        } else if (measure == Measure.RECOVERY) {
            return across(flow, contact);
        }
        double amperes = flow.through(contact).size();
        boolean cold = measure == Measure.COLD_LOAD && figures.circuit().closing(contact) == ClosingDuty.PICKUP;
        boolean stated = measure != Measure.COLD_LOAD || !Double.isNaN(system("cold load factor"));
        return !stated ? Double.NaN : cold ? amperes * system("cold load factor") : amperes;
    }

    private double system(String name) {
        Quantity found = figures.scenery().names().bound().network().system().get(name);
        return found == null ? Double.NaN : found.si();
    }

    double withoutLoad(Figure.Measured measured, Thing it, Map<String, Thing> env, Conductor p) {
        return switch (measured.measure()) {
            case FAULT_CURRENT -> figures.flow(0).fault(figures.scenery().vertex(it, p));
            case FAULT_THROUGH -> fault(figures.contact(it, p));
            case SECTION_FAULT, SECTION_GROUND -> least(
                    it.name(),
                    figures.scenery().thing(measured.beyond().orElseThrow(), env).name(),
                    measured.measure() == Measure.SECTION_GROUND);
            case AVAILABLE -> available(it, p);
            case WITHSTAND -> withstand(it);
            case TRAPPED -> trapped(p, bank -> figures.circuit().now().joined(bank, figures.scenery().vertex(it, p)));
            case TRAPPED_BEHIND -> {
                Voltages then = figures.circuit().switched(figures.contact(it, p), true);
                yield trapped(p, bank -> then.level(bank) >= Voltages.BACKFED);
            }
            case INRUSH -> inrush(figures.contact(it, p), p);
            default -> throw new IllegalStateException("load matters to " + measured.measure());
        };
    }

    /** {@return the largest fault current on either side of a contact} */
    double fault(Joint contact) {
        PlainFlow flow = figures.flow(0);
        return Math.max(fault(flow, contact.a()), fault(flow, contact.b()));
    }

    private static double fault(PlainFlow flow, String place) {
        return PlainPieces.ground(place) == null ? 0 : flow.fault(place);
    }

    private double available(Thing piece, Conductor p) {
        double most = 0;
        for (String place : figures.scenery().wiring().lineVertices(figures.scenery().siteOf(piece))) {
            if (place.endsWith("/" + p)) {
                most = Math.max(most, fault(figures.flow(0), place));
                most = Math.max(most, fault(figures.scenery().start().flow(0), place));
            }
        }
        return most;
    }

    private double withstand(Thing piece) {
        Map<String, Quantity> ratings =
                figures.scenery().names().bound().temporary(piece.name()).orElseThrow().kind().ratings();
        if (!ratings.containsKey("short-time") || !ratings.containsKey("short-time duration")) {
            return Double.NaN;
        }
        double rated = ratings.get("short-time duration").si();
        double longest = rated;
        for (String device : figures.scenery().start().circuit().feeding(figures.scenery().siteOf(piece))) {
            Quantity clearing = figures.scenery().names().element(device).figures().get("clearing time");
            longest = Math.max(longest, clearing == null ? Double.NaN : clearing.si());
        }
        return ratings.get("short-time").si() * Math.sqrt(rated / longest);
    }

    private double inrush(Joint contact, Conductor p) {
        Voltages then = figures.circuit().switched(contact, true);
        double sum = 0;
        for (Element element : figures.scenery().names().bound().network().elements()) {
            if (element instanceof Element.Transformer bank && bank.phases().contains(p)) {
                String place = Names.node(bank.from(), p);
                boolean comes = figures.circuit().now().level(place) != Voltages.ENERGIZED
                        && then.level(place) == Voltages.ENERGIZED;
                Quantity own = bank.figures().get("inrush factor");
                double factor = own == null ? system("inrush factor") : own.si();
                double amperes = factor * ratedAmperes(bank, figures.pieces().nominal(place));
                // A factor that nobody states spoils the sum, whether or not this bank comes alive.
                sum += comes || Double.isNaN(factor) ? amperes : 0;
            }
        }
        return sum;
    }

    private static double ratedAmperes(Element.Transformer bank, double toGround) {
        double all = bank.figures().get("rating").si();
        int units = bank.windings().size();
        if (units == 3) {
            return all / 3 / toGround;
        }
        return all / units / (bank.primary() == Connection.DELTA ? SQRT3 * toGround : toGround);
    }

    /** {@return the most that banks on a phase may have kept, of those that count} */
    private double trapped(Conductor p, Predicate<String> counts) {
        double most = 0;
        boolean unstated = false;
        for (Element element : figures.scenery().names().bound().network().elements()) {
            if (element instanceof Element.Capacitor bank && bank.phases().contains(p)) {
                Quantity residual = bank.kind().ratings().get("residual voltage");
                Quantity time = bank.kind().ratings().get("discharge time");
                unstated |= residual == null || time == null;
                if (!unstated && counts.test(Names.node(bank.node(), p))) {
                    most = Math.max(most, kept(bank, p, residual.si(), time.si()));
                }
            }
        }
        return unstated ? Double.NaN : most;
    }

    private double kept(Element.Capacitor bank, Conductor p, double residual, double seconds) {
        Voltages now = figures.circuit().now();
        String place = Names.node(bank.node(), p);
        boolean alone = bank.connection() == Connection.GROUNDED_WYE;
        boolean shorted = bank.phases().list().stream()
                .filter(q -> q.isPhase() && (!alone || q == p))
                .allMatch(q -> now.isEarthed(Names.node(bank.node(), q)));
        if (shorted || now.level(place) >= Voltages.BACKFED) {
            return 0;
        }
        double peak = Math.sqrt(2) * figures.pieces().nominal(place) * (alone ? 1 : SQRT3);
        double waited = 60.0 * figures.circuit().waited(bank.name(), p);
        // By equal parts in equal times, as a resistor takes it.
        return peak * Math.exp(Math.log(residual / peak) * waited / seconds);
    }

    /** {@return the least that a device's poles see of faults in the section beyond another} */
    private double least(String device, String other, boolean ground) {
        double ohms = system("fault resistance");
        if (ground && Double.isNaN(ohms)) {
            return Double.NaN;
        }
        List<Joint> poles = figures.poles(device);
        Set<String> section = section((Element.Branch) figures.scenery().names().element(other));
        double least = Double.POSITIVE_INFINITY;
        for (String place : section) {
            double nominal = figures.pieces().nominal(place);
            if (ground) {
                List<Cx> seen = figures.flow(0).faulted(place, null, ohms, nominal, poles);
                least = Math.min(least, seen == null ? least : residual(seen));
                continue;
            }
            String node = place.substring(0, place.lastIndexOf('/') + 1);
            for (Conductor p : Conductor.values()) {
                String touched = node + p;
                if (section.contains(touched) && place.compareTo(touched) < 0) {
                    List<Cx> seen = figures.flow(0).faulted(place, touched, 0, nominal, poles);
                    least = Math.min(least, seen == null ? least : largest(seen));
                }
            }
        }
        return least;
    }

    private static double residual(List<Cx> seen) {
        return share(seen, seen.subList(1, seen.size()).stream().reduce(Cx.ZERO, Cx::plus).size());
    }

    private static double largest(List<Cx> seen) {
        return share(seen, seen.subList(1, seen.size()).stream().mapToDouble(Cx::size).max().orElse(0));
    }

    /** Of less than a hundredth of a fault a device sees nothing. */
    private static double share(List<Cx> seen, double amperes) {
        return amperes < 0.01 * seen.get(0).size() ? Double.POSITIVE_INFINITY : amperes;
    }

    /** {@return the line places beyond a device, up to what clears a fault by itself} */
    private Set<String> section(Element.Branch device) {
        String site = figures.scenery().names().site(device.name());
        Set<String> sources = new HashSet<>();
        figures.scenery().names().bound().network().all(Element.Source.class)
                .forEach(s -> s.phases().forEach(p -> sources.add(Names.node(s.node(), p))));
        Set<String> sourced = spread(sources, j -> !j.isContact() || !j.site().equals(site));
        Set<String> start = new HashSet<>();
        device.phases().forEach(p -> start.add(Names.node(device.to(), p)));
        Set<String> all = spread(start, j -> {
            boolean clears = j.part() == Joint.Part.POLE
                    && (j.kind().has(Trait.FUSIBLE)
                            || j.kind().has(Trait.TRIPS) && j.kind().breaks().contains(OpeningDuty.FAULT));
            boolean beside = j.isContact()
                    && j.site().equals(site)
                    && (sourced.contains(j.a()) || sourced.contains(j.b()));
            return !clears && !beside && !(j.isContact() && j.owner().equals(device.name()));
        });
        all.removeIf(place -> PlainPieces.ground(place) == null
                || place.indexOf('/') != place.lastIndexOf('/')
                || !figures.scenery().names().bound().network().nodes().containsKey(place.substring(0, place.indexOf('/'))));
        return all;
    }

    private Set<String> spread(Set<String> from, Predicate<Joint> through) {
        Set<String> seen = new HashSet<>(from);
        boolean more = true;
        while (more) {
            more = false;
            for (Joint joint : figures.scenery().wiring().joints()) {
                boolean joins = figures.circuit().isClosed(joint)
                        && through.test(joint)
                        && !joint.a().equals(Names.EARTH)
                        && !joint.b().equals(Names.EARTH);
                if (joins && seen.contains(joint.a()) != seen.contains(joint.b())) {
                    seen.add(joint.a());
                    seen.add(joint.b());
                    more = true;
                }
            }
        }
        return seen;
    }
}
