package org.keeplit.explore;

import java.util.BitSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import org.keeplit.condition.Truth;
import org.keeplit.electric.Analysis;
import org.keeplit.electric.Contact;
import org.keeplit.electric.Electric;
import org.keeplit.electric.SiteGraph;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Mode;
import org.keeplit.program.Field;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Layout;

/** A state with what follows from it electrically, worked out when first asked for. Moved from state to state. */
final class Scene {
    private final Layout layout;
    private final Electric electric;
    private final Field[] contactFields;
    private final int[] contactValues;
    private final boolean[] constant;
    private final SiteGraph.Taps taps = this::neutral;
    private final BitSet closed = new BitSet();
    private final Map<String, FieldKey> remote = new LinkedHashMap<>();
    private long[] state;
    private Analysis analysis;

    Scene(Layout layout, Electric electric) {
        this.layout = layout;
        this.electric = electric;
        int count = electric.cells().kept().size();
        this.contactFields = new Field[count];
        this.contactValues = new int[count];
        this.constant = new boolean[count];
        for (int i = 0; i < count; i++) {
            Contact contact = electric.cells().kept().get(i);
            contactFields[i] = layout.field(contact.key()).orElse(null);
            contactValues[i] = contact.value();
            constant[i] = layout.constant(contact.key()) == contact.value();
        }
        electric.cells().grid().network().all(Element.Device.class).forEach(d -> {
            Conductor unit = d.phases().list().get(0);
            d.kind().mode(Mode.REMOTE).ifPresent(m -> remote.put(d.name(), new FieldKey.Mode(d.name(), unit, m.name())));
        });
    }

    /** Looks at another state; the array is not copied. */
    Scene at(long[] next) {
        state = next;
        analysis = null;
        return this;
    }

    long[] state() {
        return state;
    }

    Layout layout() {
        return layout;
    }

    Analysis analysis() {
        if (analysis == null) {
            for (int i = 0; i < contactFields.length; i++) {
                closed.set(
                        i, contactFields[i] == null ? constant[i] : contactFields[i].get(state) == contactValues[i]);
            }
            analysis = electric.at(closed);
        }
        return analysis;
    }

    /** {@return the devices that somebody may close from elsewhere} */
    Set<String> mayClose() {
        if (remote.isEmpty()) {
            return Set.of();
        }
        Set<String> on = new HashSet<>();
        remote.forEach((device, key) -> {
            if (layout.value(state, key) == 0) {
                on.add(device);
            }
        });
        return on;
    }

    SiteGraph.Taps taps() {
        return taps;
    }

    private Truth neutral(String regulator, Conductor phase) {
        int tap = layout.value(state, new FieldKey.Tap(regulator, phase));
        return tap == FieldKey.Tap.NEUTRAL ? Truth.TRUE : Truth.UNKNOWN;
    }
}
