package org.keeplit.plain;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.keeplit.condition.Truth;
import org.keeplit.network.ClosingDuty;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Mode;
import org.keeplit.network.OpeningDuty;
import org.keeplit.network.Phases;
import org.keeplit.network.Side;
import org.keeplit.network.Trait;

/** What follows electrically from the facts of one state, worked out on the whole network, once for the state. */
final class Circuit {
    private final Names names;
    private final Wiring wiring;
    private final Facts facts;
    private final Voltages now;
    private final Map<Joint, OpeningDuty> openings = new HashMap<>();
    private final Map<Joint, ClosingDuty> closings = new HashMap<>();
    private final Map<String, Set<String>> feeders = new HashMap<>();
    private Voltages conductors;

    Circuit(Names names, Wiring wiring, Facts facts) {
        this.names = names;
        this.wiring = wiring;
        this.facts = facts;
        this.now = solve(this::isClosed);
    }

    Voltages now() {
        return now;
    }

    boolean isClosed(Joint joint) {
        return !joint.isContact() || facts.get(joint.fact()) == joint.value();
    }

    /** {@return what is alive once a contact is open or closed, with all that its fact moves} */
    Voltages switched(Joint contact, boolean closed) {
        return solve(j -> isClosedThen(j, contact, closed));
    }

    /** {@return whether a joint is closed once a contact is open or closed} */
    boolean isClosedThen(Joint joint, Joint contact, boolean closed) {
        return contact.fact().equals(joint.fact()) ? closed && joint.value() == contact.value() : isClosed(joint);
    }

    /** {@return for how many minutes a bank was waited for} */
    int waited(String bank, Conductor phase) {
        return facts.get("waited " + bank + " " + phase);
    }

    /** {@return whether a tap is known to stand on neutral} */
    boolean isNeutral(String regulator, Conductor phase) {
        return facts.get(Names.tap(regulator, phase)) == 0;
    }

    private Voltages solve(Predicate<Joint> closed) {
        return new Voltages(names.bound().network(), wiring.joints(), closed);
    }

    Truth supplied(Element.Load load) {
        Truth all = Truth.TRUE;
        List<Integer> hours = new ArrayList<>();
        for (Conductor p : load.phases()) {
            if (p == Conductor.N) {
                continue;
            }
            String place = Names.node(load.node(), p);
            int level = now.level(place);
            all = all.and(
                    level == Voltages.MAY_BE
                            ? Truth.UNKNOWN
                            : Truth.of(level == Voltages.ENERGIZED && !now.isShorted(place)));
            hours.add(now.hour(place));
        }
        if (all == Truth.TRUE && hours.size() == 3) {
            boolean follows = (hours.get(1) - hours.get(0) + 12) % 12 == 4 && (hours.get(2) - hours.get(1) + 12) % 12 == 4;
            return Truth.of(follows);
        }
        if (all == Truth.TRUE && load.phases().containsAll(Phases.LEGS)) {
            return Truth.of((hours.get(1) + 6) % 12 == hours.get(0));
        }
        return all;
    }

    boolean grounded(String place) {
        if (conductors == null) {
            conductors = solve(
                    j -> isClosed(j) && j.part() != Joint.Part.POLE && j.part() != Joint.Part.REGULATOR);
        }
        return conductors.joined(place, Names.EARTH);
    }

    boolean looped(Element.Branch branch, Conductor phase) {
        boolean movable = wiring.joints().stream().anyMatch(j -> j.isContact() && j.owner().equals(branch.name()));
        Voltages rest = solve(j -> isClosed(j) && !(j.isContact() && j.owner().equals(branch.name())));
        return movable && rest.joined(Names.node(branch.from(), phase), Names.node(branch.to(), phase));
    }

    Truth bypassed(Element.Branch branch, Conductor phase) {
        String from = Names.node(branch.from(), phase);
        String to = Names.node(branch.to(), phase);
        Predicate<Joint> own = j -> j.owner().equals(branch.name());
        return onSite(names.site(branch.name()), from, to, own);
    }

    /** {@return the contacts by which current may leave a device's source side and come to its load side on site} */
    List<Joint> waysAround(Element.Device device, Conductor phase) {
        String from = Names.node(device.from(), phase);
        List<Joint> here = wiring.joints().stream()
                .filter(j -> j.site().equals(device.site()) && !j.owner().equals(device.name()))
                .filter(j -> j.part() == Joint.Part.REGULATOR
                        || j.isContact() && j.part() != Joint.Part.GROUND && isClosed(j))
                .toList();
        Set<String> arrives = new HashSet<>(Set.of(Names.node(device.to(), phase)));
        boolean more = true;
        while (more) {
            more = false;
            for (Joint joint : here) {
                boolean leaves = joint.a().equals(from) || joint.b().equals(from);
                if (!leaves && arrives.contains(joint.a()) != arrives.contains(joint.b())) {
                    arrives.add(joint.a());
                    arrives.add(joint.b());
                    more = true;
                }
            }
        }
        return here.stream()
                .filter(Joint::isContact)
                .filter(j -> j.a().equals(from) && arrives.contains(j.b())
                        || j.b().equals(from) && arrives.contains(j.a()))
                .toList();
    }

