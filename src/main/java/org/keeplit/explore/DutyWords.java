package org.keeplit.explore;

import java.util.Optional;
import java.util.function.Supplier;
import org.keeplit.electric.Contact;
import org.keeplit.electric.flow.FlowModelException;
import org.keeplit.electric.power.PowerException;
import org.keeplit.network.ClosingDuty;
import org.keeplit.unit.Dimension;
import org.keeplit.unit.Quantity;

/** Says, only after a failure, what opening or closing a contact asks of it, and by which figure it asks too much. */
final class DutyWords {
    private final Machine machine;

    DutyWords(Machine machine) {
        this.machine = machine;
    }

    /** {@return the opening duty, with the limit that it passes} */
    String opening(Contact contact, Scene scene) {
        String duty = scene.analysis().openingDuty(contact).phrase();
        return duty + in(figures(() -> machine.conditions().fitToOpen(contact).why(scene)));
    }

    /** {@return the closing duty, with the limit that it passes or how far both sides are turned} */
    String closing(Contact contact, Scene scene) {
        ClosingDuty duty = Nodes.closingDuty(
                scene, contact, machine.world().siteGraph(contact.site()));
        Optional<String> why = figures(() -> machine.conditions().fitToClose(contact).why(scene));
        return duty.phrase() + in(why.or(() -> turned(duty, contact, scene)));
    }

    private static String in(Optional<String> why) {
        return why.map(w -> " (" + w + ")").orElse("");
    }

    /** {@return what is wrong between two sides that both have voltage} */
    private Optional<String> turned(ClosingDuty duty, Contact contact, Scene scene) {
        int a = scene.analysis().hour(contact.a());
        int b = scene.analysis().hour(contact.b());
        if (duty != ClosingDuty.CROSS && duty != ClosingDuty.JOIN || a < 0 || b < 0) {
            return Optional.empty();
        }
        int hours = Math.floorMod(a - b, 12);
        int degrees = 30 * Math.min(hours, 12 - hours);
        if (duty == ClosingDuty.CROSS && degrees == 0) {
            return Optional.of("two phases then meet elsewhere");
        }
        String apart = duty == ClosingDuty.JOIN && degrees == 0
                ? "nothing holds the two in step"
                : "the two sides are " + degrees + " degrees apart";
        return Optional.of(apart + volts(contact, scene).map(v -> ", " + v + " across").orElse(""));
    }

    private static Optional<String> volts(Contact contact, Scene scene) {
        return figures(() -> Optional.ofNullable(scene.flow(0))
                .map(flow -> SwitchingAmounts.across(scene, flow, contact).abs())
                .map(volts -> new Quantity(volts, Dimension.VOLTAGE).toString()));
    }

    /** {@return what figures say; nothing where the network does not state what a load flow needs} */
    private static Optional<String> figures(Supplier<Optional<String>> said) {
        try {
            return said.get();
        } catch (PowerException | FlowModelException missing) {
            return Optional.empty();
        }
    }
}
