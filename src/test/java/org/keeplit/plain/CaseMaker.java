package org.keeplit.plain;

import java.util.ArrayList;
import java.util.List;

/** Makes whole cases. */
final class CaseMaker {
    private static final List<String> BOOKS = List.of(
            "no-interruption", "live-line", "de-energized", "good-housekeeping", "bypass-removed", "regulators", "tagging", "capacitors",
            "protection");

    private CaseMaker() {}

    /** {@return a case; it may still have a mistake in it that the reader refuses} @param draw the chance */
    static MadeCase make(Draw draw) {
        return make(draw, false);
    }

    /** {@return a case that brings a generating set now and then} */
    static MadeCase makeWithSets(Draw draw) {
        return make(draw, false, 10);
    }

    /** {@return a job with what is done to a generating set here and there, mostly in an order that makes sense} */
    private static List<Part> withSet(Draw own, List<Part> job, String at) {
        String connect = "east connects Q to the " + own.one("load", "load", "source") + "-side line of " + at;
        List<String> steps = own.chance(75)
                ? List.of(connect, "east starts Q", "east stops Q", "east disconnects Q").subList(0, own.between(1, 4))
                : own.shuffled(List.of(connect, "east starts Q", "east stops Q"));
        List<Part> all = new ArrayList<>(job);
        int from = 0;
        for (String step : steps) {
            from = own.between(from, all.size());
            all.add(from++, Part.step(step));
        }
        return all;
    }

    /** {@return a case} @param trips whether devices state currents at which they trip, so low that they may */
    static MadeCase make(Draw draw, boolean trips) {
        return make(draw, trips, 0);
    }

    private static MadeCase make(Draw draw, boolean trips, int sets) {
        List<MadeElement> elements = NetworkMaker.make(draw, trips);
        List<MadeElement> devices = elements.stream().filter(MadeElement::isDevice).toList();
        while (devices.isEmpty()) {
            elements = NetworkMaker.make(draw, trips);
            devices = elements.stream().filter(MadeElement::isDevice).toList();
        }
        List<Part> job = new Templates(draw, elements).job();
        String said = job.toString();
        MadeElement around = named(devices, said, " J around (d-\\d+)").orElse(draw.one(poles(devices)));
        MadeElement grounded = named(devices, said, "-side line of (d-\\d+)").orElse(draw.one(devices));
        ExtraSteps extra = new ExtraSteps(draw, elements, around, grounded);
        Mutations mutations = new Mutations(draw, elements, extra);
        int changes = draw.one(0, 0, 0, 0, 1, 1, 2, 3);
        for (int i = 0; i < changes; i++) {
            job = mutations.mutate(job);
        }
        if (draw.chance(25)) {
            String talk = draw.one(
                    "foreman briefs east", "foreman briefs east and west", "east briefs foreman, west and desk",
                    "foreman does \"talks\"");
            job = new ArrayList<>(job);
            job.add(draw.below(job.size() + 1), draw.chance(70)
                    ? Part.step(talk)
                    : Part.step(talk, "requires " + around.name() + draw.one(" is open", " is closed")));
        }
        List<String> header = new ArrayList<>(List.of(
                "temporary",
                "bypass-jumper J for each phase of " + around.name(),
                "ground-set G for each phase of " + grounded.name(),
                "hold H for " + around.name() + ", held at every device that feeds " + around.name() + " and at "
                        + around.name() + ", by foreman, with east and west",
                "clearance K for " + grounded.name() + ", held at " + grounded.name() + ", by foreman"));
        // From the case itself, so that what is drawn after it stays as it was where no set is brought.
        Draw own = new Draw(elements.toString().hashCode() * 31L + job.toString().hashCode());
        if (own.chance(sets)) {
            header.add(1, "mobile-generator Q for each phase of " + grounded.name());
            job = withSet(own, job, grounded.name());
        }
        List<String> loads = elements.stream()
                .filter(e -> e.kind().equals("load"))
                .map(MadeElement::name)
                .toList();
        if (!loads.isEmpty() && draw.chance(40)) {
            header.add("planned outage of " + String.join(", ", draw.shuffled(loads).subList(0, draw.between(1, loads.size()))));
        }
        List<String> books = draw.shuffled(BOOKS).subList(0, draw.one(1, 1, 1, 1, 1, 2, 3));
        List<String> rules = draw.chance(40) ? new RuleMaker(draw).rules(2) : List.of();
        List<String> ends = draw.chance(15)
                ? List.of(draw.one("every load L is supplied", around.name() + " is closed", "no person W is aloft at the site of "
                        + around.name()))
                : List.of();
        return new MadeCase(elements, header, starts(draw, elements, around, said), job, ends, books, rules);
    }

    private static List<MadeElement> poles(List<MadeElement> devices) {
        List<MadeElement> poles = devices.stream().filter(MadeElement::hasLeads).toList();
        return poles.isEmpty() ? devices : poles;
    }

    private static java.util.Optional<MadeElement> named(List<MadeElement> devices, String said, String pattern) {
        return java.util.regex.Pattern.compile(pattern)
                .matcher(said)
                .results()
                .findFirst()
                .map(m -> m.group(1))
                .flatMap(n -> devices.stream().filter(d -> d.name().equals(n)).findFirst());
    }

    private static List<String> starts(Draw draw, List<MadeElement> elements, MadeElement around, String said) {
        List<String> all = new ArrayList<>();
        boolean back = said.contains("puts on the source lead");
        if (back) {
            all.add("given " + around.name() + " is open");
            all.add("given the source lead of " + around.name() + " is off");
            all.add("given the load lead of " + around.name() + " is off");
            all.add("given J is installed");
            if (said.contains("raises")) {
                all.add("given " + around.name() + " is on the ground");
            }
            if (said.contains("releases H")) {
                all.add("given H is in force");
            }
        } else if (draw.chance(20)) {
            MadeElement other = draw.one(elements.stream().filter(MadeElement::isDevice).toList());
            String phase = draw.one(other.labels());
            all.add("given " + other.name() + " is " + draw.one("open", "closed")
                    + (other.more().contains("single-phase units") ? " on " + phase : ""));
        } else if (draw.chance(10)) {
            all.add("given J is installed on " + draw.one(around.labels()));
        }
        List<MadeElement> regulators = elements.stream().filter(e -> e.kind().equals("regulator")).toList();
        if (!regulators.isEmpty() && draw.chance(30)) {
            String v = draw.one(regulators).name();
            all.add("given control of " + v + " is manual");
            if (draw.chance(60)) {
                all.add("given " + v + " is at neutral");
            }
        }
        return all;
    }
}
