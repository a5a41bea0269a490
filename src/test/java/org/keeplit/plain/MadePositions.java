package org.keeplit.plain;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.keeplit.electric.Contact;
import org.keeplit.electric.Grid;
import org.keeplit.electric.GridBuilder;
import org.keeplit.network.Base;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Network;
import org.keeplit.network.Side;
import org.keeplit.procedure.Binding;
import org.keeplit.procedure.Bound;
import org.keeplit.procedure.Temporary;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Vertex;
import org.keeplit.text.Problems;

/** A made network with jumpers and grounds at some places and every contact in some position, for both evaluators. */
final class MadePositions {
    private final Draw draw;
    private final Bound bound;
    private final Names names;
    private final List<Deed> places = new ArrayList<>();
    private final Map<FieldKey, List<Vertex>> spots = new LinkedHashMap<>();
    private final Map<FieldKey, Integer> values = new LinkedHashMap<>();
    private final Map<String, Integer> facts = new HashMap<>();
    private final Grid grid;
    private final Wiring wiring;

    MadePositions(long seed) {
        this(new Draw(seed));
    }

    private MadePositions(Draw draw) {
        this(draw, read(draw));
    }

    MadePositions(Draw draw, MadeCase.Read read) {
        this.draw = draw;
        this.bound = Binding.bind(read.procedure(), read.network(), read.procedure().proofs().get(0), new Problems())
                .orElseThrow();
        this.names = new Names(bound);
        bound.temporaries().forEach(this::place);
        GridBuilder builder = new GridBuilder(bound.network());
        for (Temporary t : bound.temporaries()) {
            for (Conductor p : bound.phasesOf(t.of())) {
                List<List<Vertex>> both = new ArrayList<>();
                for (int clamp = 1; clamp <= 2; clamp++) {
                    both.add(spots.getOrDefault(new FieldKey.Clamp(t.name(), p, clamp), List.of()));
                }
                builder.temporary(t, p, names.site(t.name()), both);
            }
        }
        this.grid = builder.build();
        this.wiring = new Wiring(names, places, Map.of());
        positions();
    }

    private static MadeCase.Read read(Draw draw) {
        while (true) {
            try {
                return CaseMaker.makeWithSets(draw).withParts(List.of(Part.step("east does \"nothing\""))).read();
            } catch (IllegalArgumentException refused) {
                // Draw another.
            }
        }
    }

    Bound bound() {
        return bound;
    }

    Network network() {
        return bound.network();
    }

    Grid grid() {
        return grid;
    }

    Draw draw() {
        return draw;
    }

    /** {@return how the plain evaluator sees it} */
    Circuit circuit() {
        return new Circuit(names, wiring, new Facts(facts));
    }

    /** {@return the figures of the plain evaluator in it} */
    PlainFigures figures() {
        Scenery scenery = new Scenery(names, wiring, Set.of());
        scenery.startsFrom(new Facts(facts));
        return new PlainFigures(scenery, circuit());
    }

    PlainPieces pieces() {
        return wiring.pieces();
    }

    boolean isClosed(Contact contact) {
        return values.get(contact.key()) == contact.value();
    }

    boolean neutral(String regulator, Conductor phase) {
        return facts.get(Names.tap(regulator, phase)) == 0;
    }

    /** {@return the same contact in the plain evaluator} */
    Joint joint(Contact contact) {
        String a = name(grid.vertices().get(contact.a()));
        String b = name(grid.vertices().get(contact.b()));
        return wiring.joints().stream()
                .filter(j -> j.isContact() && j.a().equals(a) && j.b().equals(b) && j.owner().equals(contact.owner()))
                .filter(j -> j.fact().equals(fact(contact.key())))
                .findFirst()
                .orElseThrow();
    }

    /** {@return how the plain evaluator sees it once a contact is open} */
    Circuit circuitWithout(Contact contact) {
        Map<String, Integer> then = new HashMap<>(facts);
        then.put(fact(contact.key()), 0);
        return new Circuit(names, wiring, new Facts(then));
    }

    static String name(Vertex vertex) {
        if (vertex instanceof Vertex.AtNode v) {
            return Names.node(v.node(), v.conductor());
        } else if (vertex instanceof Vertex.Lead v) {
            return Names.lead(v.device(), v.side(), v.conductor());
        } else if (vertex instanceof Vertex.Bushing v) {
            return Names.bushing(v.device(), v.side(), v.conductor());
        } else if (vertex instanceof Vertex.Temporary v) {
            return Names.piece(v.family(), v.conductor());
        }
        return vertex instanceof Vertex.Machine v ? Names.machine(v.family(), v.conductor()) : Names.EARTH;
    }

    private void place(Temporary family) {
        boolean ground = family.name().equals("G");
        Element.Branch of = (Element.Branch) bound.network().element(family.of().toString()).orElseThrow();
        for (Conductor p : of.phases()) {
            for (int clamp = 1; clamp <= 2; clamp++) {
                List<Vertex> all = new ArrayList<>();
                if (ground && clamp == 1) {
                    all.add(Vertex.EARTH);
                } else if (family.kind().base() == Base.MOBILE && clamp == 1) {
                    all.add(new Vertex.Machine(family.name(), p));
                } else {
                    all.add(new Vertex.AtNode(of.node(draw.one(Side.values())), p));
                    Conductor other = draw.one(of.phases().list());
                    if (draw.chance(40)) {
                        all.add(new Vertex.AtNode(of.node(draw.one(Side.values())), other));
                    }
                }
                FieldKey.Clamp key = new FieldKey.Clamp(family.name(), p, clamp);
                spots.put(key, all.stream().distinct().toList());
                for (Vertex v : spots.get(key)) {
                    places.add(new Deed.ClampOn(family.name(), p, clamp, name(v), v.conductor()));
                }
            }
        }
    }

    private void positions() {
        int mostlyClosed = draw.one(60, 80, 95);
        for (Contact contact : grid.contacts()) {
            values.computeIfAbsent(contact.key(), key -> switch (contact.part()) {
                case POLE -> draw.chance(mostlyClosed) ? 1 : 0;
                case LEAD -> draw.chance(92) ? 1 : 0;
                case CLAMP, GROUND -> draw.chance(40) ? draw.between(1, spots.get(key).size()) : 0;
            });
        }
        values.forEach((key, value) -> {
            int plain = value;
            if (key instanceof FieldKey.Clamp && value > 0) {
                plain = names.number(name(spots.get(key).get(value - 1)));
            }
            facts.put(fact(key), plain);
        });
        network().all(Element.Regulator.class)
                .forEach(r -> r.phases().forEach(p -> facts.put(Names.tap(r.name(), p), draw.below(2))));
    }

    private String fact(FieldKey key) {
        if (key instanceof FieldKey.Pole k) {
            return names.pole(k.device(), k.phase());
        } else if (key instanceof FieldKey.End k) {
            return Names.end(k.device(), k.side(), k.phase(), k.end());
        }
        FieldKey.Clamp k = (FieldKey.Clamp) key;
        return Names.clamp(k.family(), k.phase(), k.clamp());
    }
}
