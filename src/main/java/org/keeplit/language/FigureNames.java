package org.keeplit.language;

import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.keeplit.condition.Type;
import org.keeplit.network.Base;
import org.keeplit.network.Kind;
import org.keeplit.unit.Dimension;

/** The figures that stand for an object in the network or for its kind, and the sorts that have them. */
final class FigureNames {
    /** A figure's name as people say it, the one under which it is kept, and what it measures for each sort. */
    record Entry(String said, String kept, Map<Type, Dimension> of) {}

    private final Map<String, Entry> entries = new LinkedHashMap<>();

    FigureNames(Iterable<Kind> kinds) {
        add("nominal voltage", "nominal voltage", Type.POINT, Dimension.VOLTAGE);
        add("lower voltage limit", "voltage low", Type.POINT, Dimension.VOLTAGE);
        add("upper voltage limit", "voltage high", Type.POINT, Dimension.VOLTAGE);
        add("approach distance", "approach distance", Type.POINT, Dimension.LENGTH);
        add("approach distance between phases", "approach distance between phases", Type.POINT, Dimension.LENGTH);
        add("least insulation resistance", "least insulation resistance", Type.POINT, Dimension.IMPEDANCE);
        for (Base base : Base.values()) {
            AttributeTable.figures(base).forEach((name, dimension) -> add(base, name, dimension));
            Type type = Vocabulary.typeOf(base);
            AttributeTable.powers(base).forEach((name, dimension) -> add(name, name, type, dimension));
        }
        for (Kind kind : kinds) {
            kind.ratings().forEach((name, rating) -> add(kind.base(), name, rating.dimension()));
        }
    }

    /** Adds a figure; what only a nameplate states, such as {@code continuous}, is said with {@code rating}. */
    private void add(Base base, String name, Dimension dimension) {
        boolean alone = !AttributeTable.isCurrentRating(name)
                && (name.equals("impedance") || AttributeTable.figures(base).containsKey(name));
        add(alone ? name : name + " rating", name, Vocabulary.typeOf(base), dimension);
    }

    private void add(String said, String kept, Type type, Dimension dimension) {
        entries.computeIfAbsent(said, s -> new Entry(s, kept, new LinkedHashMap<>()))
                .of()
                .putIfAbsent(type, dimension);
    }

    /** {@return the figure named here, if {@code of} follows it; the cursor stays} */
    Optional<Entry> peek(Cursor cursor) {
        return entries.values().stream()
                .filter(entry -> {
                    List<String> words = new ArrayList<>(List.of(entry.said().split(" ")));
                    words.add("of");
                    return cursor.sees(words);
                })
                .findFirst();
    }

    /** {@return the names as people say them, for advice} */
    Iterable<String> names() {
        return entries.keySet();
    }

    /** {@return the names of the figures that a sort has and that measure something} */
    ImmutableSet<String> names(Type type, Dimension dimension) {
        return entries.values().stream()
                .filter(e -> e.of().get(type) == dimension)
                .map(Entry::said)
                .collect(ImmutableSet.toImmutableSet());
    }
}
