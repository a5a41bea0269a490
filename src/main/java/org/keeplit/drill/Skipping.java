package org.keeplit.drill;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;

/** Goes on by itself where nothing can go wrong, so that only choices are asked for that matter. */
final class Skipping {
    private Skipping() {}

    /** {@return the places with every way led on to where something is asked, or to the end} */
    static ImmutableList<Drill.Place> of(List<Drill.Place> places) {
        return places.stream().map(place -> led(places, place)).collect(ImmutableList.toImmutableList());
    }

    private static Drill.Place led(List<Drill.Place> places, Drill.Place place) {
        ImmutableList<Drill.Option> options = place.options().stream()
                .map(o -> new Drill.Option(
                        o.words(), o.ending(), o.now(), o.told(), o.why(), o.by(), o.later(), o.lost(), o.picture(),
                        o.next().stream().map(n -> on(places, n)).collect(ImmutableList.toImmutableList())))
                .collect(ImmutableList.toImmutableList());
        return new Drill.Place(place.done(), place.asWritten(), place.people(), place.picture(), options, place.hint());
    }

    /** {@return where a way ends up} */
    static Drill.Next on(List<Drill.Place> places, Drill.Next next) {
        List<String> then = new ArrayList<>(next.then());
        int at = next.place();
        while (true) {
            List<Drill.Option> right = places.get(at).options().stream().filter(Drill.Option::isRight).toList();
            if (places.get(at).isAsked() || right.isEmpty() || right.get(0).next().size() > 1) {
                return new Drill.Next(at, next.found(), ImmutableList.copyOf(then));
            }
            then.add(right.get(0).words());
            at = right.get(0).next().get(0).place();
        }
    }
}
