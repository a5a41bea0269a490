package org.keeplit.plain;

import java.util.ArrayList;
import java.util.List;
import org.keeplit.condition.ActKind;
import org.keeplit.condition.Type;
import org.keeplit.network.Base;
import org.keeplit.network.Conductor;
import org.keeplit.network.Place;
import org.keeplit.procedure.Action;

/** The moments that an act is. */
final class Events {
    private final Scenery scenery;
    private final Names names;

    Events(Scenery scenery) {
        this.scenery = scenery;
        this.names = scenery.names();
    }

    /** A moment: what kind, who and what takes part, on which phase, and whether the act is it in this state. */
    record Event(ActKind kind, List<Thing> things, Conductor phase, List<String> words, boolean is) {}

    /** {@return all events that an act is, in a state; in none at all those that it may be} */
    List<Event> of(PlainAct act, Asking asking) {
        List<Event> all = new ArrayList<>();
        if (act.step().action() instanceof Action.Happen) {
            return all;
        }
        act.deeds().forEach(deed -> all.addAll(moments(deed, asking)));
        act.step().records().forEach(item -> word(all, ActKind.RECORDING, item));
        if (act.step().action() instanceof Action.Brief brief) {
            brief.people().forEach(p -> add(all, ActKind.BRIEFING, null, Thing.named(Type.PERSON, p.toString())));
        } else if (act.step().action() instanceof Action.Do done) {
            word(all, ActKind.DOING, done.words());
        }
        return all;
    }

    private static void word(List<Event> all, ActKind kind, String text) {
        all.add(new Event(kind, List.of(), null, List.of(text), true));
    }

    private List<Event> moments(Deed deed, Asking asking) {
        List<Event> all = new ArrayList<>();
        if (deed instanceof Deed.Switch d) {
            for (Conductor p : d.phases()) {
                add(all, d.close() ? ActKind.CLOSING : ActKind.OPENING, p, Thing.named(Type.DEVICE, d.device()));
                for (Joint joint : scenery.wiring().joints()) {
                    if (joint.part() == Joint.Part.POLE && joint.owner().equals(d.device()) && joint.phase() == p) {
                        contact(all, joint, d.close(), p, asking);
                    }
                }
            }
        } else if (deed instanceof Deed.LeadMove d) {
            add(all, ActKind.LANDING, d.phase(), Thing.named(Type.DEVICE, d.device()));
            contacts(all, Names.end(d.device(), d.side(), d.phase(), d.end()), Wiring.leadValue(d), d.phase(), asking);
        } else if (deed instanceof Deed.LeadOff d) {
            add(all, ActKind.LIFTING, d.phase(), Thing.named(Type.DEVICE, d.device()));
            contacts(all, Names.end(d.device(), d.side(), d.phase(), d.end()), 0, d.phase(), asking);
        } else if (deed instanceof Deed.ClampOn d) {
            clampOn(all, d, asking);
        } else if (deed instanceof Deed.ClampOff d) {
            clampOff(all, d, asking);
        } else if (deed instanceof Deed.Adjust d) {
            Type type = Scenery.typeOf(names.element(d.device()));
            all.add(new Event(
                    ActKind.SETTING,
                    List.of(Thing.named(type, d.device())),
                    d.phase(),
                    List.of(d.mode(), d.value()),
                    true));
        } else if (deed instanceof Deed.Neutral d) {
            add(all, ActKind.TAPPING, d.phase(), Thing.named(Type.REGULATOR, d.regulator()));
        } else if (deed instanceof Deed.Bring d && d.place() != Place.SHOP) {
            for (Conductor p : d.phases()) {
                ActKind kind = d.place() == Place.POLE ? ActKind.RAISING : ActKind.LOWERING;
                add(all, kind, p, Thing.named(Type.DEVICE, d.device()));
            }
        } else if (deed instanceof Deed.Climb d) {
            add(all, ActKind.GOING_ALOFT, null, Thing.named(Type.PERSON, d.person()), Thing.named(Type.SITE, d.site()));
        } else if (deed instanceof Deed.Descend d) {
            add(all, ActKind.COMING_DOWN, null, Thing.named(Type.PERSON, d.person()));
        } else if (deed instanceof Deed.Talk d) {
            Type type = names.bound().permit(d.permit()).orElseThrow().type();
            add(all, spoken(d), null, Thing.named(type, d.permit()));
        } else if (deed instanceof Deed.Tie d) {
            add(all, d.on() ? ActKind.TAGGING : ActKind.UNTAGGING, null, Thing.named(Type.DEVICE, d.device()));
        } else if (deed instanceof Deed.Test d) {
            add(all, ActKind.TESTING, d.phase(), Thing.spot(d.vertex(), d.phase()));
        } else if (deed instanceof Deed.Touch d) {
            add(all, ActKind.WORKING, d.phase(), Thing.spot(d.vertex(), d.phase()));
        } else if (deed instanceof Deed.Note d) {
            word(all, ActKind.RECORDING, d.item());
        } else if (deed instanceof Deed.Find d) {
            word(all, ActKind.INSPECTING, d.item());
        }
        return all;
    }

