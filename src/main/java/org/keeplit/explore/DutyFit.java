package org.keeplit.explore;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.keeplit.condition.Truth;
import org.keeplit.electric.Contact;
import org.keeplit.electric.Level;
import org.keeplit.electric.SiteGraph;
import org.keeplit.network.ClosingDuty;
import org.keeplit.network.DutyLimit;
import org.keeplit.network.DutyTable;
import org.keeplit.network.Element;
import org.keeplit.network.OpeningDuty;
import org.keeplit.unit.Dimension;
import org.keeplit.unit.Quantity;

/** Whether a contact is made for what opening or closing it asks, in kind and in amperes and volts. */
final class DutyFit {
    /** As a part of the limit: nearer than this a load flow cannot tell which side of it a figure is on. */
    private static final double CLOSE = 1e-6;

    private DutyFit() {}

    /**
     * One limit that a duty comes under.
     *
     * @param figure what is limited
     * @param most the limit
     * @param words how the figure stands to the contact, such as {@code through it}
     * @param made how the limit is said
     */
    private record Limited(Amount figure, Quantity most, String words, String made) {
        Truth holds(Scene scene, int loadCase) {
            double value = figure.value(scene, loadCase);
            if (Double.isNaN(value)) {
                return Truth.UNKNOWN;
            } else if (Math.abs(value - most.si()) <= CLOSE * most.si()) {
                scene.note(said(value) + " is too near to that limit to tell");
                return Truth.UNKNOWN;
            }
            return Truth.of(value < most.si());
        }

        private String said(double value) {
            return new Quantity(value, most.dimension()) + " " + words + ", " + made + " up to " + most;
        }
    }

    private static Truth within(Scene scene, List<Limited> limits) {
        Truth all = Truth.TRUE;
        // Only a limit that is stated asks for a load flow: a network without one can still be judged by kind.
        for (Limited limit : limits) {
            int cases = limit.figure() instanceof FaultAmounts.AtContact ? 1 : scene.loadCases();
            for (int i = 0; i < cases; i++) {
                all = all.and(limit.holds(scene, i));
            }
        }
        return all;
    }

    private static Optional<String> beyond(Scene scene, List<Limited> limits) {
        for (Limited limit : limits) {
            for (int i = 0; i < scene.loadCases(); i++) {
                double value = limit.figure().value(scene, i);
                // What is not known passes no limit; it is said elsewhere that it is not.
                if (value >= limit.most().si()) {
                    return Optional.of(limit.said(value));
                }
            }
        }
        return Optional.empty();
    }

    private static void add(List<Limited> into, Amount figure, Optional<Quantity> most, String words, String made) {
        most.ifPresent(limit -> into.add(new Limited(figure, limit, words, made)));
    }

    /** Opening it is within what it is made for. @param interrupting the most fault current, in ampere, if stated */
    record ToOpen(Contact contact, DutyTable table, Optional<Quantity> interrupting) implements Node {
        @Override
        public void reads(Reads into) {
            into.position();
        }

        @Override
        public Truth eval(Scene scene) {
            OpeningDuty duty = scene.analysis().openingDuty(contact);
            DutyLimit limit = table.breaks().get(duty);
            return limit == null ? Truth.FALSE : within(scene, limits(duty, limit));
        }

        /** Hashing the table each time would cost more than all rules together. */
        @Override
        public int hashCode() {
            return contact.hashCode();
        }

        private List<Limited> limits(OpeningDuty duty, DutyLimit limit) {
            List<Limited> all = new ArrayList<>();
            add(all, new Amount.Through(List.of(contact)), limit.current(), "through it", "made to break");
            add(all, new SwitchingAmounts.Recovery(contact), limit.voltage(), "across it once open", "made to break");
            if (duty == OpeningDuty.FAULT) {
                add(all, new FaultAmounts.AtContact(contact), interrupting, "of fault current", "made to interrupt");
            }
            return all;
        }

        /** {@return which limit is passed and by which figure, if the duty itself is listed} */
        Optional<String> why(Scene scene) {
            OpeningDuty duty = scene.analysis().openingDuty(contact);
            DutyLimit limit = table.breaks().get(duty);
            return limit == null ? Optional.empty() : beyond(scene, limits(duty, limit));
        }
    }

    /**
     * Closing it is within what it is made for.
     *
     * @param dead where it matters, whether the place was proved dead: a generator that may run is no reason not
     *     to ground what was just tested
     * @param making the most fault current onto which it may close, in ampere, if stated
     */
    record ToClose(Contact contact, SiteGraph site, DutyTable table, Optional<Quantity> making, Node dead)
            implements Node {
        @Override
        public void reads(Reads into) {
            into.position();
            dead.reads(into);
        }

        @Override
        public Truth eval(Scene scene) {
            ClosingDuty duty = Nodes.closingDuty(scene, contact, site);
            DutyLimit limit = table.makes().get(duty);
            if (limit != null) {
                return within(scene, limits(duty, limit));
            }
            Level a = scene.analysis().level(contact.a());
            Level b = scene.analysis().level(contact.b());
            if (duty == ClosingDuty.GROUND && a.max(b) == Level.MAY_BE) {
                return dead.eval(scene) == Truth.TRUE ? Truth.TRUE : Truth.UNKNOWN;
            }
            boolean mayRun = duty == ClosingDuty.JOIN && (a == Level.MAY_BE || b == Level.MAY_BE);
            return duty == ClosingDuty.UNEQUAL || mayRun ? Truth.UNKNOWN : Truth.FALSE;
        }

        @Override
        public int hashCode() {
            return contact.hashCode() + 1;
        }

        private List<Limited> limits(ClosingDuty duty, DutyLimit limit) {
            List<Limited> all = new ArrayList<>();
            add(all, new SwitchingAmounts.Closing(contact), limit.current(), "through it once closed", "made to close with");
            Amount across = new Amount.Between(contact.a(), contact.b());
            add(all, across, limit.voltage(), "across it", "made to close with");
            if (duty == ClosingDuty.GROUND) {
                add(all, new FaultAmounts.AtContact(contact), making, "of fault current", "made to close onto");
            }
            return all;
        }

        /** {@return which limit is passed and by which figure, if the duty itself is listed} */
        Optional<String> why(Scene scene) {
            ClosingDuty duty = Nodes.closingDuty(scene, contact, site);
            DutyLimit limit = table.makes().get(duty);
            return limit == null ? Optional.empty() : beyond(scene, limits(duty, limit));
        }
    }

    /** {@return what a contact's device states, else its kind} */
    static Optional<Quantity> stated(World world, Contact contact, String name) {
        return world.bound()
                .network()
                .element(contact.owner())
                .map(e -> ((Element) e).figures().get(name))
                .or(() -> Optional.ofNullable(contact.kind().ratings().get(name)))
                .filter(q -> q.dimension() == Dimension.CURRENT);
    }
}
