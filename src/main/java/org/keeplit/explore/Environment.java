package org.keeplit.explore;

import java.util.LinkedHashMap;
import java.util.Map;

/** What the variables of a rule stand for. */
record Environment(Map<String, Obj> objects) {
    static final Environment EMPTY = new Environment(Map.of());

    Environment with(String variable, Obj object) {
        Map<String, Obj> more = new LinkedHashMap<>(objects);
        more.put(variable, object);
        return new Environment(more);
    }

    Obj get(String variable) {
        return objects.get(variable);
    }
}
