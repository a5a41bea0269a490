package org.keeplit.plain;

import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.LeadEnd;
import org.keeplit.network.Mode;
import org.keeplit.network.Place;
import org.keeplit.network.Side;
import org.keeplit.network.Trait;

/** Whether something can be done at all. */
final class Possible {
    private final Names names;

    Possible(Names names) {
        this.names = names;
    }

    boolean is(Deed deed, Facts facts) {
        if (deed instanceof Deed.Switch d) {
            int wanted = d.close() ? 0 : 1;
            return facts.get(names.pole(d.device(), d.phases().list().get(0))) == wanted;
        } else if (deed instanceof Deed.LeadMove d) {
            return facts.get(Names.end(d.device(), d.side(), d.phase(), d.end())) == 0
                    && (d.end() == LeadEnd.BUSHING || onPole(d.device(), d.phase(), facts));
        } else if (deed instanceof Deed.LeadOff d) {
            return facts.get(Names.end(d.device(), d.side(), d.phase(), d.end())) != 0
                    && (d.end() == LeadEnd.BUSHING || onPole(d.device(), d.phase(), facts));
        } else if (deed instanceof Deed.ClampOn d) {
            return facts.get(Names.clamp(d.family(), d.phase(), d.clamp())) == 0;
        } else if (deed instanceof Deed.ClampOff d) {
            return facts.get(Names.clamp(d.family(), d.phase(), d.clamp())) != 0;
        } else if (deed instanceof Deed.Neutral d) {
            return !isFirst(d.regulator(), d.phase(), Mode.CONTROL, false, facts)
                    && isFirst(d.regulator(), d.phase(), Mode.CONTROL_POWER, true, facts);
        } else if (deed instanceof Deed.Bring d) {
            return canBring(d, facts);
        } else if (deed instanceof Deed.Climb d) {
            return facts.get("where " + d.person()) != names.number(d.site());
        } else if (deed instanceof Deed.Descend d) {
            return facts.get("where " + d.person()) != 0;
        } else if (deed instanceof Deed.Talk d) {
            int now = facts.get("permit " + d.permit());
            return switch (d.speech()) {
                case ASK -> now == 0 || now == 5;
                case ISSUE -> now == 0 || now == 1;
                case REPEAT -> now == 2;
                case CONFIRM -> now == 3;
                case RELEASE -> now == 2 || now == 3 || now == 4;
            };
        } else if (deed instanceof Deed.Tie d) {
            return facts.get("tag " + d.device()) == (d.on() ? 0 : 1);
        }
        return true;
    }

    private boolean onPole(String device, Conductor phase, Facts facts) {
        return facts.get(names.placed(device, phase)) == Place.POLE.ordinal();
    }

    /** {@return whether a setting is at its first value; an answer of its own if the kind has no such setting} */
    private boolean isFirst(String device, Conductor phase, String mode, boolean without, Facts facts) {
        Element element = names.element(device);
        return element.kind().mode(mode).isEmpty() ? without : facts.get(names.mode(device, phase, mode)) == 0;
    }

    private boolean canBring(Deed.Bring d, Facts facts) {
        boolean leads = names.element(d.device()).kind().has(Trait.LEADS);
        for (Conductor p : d.phases()) {
            if (facts.get(names.placed(d.device(), p)) == d.place().ordinal()) {
                return false;
            }
            for (Side side : Side.values()) {
                boolean holds = true;
                for (LeadEnd end : LeadEnd.values()) {
                    holds &= facts.get(Names.end(d.device(), side, p, end)) == 1;
                }
                if (leads && holds) {
                    return false;
                }
            }
        }
        return true;
    }
}
