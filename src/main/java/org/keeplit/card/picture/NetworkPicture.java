package org.keeplit.card.picture;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.keeplit.explore.Standing;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Phases;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Primitive;
import org.keeplit.program.Program;
import org.keeplit.program.Vertex;

/**
 * The whole network on one page, layer by layer from its sources: a row for each piece that the procedure moves, sets, tags or holds, or
 * that stands on the way to one or beyond one, farther in the farther it is from its source; whatever the procedure leaves alone is
 * folded into a count of loads and customers.
 */
public final class NetworkPicture {
    private static final double WIDTH = 540;
    private static final double ROW = 32;
    private static final double INDENT = 24;
    private static final double APART = 5;
    private static final double LEAD = 30;
    /** About how wide a letter is, in units of the picture. */
    private static final double LETTER = 6.6;

    private final Standing now;
    private final Set<String> named;
    private final FeederTree tree;
    private final Svg svg = new Svg();
    private double y = 16;

    private NetworkPicture(Standing now) {
        this.now = now;
        this.named = named(now.program());
        this.tree = FeederTree.of(now.program().bound().network());
    }

    /** {@return the picture as SVG} @param now how everything stands */
    public static String of(Standing now) {
        return new NetworkPicture(now).draw();
    }

    /** {@return the pieces that the procedure has to do with} */
    private static Set<String> named(Program program) {
        Set<String> all = new LinkedHashSet<>();
        program.acts().forEach(act -> act.primitives().forEach(p -> {
            if (p instanceof Primitive.MovePole pole) {
                all.add(pole.device());
            } else if (p instanceof Primitive.MoveEnd end) {
                all.add(end.device());
            } else if (p instanceof Primitive.SetMode mode) {
                all.add(mode.device());
            } else if (p instanceof Primitive.RunToNeutral run) {
                all.add(run.regulator());
            } else if (p instanceof Primitive.MoveTag tag) {
                all.add(tag.device());
            } else if (p instanceof Primitive.Carry carry) {
                all.add(carry.device());
            }
        }));
        program.heldAt().values().forEach(all::addAll);
        WorkSite.of(program).forEach(b -> all.add(b.name()));
        return all;
    }

    private String draw() {
        for (FeederTree.Root root : tree.roots()) {
            boolean shown = root.place().pieces().stream().anyMatch(this::isShown);
            Symbols.source(svg, 16, y + 4);
            svg.text(34, y + 8, Svg.Anchor.START, true, root.source().name());
            svg.text(34 + LETTER * (root.source().name().length() + 2), y + 8, Svg.Anchor.START, false,
                    shown ? "supply " + root.source().supply() : "supply " + root.source().supply() + ": " + tree.all(root.place()).words());
            double top = y + 15;
            y += ROW;
            if (shown) {
                place(root.place(), 16, top);
            }
        }
        svg.text(4, y + 4, Svg.Anchor.START, false, "Strokes: phases A, B, C from the top. Boxed: part of the procedure. Generators may run.");
        return svg.whole(WIDTH, y + 12, "The network from its sources, with what the procedure leaves alone folded");
    }

    /** {@return whether a piece has a row: it is named, or something beyond it is} */
    private boolean isShown(FeederTree.Piece piece) {
        return named.contains(piece.branch().name()) || piece.to().pieces().stream().anyMatch(this::isShown);
    }