    /** {@return whether two places are solidly joined at a site, some joints left out} */
    private Truth onSite(String site, String from, String to, Predicate<Joint> without) {
        Set<String> surely = reach(site, from, without, false);
        Set<String> perhaps = reach(site, from, without, true);
        return surely.contains(to) ? Truth.TRUE : perhaps.contains(to) ? Truth.UNKNOWN : Truth.FALSE;
    }

    private Set<String> reach(String site, String from, Predicate<Joint> without, boolean anyTap) {
        Set<String> seen = new HashSet<>(Set.of(from));
        boolean more = true;
        while (more) {
            more = false;
            for (Joint joint : wiring.joints()) {
                if (joint.site().equals(site)
                        && !without.test(joint)
                        && carries(joint, anyTap)
                        && seen.contains(joint.a()) != seen.contains(joint.b())) {
                    seen.add(joint.a());
                    seen.add(joint.b());
                    more = true;
                }
            }
        }
        return seen;
    }

    private boolean carries(Joint joint, boolean anyTap) {
        return switch (joint.part()) {
            case POLE, LEAD -> isClosed(joint)
                    && !joint.kind().has(Trait.TRIPS)
                    && !joint.kind().has(Trait.FUSIBLE);
            case CLAMP -> isClosed(joint);
            case REGULATOR -> anyTap || facts.get(Names.tap(joint.owner(), joint.phase())) == 0;
            default -> false;
        };
    }

    Truth isolated(Element.Branch branch) {
        Voltages reach = solve(
                j -> isClosed(j) || j.part() == Joint.Part.POLE && !j.kind().has(Trait.ISOLATES));
        Truth all = Truth.TRUE;
        for (Conductor p : branch.phases()) {
            for (Side side : Side.values()) {
                String place = branch.kind().has(Trait.LEADS)
                        ? Names.bushing(branch.name(), side, p)
                        : Names.node(branch.node(side), p);
                int level = reach.level(place);
                all = all.and(
                        level == Voltages.DEAD
                                ? Truth.TRUE
                                : level == Voltages.MAY_BE ? Truth.UNKNOWN : Truth.FALSE);
            }
        }
        return all;
    }

    OpeningDuty opening(Joint contact) {
        return openings.computeIfAbsent(contact, this::findOpening);
    }

    private OpeningDuty findOpening(Joint contact) {
        if (!isClosed(contact)) {
            return OpeningDuty.NOTHING;
        }
        if (now.isShorted(contact.a())) {
            return OpeningDuty.FAULT;
        }
        int before = now.level(contact.a());
        Voltages then = solve(j -> isClosed(j) && !contact.fact().equals(j.fact()));
        int a = then.level(contact.a());
        int b = then.level(contact.b());
        if (before == Voltages.DEAD) {
            return Math.max(a, b) >= Voltages.BACKFED ? OpeningDuty.LOAD : OpeningDuty.NOTHING;
        }
        if (a == before && b == before) {
            boolean oneVoltage = before != Voltages.BACKFED || then.joined(contact.a(), contact.b());
            return oneVoltage ? OpeningDuty.PARALLEL : OpeningDuty.LOAD;
        }
        return heaviest(now, then);
    }

    /** {@return the heaviest thing on what is less alive in one state than in another} */
    private OpeningDuty heaviest(Voltages more, Voltages less) {
        OpeningDuty heaviest = OpeningDuty.BUSHING;
        for (Element element : names.bound().network().elements()) {
            OpeningDuty duty;
            String node;
            if (element instanceof Element.Load l) {
                duty = OpeningDuty.LOAD;
                node = l.node();
            } else if (element instanceof Element.Capacitor c) {
                duty = OpeningDuty.CAPACITOR;
                node = c.node();
            } else if (element instanceof Element.Transformer t) {
                duty = OpeningDuty.TRANSFORMER;
                node = t.from();
            } else if (element instanceof Element.Line l) {
                duty = l.kind().has(Trait.CABLE) ? OpeningDuty.CABLE : OpeningDuty.LINE;
                node = l.from();
            } else {
                continue;
            }
            for (Conductor p : element.phases()) {
                boolean counts = p != Conductor.N || !(element instanceof Element.Transformer);
                if (counts && less.level(Names.node(node, p)) < more.level(Names.node(node, p)) && duty.compareTo(heaviest) > 0) {
                    heaviest = duty;
                }
            }
        }
        return heaviest;
    }

    ClosingDuty closing(Joint contact) {
        return closings.computeIfAbsent(contact, this::findClosing);
    }

