package org.keeplit.plain;

import java.util.HashMap;
import java.util.Map;
import org.keeplit.condition.Term;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.LeadEnd;
import org.keeplit.network.Mode;
import org.keeplit.network.Side;
import org.keeplit.network.Trait;
import org.keeplit.procedure.Bound;

/** How facts and places are called, and numbers for what facts can be besides numbers. */
final class Names {
    /** The earth. */
    static final String EARTH = "earth";

    private final Bound bound;
    private final Map<String, Integer> numbers = new HashMap<>();
    private final Map<Integer, String> words = new HashMap<>();

    Names(Bound bound) {
        this.bound = bound;
    }

    Bound bound() {
        return bound;
    }

    /** {@return a number, from 1, for some words; the same for the same words} */
    int number(String text) {
        return numbers.computeIfAbsent(text, t -> {
            words.put(words.size() + 1, t);
            return words.size();
        });
    }

    /** {@return the words for a number} */
    String words(int number) {
        return words.get(number);
    }

    Element element(String name) {
        return bound.network().element(name).orElseThrow();
    }

    private Conductor unit(String device, Conductor phase) {
        return element(device) instanceof Element.Device d && d.ganged() ? d.phases().list().get(0) : phase;
    }

    String pole(String device, Conductor phase) {
        return "pole " + device + " " + unit(device, phase);
    }

    String placed(String device, Conductor phase) {
        return "placed " + device + " " + unit(device, phase);
    }

    String count(String device, Conductor phase) {
        return "count " + device + " " + unit(device, phase);
    }

    static String end(String device, Side side, Conductor phase, LeadEnd end) {
        return "end " + device + " " + side + " " + phase + " " + end;
    }

    static String clamp(String family, Conductor phase, int clamp) {
        return "clamp " + family + " " + phase + " " + clamp;
    }

    String mode(String device, Conductor phase, String mode) {
        Element element = element(device);
        boolean each = element.kind().mode(mode).map(Mode::each).orElse(false)
                && !(element instanceof Element.Device d && d.ganged());
        return "mode " + device + " " + mode + (each ? " " + phase : "");
    }

    static String tap(String regulator, Conductor phase) {
        return "tap " + regulator + " " + phase;
    }

    static String proved(String what, String subject, Conductor phase) {
        return "proved " + what + " " + subject + " " + phase;
    }

    static String node(String node, Conductor phase) {
        return node + "/" + phase;
    }

    static String lead(String device, Side side, Conductor phase) {
        return device + "/" + side + "-lead/" + phase;
    }

    static String bushing(String device, Side side, Conductor phase) {
        return device + "/" + side + "-bushing/" + phase;
    }

    static String machine(String family, Conductor phase) {
        return "machine/" + family + "/" + phase;
    }

    static String piece(String family, Conductor phase) {
        return family + "/piece/" + phase;
    }

    /** {@return the place that a bound term names on a phase} */
    String vertex(Term term, Conductor phase) {
        if (term instanceof Term.LineOf line) {
            return node(((Element.Branch) element(line.of().toString())).node(line.side()), phase);
        } else if (term instanceof Term.BushingOf bushing) {
            String device = bushing.of().toString();
            return isWithLeads(device)
                    ? bushing(device, bushing.side(), phase)
                    : node(((Element.Branch) element(device)).node(bushing.side()), phase);
        } else if (term instanceof Term.LeadOf lead) {
            String device = lead.of().toString();
            return isWithLeads(device)
                    ? lead(device, lead.side(), phase)
                    : node(((Element.Branch) element(device)).node(lead.side()), phase);
        } else if (term instanceof Term.NodeOf of) {
            return node(((Element.Shunt) element(of.of().toString())).node(), phase);
        }
        String name = term.toString();
        if (bound.temporary(name).isPresent()) {
            return piece(name, phase);
        }
        if (bound.network().element(name).orElse(null) instanceof Element.Shunt shunt) {
            return node(shunt.node(), phase);
        }
        return node(name, phase);
    }

    /** {@return whether leads of a device come off; if not, they and its bushings are one with its lines} */
    boolean isWithLeads(String device) {
        return element(device).kind().has(Trait.LEADS);
    }

    /** {@return the structure where something stands} */
    String site(String name) {
        if (bound.temporary(name).isPresent()) {
            return site(bound.temporary(name).get().of().toString());
        }
        Element element = bound.network().element(name).orElse(null);
        return element instanceof Element.Device d ? d.site() : element instanceof Element.Regulator r ? r.site() : name;
    }
}