    private static ActKind spoken(Deed.Talk talk) {
        return switch (talk.speech()) {
            case ASK -> ActKind.ASKING;
            case ISSUE -> ActKind.ISSUING;
            case REPEAT -> ActKind.REPEATING;
            case CONFIRM -> ActKind.CONFIRMING;
            case RELEASE -> ActKind.RELEASING;
        };
    }

    private static void add(List<Event> all, ActKind kind, Conductor phase, Thing... things) {
        all.add(new Event(kind, List.of(things), phase, List.of(), true));
    }

    private void contacts(List<Event> all, String fact, int value, Conductor p, Asking asking) {
        for (Joint joint : scenery.wiring().joints()) {
            if (fact.equals(joint.fact()) && (value == 0 || joint.value() == value)) {
                contact(all, joint, value != 0, p, asking);
            }
        }
    }

    /** What breaks is whatever is closed; what makes is the contact at the place where it goes. */
    private static void contact(List<Event> all, Joint joint, boolean makes, Conductor p, Asking asking) {
        all.add(new Event(
                makes ? ActKind.MAKING : ActKind.BREAKING,
                List.of(Thing.contact(joint)),
                p,
                List.of(),
                makes || asking == null || asking.circuit().isClosed(joint)));
    }

    private boolean isGround(String family) {
        return base(family) == Base.GROUND;
    }

    private Base base(String family) {
        return names.bound().temporary(family).orElseThrow().kind().base();
    }

    private void clampOn(List<Event> all, Deed.ClampOn d, Asking asking) {
        if (base(d.family()) == Base.MOBILE) {
            add(all, d.clamp() == 1 ? ActKind.STARTING : ActKind.CONNECTING, d.phase(), Thing.named(Type.MOBILE, d.family()));
        } else if (!isGround(d.family())) {
            add(all, ActKind.CLAMPING, d.phase(), Thing.named(Type.JUMPER, d.family()));
        } else if (d.clamp() == 1) {
            add(all, ActKind.EARTHING, d.phase(), Thing.named(Type.GROUND, d.family()));
        } else {
            add(all, ActKind.GROUNDING, d.there(), Thing.spot(d.vertex(), d.there()));
        }
        contacts(all, Names.clamp(d.family(), d.phase(), d.clamp()), names.number(d.vertex()), d.phase(), asking);
    }

    private void clampOff(List<Event> all, Deed.ClampOff d, Asking asking) {
        String fact = Names.clamp(d.family(), d.phase(), d.clamp());
        if (base(d.family()) == Base.MOBILE) {
            add(all, d.clamp() == 1 ? ActKind.STOPPING : ActKind.DISCONNECTING, d.phase(), Thing.named(Type.MOBILE, d.family()));
        } else if (!isGround(d.family())) {
            add(all, ActKind.UNCLAMPING, d.phase(), Thing.named(Type.JUMPER, d.family()));
        } else if (d.clamp() == 1) {
            add(all, ActKind.UNEARTHING, d.phase(), Thing.named(Type.GROUND, d.family()));
        } else {
            for (Joint joint : scenery.wiring().joints()) {
                if (fact.equals(joint.fact())) {
                    Conductor there =
                            Conductor.valueOf(joint.a().substring(joint.a().lastIndexOf('/') + 1));
                    all.add(new Event(
                            ActKind.UNGROUNDING,
                            List.of(Thing.spot(joint.a(), there)),
                            there,
                            List.of(),
                            asking == null || asking.circuit().isClosed(joint)));
                }
            }
        }
        contacts(all, fact, 0, d.phase(), asking);
    }
}
