package org.keeplit.plain;

import java.util.List;
import org.keeplit.condition.Predicate;
import org.keeplit.condition.Truth;
import org.keeplit.network.Element;
import org.keeplit.network.Trait;
import org.keeplit.procedure.Person;

/** What the files say outright, whatever the state: of people, of kinds, of voltages. */
final class Stated {
    private final Names names;

    Stated(Names names) {
        this.names = names;
    }

    /** {@return what the crew list says of a person} */
    Truth crew(Predicate predicate, List<String> words, String name) {
        for (Person person : names.bound().procedure().crew()) {
            if (person.name().equals(name)) {
                return Truth.of(switch (predicate) {
                    case IN_CHARGE -> person.inCharge();
                    case AT_CONTROL -> person.desk();
                    case OBSERVER -> person.observer();
                    case GROUND_HAND -> person.groundHand();
                    case QUALIFIED -> person.qualified();
                    case QUALIFIED_FOR -> person.qualifications().contains(words.get(0));
                    default -> person.side().isPresent()
                            && person.side().get().word().equals(words.get(0));
                });
            }
        }
        throw new IllegalStateException("nobody is called " + name);
    }

    /** {@return whether a nominal voltage is within bounds} */
    static Truth inClass(List<String> words, double volts) {
        Truth all = Truth.TRUE;
        for (int i = 0; i + 1 < words.size(); i += 2) {
            int side = Double.compare(volts, Double.parseDouble(words.get(i + 1)));
            all = all.and(Truth.of(switch (words.get(i)) {
                case "above" -> side > 0;
                case "below" -> side < 0;
                case "from" -> side >= 0;
                default -> side <= 0;
            }));
        }
        return all;
    }

    /** {@return whether something is built that way} */
    Truth has(String device, String what) {
        Element element = names.element(device);
        boolean ganged = element instanceof Element.Device d && d.ganged();
        if (what.equals(Trait.GANGED.phrase())) {
            return Truth.of(ganged);
        } else if (what.equals(Trait.SINGLE_PHASE_UNITS.phrase())) {
            return Truth.of(!ganged);
        }
        return Truth.of(element.kind().mode(what).isPresent()
                || element.kind().traits().stream().anyMatch(t -> t.phrase().equals(what)));
    }
}
