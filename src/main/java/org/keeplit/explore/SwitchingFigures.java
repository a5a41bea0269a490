package org.keeplit.explore;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.keeplit.electric.Contact;
import org.keeplit.network.Conductor;
import org.keeplit.network.Connection;
import org.keeplit.network.Element;
import org.keeplit.network.Phases;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Points;
import org.keeplit.program.Vertex;
import org.keeplit.unit.Quantity;

/** Finds what the figures of switching, of short circuits and of trapped charge need. */
final class SwitchingFigures {
    private static final double SQRT3 = Math.sqrt(3);

    private final World world;
    private Scene start;

    SwitchingFigures(World world) {
        this.world = world;
    }

    /** {@return the closing current when what it picks up is cold} */
    Amount coldLoad(Contact contact) {
        Quantity factor = world.bound().network().system().get("cold load factor");
        return factor == null
                ? new Amount.Unstated("the cold load factor of the system")
                : new SwitchingAmounts.ColdLoad(contact, factor.si());
    }

    /** {@return the inrush of the transformers that closing a contact makes alive, on its phase} */
    Amount inrush(Contact contact) {
        List<SwitchingAmounts.Drawing> all = new ArrayList<>();
        for (Element.Transformer bank :
                world.bound().network().all(Element.Transformer.class).toList()) {
            OptionalDouble amperes = ratedAmperes(bank, contact.phase());
            if (amperes.isEmpty()) {
                continue;
            }
            Quantity factor = Optional.ofNullable(bank.figures().get("inrush factor"))
                    .orElse(world.bound().network().system().get("inrush factor"));
            if (factor == null) {
                return new Amount.Unstated("the inrush factor of " + bank.name());
            }
            all.add(new SwitchingAmounts.Drawing(
                    at(bank.from(), contact.phase()), factor.si() * amperes.getAsDouble()));
        }
        return new SwitchingAmounts.Inrush(contact, List.copyOf(all));
    }

    /** {@return the rated primary current on a phase; none if the bank has no winding there} */
    private OptionalDouble ratedAmperes(Element.Transformer bank, Conductor phase) {
        if (!phase.isPhase() || !bank.phases().contains(phase)) {
            return OptionalDouble.empty();
        }
        double toGround = world.power().nominal(at(bank.from(), phase));
        double unit = bank.figures().get("rating").si() / bank.windings().size();
        if (bank.primary() != Connection.DELTA) {
            return OptionalDouble.of(unit / toGround);
        }
        double winding = unit / (toGround * SQRT3);
        return OptionalDouble.of(bank.windings().size() == 3 ? winding * SQRT3 : winding);
    }

    private int at(String node, Conductor phase) {
        return world.grid().number(new Vertex.AtNode(node, phase)).orElseThrow();
    }

    /** {@return the least that a device sees of a fault beyond another} @param ground whether it is one to ground */
    Amount beyond(Obj device, Obj other, boolean ground) {
        Quantity ohms = world.bound().network().system().get("fault resistance");
        if (ground && ohms == null) {
            return new Amount.Unstated("the fault resistance of the system");
        }
        FaultAmounts.Sight sight = new FaultAmounts.Sight(
                poles(device.words()),
                (Element.Branch) ((Obj.Of) other).element(),
                world.siteOf(other),
                ohms == null ? 0 : ohms.si());
        return new FaultAmounts.Beyond(sight, ground);
    }

    private List<Contact> poles(String device) {
        return world.grid().contactsOf(device).stream()
                .filter(c -> c.part() == Contact.Part.POLE && c.phase().isPhase())
                .toList();
    }

    /** {@return the largest fault current at the conductors where a piece hangs} */
    Amount available(Obj piece, Conductor phase) {
        List<Integer> there = world.grid().siteVertices(site(piece)).stream()
                .filter(v -> world.grid().vertices().get(v).conductor() == phase)
                .toList();
        return new FaultAmounts.Available(there, start().flowState(0));
    }

    private String site(Obj piece) {
        return Points.siteOf(world.bound(), piece.words());
    }

    /** {@return the run's first state} */
    private Scene start() {
        if (start == null) {
            start = new Scene(world).at(world.program().layout().initial());
        }
        return start;
    }

    /**
     * What a piece stands for as long as the slowest device that feeds its site takes to clear a fault: its short-time
     * rating, by equal I²t for longer, and never more than the rating.
     */
    Amount withstand(Obj piece) {
        var ratings = ((Obj.Family) piece).temporary().kind().ratings();
        Quantity amperes = ratings.get("short-time");
        Quantity seconds = ratings.get("short-time duration");
        if (amperes == null || seconds == null) {
            return new Amount.Unstated("the short-time rating of " + piece.words());
        }
        double longest = seconds.si();
        for (String feeding : start().analysis().feeding(site(piece), start().mayClose())) {
            Quantity clearing = world.bound().network().element(feeding).orElseThrow().figures().get("clearing time");
            if (clearing == null) {
                return new Amount.Unstated("the clearing time of " + feeding);
            }
            longest = Math.max(longest, clearing.si());
        }
        return new Amount.Fixed(amperes.si() * Math.sqrt(seconds.si() / longest));
    }

    /** {@return the most that banks may have kept on a phase at a point} */
    Amount trapped(int vertex, Conductor phase) {
        List<TrappedCharge.Bank> banks = new ArrayList<>();
        return gather(phase, banks).orElseGet(() -> new TrappedCharge.At(vertex, List.copyOf(banks)));
    }

    /** {@return the most that banks may have kept which closing a contact makes alive} */
    Amount trappedBehind(Contact contact) {
        List<TrappedCharge.Bank> banks = new ArrayList<>();
        return gather(contact.phase(), banks)
                .orElseGet(() -> new TrappedCharge.Behind(contact, List.copyOf(banks)));
    }

    /** Gathers the banks on a phase. @return what is not stated of one of them */
    private Optional<Amount> gather(Conductor phase, List<TrappedCharge.Bank> into) {
        for (Element.Capacitor bank :
                world.bound().network().all(Element.Capacitor.class).toList()) {
            if (!phase.isPhase() || !bank.phases().contains(phase)) {
                continue;
            }
            Quantity residual = bank.kind().ratings().get("residual voltage");
            Quantity time = bank.kind().ratings().get("discharge time");
            if (residual == null || time == null) {
                return Optional.of(
                        new Amount.Unstated("the residual voltage or the discharge time of " + bank.name()));
            }
            boolean grounded = bank.connection() == Connection.GROUNDED_WYE;
            double toGround = world.power().nominal(at(bank.node(), phase));
            into.add(new TrappedCharge.Bank(
                    at(bank.node(), phase),
                    bank.phases().and(grounded ? Phases.of(phase) : Phases.ABC).list().stream()
                            .map(p -> at(bank.node(), p))
                            .toList(),
                    new FieldKey.Waited(bank.name(), phase),
                    Math.sqrt(2) * toGround * (grounded ? 1 : SQRT3),
                    residual.si(),
                    time.si() / 60));
        }
        return Optional.empty();
    }
}
