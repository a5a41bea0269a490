package org.keeplit.plain;

import org.keeplit.condition.Term;
import org.keeplit.condition.Type;
import org.keeplit.network.Conductor;

/**
 * What a variable stands for.
 *
 * @param type its sort
 * @param name its name
 * @param phase its phase, for things that are on one phase; null for others
 * @param place the term of a point that is meant on all its phases; null for others
 * @param joint the contact; null for others
 */
record Thing(Type type, String name, Conductor phase, Term place, Joint joint) {
    static Thing named(Type type, String name) {
        return new Thing(type, name, null, null, null);
    }

    static Thing phase(Conductor phase) {
        return new Thing(Type.PHASE, phase.toString(), phase, null, null);
    }

    static Thing point(Term term) {
        return new Thing(Type.POINT, term.toString(), null, term, null);
    }

    static Thing spot(String vertex, Conductor phase) {
        return new Thing(Type.POINT, vertex, phase, null, null);
    }

    static Thing contact(Joint joint) {
        return new Thing(Type.CONTACT, joint.toString(), joint.phase(), null, joint);
    }
}
