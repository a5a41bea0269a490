package org.keeplit.plain;

import java.util.ArrayList;
import java.util.List;

/** Valid ways to do a job at one device, to be spoiled by {@link Mutations}. */
final class Templates {
    private final Draw draw;
    private final List<MadeElement> elements;

    Templates(Draw draw, List<MadeElement> elements) {
        this.draw = draw;
        this.elements = elements;
    }

    private List<MadeElement> all(String... kinds) {
        return elements.stream().filter(e -> List.of(kinds).contains(e.kind())).toList();
    }

    /** {@return the steps of some job} */
    List<Part> job() {
        List<MadeElement> poles = elements.stream().filter(MadeElement::hasLeads).toList();
        List<MadeElement> regulators = all("regulator");
        List<MadeElement> banks = all("capacitor");
        List<MadeElement> devices = elements.stream().filter(MadeElement::isDevice).toList();
        for (int tries = 0; tries < 6; tries++) {
            int what = draw.below(10);
            if (what < 3 && !poles.isEmpty()) {
                MadeElement pole = draw.one(poles);
                return pole.startsOpen() || draw.chance(25) ? back(pole) : out(pole);
            } else if (what == 3 && !regulators.isEmpty()) {
                return regulator(draw.one(regulators));
            } else if (what == 4 && !banks.isEmpty() && !devices.isEmpty()) {
                MadeElement bank = draw.one(banks);
                return bank(bank, devices.stream()
                        .filter(d -> d.to().equals(bank.from()))
                        .findFirst()
                        .orElse(draw.one(devices)));
            } else if (what == 5) {
                return bench();
            } else if (what < 8 && devices.size() > 1) {
                return transfer(draw.one(devices), draw.one(devices));
            } else if (!devices.isEmpty()) {
                MadeElement device = draw.one(devices);
                return device.startsOpen() ? transfer(device, draw.one(devices)) : deadWork(device);
            }
        }
        return bench();
    }

    private String each(MadeElement d) {
        return "for each phase P of " + d.name() + (draw.chance(60) ? " in order" : "");
    }

    private List<Part> out(MadeElement d) {
        String n = d.name();
        List<Part> all = new ArrayList<>();
        if (draw.chance(50)) {
            all.addAll(hold(d));
        }
        if (draw.chance(50)) {
            all.add(Part.step("foreman puts " + n + " in non-reclose"));
            all.add(Part.step(draw.one("east goes aloft at " + n, "east and west go aloft at " + n)));
        }
        if (draw.chance(60)) {
            all.add(Part.step("east proves " + n + " closed, in order"));
        }
        Part install = Part.step("east and west install J around " + n + " on P, line to line"
                + draw.one("", ", source side first", ", load side first"));
        all.add(draw.chance(60)
                ? Part.group(each(d), install)
                : Part.group(each(d), install, Part.step("east proves J carries current on P")));
        all.add(Part.step("west opens " + n, "requires " + n + " is bypassed"));
        if (draw.chance(60)) {
            all.add(Part.step("west proves " + n + " open, in order"));
            all.add(Part.group(
                    each(d),
                    Part.group(
                            draw.one("together", "in order", "in any order"),
                            Part.step("east takes off the source lead of " + n + " at the line end on P"),
                            Part.step("west takes off the load lead of " + n + " at the line end on P"))));
            if (draw.chance(50)) {
                all.add(Part.step("east tests the source bushing of " + n + " dead, in order"));
            }
            all.add(Part.step("east lowers " + n + ", in order"));
        }
        if (all.toString().contains("east goes aloft")) {
            all.add(Part.step("east comes down"));
        }
        return all;
    }

    private List<Part> back(MadeElement d) {
        String n = d.name();
        List<Part> all = new ArrayList<>();
        if (draw.chance(50)) {
            all.add(Part.step("foreman raises " + n));
        }
        all.add(Part.step("east proves " + n + " open, in order"));
        all.add(Part.group(
                each(d),
                Part.step("east puts on the source lead of " + n + " at the line end on P"),
                Part.step("west puts on the load lead of " + n + " at the line end on P")));
        if (draw.chance(40)) {
            all.add(Part.step("east proves " + n + " in phase, in order"));
        }
        all.add(Part.step("west closes " + n, "expects " + n + " is closed"));
        if (draw.chance(50)) {
            all.add(Part.step("west proves " + n + " carries current, in order"));
        }
        all.add(Part.step("east removes J" + draw.one(", source side first", ", load side first")));
        if (draw.chance(40)) {
            all.add(Part.step("foreman releases H"));
        }
        return all;
    }

