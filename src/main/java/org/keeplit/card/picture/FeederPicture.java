package org.keeplit.card.picture;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.keeplit.explore.Standing;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Network;
import org.keeplit.network.Phases;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Vertex;

/**
 * The neighbourhood of a device on one line: the way from its source, the device, and the next devices beyond it. Line sections are
 * folded into a count. Three strokes are phases A, B, C from top to bottom.
 */
public final class FeederPicture {
    private static final double STEP = 92;
    private static final double ROW = 66;
    private static final double APART = 6;
    private static final int BEYOND = 3;
    private static final double WIDTH = 540;

    private final Standing now;
    private final Network network;
    private final Map<String, List<Element.Branch>> at = new HashMap<>();
    private final Svg svg = new Svg();

    private FeederPicture(Standing now) {
        this.now = now;
        this.network = now.program().bound().network();
        network.all(Element.Branch.class).forEach(b -> {
            at.computeIfAbsent(b.from(), k -> new ArrayList<>()).add(b);
            at.computeIfAbsent(b.to(), k -> new ArrayList<>()).add(b);
        });
    }

    /**
     * Draws.
     *
     * @param device the device of the job
     * @param now how everything stands
     * @return the picture as SVG
     */
    public static String of(Element.Branch device, Standing now) {
        return new FeederPicture(now).draw(device);
    }

    private String draw(Element.Branch device) {
        List<Element.Branch> way = new ArrayList<>();
        String source = toSource(device, way);
        List<Element.Branch> beyond = new ArrayList<>();
        int more = beyond(device, beyond);
        double y = 36;
        double x = 16;
        Symbols.source(svg, x + 11, y);
        svg.text(4, y + 38, Svg.Anchor.START, true, source);
        x += 22;
        way.add(device);
        for (Element.Branch one : way) {
            if (x + 2 * STEP > WIDTH) {
                x = 38;
                y += ROW;
            }
            x = along(one, one == device, x, y);
        }
        double bus = x;
        for (Element.Branch one : beyond) {
            along(one, false, bus, y);
            y += one == beyond.get(beyond.size() - 1) ? 0 : ROW;
        }
        double first = y - ROW * Math.max(0, beyond.size() - 1);
        svg.path("M" + Svg.n(bus) + " " + Svg.n(first - APART) + "V" + Svg.n(y + APART), 3);
        String rest = more == 0 ? "" : " Beyond it: " + more + " more.";
        svg.text(16, y + 52, Svg.Anchor.START, false, "From the source to " + device.name() + ", then what comes next beyond it." + rest);
        svg.text(16, y + 66, Svg.Anchor.START, false, "Strokes: phases A, B, C from the top.");
        return svg.whole(WIDTH, y + 72, "The way from " + source + " to " + device.name() + " and the next devices beyond");
    }

    /** Draws a piece with the line on both of its sides. {@return where it ends} */
    private double along(Element.Branch one, boolean job, double x, double y) {
        strokes(x, x + STEP - 60, y, one.from(), one.phases());
        piece(one, job, x + STEP - 60, y);
        strokes(x + STEP - 20, x + STEP, y, one.to(), one.phases());
        return x + STEP;
    }

    private void strokes(double from, double to, double y, String node, Phases phases) {
        int row = 0;
        for (Conductor phase : Phases.ABC) {
            double level = y + (row++ - 1) * APART;
            if (phases.contains(phase)) {
                Look.of(now, new Vertex.AtNode(node, phase)).ifPresent(look -> svg.line(from, level, to, level, look));
            }
        }
    }

    private void piece(Element.Branch one, boolean job, double x, double y) {
        String state = "";
        if (one instanceof Element.Device device) {
            List<Conductor> open = new ArrayList<>();
            for (Conductor phase : device.phases()) {
                Conductor key = device.ganged() ? device.phases().list().get(0) : phase;
                if (now.value(new FieldKey.Pole(device.name(), key)) == 0) {
                    open.add(phase);
                }
            }
            Symbols.contact(svg, x, y, device.kind(), open.isEmpty());
            state = open.isEmpty() ? "closed" : open.size() == device.phases().size() ? "open" : "open on " + open.stream().map(Object::toString).collect(Collectors.joining(", "));
        } else {
            Symbols.regulator(svg, x, y);
        }
        if (job) {
            svg.box(x - 3, y - 17, Symbols.WIDTH + 6, 30, 2.2);
        }
        svg.text(x + Symbols.WIDTH / 2, y + 26, Svg.Anchor.MIDDLE, true, one.name());
        svg.text(x + Symbols.WIDTH / 2, y - 17 - (job ? 4 : 0), Svg.Anchor.MIDDLE, false, state);
    }

    /** Collects the pieces between a source and a device, without lines. {@return the source's name, or words that there is none} */
    private String toSource(Element.Branch device, List<Element.Branch> way) {
        Map<String, Element.Branch> by = new HashMap<>();
        Set<String> met = new HashSet<>(List.of(device.from(), device.to()));
        ArrayDeque<String> open = new ArrayDeque<>(List.of(device.from()));
        while (!open.isEmpty()) {
            String node = open.poll();
            var source = network.all(Element.Source.class).filter(s -> s.node().equals(node)).findFirst();
            if (source.isPresent()) {
                String here = node;
                while (by.containsKey(here)) {
                    Element.Branch branch = by.get(here);
                    if (isPiece(branch)) {
                        way.add(branch);
                    }
                    here = branch.from().equals(here) ? branch.to() : branch.from();
                }
                return source.get().name();
            }
            for (Element.Branch branch : at.getOrDefault(node, List.of())) {
                String far = branch.from().equals(node) ? branch.to() : branch.from();
                if (isNormallyClosed(branch) && met.add(far)) {
                    by.put(far, branch);
                    open.add(far);
                }
            }
        }
        return "no source";
    }

    /** Collects the first pieces of three phases beyond a device. {@return how many more there are, those of laterals included} */
    private int beyond(Element.Branch device, List<Element.Branch> pieces) {
        Set<String> met = new HashSet<>(List.of(device.from(), device.to()));
        ArrayDeque<String> open = new ArrayDeque<>(List.of(device.to()));
        Set<Element.Branch> found = new LinkedHashSet<>();
        while (!open.isEmpty()) {
            String node = open.poll();
            for (Element.Branch branch : at.getOrDefault(node, List.of())) {
                String far = branch.from().equals(node) ? branch.to() : branch.from();
                if (branch == device) {
                    continue;
                }
                if (isPiece(branch)) {
                    found.add(branch);
                } else if (met.add(far)) {
                    open.add(far);
                }
            }
        }
        List<Element.Branch> ranked = new ArrayList<>(found);
        Collections.sort(ranked, (a, b) -> b.phases().size() - a.phases().size());
        pieces.addAll(ranked.subList(0, Math.min(BEYOND, ranked.size())));
        return ranked.size() - pieces.size();
    }

    private static boolean isPiece(Element.Branch branch) {
        return !(branch instanceof Element.Line);
    }

    private static boolean isNormallyClosed(Element.Branch branch) {
        return !(branch instanceof Element.Device device) || !device.closed().isEmpty();
    }
}
