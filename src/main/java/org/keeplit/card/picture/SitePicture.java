package org.keeplit.card.picture;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.keeplit.explore.Standing;
import org.keeplit.network.Base;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.LeadEnd;
import org.keeplit.network.Phases;
import org.keeplit.network.Place;
import org.keeplit.network.Side;
import org.keeplit.network.Trait;
import org.keeplit.procedure.Temporary;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Vertex;

/**
 * The work site phase by phase: of each device the line on both sides, leads, bushings and poles, and what is clamped on. What a step
 * changed is boxed.
 */
public final class SitePicture {
    private static final double WIDTH = 540;
    private static final double ROW = 50;
    private static final double HEAD = 18;
    private static final double LEFT = 92;
    private static final double RIGHT = WIDTH - LEFT;
    private static final double MIDDLE = WIDTH / 2;
    private static final double BESIDE = 36;

    private final Standing before;
    private final Standing now;
    private final Svg svg = new Svg();
    /** Where clamps find the places that are drawn. */
    private final Map<Vertex, double[]> spots = new HashMap<>();
    /** How many grounds are drawn on a place. */
    private final Map<double[], Integer> grounds = new IdentityHashMap<>();
    private double y;

    private final Set<Conductor> phases;

    private SitePicture(Standing before, Standing now, Set<Conductor> phases) {
        this.phases = phases;
        this.before = before;
        this.now = now;
    }

    /**
     * Draws, with what hangs at the ends of the devices.
     *
     * @param devices the devices and regulators to draw, from top to bottom
     * @param before how everything stood before; the same as now where nothing is to be marked
     * @param now how everything stands
     * @param title what the picture shows
     * @return the picture as SVG
     */
    public static String of(List<Element.Branch> devices, Standing before, Standing now, String title) {
        SitePicture picture = new SitePicture(before, now, ImmutableSet.copyOf(Phases.ABC));
        Hanging hanging = new Hanging(before, now, WIDTH, picture.svg);
        Set<String> drawn = new HashSet<>();
        devices.forEach(device -> drawn.add(device.name()));
        for (Element.Branch device : devices) {
            picture.device(device);
            picture.y = hanging.draw(device, drawn, picture.y);
        }
        return picture.whole(title);
    }

    /** Draws only some phases, and only the devices. @param phases which */
    public static String of(List<Element.Branch> devices, Set<Conductor> phases, Standing before, Standing now, String title) {
        SitePicture picture = new SitePicture(before, now, phases);
        devices.forEach(picture::device);
        return picture.whole(title);
    }

    private String whole(String title) {
        now.program().bound().temporaries().forEach(this::temporary);
        return svg.whole(WIDTH, Math.max(ROW, y), title);
    }

    private void device(Element.Branch device) {
        svg.text(4, y + 12, Svg.Anchor.START, true, device.name());
        svg.text(WIDTH - 4, y + 12, Svg.Anchor.END, false, device.kind().name() + where(device));
        y += HEAD;
        for (Conductor phase : device.phases()) {
            if (phase.isPhase() && phases.contains(phase)) {
                row(device, phase);
                y += ROW;
            }
        }
    }

    private static String where(Element.Branch device) {
        if (device instanceof Element.Device d) {
            return " at " + d.site();
        }
        return device instanceof Element.Regulator r ? " at " + r.site() : "";
    }

    private void row(Element.Branch device, Conductor phase) {
        double at = y + 28;
        boolean leads = device instanceof Element.Device && device.kind().has(Trait.LEADS);
        boolean there = !(device instanceof Element.Device d) || place(now, d, phase) == Place.values()[0];
        side(device, phase, Side.SOURCE, at, leads, there);
        side(device, phase, Side.LOAD, at, leads, there);
        double left = MIDDLE - Symbols.WIDTH / 2;
        if (!(device instanceof Element.Device unit)) {
            Symbols.regulator(svg, left, at);
            return;
        }
        FieldKey pole = new FieldKey.Pole(unit.name(), key(unit, phase));
        boolean closed = now.value(pole) == 1;
        boolean moved = place(before, unit, phase) != place(now, unit, phase);
        if (there) {
            Symbols.contact(svg, left, at, unit.kind(), closed);
            svg.text(MIDDLE, at + 17, Svg.Anchor.MIDDLE, true, closed ? "closed" : "open");
        } else {
            svg.text(MIDDLE, at + 4, Svg.Anchor.MIDDLE, true, place(now, unit, phase).phrase());
        }
        if (moved) {
            changed(left - 30, at - 17, Symbols.WIDTH + 60, 38);
        } else if (before.value(pole) != now.value(pole)) {
            changed(left - 6, at - 17, Symbols.WIDTH + 12, 38);
        }
    }

