package org.keeplit.plain;

import java.util.ArrayList;
import java.util.List;

/** Steps that may stand anywhere. */
final class ExtraSteps {
    private final Draw draw;
    private final List<MadeElement> elements;
    private final MadeElement around;
    private final MadeElement grounded;

    ExtraSteps(Draw draw, List<MadeElement> elements, MadeElement around, MadeElement grounded) {
        this.draw = draw;
        this.elements = elements;
        this.around = around;
        this.grounded = grounded;
    }

    Part make() {
        List<MadeElement> devices = elements.stream().filter(MadeElement::isDevice).toList();
        List<MadeElement> regulators = elements.stream().filter(e -> e.kind().equals("regulator")).toList();
        int what = draw.below(9);
        if (what < 3 && !devices.isEmpty()) {
            return Part.step(onDevice(draw.one(devices)));
        } else if (what == 3 && !regulators.isEmpty()) {
            String v = draw.one(regulators).name();
            return Part.step("east " + draw.one(
                    "sets " + v + " to automatic", "sets " + v + " to manual", "runs " + v + " to neutral",
                    "proves " + v + " at neutral", "closes the control power of " + v,
                    "opens the control power of " + v));
        } else if (what == 4) {
            return Part.step(draw.one(
                    "foreman asks desk for K", "desk issues H to foreman", "foreman releases K", "foreman releases H",
                    "east comes down", "west comes down", "east goes aloft at " + around.name(),
                    "west goes aloft at " + grounded.name(), "foreman records \"sheet\""));
        } else if (what == 5 || what == 6) {
            return Part.step(jumper());
        } else if (what == 7) {
            return Part.step(ground());
        }
        return check();
    }

    private String jumper() {
        String n = around.name();
        String p = phase(around);
        return draw.one(
                "east puts the first clamp of J on the source-side line of " + n + p,
                "east puts the second clamp of J on the load-side line of " + n + p,
                "west puts the second clamp of J on the source-side line of " + n + p,
                around.hasLeads()
                        ? "west puts the second clamp of J on the load bushing of " + n + p
                        : "west removes J" + p,
                "east takes the first clamp of J off" + p,
                "east takes the second clamp of J off" + p,
                "east removes J" + p,
                "east proves J carries current" + p,
                around.labels().size() > 1
                        ? "west puts the second clamp of J" + p + " on the load-side line of " + n + phase(around)
                        : "west proves J carries current" + p);
    }

    private String ground() {
        String at = draw.one("the load-side line of ", "the source-side line of ") + grounded.name();
        String p = phase(grounded);
        return draw.one(
                "east applies G to " + at + p + draw.one("", ", ground end first", ", line end first"),
                "east removes G" + p + draw.one("", ", ground end first", ", line end first"),
                "east tests " + at + " dead" + p,
                "east works on " + at + p + ": \"words\"");
    }

    private String onDevice(MadeElement d) {
        String n = d.name();
        String p = draw.chance(50) ? "" : phase(d);
        List<String> all = new ArrayList<>(List.of(
                "opens " + n + p, "closes " + n + p, "proves " + n + " open" + p, "proves " + n + " closed" + p,
                "proves " + n + " carries current" + p, "proves " + n + " in phase" + p, "tags " + n,
                "takes the tag off " + n));
        if (d.hasLeads()) {
            for (String side : List.of("source", "load")) {
                all.add("takes off the " + side + " lead of " + n + " at the " + draw.one("line", "bushing") + " end" + p);
                all.add("puts on the " + side + " lead of " + n + " at the " + draw.one("line", "bushing") + " end" + p);
                if (d.labels().size() > 1) {
                    all.add("puts on the " + side + " lead of " + n + " at the line end" + phase(d) + ", onto phase "
                            + draw.one(d.labels()));
                }
            }
            all.add("puts " + n + " in non-reclose" + p);
            all.add("lowers " + n + p);
            all.add("raises " + n + p);
            all.add("takes " + n + " to the shop");
        }
        if (d.kind().equals("electronic-recloser")) {
            all.add("puts " + n + " to local");
            all.add("puts " + n + " to remote");
        }
        if (d.kind().equals("recloser") || d.kind().equals("breaker")) {
            all.add("restores reclosing of " + n);
            all.add("blocks ground trip of " + n);
        }
        return draw.one("east", "west") + " " + draw.one(all);
    }

    private Part check() {
        String d = around.name();
        return draw.one(
                Part.step("east checks " + d + " is closed" + phase(around)),
                Part.step("east checks " + d + " is open"),
                Part.step("west checks every load L is supplied"),
                Part.step("west waits until " + d + " is open" + phase(around)),
                Part.step("west does \"looks\"", "expects " + d + " is closed"),
                Part.step("west does \"looks\"", "requires " + d + " is closed"),
                Part.step("east checks the load-side line of " + d + " is alive" + phase(around)));
    }

    private String phase(MadeElement d) {
        return " on " + draw.one(d.labels());
    }
}