    private ClosingDuty findClosing(Joint contact) {
        if (isClosed(contact)) {
            return ClosingDuty.NOTHING;
        }
        int a = now.level(contact.a());
        int b = now.level(contact.b());
        if (a == Voltages.DEAD && b == Voltages.DEAD) {
            return ClosingDuty.NOTHING;
        }
        if (now.isEarthed(contact.a()) || now.isEarthed(contact.b())) {
            return ClosingDuty.GROUND;
        }
        if (now.joined(contact.a(), contact.b())) {
            return unequal(contact) ? ClosingDuty.UNEQUAL : ClosingDuty.PARALLEL;
        }
        Voltages then = solve(j -> j.isContact() && j.fact().equals(contact.fact())
                ? j.value() == contact.value()
                : isClosed(j));
        boolean meets = then.anythingShorted() && !now.anythingShorted();
        if (a == Voltages.ENERGIZED && b == Voltages.ENERGIZED) {
            String left = now.identity(contact.a());
            String right = now.identity(contact.b());
            if (left.equals(right)) {
                return meets ? ClosingDuty.CROSS : unequal(contact) ? ClosingDuty.UNEQUAL : ClosingDuty.PARALLEL;
            }
            boolean sameSupply = left.contains("@")
                    && right.contains("@")
                    && left.substring(0, left.lastIndexOf('@')).equals(right.substring(0, right.lastIndexOf('@')));
            return sameSupply ? ClosingDuty.CROSS : ClosingDuty.JOIN;
        }
        if (a == Voltages.MAY_BE && b != Voltages.DEAD || b == Voltages.MAY_BE && a != Voltages.DEAD) {
            return ClosingDuty.JOIN;
        }
        if (meets) {
            return ClosingDuty.CROSS;
        }
        return heaviest(then, now) == OpeningDuty.LOAD ? ClosingDuty.PICKUP : ClosingDuty.ENERGIZE;
    }

    private boolean unequal(Joint contact) {
        Predicate<Joint> self = contact::equals;
        boolean anyWay = reach(contact.site(), contact.a(), self, true).contains(contact.b());
        return anyWay && !reach(contact.site(), contact.a(), self, false).contains(contact.b());
    }

    Set<String> feeding(String site) {
        return feeders.computeIfAbsent(site, this::findFeeding);
    }

    private Set<String> findFeeding(String site) {
        Set<String> all = new LinkedHashSet<>();
        Predicate<Joint> recloses = j -> j.part() == Joint.Part.POLE && j.kind().recloses();
        Voltages without = solve(j -> isClosed(j) && !recloses.test(j));
        Set<Integer> region = new HashSet<>();
        wiring.lineVertices(site).forEach(v -> region.add(without.group(v)));
        for (Joint pole : wiring.joints()) {
            if (!recloses.test(pole) || !(isClosed(pole) || mayClose(pole.owner()))) {
                continue;
            }
            if (pole.site().equals(site)) {
                all.add(pole.owner());
                continue;
            }
            boolean aIn = region.contains(without.group(pole.a()));
            boolean bIn = region.contains(without.group(pole.b()));
            if (aIn != bIn && reachesSource(aIn ? pole.b() : pole.a(), region, without)) {
                all.add(pole.owner());
            }
        }
        return all;
    }

    private boolean mayClose(String device) {
        Element element = names.element(device);
        return element.kind().mode(Mode.REMOTE).isPresent()
                && facts.get(names.mode(device, element.phases().list().get(0), Mode.REMOTE)) == 0;
    }

    private boolean reachesSource(String start, Set<Integer> region, Voltages without) {
        Set<String> seen = new LinkedHashSet<>(Set.of(start));
        ArrayDeque<String> open = new ArrayDeque<>(seen);
        while (!open.isEmpty()) {
            String place = open.poll();
            if (isSource(place)) {
                return true;
            }
            for (String next : beyond(place)) {
                if (!region.contains(without.group(next)) && seen.add(next)) {
                    open.add(next);
                }
            }
        }
        return false;
    }

    private boolean isSource(String place) {
        return place.startsWith("machine/") || names.bound().network().elements().stream()
                .filter(e -> e instanceof Element.Source || e instanceof Element.Generator)
                .anyMatch(e -> e.phases().list().stream()
                        .filter(p -> p != Conductor.N || e instanceof Element.Generator)
                        .anyMatch(p -> Names.node(((Element.Shunt) e).node(), p).equals(place)));
    }

    private List<String> beyond(String place) {
        List<String> all = new ArrayList<>();
        for (Joint joint : wiring.joints()) {
            if (isClosed(joint)) {
                if (joint.a().equals(place)) {
                    all.add(joint.b());
                } else if (joint.b().equals(place)) {
                    all.add(joint.a());
                }
            }
        }
        names.bound().network().all(Element.Transformer.class).forEach(t -> {
            Conductor first = t.phases().list().get(0);
            for (Conductor p : Voltages.served(t)) {
                String from = Names.node(t.from(), t.phases().contains(p) ? p : first);
                if (from.equals(place)) {
                    all.add(Names.node(t.to(), p));
                } else if (Names.node(t.to(), p).equals(place)) {
                    all.add(from);
                }
            }
        });
        return all;
    }
}
