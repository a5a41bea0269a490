package org.keeplit.plain;

import org.keeplit.condition.Measure;
import org.keeplit.condition.Truth;
import org.keeplit.network.Base;
import org.keeplit.network.ClosingDuty;
import org.keeplit.network.DutyLimit;
import org.keeplit.network.DutyTable;
import org.keeplit.network.Element;
import org.keeplit.network.OpeningDuty;
import org.keeplit.unit.Quantity;

/** Whether contacts are made for what they are about to do, in amperes and volts too. */
final class PlainFit {
    private static final double CLOSE = 1e-6;

    private final PlainFigures figures;
    private final PlainSwitching switching;

    PlainFit(PlainFigures figures) {
        this.figures = figures;
        this.switching = new PlainSwitching(figures);
    }

    private static DutyTable table(Joint contact) {
        boolean cable = contact.kind().base() == Base.MOBILE && contact.fact().endsWith(" 2");
        return contact.part() == Joint.Part.LEAD || cable ? contact.kind().leadDuties() : contact.kind().duties();
    }

    Truth toOpen(Joint contact) {
        OpeningDuty duty = figures.circuit().opening(contact);
        DutyLimit limit = table(contact).breaks().get(duty);
        if (limit == null) {
            return Truth.FALSE;
        }
        Truth all = Truth.TRUE;
        for (int c = 0; !limit.isNone() && c < figures.loadCases(); c++) {
            if (limit.current().isPresent()) {
                PlainFlow now = figures.flow(c);
                double amperes = !now.settled()
                        ? Double.NaN
                        : figures.circuit().isClosed(contact) ? now.through(contact).size() : 0;
                all = all.and(under(amperes, limit.current().get()));
            }
            if (limit.voltage().isPresent()) {
                all = all.and(under(switching.after(Measure.RECOVERY, contact, c), limit.voltage().get()));
            }
        }
        return duty == OpeningDuty.FAULT ? all.and(fault(contact, "interrupting")) : all;
    }

    /** {@return null if closing asks for something that its kind does not list} */
    Truth toClose(Joint contact) {
        ClosingDuty duty = figures.circuit().closing(contact);
        DutyLimit limit = table(contact).makes().get(duty);
        if (limit == null) {
            return null;
        }
        Truth all = Truth.TRUE;
        for (int c = 0; !limit.isNone() && c < figures.loadCases(); c++) {
            if (limit.current().isPresent()) {
                all = all.and(under(switching.after(Measure.CLOSING_CURRENT, contact, c), limit.current().get()));
            }
            if (limit.voltage().isPresent()) {
                PlainFlow now = figures.flow(c);
                double volts = now.settled() ? PlainSwitching.across(now, contact) : Double.NaN;
                all = all.and(under(volts, limit.voltage().get()));
            }
        }
        return duty == ClosingDuty.GROUND ? all.and(fault(contact, "making")) : all;
    }

    private Truth fault(Joint contact, String rating) {
        Element owner = figures.scenery().names().bound().network().element(contact.owner()).orElse(null);
        Quantity own = owner == null ? null : owner.figures().get(rating);
        Quantity most = own == null ? contact.kind().ratings().get(rating) : own;
        return most == null ? Truth.TRUE : under(switching.fault(contact), most);
    }

    private static Truth under(double value, Quantity most) {
        boolean close = Math.abs(value - most.si()) <= CLOSE * most.si();
        return Double.isNaN(value) || close ? Truth.UNKNOWN : Truth.of(value < most.si());
    }
}
