package org.keeplit.gridfile;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import org.keeplit.network.Conductor;

/** Line sections, with the clamps and cuts that part them. */
final class LineTranslator {
    private static final String HEADING = "Line sections.";
    /** Where a clamp sits at the very end of a segment the piece beside it has no length, and a line must have one, in metres. */
    private static final double SHORTEST = 0.1;
    /** A clamp or a cut on a segment. @param at metres from its first terminal @param object which */
    private record On(double at, CimObject object) {}

    private final Work work;
    private final CimModel model;
    private final Impedances impedances;
    private final Limits limits;
    private final Map<CimObject, List<On>> marks = new HashMap<>();

    LineTranslator(Work work, Limits limits, double hertz) {
        this.work = work;
        this.model = work.model();
        this.impedances = new Impedances(work, hertz);
        this.limits = limits;
    }

    void translate() {
        for (String type : List.of("Clamp", "Cut")) {
            for (CimObject mark : model.all(type)) {
                model.follow(mark, "ACLineSegment").ifPresent(segment -> marks.computeIfAbsent(segment, s -> new ArrayList<>())
                        .add(new On(model.number(mark, "lengthFromTerminal1", 0), mark)));
            }
        }
        model.all("ACLineSegment").forEach(this::segment);
    }

    private void segment(CimObject segment) {
        List<CimObject> at = work.graph().nodes(segment, 2).orElse(List.of());
        List<CimObject> parts = model.pointing(segment, "ACLineSegmentPhase", "ACLineSegment");
        List<Conductor> phases = new ArrayList<>();
        for (CimObject part : parts) {
            work.ledger().part(part);
            PhaseCodes.one(model, part, "phase").ifPresent(phases::add);
        }
        if (parts.isEmpty()) {
            phases.addAll(List.of(Conductor.A, Conductor.B, Conductor.C));
        }
        Set<Conductor> live = new LinkedHashSet<>(phases);
        live.remove(Conductor.N);
        if (at.isEmpty() || phases.size() < parts.size()) {
            return;
        }
        if (live.isEmpty() || new LinkedHashSet<>(phases).size() < phases.size() && phases.stream().filter(p -> p != Conductor.N).count() > live.size()) {
            model.mark("bad-phase", segment, segment + (live.isEmpty() ? " has a neutral only" : " has a phase twice"), "each ACLineSegmentPhase says a phase of its own");
            return;
        }
        double length = length(segment);
        Impedances.Made made = impedances.of(segment, parts, phases, length);
        String name = work.names().of(segment.name(), "line");
        work.ledger().element(segment, name);
        write(segment, name, at, PhaseCodes.words(live), length, made);
    }

    private double length(CimObject segment) {
        if (!model.says(segment, "length") && model.says(segment, "x")) {
            work.ledger().note(segment, "it states its whole impedance and no length, so it is written as 1 km of that much per km");
            return 1000;
        }
        return model.positive(segment, "length", "metres");
    }

    /** Writes the pieces of a segment, from its end nearer to a source. */
    private void write(CimObject segment, String name, List<CimObject> at, String phases, double length, Impedances.Made made) {
        List<On> on = new ArrayList<>(marks.getOrDefault(segment, List.of()));
        on.sort(Comparator.comparingDouble(On::at));
        List<String> ends = new ArrayList<>();
        ends.add(work.graph().name(at.get(0)));
        List<Double> lengths = new ArrayList<>();
        double before = 0;
        for (On mark : on) {
            boolean cut = mark.object.type().equals("Cut");
            List<CimObject> tied = work.graph().nodes(mark.object, cut ? 2 : 1).orElse(List.of());
            if (tied.isEmpty()) {
                return;
            }
            if (mark.at < before || mark.at > length) {
                model.mark("bad-figure", mark.object, mark.object + " sits at " + Work.number(mark.at) + " m of " + segment + ", which is "
                        + Work.number(length) + " m long", "");
                return;
            }
            lengths.add(mark.at - before);
            before = mark.at;
            ends.add(work.graph().name(tied.get(0)));
            ends.add(work.graph().name(tied.get(cut ? 1 : 0)));
            if (!cut) {
                work.ledger().part(mark.object);
            }
        }
        lengths.add(length - before);
        ends.add(work.graph().name(at.get(1)));
        boolean turned = work.graph().isTurned(at.get(0), at.get(1));
        OptionalDouble ampacity = limits.normal(work.graph().terminals(segment));
        for (int i = 0; i < lengths.size(); i++) {
            String own = i == 0 ? name : work.names().of(name + "-" + (i + 1), "line");
            String from = ends.get(2 * i + (turned ? 1 : 0));
            String to = ends.get(2 * i + (turned ? 0 : 1));
            if (from.equals(to)) {
                model.mark("wrong-terminals", segment, segment + " begins and ends at the same node, " + from, "");
                continue;
            }
            List<String> attributes = new ArrayList<>();
            attributes.add(made.kind() + " " + own + " from " + from + " to " + to);
            attributes.add("phases " + phases);
            // One that is whole keeps its length, however short: figures of the whole of it were divided by that.
            attributes.add("length " + Work.number(lengths.size() == 1 ? length : Math.max(lengths.get(i), SHORTEST)) + " m");
            attributes.addAll(made.attributes());
            double amperes = ampacity.orElse(made.ampacity());
            attributes.add(amperes > 0 ? "ampacity " + Work.number(amperes) + " A" : "");
            work.line(HEADING, attributes);
        }
        if (lengths.size() > 1) {
            work.ledger().note(segment, "it is written as " + lengths.size() + " pieces, parted where clamps and cuts sit on it");
        }
    }
}