    /** {@return the phase under which a device's poles are kept: the first where they move together} */
    private static Conductor key(Element.Device device, Conductor phase) {
        return device.ganged() ? device.phases().list().get(0) : phase;
    }

    private static Place place(Standing standing, Element.Device device, Conductor phase) {
        return Place.values()[standing.value(new FieldKey.Placed(device.name(), key(device, phase)))];
    }

    /** Draws from the far end towards the pole; mirrored on the load side. Of a unit that is not there only the line is left. */
    private void side(Element.Branch device, Conductor phase, Side side, double at, boolean leads, boolean there) {
        Vertex node = new Vertex.AtNode(device.node(side), phase);
        Look look = Look.of(now, node).orElse(Look.UNKNOWN);
        label(phase, side, at, look, node);
        if (!leads) {
            wire(side, 0, 158, at, look);
            spots.put(node, new double[] {x(side, 30), at});
            return;
        }
        wire(side, 0, 52, at, look);
        spots.put(node, new double[] {x(side, 26), at});
        if (!there) {
            svg.circle(x(side, 52), at, 2.5, false);
            return;
        }
        Vertex lead = new Vertex.Lead(device.name(), side, phase);
        Vertex bushing = new Vertex.Bushing(device.name(), side, phase);
        end(device, side, phase, LeadEnd.LINE, 52, at, look);
        wire(side, 66, 108, at, Look.of(now, lead).orElse(look));
        spots.put(lead, new double[] {x(side, 87), at});
        end(device, side, phase, LeadEnd.BUSHING, 108, at, Look.of(now, bushing).orElse(look));
        wire(side, 122, 158, at, Look.of(now, bushing).orElse(look));
        svg.circle(x(side, 140), at, 3.5, false);
        spots.put(bushing, new double[] {x(side, 140), at});
    }

    private void label(Conductor phase, Side side, double at, Look look, Vertex node) {
        boolean left = side == Side.SOURCE;
        svg.text(left ? 4 : WIDTH - 4, at + 4, left ? Svg.Anchor.START : Svg.Anchor.END, true, phase + " " + look.word());
        if (look == Look.GROUNDED) {
            Symbols.earth(svg, left ? LEFT - 10 : RIGHT + 10, at + 8);
        }
        if (!Look.of(before, node).equals(Look.of(now, node))) {
            changed(left ? 1 : WIDTH - 85, at - 9, 84, 17);
        }
    }

    /** One end of a lead: a joint when it is on, a gap between two open circles when it is off. */
    private void end(Element.Branch device, Side side, Conductor phase, LeadEnd end, double from, double at, Look look) {
        FieldKey key = new FieldKey.End(device.name(), side, phase, end);
        double middle = x(side, from + 7);
        if (now.value(key) == 0) {
            svg.circle(x(side, from), at, 2.5, false);
            svg.circle(x(side, from + 14), at, 2.5, false);
            svg.text(middle, at + 15, Svg.Anchor.MIDDLE, true, "off");
        } else {
            wire(side, from, from + 14, at, look);
            svg.circle(middle, at, 2.5, true);
            if (now.value(key) > 1) {
                svg.text(middle, at + 15, Svg.Anchor.MIDDLE, true, "on " + Conductor.values()[now.value(key) - 2]);
            }
        }
        if (now.value(key) != before.value(key)) {
            changed(middle - 13, at - 9, 26, 27);
        }
    }

