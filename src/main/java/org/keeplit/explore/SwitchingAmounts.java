package org.keeplit.explore;

import java.util.List;
import org.keeplit.electric.Analysis;
import org.keeplit.electric.Contact;
import org.keeplit.electric.Level;
import org.keeplit.electric.complex.Complex;
import org.keeplit.electric.flow.FlowSolution;
import org.keeplit.electric.power.PowerModel;
import org.keeplit.network.ClosingDuty;

/** Figures of what a contact is about to do, from the state that it would lead to. */
final class SwitchingAmounts {
    private SwitchingAmounts() {}

    /** The voltage across a contact once it is open, with all that moves with it. */
    record Recovery(Contact contact) implements Amount {
        @Override
        public double value(Scene scene, int loadCase) {
            return across(scene, scene.flow(loadCase, contact, false), contact).abs();
        }
    }

    /** The current through a contact once it is closed, with all that moves with it. */
    record Closing(Contact contact) implements Amount {
        @Override
        public double value(Scene scene, int loadCase) {
            FlowSolution flow = scene.flow(loadCase, contact, true);
            return flow == null
                    ? Double.NaN
                    : flow.current(scene.power().element(contact), 0).abs();
        }
    }

    /** The closing current, so many times as large where closing picks up load. */
    record ColdLoad(Contact contact, double factor) implements Amount {
        @Override
        public double value(Scene scene, int loadCase) {
            boolean picksUp = scene.analysis().closingDuty(contact) == ClosingDuty.PICKUP;
            return new Closing(contact).value(scene, loadCase) * (picksUp ? factor : 1);
        }
    }

    /** By how many degrees the voltage on one side is turned against that on the other; 0 where a side is dead. */
    record Angle(Contact contact) implements Amount {
        @Override
        public double value(Scene scene, int loadCase) {
            FlowSolution flow = scene.flow(loadCase);
            if (flow == null) {
                return Double.NaN;
            }
            Complex a = flow.voltage(scene.power().terminal(contact.a()));
            Complex b = flow.voltage(scene.power().terminal(contact.b()));
            return a.abs() == 0 || b.abs() == 0
                    ? 0
                    : Math.abs(Math.toDegrees(Math.atan2(
                            a.im() * b.re() - a.re() * b.im(), a.re() * b.re() + a.im() * b.im())));
        }
    }

    /** A bank that draws inrush when it comes alive. @param vertex its primary @param amperes what it draws then */
    record Drawing(int vertex, double amperes) {}

    /** What banks draw in the first cycles of those that closing a contact makes alive. */
    record Inrush(Contact contact, List<Drawing> banks) implements Amount {
        @Override
        public double value(Scene scene, int loadCase) {
            Analysis then = scene.analysis().switched(contact, true);
            return banks.stream()
                    .filter(b -> scene.analysis().level(b.vertex()) != Level.ENERGIZED
                            && then.level(b.vertex()) == Level.ENERGIZED)
                    .mapToDouble(Drawing::amperes)
                    .sum();
        }
    }

    /** {@return the voltage from one side of a contact to the other; not a number without a solution} */
    static Complex across(Scene scene, FlowSolution flow, Contact contact) {
        PowerModel model = scene.power();
        return flow == null
                ? Complex.real(Double.NaN)
                : flow.voltageBetween(model.terminal(contact.a()), model.terminal(contact.b()));
    }
}