    private List<Part> hold(MadeElement d) {
        List<Part> all = new ArrayList<>(List.of(Part.step("foreman asks desk for H")));
        if (draw.chance(50)) {
            all.add(Part.step("desk blocks reclosing of every device that feeds " + d.name()));
        }
        if (draw.chance(30)) {
            all.add(Part.step("desk tags every device that feeds " + d.name()));
        }
        all.add(Part.step("desk issues H to foreman"));
        all.add(Part.step("foreman repeats H"));
        all.add(Part.step("desk confirms H"));
        return all;
    }

    private List<Part> regulator(MadeElement v) {
        List<MadeElement> near = elements.stream()
                .filter(e -> e.isDevice() && e.more().stream().anyMatch(m -> v.more().contains(m) && m.startsWith("at ")))
                .toList();
        String n = v.name();
        List<Part> all = new ArrayList<>(List.of(
                Part.step("east sets " + n + " to manual"),
                Part.step("east runs " + n + " to neutral"),
                Part.step("east proves " + n + " at neutral"),
                Part.step("east opens the control power of " + n)));
        if (draw.chance(30)) {
            all.add(Part.step("west checks " + n + " is at neutral"));
        }
        for (MadeElement e : near.stream().filter(MadeElement::startsOpen).toList()) {
            all.add(Part.step("west closes " + e.name()));
        }
        for (MadeElement e : near.stream().filter(e -> !e.startsOpen()).toList()) {
            all.add(Part.step("west opens " + e.name()));
        }
        return all;
    }

    private List<Part> bank(MadeElement c, MadeElement d) {
        if (d.startsOpen()) {
            return List.of(
                    Part.step("west waits until the node of " + c.name() + " is dead"),
                    Part.step("west closes " + d.name()));
        }
        return List.of(
                Part.step("west opens " + d.name()),
                Part.step("west waits 5 min with " + c.name() + " dead"),
                Part.step("west checks " + c.name() + " has been dead for 5 min"),
                Part.step("west closes " + d.name()));
    }

    private List<Part> bench() {
        Part inspect = Part.step("east inspects \"gasket\", finds \"good\", \"wet\" or \"torn\"");
        Part choice = new Part.Group(
                "if \"gasket\" is found \"wet\"",
                List.of(Part.step("east does \"a new one\""), Part.step("east records \"new gasket\"")),
                draw.chance(60) ? List.of(Part.step("west does \"cleans it\"", "records \"cleaned\"")) : null);
        List<Part> all = new ArrayList<>(List.of(inspect, choice));
        if (draw.chance(60)) {
            all.add(Part.group(
                    "repeat " + draw.one("", "at most ") + "2 times",
                    Part.step("west does \"works the handle\""),
                    draw.chance(50) ? inspect : Part.step("east records \"stroke\"")));
        }
        if (draw.chance(15)) {
            all.add(Part.step("east waits until \"new gasket\" is recorded"));
        }
        return draw.chance(40) ? List.of(Part.group("together", all)) : all;
    }

    private List<Part> transfer(MadeElement one, MadeElement other) {
        List<Part> all = new ArrayList<>(List.of(Part.step("desk " + (one.startsOpen() ? "closes " : "opens ") + one.name())));
        if (other != one) {
            all.add(Part.step("desk " + (other.startsOpen() ? "closes " : "opens ") + other.name()));
        }
        if (draw.chance(20)) {
            all.add(Part.step("west checks every load L is supplied"));
        }
        all.add(Part.step("desk " + (one.startsOpen() ? "opens " : "closes ") + one.name()));
        return all;
    }

    private List<Part> deadWork(MadeElement d) {
        String n = d.name();
        String at = (draw.chance(85) ? "the load-side line of " : "the source-side line of ") + n;
        List<Part> all = new ArrayList<>(List.of(Part.step("west opens " + n)));
        if (draw.chance(50)) {
            all.add(Part.step("foreman asks desk for K"));
            all.add(Part.step("west proves " + n + " open"));
            all.add(Part.step("west tags " + n));
            all.add(Part.step("desk issues K to foreman"));
            all.add(Part.step("foreman repeats K"));
            all.add(Part.step("desk confirms K"));
        }
        String phase = " on " + draw.one(d.labels());
        all.add(Part.step("west tests " + at + " dead" + phase));
        all.add(Part.step("west applies G to " + at + phase + draw.one(", ground end first", ", ground end first", "")));
        if (draw.chance(50)) {
            all.add(Part.step("west works on " + at + phase + ": \"clamp\""));
        }
        if (draw.chance(60)) {
            all.add(Part.step("west removes G" + phase + ", line end first"));
            if (all.toString().contains("west tags")) {
                all.add(Part.step("foreman releases K"));
                all.add(Part.step("west takes the tag off " + n));
            }
            all.add(Part.step("west closes " + n));
        }
        return all;
    }
}
