package org.keeplit.plain;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.keeplit.network.Base;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.LeadEnd;
import org.keeplit.network.Side;
import org.keeplit.network.Trait;
import org.keeplit.procedure.Temporary;

/** Everything that may join two places, in one flat list. */
final class Wiring {
    /** From here on values of a lead end stand for phases that are not its own. */
    static final int ROLLED = 10;

    private final Names names;
    private final List<Joint> joints = new ArrayList<>();
    private final Map<String, Set<String>> lineNodesOfSite = new LinkedHashMap<>();
    private PlainPieces pieces;

    /**
     * Lists it.
     *
     * @param names the names
     * @param deeds what the procedure does, for the places where clamps and rolled leads go
     * @param given where clamps are at the start, by fact
     */
    Wiring(Names names, List<Deed> deeds, Map<String, String> given) {
        this.names = names;
        names.bound().network().all(Element.Device.class).forEach(this::device);
        names.bound().network().all(Element.Line.class).forEach(l -> wire(l, Joint.Part.LINE, ""));
        names.bound().network().all(Element.Regulator.class).forEach(r -> {
            wire(r, Joint.Part.REGULATOR, r.site());
            stands(r.site(), r);
        });
        given.forEach((fact, vertex) -> {
            String[] words = fact.split(" ");
            clamp(words[1], Conductor.valueOf(words[2]), Integer.parseInt(words[3]), vertex);
        });
        deeds.forEach(this::place);
    }

    List<Joint> joints() {
        return joints;
    }

    /** {@return what carries and draws current besides the joints; made when first asked for} */
    PlainPieces pieces() {
        if (pieces == null) {
            pieces = new PlainPieces(names.bound());
        }
        return pieces;
    }

    Set<String> lineVertices(String site) {
        return lineNodesOfSite.getOrDefault(site, Set.of());
    }

    private void stands(String site, Element.Branch branch) {
        for (Conductor phase : branch.phases()) {
            Set<String> all = lineNodesOfSite.computeIfAbsent(site, s -> new LinkedHashSet<>());
            all.add(Names.node(branch.from(), phase));
            all.add(Names.node(branch.to(), phase));
        }
    }

    private void wire(Element.Branch branch, Joint.Part part, String site) {
        for (Conductor p : branch.phases()) {
            joints.add(new Joint(
                    Names.node(branch.from(), p),
                    Names.node(branch.to(), p),
                    null,
                    0,
                    part,
                    branch.name(),
                    p,
                    site,
                    branch.kind()));
        }
    }

    private void device(Element.Device device) {
        stands(device.site(), device);
        for (Conductor p : device.phases()) {
            String from = Names.node(device.from(), p);
            String to = Names.node(device.to(), p);
            if (device.kind().has(Trait.LEADS)) {
                for (Side side : Side.values()) {
                    String lead = Names.lead(device.name(), side, p);
                    String bushing = Names.bushing(device.name(), side, p);
                    String node = Names.node(device.node(side), p);
                    contact(device, p, node, lead, Names.end(device.name(), side, p, LeadEnd.LINE), Joint.Part.LEAD, 1);
                    contact(
                            device,
                            p,
                            lead,
                            bushing,
                            Names.end(device.name(), side, p, LeadEnd.BUSHING),
                            Joint.Part.LEAD,
                            1);
                }
                from = Names.bushing(device.name(), Side.SOURCE, p);
                to = Names.bushing(device.name(), Side.LOAD, p);
            }
            contact(device, p, from, to, names.pole(device.name(), p), Joint.Part.POLE, 1);
        }
    }

    private void contact(
            Element.Device device, Conductor p, String a, String b, String fact, Joint.Part part, int value) {
        Joint joint = new Joint(a, b, fact, value, part, device.name(), p, device.site(), device.kind());
        if (!joints.contains(joint)) {
            joints.add(joint);
        }
    }

    private void place(Deed deed) {
        if (deed instanceof Deed.ClampOn on) {
            clamp(on.family(), on.phase(), on.clamp(), on.vertex());
        } else if (deed instanceof Deed.LeadMove move && move.onto() != move.phase()) {
            Element.Device device = (Element.Device) names.element(move.device());
            contact(
                    device,
                    move.phase(),
                    Names.node(device.node(move.side()), move.onto()),
                    Names.lead(device.name(), move.side(), move.phase()),
                    Names.end(device.name(), move.side(), move.phase(), move.end()),
                    Joint.Part.LEAD,
                    leadValue(move));
        }
    }

    /** {@return the value of a lead end's fact: 1 on its own phase} */
    static int leadValue(Deed.LeadMove move) {
        return move.onto() == move.phase() ? 1 : ROLLED + move.onto().ordinal();
    }

    private void clamp(String family, Conductor phase, int clamp, String vertex) {
        Temporary temporary = names.bound().temporary(family).orElseThrow();
        boolean ground = temporary.kind().base() == Base.GROUND;
        Joint joint = new Joint(
                vertex,
                Names.piece(family, phase),
                Names.clamp(family, phase, clamp),
                names.number(vertex),
                ground ? Joint.Part.GROUND : Joint.Part.CLAMP,
                family,
                phase,
                names.site(family),
                temporary.kind());
        if (!joints.contains(joint)) {
            joints.add(joint);
        }
    }
}
