package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Map;
import java.util.function.BiFunction;
import java.util.function.Predicate;
import org.keeplit.network.Network;
import org.keeplit.procedure.Instance;
import org.keeplit.procedure.Procedure;
import org.keeplit.text.Problems;

/** Does one thing with procedures at every place and from every start that they are proved on. */
public final class Everywhere {
    private Everywhere() {}

    /**
     * Does it with each procedure that must hold.
     *
     * @param procedures the procedures
     * @param networks the networks by name
     * @param problems collects what does not fit
     * @param use what is done with each, ready to be explored
     * @param <T> what comes of it
     * @return what came of it, in the order of the procedures and of their places
     */
    public static <T> ImmutableList<T> whatMustHold(
            List<Procedure> procedures, Map<String, Network> networks, Problems problems, BiFunction<Instance, Proving.Prepared, T> use) {
        return all(procedures, networks, problems, p -> p.mustFail().isEmpty(), use);
    }

    /**
     * Does it.
     *
     * @param procedures the procedures
     * @param networks the networks by name
     * @param problems collects what does not fit
     * @param which which procedures are meant
     * @param use what is done with each, ready to be explored
     * @param <T> what comes of it
     * @return what came of it, in the order of the procedures and of their places
     */
    public static <T> ImmutableList<T> all(
            List<Procedure> procedures, Map<String, Network> networks, Problems problems, Predicate<Procedure> which,
            BiFunction<Instance, Proving.Prepared, T> use) {
        ImmutableList.Builder<T> all = ImmutableList.builder();
        for (Procedure procedure : procedures) {
            if (which.test(procedure)) {
                for (Instance one : Instance.of(procedure, networks)) {
                    AtOnePlace.guarded(one, problems, () -> Proving.using(
                                    one.procedure(), one.network(), one.proof(), problems, p -> use.apply(one, p)))
                            .ifPresent(all::add);
                }
            }
        }
        return all.build();
    }
}