    private static double x(Side side, double along) {
        return side == Side.SOURCE ? LEFT + along : RIGHT - along;
    }

    private void wire(Side side, double from, double to, double at, Look look) {
        svg.line(x(side, from), at, x(side, to), at, look);
    }

    private void changed(double x, double top, double width, double height) {
        svg.box(x, top, width, height, 2.5);
    }

    /** Jumpers as arcs from clamp to clamp; a piece with one clamp on as a stub with its free end. */
    private void temporary(Temporary family) {
        for (Conductor phase : now.program().bound().phasesOf(family.of())) {
            FieldKey.Clamp one = new FieldKey.Clamp(family.name(), phase, 1);
            FieldKey.Clamp two = new FieldKey.Clamp(family.name(), phase, 2);
            Optional<double[]> first = spot(now, one).map(spots::get);
            Optional<double[]> second = spot(now, two).map(spots::get);
            boolean moved = now.value(one) != before.value(one) || now.value(two) != before.value(two);
            if (family.kind().base() == Base.GROUND) {
                second.ifPresent(at -> ground(family, at, moved));
            } else if (first.isPresent() && second.isPresent()) {
                arc(family, phase, first.get(), second.get(), moved);
            } else {
                ImmutableList.of(first, second).forEach(o -> o.ifPresent(at -> stub(family, phase, at, moved)));
            }
        }
    }

    private static Optional<Vertex> spot(Standing standing, FieldKey.Clamp clamp) {
        int value = standing.value(clamp);
        List<Vertex> places = standing.program().spots().getOrDefault(clamp, ImmutableList.of());
        return value == 0 || value > places.size() ? Optional.empty() : Optional.of(places.get(value - 1));
    }

    private void arc(Temporary family, Conductor phase, double[] a, double[] b, boolean moved) {
        Look look = spot(now, new FieldKey.Clamp(family.name(), phase, 1)).flatMap(v -> Look.of(now, v)).orElse(Look.UNKNOWN);
        double top = Math.min(a[1], b[1]) - 20;
        svg.path("M" + Svg.n(a[0]) + " " + Svg.n(a[1]) + "L" + Svg.n(a[0] + 12) + " " + Svg.n(top) + "H" + Svg.n(b[0] - 12) + "L"
                + Svg.n(b[0]) + " " + Svg.n(b[1]), look);
        svg.circle(a[0], a[1], 3.5, true);
        svg.circle(b[0], b[1], 3.5, true);
        svg.text((a[0] + b[0]) / 2 - 70, top + 11, Svg.Anchor.MIDDLE, true, family.name() + " on " + phase);
        if (moved) {
            changed(Math.min(a[0], b[0]) - 6, top - 3, 12 + Math.abs(a[0] - b[0]), 29);
        }
    }

    private void stub(Temporary family, Conductor phase, double[] at, boolean moved) {
        svg.path("M" + Svg.n(at[0]) + " " + Svg.n(at[1]) + "l12 -16", 2);
        svg.circle(at[0], at[1], 3.5, true);
        svg.circle(at[0] + 12, at[1] - 16, 3.5, false);
        boolean right = at[0] > WIDTH - 150;
        svg.text(right ? at[0] + 4 : at[0] + 18, at[1] - 12, right ? Svg.Anchor.END : Svg.Anchor.START, true,
                family.name() + " " + phase + ", one end free");
        if (moved) {
            changed(at[0] - 6, at[1] - 23, 24, 29);
        }
    }

    private void ground(Temporary family, double[] at, boolean moved) {
        // Several grounds on one place stand side by side.
        double x = at[0] + BESIDE * grounds.merge(at, 1, Integer::sum) - BESIDE;
        svg.path("M" + Svg.n(at[0]) + " " + Svg.n(at[1]) + "H" + Svg.n(x) + "v8", 2);
        Symbols.earth(svg, x, at[1] + 8);
        svg.text(x + 10, at[1] + 16, Svg.Anchor.START, true, family.name());
        if (moved) {
            changed(x - 10, at[1] - 4, 20, 22);
        }
    }
}
