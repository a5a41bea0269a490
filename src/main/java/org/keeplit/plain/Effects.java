package org.keeplit.plain;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.keeplit.condition.Truth;
import org.keeplit.network.Base;
import org.keeplit.network.ClosingDuty;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Mode;
import org.keeplit.network.OpeningDuty;
import org.keeplit.network.Trait;
import org.keeplit.procedure.Action;

/** What acts change, what follows by itself, and what people find. */
final class Effects {
    /** Where somebody is who has left. */
    static final int GONE = -1;

    private final Scenery scenery;
    private final Names names;
    private final Map<String, List<String>> heldAt;
    /** For each test for dead who makes it, anywhere in the run. */
    private final Map<String, Set<String>> testers = new HashMap<>();

    Effects(Scenery scenery, Map<String, List<String>> heldAt, List<PlainAct> acts) {
        this.scenery = scenery;
        this.names = scenery.names();
        this.heldAt = heldAt;
        for (PlainAct act : acts) {
            for (Deed deed : act.deeds()) {
                if (deed instanceof Deed.Test test) {
                    testers.computeIfAbsent(Names.proved("DEAD", test.vertex(), test.phase()), t -> new HashSet<>())
                            .addAll(act.actors());
                }
            }
        }
    }

    Truth seen(Deed deed, Asking asking) {
        if (deed instanceof Deed.See see) {
            return asking.ask(see.condition(), Map.of());
        } else if (deed instanceof Deed.Test test) {
            int level = asking.circuit().now().level(test.vertex());
            return level == Voltages.MAY_BE ? Truth.UNKNOWN : Truth.of(level == Voltages.DEAD);
        } else if (deed instanceof Deed.Prove prove) {
            return proof(prove, asking);
        }
        return Truth.TRUE;
    }

    private Truth proof(Deed.Prove prove, Asking asking) {
        return switch (prove.proof()) {
            case OPEN -> Truth.of(!asking.circuit().isClosed(pole(prove)));
            case CLOSED -> Truth.of(asking.circuit().isClosed(pole(prove)));
            case CARRYING -> Truth.of(carries(prove, asking));
            case IN_PHASE -> Truth.of(asking.circuit().closing(pole(prove)) == ClosingDuty.PARALLEL);
            case NEUTRAL -> asking.neutral(prove.subject(), prove.phase());
        };
    }

    private Joint pole(Deed.Prove prove) {
        return Asking.pole(scenery.wiring(), prove.subject(), prove.phase());
    }

    private boolean carries(Deed.Prove prove, Asking asking) {
        if (names.bound().temporary(prove.subject()).isEmpty()) {
            return heavy(pole(prove), asking);
        }
        for (int clamp = 1; clamp <= 2; clamp++) {
            String fact = Names.clamp(prove.subject(), prove.phase(), clamp);
            boolean carries = scenery.wiring().joints().stream()
                    .filter(j -> fact.equals(j.fact()) && asking.circuit().isClosed(j))
                    .anyMatch(j -> heavy(j, asking));
            if (!carries) {
                return false;
            }
        }
        return true;
    }

    private static boolean heavy(Joint joint, Asking asking) {
        OpeningDuty duty = asking.circuit().opening(joint);
        return duty != OpeningDuty.NOTHING && duty != OpeningDuty.BUSHING;
    }

    Facts after(PlainAct act, Asking before, Facts facts) {
        Facts now = facts;
        for (Deed deed : act.deeds()) {
            now = after(deed, now);
        }
        boolean moves = act.deeds().stream().anyMatch(this::disturbs);
        for (String item : act.step().records()) {
            now = now.with("record " + item, 1);
        }
        return settle(before, now, test -> moves && isMadeBy(test, act.actors()));
    }

    /** {@return what is so once something has happened that nobody does} */
    Facts happened(List<Deed> deeds, Asking before, Facts facts) {
        Facts now = facts;
        for (Deed deed : deeds) {
            now = after(deed, now);
        }
        boolean moves = deeds.stream().anyMatch(this::disturbs);
        return settle(before, now, test -> moves);
    }

