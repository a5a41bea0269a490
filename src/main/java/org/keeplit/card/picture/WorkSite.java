package org.keeplit.card.picture;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.keeplit.network.Element;
import org.keeplit.program.Primitive;
import org.keeplit.program.Program;

/** What stands where the work is. */
public final class WorkSite {
    private WorkSite() {}

    /** {@return the devices and regulators at the structures where people go up; with none, those that the steps open and close} @param program the program */
    public static ImmutableList<Element.Branch> of(Program program) {
        ImmutableSet<String> sites = ImmutableSet.copyOf(program.sites());
        Set<String> moved = new LinkedHashSet<>();
        program.acts().forEach(act -> act.primitives().forEach(p -> {
            if (p instanceof Primitive.MovePole pole) {
                moved.add(pole.device());
            }
        }));
        List<Element.Branch> standing = program.bound().network().all(Element.Branch.class)
                .filter(b -> b instanceof Element.Device d && sites.contains(d.site())
                        || b instanceof Element.Regulator r && sites.contains(r.site()))
                .toList();
        return standing.isEmpty()
                ? program.bound().network().all(Element.Branch.class)
                        .filter(b -> moved.contains(b.name()))
                        .collect(ImmutableList.toImmutableList())
                : ImmutableList.copyOf(standing);
    }
}
