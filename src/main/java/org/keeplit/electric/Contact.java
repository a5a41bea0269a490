package org.keeplit.electric;

import org.keeplit.network.Base;
import org.keeplit.network.Conductor;
import org.keeplit.network.Kind;
import org.keeplit.program.FieldKey;

/**
 * Something that makes and breaks between two vertices: a pole, a lead end, a clamp.
 *
 * @param id its number in the grid
 * @param a the number of the vertex on the source side
 * @param b the number of the vertex on the load side
 * @param key the field that says where it stands
 * @param value the value of the field at which it is closed
 * @param part what it is
 * @param owner the device or the family of temporary equipment that it belongs to
 * @param phase its phase
 * @param site the structure where it is
 * @param kind the kind of its owner
 */
public record Contact(
        int id,
        int a,
        int b,
        FieldKey key,
        int value,
        Part part,
        String owner,
        Conductor phase,
        String site,
        Kind kind) {

    /** What a contact is. */
    public enum Part {
        /** A pole of a switching device. */
        POLE,
        /** The line end or the bushing end of a lead. */
        LEAD,
        /** A clamp of a jumper. */
        CLAMP,
        /** One end of a protective ground. */
        GROUND
    }

    /** Numbers are unique in a grid; hashing the whole kind each time would cost more than all rules together. */
    @Override
    public int hashCode() {
        return id;
    }

    /** {@return whether it is the cable end of a temporary source, made for no more than a lead is} */
    public boolean isCable() {
        return kind.base() == Base.MOBILE && key instanceof FieldKey.Clamp clamp && clamp.clamp() == 2;
    }

    /** {@return whether it is plain conductor when closed, so that a ground beyond it protects people here} */
    public boolean isPlain() {
        return part != Part.POLE;
    }
}
