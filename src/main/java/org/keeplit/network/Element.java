package org.keeplit.network;

import com.google.common.collect.ImmutableMap;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.keeplit.text.Span;
import org.keeplit.unit.Quantity;

/** One piece of the network. Nodes are named, not shared objects, so that elements stay plain values. */
public sealed interface Element {
    /** {@return its name, unique in the network} */
    String name();

    /** {@return its kind} */
    Kind kind();

    /** {@return the conductors that it has} */
    Phases phases();

    /** {@return where it is declared} */
    Span span();

    /** {@return the figures given for it, by attribute name, such as {@code length} or {@code coil}} */
    ImmutableMap<String, Quantity> figures();

    /** An element between two nodes. */
    sealed interface Branch extends Element {
        /** {@return the node on the source side} */
        String from();

        /** {@return the node on the load side} */
        String to();

        /**
         * {@return the node on one side}
         *
         * @param side the side
         */
        default String node(Side side) {
            return side == Side.SOURCE ? from() : to();
        }
    }

    /** An element that hangs on one node. */
    sealed interface Shunt extends Element {
        /** {@return its node} */
        String node();
    }

    /**
     * A utility source.
     *
     * @param name its name, unique in the network
     * @param kind its kind
     * @param node its node
     * @param phases the conductors that it has
     * @param supply the supply system that it belongs to; sources of one system may be joined
     * @param figures the figures given for it, by attribute name
     * @param span where it is declared
     */
    record Source(
            String name,
            Kind kind,
            String node,
            Phases phases,
            String supply,
            ImmutableMap<String, Quantity> figures,
            Span span)
            implements Shunt {}

    /**
     * A line section, overhead or cable.
     *
     * <p>Figures per length are kept for one metre: {@code resistance}, {@code reactance}, {@code zero resistance},
     * {@code zero reactance}; of a phase impedance matrix {@code resistance AB}, {@code reactance AB} and
     * {@code susceptance AB}, each pair once.
     *
     * @param name its name, unique in the network
     * @param kind its kind
     * @param from the node on the source side
     * @param to the node on the load side
     * @param phases the conductors that it has
     * @param conductor the conductor's name in the equipment files, if given
     * @param spacing the name of the spacing of its wires, if one was said or is meant by its phases
     * @param figures the figures given for it, by attribute name
     * @param span where it is declared
     */
    record Line(
            String name,
            Kind kind,
            String from,
            String to,
            Phases phases,
            Optional<String> conductor,
            Optional<String> spacing,
            ImmutableMap<String, Quantity> figures,
            Span span)
            implements Branch {}

    /**
     * A transformer bank; the source side is its primary.
     *
     * @param name its name, unique in the network
     * @param kind its kind
     * @param from the node on the source side
     * @param to the node on the load side
     * @param phases the conductors that it has
     * @param primary how the source-side windings are joined
     * @param secondary how the load-side windings are joined
     * @param clock how many hours of 30 degrees the secondary lags the primary
     * @param windings which of its windings are there, by the phase on which each starts: all of its phases, or two in
     *     an open delta, or one from phase to phase
     * @param centreTapped whether its secondary is one winding with a tap at its middle, which is neutral; its low voltage is
     *     then that from leg to leg
     * @param figures the figures given for it, by attribute name
     * @param span where it is declared
     */
    record Transformer(
            String name,
            Kind kind,
            String from,
            String to,
            Phases phases,
            Connection primary,
            Connection secondary,
            int clock,
            Phases windings,
            boolean centreTapped,
            ImmutableMap<String, Quantity> figures,
            Span span)
            implements Branch {
        /** {@return the ends of a single unit's primary that are not the neutral, the one of its polarity mark first} */
        public List<Conductor> ends() {
            // From phase to phase a winding lies between a phase and the next, so from C to A.
            return phases.list().stream()
                    .filter(Conductor::isPhase)
                    .sorted(Comparator.comparing((Conductor p) -> !windings.contains(p)))
                    .toList();
        }

        /** {@return the conductors on its secondary: two units in open delta still serve three phases, and a centre tap has two legs} */
        public Phases secondaryPhases() {
            return centreTapped ? Phases.LEGS : secondary == Connection.DELTA && windings.size() > 1 ? Phases.ABC : windings;
        }
    }

    /**
     * A step-voltage regulator bank, each phase with its own tap.
     *
     * <p>Where its taps are known they are kept as {@code tap A} and so on.
     *
     * @param name its name, unique in the network
     * @param kind its kind
     * @param from the node on the source side
     * @param to the node on the load side
     * @param phases the conductors that it has
     * @param site the structure where it stands
     * @param settings modes that are normally not at their kind's normal value
     * @param figures the figures given for it, by attribute name
     * @param span where it is declared
     */
    record Regulator(
            String name,
            Kind kind,
            String from,
            String to,
            Phases phases,
            String site,
            ImmutableMap<String, String> settings,
            ImmutableMap<String, Quantity> figures,
            Span span)
            implements Branch {}

    /**
     * A capacitor bank.
     *
     * @param name its name, unique in the network
     * @param kind its kind
     * @param node its node
     * @param phases the conductors that it has
     * @param connection how its phases are joined
     * @param figures the figures given for it, by attribute name
     * @param span where it is declared
     */
    record Capacitor(
            String name,
            Kind kind,
            String node,
            Phases phases,
            Connection connection,
            ImmutableMap<String, Quantity> figures,
            Span span)
            implements Shunt {}

    /**
     * A load.
     *
     * <p>Its whole power is kept as {@code active power} and {@code reactive power}. Where it is said phase by phase it
     * is also kept as {@code active power A}, in delta as {@code active power AB}, and so on.
     *
     * @param name its name, unique in the network
     * @param kind its kind
     * @param node its node
     * @param phases the conductors that it has
     * @param connection how its phases are joined
     * @param model how its power follows the voltage
     * @param along the line section along which it is spread evenly, ending at its node, if it is
     * @param customers how many customers it stands for
     * @param critical who depends on it, if it is critical
     * @param motor whether it holds running motors, which feed an open phase backwards
     * @param figures the figures given for it, by attribute name
     * @param span where it is declared
     */
    record Load(
            String name,
            Kind kind,
            String node,
            Phases phases,
            Connection connection,
            LoadModel model,
            Optional<String> along,
            int customers,
            Optional<String> critical,
            boolean motor,
            ImmutableMap<String, Quantity> figures,
            Span span)
            implements Shunt {}

    /**
     * A customer's generator; nobody on the pole can know whether it runs.
     *
     * @param name its name, unique in the network
     * @param kind its kind
     * @param node its node
     * @param phases the conductors that it has
     * @param figures the figures given for it, by attribute name
     * @param span where it is declared
     */
    record Generator(
            String name, Kind kind, String node, Phases phases, ImmutableMap<String, Quantity> figures, Span span)
            implements Shunt {}

    /**
     * A switching device.
     *
     * @param name its name, unique in the network
     * @param kind its kind
     * @param from the node on the source side
     * @param to the node on the load side
     * @param phases the conductors that it has
     * @param ganged whether its poles move together
     * @param site the structure where it stands
     * @param closed the phases on which it is normally closed
     * @param settings modes that are normally not at their kind's normal value
     * @param figures the figures given for it, by attribute name
     * @param span where it is declared
     */
    record Device(
            String name,
            Kind kind,
            String from,
            String to,
            Phases phases,
            boolean ganged,
            String site,
            Phases closed,
            ImmutableMap<String, String> settings,
            ImmutableMap<String, Quantity> figures,
            Span span)
            implements Branch {}
}
