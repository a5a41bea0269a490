package org.keeplit.explore;

import java.util.ArrayList;
import java.util.List;
import org.keeplit.electric.Contact;
import org.keeplit.network.ClosingDuty;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.OpeningDuty;
import org.keeplit.procedure.Action;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Units;

/** What a person finds who proves something. */
final class ProofNodes {
    /** Current flows through what would break anything heavier than its own charging. */
    private static final int CARRIES = ~(1 << OpeningDuty.NOTHING.ordinal() | 1 << OpeningDuty.BUSHING.ordinal());

    private final World world;
    private final AtomCompiler atoms;

    ProofNodes(World world, AtomCompiler atoms) {
        this.world = world;
        this.atoms = atoms;
    }

    Node of(Action.Proof proof, String subject, Conductor phase) {
        return switch (proof) {
            case OPEN -> pole(subject, phase, 0);
            case CLOSED -> pole(subject, phase, 1);
            case CARRYING -> carrying(subject, phase);
            case IN_PHASE -> inPhase(subject, phase);
            case NEUTRAL -> neutral(subject, phase);
        };
    }

    private Node pole(String device, Conductor phase, int value) {
        Element element = world.bound().network().element(device).orElseThrow();
        return atoms.is(new FieldKey.Pole(device, Units.pole(element, phase)), value);
    }

    /** A device carries by its pole; a jumper by both of its clamps. */
    private Node carrying(String subject, Conductor phase) {
        List<Contact> contacts = world.grid().contactsOf(subject).stream()
                .filter(c -> c.part() == Contact.Part.POLE && c.phase() == phase
                        || c.key() instanceof FieldKey.Clamp clamp && clamp.phase() == phase)
                .toList();
        if (contacts.stream().anyMatch(c -> c.part() == Contact.Part.POLE)) {
            return new Nodes.Opening(contacts.get(0), CARRIES);
        }
        List<Node> clamps = new ArrayList<>();
        for (int clamp = 1; clamp <= 2; clamp++) {
            FieldKey key = new FieldKey.Clamp(subject, phase, clamp);
            clamps.add(Node.one(contacts.stream()
                    .filter(c -> c.key().equals(key))
                    .<Node>map(c -> Node.all(
                            List.of(atoms.is(key, c.value()), new Nodes.Opening(c, CARRIES))))
                    .toList()));
        }
        return Node.all(clamps);
    }

    /** Near zero across and full crosswise: both sides alive, one supply, one phase, one angle. */
    private Node inPhase(String device, Conductor phase) {
        Contact pole = world.grid().contactsOf(device).stream()
                .filter(c -> c.part() == Contact.Part.POLE && c.phase() == phase)
                .findFirst()
                .orElseThrow();
        return new Nodes.Closing(pole, world.siteGraph(pole.site()), 1 << ClosingDuty.PARALLEL.ordinal());
    }

    private Node neutral(String regulator, Conductor phase) {
        FieldKey key = new FieldKey.Tap(regulator, phase);
        return world.program()
                .layout()
                .field(key)
                .<Node>map(Nodes.Neutral::new)
                .orElse(Node.Constant.TRUE);
    }
}