    /** Draws what hangs on a place. @param x where its bus stands @param top where the bus begins */
    private void place(FeederTree.Place place, double x, double top) {
        List<FeederTree.Piece> shown = place.pieces().stream().filter(this::isShown).toList();
        FeederTree.Count rest = tree.own(place);
        List<FeederTree.Piece> folded = place.pieces().stream().filter(p -> !isShown(p)).toList();
        for (FeederTree.Piece piece : folded) {
            rest = rest.and(tree.all(piece.to()));
        }
        double last = top;
        if (!rest.isNothing() || !folded.isEmpty()) {
            last = y;
            svg.path("M" + Svg.n(x) + " " + Svg.n(y) + "h12", 1.4);
            Symbols.load(svg, x + 12, y);
            double text = x + 34;
            if (rest.banks() > 0) {
                Symbols.capacitor(svg, text, y);
                text += 24;
            }
            if (rest.generators() > 0) {
                Symbols.generator(svg, text, y);
                text += 24;
            }
            String behind = folded.isEmpty() ? "" : folded.size() == 1 ? "partly behind " + folded.get(0).branch().name() : "partly behind " + folded.size() + " devices";
            boolean fits = text + LETTER * (rest.words() + behind).length() < WIDTH;
            svg.text(text, y + 4, Svg.Anchor.START, false, rest.words() + (fits && !behind.isEmpty() ? ", " + behind : ""));
            if (!fits) {
                y += 14;
                svg.text(text, y + 4, Svg.Anchor.START, false, behind);
            }
            y += ROW - 8;
        }
        for (FeederTree.Piece piece : shown) {
            last = y;
            piece(piece, x);
            double bus = x + INDENT;
            double from = y + 10;
            y += ROW;
            place(piece.to(), bus, from);
        }
        for (Element.Device tie : place.ties().stream().filter(t -> named.contains(t.name()) || !tree.isFolded(t, folded)).toList()) {
            last = y;
            svg.path("M" + Svg.n(x) + " " + Svg.n(y) + "h" + Svg.n(LEAD), 1.4);
            Symbols.contact(svg, x + LEAD, y, tie.kind(), false);
            svg.text(x + LEAD + Symbols.WIDTH + 6, y + 4, Svg.Anchor.START, false, tie.name() + ", open between two parts");
            y += ROW - 4;
        }
        if (last > top) {
            svg.path("M" + Svg.n(x) + " " + Svg.n(top) + "V" + Svg.n(last), 2.4);
        }
    }

    private void piece(FeederTree.Piece piece, double x) {
        Element.Branch branch = piece.branch();
        strokes(x, x + LEAD, branch, piece.near());
        String state = "";
        double left = x + LEAD;
        if (branch instanceof Element.Device device) {
            List<Conductor> open = new ArrayList<>();
            for (Conductor phase : device.phases()) {
                if (now.value(new FieldKey.Pole(device.name(), device.ganged() ? device.phases().list().get(0) : phase)) == 0) {
                    open.add(phase);
                }
            }
            Symbols.contact(svg, left, y, device.kind(), open.isEmpty());
            state = open.isEmpty() ? "closed" : open.size() == device.phases().size() ? "open" : "open on "
                    + open.stream().map(Object::toString).collect(Collectors.joining(", "));
        } else if (branch instanceof Element.Transformer) {
            Symbols.transformer(svg, left, y);
        } else {
            Symbols.regulator(svg, left, y);
        }
        strokes(left + Symbols.WIDTH, left + Symbols.WIDTH + 14, branch, piece.far());
        double text = left + Symbols.WIDTH + 20;
        svg.text(text, y + 4, Svg.Anchor.START, true, branch.name());
        if (named.contains(branch.name())) {
            svg.box(text - 3, y - 9, LETTER * 1.15 * branch.name().length() + 6, 17, 1.6);
        }
        svg.text(text + LETTER * 1.15 * branch.name().length() + 10, y + 4, Svg.Anchor.START, false, branch.kind().name() + (state.isEmpty() ? "" : ", " + state));
    }

    private void strokes(double from, double to, Element.Branch branch, String node) {
        int row = 0;
        for (Conductor phase : Phases.ABC) {
            double level = y + (row++ - 1) * APART;
            if (branch.phases().contains(phase)) {
                Look.of(now, new Vertex.AtNode(node, phase)).ifPresent(look -> svg.line(from, level, to, level, look));
            }
        }
    }
}
