package org.keeplit.explore;

import com.google.common.collect.ImmutableSet;
import java.util.BitSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.keeplit.electric.Analysis;
import org.keeplit.electric.Contact;
import org.keeplit.electric.Level;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.outcome.CalledOutage;
import org.keeplit.program.Vertex;

/** Works out what a called outage takes. */
final class CallingOutage {
    private CallingOutage() {}

    /** {@return what it takes in the state at which a scene looks} */
    static CalledOutage of(World world, Scene scene) {
        Analysis now = scene.analysis();
        Set<String> feeding = new LinkedHashSet<>();
        world.program().sites().forEach(site -> feeding.addAll(now.feeding(site, scene.mayClose())));
        ImmutableSet.Builder<String> devices = ImmutableSet.builder();
        world.bound().network().all(Element.Device.class)
                .map(Element.Device::name)
                .filter(feeding::contains)
                .forEach(devices::add);
        BitSet closed = (BitSet) now.closed().clone();
        List<Contact> kept = world.electric().cells().kept();
        for (int i = 0; i < kept.size(); i++) {
            if (kept.get(i).part() == Contact.Part.POLE && feeding.contains(kept.get(i).owner())) {
                closed.clear(i);
            }
        }
        Analysis then = world.electric().at(closed);
        int[] lost = new int[2];
        world.bound().network().all(Element.Load.class).forEach(load -> {
            if (loses(world, load, now, then)) {
                lost[0]++;
                lost[1] += load.customers();
            }
        });
        return new CalledOutage(devices.build(), lost[0], lost[1]);
    }

    private static boolean loses(World world, Element.Load load, Analysis now, Analysis then) {
        for (Conductor phase : load.phases()) {
            int vertex = world.grid().number(new Vertex.AtNode(load.node(), phase)).orElseThrow();
            if (now.level(vertex) == Level.ENERGIZED && then.level(vertex) != Level.ENERGIZED) {
                return true;
            }
        }
        return false;
    }
}
