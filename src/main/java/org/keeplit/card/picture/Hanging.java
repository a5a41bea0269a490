package org.keeplit.card.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.keeplit.explore.Standing;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Network;
import org.keeplit.network.Phases;
import org.keeplit.network.Side;
import org.keeplit.program.Vertex;

/** What hangs at the ends of the devices of a work site, with its symbol, its name and how it stands: below its side of the device. */
final class Hanging {
    private static final double ROW = 24;

    private final Standing before;
    private final Standing now;
    private final double width;
    private final Svg svg;

    Hanging(Standing before, Standing now, double width, Svg svg) {
        this.before = before;
        this.now = now;
        this.width = width;
        this.svg = svg;
    }

    /**
     * Draws what hangs at a device's nodes.
     *
     * @param device the device
     * @param drawn what was drawn already, and is not drawn again
     * @param top where there is room
     * @return where the room ends that was used
     */
    double draw(Element.Branch device, Set<String> drawn, double top) {
        double lowest = top;
        for (Side side : Side.values()) {
            double y = top;
            for (Element element : at(device.node(side))) {
                if (!element.name().equals(device.name()) && drawn.add(element.name())) {
                    row(element, device.node(side), side == Side.SOURCE, y + ROW / 2);
                    y += ROW;
                }
            }
            lowest = Math.max(lowest, y);
        }
        return lowest;
    }

    private List<Element> at(String node) {
        Network network = now.program().bound().network();
        List<Element> all = new ArrayList<>();
        network.all(Element.Shunt.class).filter(s -> s.node().equals(node) && !(s instanceof Element.Source)).forEach(all::add);
        network.all(Element.Transformer.class).filter(t -> t.from().equals(node) || t.to().equals(node)).forEach(all::add);
        return all;
    }

    private void row(Element element, String node, boolean left, double y) {
        double x = left ? 4 : width - 4 - Symbols.WIDTH;
        String word;
        if (element instanceof Element.Transformer) {
            Symbols.transformer(svg, x, y);
            word = "transformer";
        } else if (element instanceof Element.Capacitor) {
            Symbols.capacitor(svg, x, y);
            word = "capacitor bank";
        } else if (element instanceof Element.Generator) {
            Symbols.generator(svg, x, y);
            word = "generator";
        } else {
            Symbols.load(svg, x, y);
            word = "load";
        }
        String text = element.name() + ", " + word + ": " + stands(now, element, node);
        svg.text(left ? x + Symbols.WIDTH + 6 : x - 6, y + 4, left ? Svg.Anchor.START : Svg.Anchor.END, true, text);
        if (!stands(now, element, node).equals(stands(before, element, node))) {
            svg.box(x - 3, y - ROW / 2 + 1, Symbols.WIDTH + 6, ROW - 2, 2.5);
        }
    }

    /** {@return one word where all of its phases stand alike, else a word for each} */
    private static String stands(Standing standing, Element element, String node) {
        List<Conductor> phases = new ArrayList<>();
        List<String> words = new ArrayList<>();
        for (Conductor conductor : Phases.ABC) {
            Optional<Look> look = element.phases().contains(conductor) ? Look.of(standing, new Vertex.AtNode(node, conductor)) : Optional.empty();
            look.ifPresent(l -> {
                phases.add(conductor);
                words.add(l.word());
            });
        }
        if (words.stream().distinct().count() == 1) {
            return words.get(0);
        }
        return phases.stream().map(p -> p + " " + words.get(phases.indexOf(p))).collect(Collectors.joining(", "));
    }
}