    /** {@return whether one of those who act makes a test: what others do elsewhere does not make it stale} */
    private boolean isMadeBy(String test, List<String> actors) {
        return actors.stream().anyMatch(testers.getOrDefault(test, Set.of())::contains);
    }

    /** {@return what is so once poles have moved by themselves} */
    Facts byItself(List<Deed.Switch> moved, Asking before, Facts facts) {
        Facts now = facts;
        for (Deed.Switch one : moved) {
            now = switched(one, now);
        }
        return settle(before, now, fact -> true);
    }

    private boolean disturbs(Deed deed) {
        if (deed instanceof Deed.ClampOn d) {
            return isJumper(d.family());
        } else if (deed instanceof Deed.ClampOff d) {
            return isJumper(d.family());
        }
        return deed instanceof Deed.Switch
                || deed instanceof Deed.LeadMove
                || deed instanceof Deed.LeadOff
                || deed instanceof Deed.Climb
                || deed instanceof Deed.Descend
                || deed instanceof Deed.Pause
                || deed instanceof Deed.Hold;
    }

    private boolean isJumper(String family) {
        return names.bound().temporary(family).orElseThrow().kind().base() == Base.JUMPER;
    }

    private Facts after(Deed deed, Facts facts) {
        if (deed instanceof Deed.Switch d) {
            return switched(d, facts);
        } else if (deed instanceof Deed.LeadMove d) {
            return leadMoved(
                    facts.with(Names.end(d.device(), d.side(), d.phase(), d.end()), Wiring.leadValue(d)),
                    d.device(),
                    d.phase());
        } else if (deed instanceof Deed.LeadOff d) {
            return leadMoved(
                    facts.with(Names.end(d.device(), d.side(), d.phase(), d.end()), 0), d.device(), d.phase());
        } else if (deed instanceof Deed.ClampOn d) {
            return doubt(
                    facts.with(Names.clamp(d.family(), d.phase(), d.clamp()), names.number(d.vertex())),
                    d.family(),
                    d.phase(),
                    Action.Proof.CARRYING);
        } else if (deed instanceof Deed.ClampOff d) {
            return doubt(
                    facts.with(Names.clamp(d.family(), d.phase(), d.clamp()), 0),
                    d.family(),
                    d.phase(),
                    Action.Proof.CARRYING);
        } else if (deed instanceof Deed.Adjust d) {
            Mode mode = names.element(d.device()).kind().mode(d.mode()).orElseThrow();
            return facts.with(
                    names.mode(d.device(), d.phase(), d.mode()), mode.values().indexOf(d.value()));
        } else if (deed instanceof Deed.Neutral d) {
            Facts at = facts.with(Names.tap(d.regulator(), d.phase()), 0);
            return doubt(at, d.regulator(), d.phase(), Action.Proof.NEUTRAL);
        } else if (deed instanceof Deed.Bring d) {
            Facts now = facts;
            for (Conductor p : d.phases()) {
                now = now.with(names.placed(d.device(), p), d.place().ordinal());
            }
            return now;
        }
        return afterWords(deed, facts);
    }

    private Facts afterWords(Deed deed, Facts facts) {
        if (deed instanceof Deed.Climb d) {
            return facts.with("where " + d.person(), names.number(d.site()));
        } else if (deed instanceof Deed.Descend d) {
            return facts.with("where " + d.person(), 0);
        } else if (deed instanceof Deed.Leave d) {
            return facts.with("where " + d.person(), GONE);
        } else if (deed instanceof Deed.CutOff d) {
            return facts.with("cut off " + d.person(), 1);
        } else if (deed instanceof Deed.Lame d) {
            return facts.with("lame " + d.device(), 1);
        } else if (deed instanceof Deed.Talk d) {
            return facts.with("permit " + d.permit(), d.speech().ordinal() + 1);
        } else if (deed instanceof Deed.Tie d) {
            return facts.with("tag " + d.device(), d.on() ? 1 : 0);
        } else if (deed instanceof Deed.Prove d) {
            Facts now = facts.with(Names.proved(d.proof().name(), d.subject(), d.phase()), 1);
            return d.proof() == Action.Proof.NEUTRAL ? now.with(Names.tap(d.subject(), d.phase()), 0) : now;
        } else if (deed instanceof Deed.Test d) {
            return facts.with(Names.proved("DEAD", d.vertex(), d.phase()), 1);
        } else if (deed instanceof Deed.Note d) {
            return facts.with("record " + d.item(), 1);
        } else if (deed instanceof Deed.Find d) {
            return facts.with("found " + d.item(), names.number("outcome " + d.outcome()));
        } else if (deed instanceof Deed.Pause d) {
            String fact = "waited " + d.capacitor() + " " + d.phase();
            return facts.with(fact, facts.get(fact) + d.seconds() / 60);
        }
        return facts;
    }

