package org.keeplit.electric.flow;

import com.google.common.collect.ImmutableList;
import com.google.common.primitives.ImmutableIntArray;

/**
 * Which element is which contact, regulator or generator of a state: each kind is numbered from 0
 * in the order of building, and the arrays here give the element of a number. Sources are all that
 * hold a voltage, generators among them included.
 */
record StateLayout(
        ImmutableList<Element> elements,
        ImmutableIntArray contacts,
        ImmutableIntArray regulators,
        ImmutableIntArray generators,
        ImmutableIntArray sources,
        ImmutableList<String> loadCases) {

    int contact(int element) {
        if (elements.get(element) instanceof Contact contact) {
            return contact.ordinal();
        }
        throw wrong(element, "a contact");
    }

    Regulator regulator(int element) {
        if (elements.get(element) instanceof Regulator regulator) {
            return regulator;
        }
        throw wrong(element, "a regulator");
    }

    int generator(int element) {
        Element found = elements.get(element);
        if (found instanceof Source source && source.ordinal() >= 0) {
            return source.ordinal();
        }
        if (found instanceof Load load && load.isFollower()) {
            return load.ordinal();
        }
        throw wrong(element, "a generator");
    }

    private IllegalArgumentException wrong(int element, String wanted) {
        return new IllegalArgumentException("\"" + elements.get(element).name() + "\" is not " + wanted + ".");
    }
}
