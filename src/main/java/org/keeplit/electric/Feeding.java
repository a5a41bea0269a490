package org.keeplit.electric;

import com.google.common.collect.ImmutableSet;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import org.keeplit.network.Element;

/** Finds the reclosing devices that feed a structure. */
final class Feeding {
    private final Cells cells;
    private final BitSet closed;
    private final Predicate<String> mayClose;
    private final UnionFind region;
    private final Set<Integer> inside = new LinkedHashSet<>();

    private Feeding(Cells cells, BitSet closed, String site, Predicate<String> mayClose) {
        this.cells = cells;
        this.closed = closed;
        this.mayClose = mayClose;
        this.region = new UnionFind(cells.count());
        for (int i = closed.nextSetBit(0); i >= 0; i = closed.nextSetBit(i + 1)) {
            Contact contact = cells.kept().get(i);
            if (!isReclosingPole(contact)) {
                region.join(cells.cell(contact.a()), cells.cell(contact.b()));
            }
        }
        for (int vertex : cells.grid().siteVertices(site)) {
            inside.add(region.find(cells.cell(vertex)));
        }
    }

    static ImmutableSet<String> of(Cells cells, BitSet closed, String site, Predicate<String> mayClose) {
        Feeding feeding = new Feeding(cells, closed, site, mayClose);
        return cells.grid()
                .network()
                .all(Element.Device.class)
                .filter(d -> d.kind().recloses())
                .filter(d -> d.site().equals(site) ? feeding.conducts(d) : feeding.bringsSupply(d))
                .map(Element.Device::name)
                .collect(ImmutableSet.toImmutableSet());
    }

    private static boolean isReclosingPole(Contact contact) {
        return contact.part() == Contact.Part.POLE && contact.kind().recloses();
    }

    private boolean counts(Contact pole) {
        return pole.part() == Contact.Part.POLE
                && (closed.get(cells.index(pole.id())) || mayClose.test(pole.owner()));
    }

    private boolean conducts(Element.Device device) {
        return cells.grid().contactsOf(device.name()).stream().anyMatch(this::counts);
    }

    private boolean bringsSupply(Element.Device device) {
        for (Contact pole : cells.grid().contactsOf(device.name())) {
            if (!counts(pole)) {
                continue;
            }
            int a = cells.cell(pole.a());
            int b = cells.cell(pole.b());
            boolean aInside = inside.contains(region.find(a));
            boolean bInside = inside.contains(region.find(b));
            if (aInside != bInside && reachesSource(aInside ? b : a)) {
                return true;
            }
        }
        return false;
    }

    /** Goes out from a border device, never back into the region that it feeds. */
    private boolean reachesSource(int start) {
        Set<Integer> seen = new LinkedHashSet<>(List.of(start));
        ArrayDeque<Integer> open = new ArrayDeque<>(seen);
        while (!open.isEmpty()) {
            int cell = open.poll();
            if (cells.source[cell] != Status.NONE || cells.generator[cell]) {
                return true;
            }
            for (int next : neighbours(cell)) {
                if (!inside.contains(region.find(next)) && seen.add(next)) {
                    open.add(next);
                }
            }
        }
        return false;
    }

    private List<Integer> neighbours(int cell) {
        List<Integer> all = new ArrayList<>();
        for (int i = closed.nextSetBit(0); i >= 0; i = closed.nextSetBit(i + 1)) {
            Contact contact = cells.kept().get(i);
            int a = cells.cell(contact.a());
            int b = cells.cell(contact.b());
            if (a == cell) {
                all.add(b);
            } else if (b == cell) {
                all.add(a);
            }
        }
        for (Coupler coupler : cells.couplers) {
            for (int i = 0; i < coupler.to().length; i++) {
                int from = coupler.from()[coupler.base()[i]];
                if (from == cell) {
                    all.add(coupler.to()[i]);
                } else if (coupler.to()[i] == cell) {
                    all.add(from);
                }
            }
        }
        return all;
    }
}