    private Facts switched(Deed.Switch d, Facts facts) {
        Facts now = facts;
        Element.Device device = (Element.Device) names.element(d.device());
        for (Conductor p : d.phases()) {
            now = now.with(names.pole(d.device(), p), d.close() ? 1 : 0);
            now = doubt(
                    now,
                    d.device(),
                    p,
                    Action.Proof.OPEN,
                    Action.Proof.CLOSED,
                    Action.Proof.CARRYING,
                    Action.Proof.IN_PHASE);
        }
        if (!d.close() && device.kind().has(Trait.COUNTS)) {
            String count = names.count(d.device(), d.phases().list().get(0));
            now = now.with(count, now.get(count) + 1);
        }
        return now;
    }

    private static Facts leadMoved(Facts facts, String device, Conductor phase) {
        return doubt(facts, device, phase, Action.Proof.CARRYING, Action.Proof.IN_PHASE);
    }

    private static Facts doubt(Facts facts, String subject, Conductor phase, Action.Proof... proofs) {
        Facts now = facts;
        for (Action.Proof proof : proofs) {
            now = now.with(Names.proved(proof.name(), subject, phase), 0);
        }
        return now;
    }

    /** What follows by itself. @param doubted which tests for dead grow stale because something moved or time passed */
    private Facts settle(Asking before, Facts facts, Predicate<String> doubted) {
        Facts now = facts;
        for (Element.Regulator r : names.bound().network().all(Element.Regulator.class).toList()) {
            for (Conductor p : r.phases()) {
                boolean free = r.kind().modes().stream()
                                .anyMatch(m -> m.name().equals(Mode.CONTROL) || m.name().equals(Mode.CONTROL_POWER))
                        && isFirst(r, p, Mode.CONTROL, now)
                        && isFirst(r, p, Mode.CONTROL_POWER, now);
                if (free) {
                    now = now.with(Names.tap(r.name(), p), 1)
                            .with(Names.proved(Action.Proof.NEUTRAL.name(), r.name(), p), 0);
                }
            }
        }
        Circuit after = new Asking(scenery, now, heldAt).circuit();
        List<String> places = new ArrayList<>();
        scenery.wiring().joints().forEach(j -> {
            places.add(j.a());
            places.add(j.b());
        });
        names.bound().network().nodes().forEach((node, phases) -> phases.forEach(p -> places.add(Names.node(node, p))));
        for (String place : places.stream().distinct().toList()) {
            if (place.equals(Names.EARTH)) {
                continue;
            }
            String fact = Names.proved(
                    "DEAD", place, Conductor.valueOf(place.substring(place.lastIndexOf('/') + 1)));
            if (now.get(fact) == 1) {
                int level = after.now().level(place);
                boolean gone = level > before.circuit().now().level(place)
                        || level >= Voltages.BACKFED
                        || doubted.test(fact) && !after.grounded(place);
                now = gone ? now.with(fact, 0) : now;
            }
        }
        for (Element.Capacitor c : names.bound().network().all(Element.Capacitor.class).toList()) {
            for (Conductor p : c.phases()) {
                if (after.now().level(Names.node(c.node(), p)) != Voltages.DEAD) {
                    now = now.with("waited " + c.name() + " " + p, 0);
                }
            }
        }
        return now;
    }

    private boolean isFirst(Element element, Conductor p, String mode, Facts facts) {
        return element.kind().mode(mode).isEmpty() || facts.get(names.mode(element.name(), p, mode)) == 0;
    }
}
