package org.keeplit.network;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import com.google.common.collect.ImmutableSetMultimap;
import com.google.common.collect.ImmutableSortedSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.keeplit.text.Span;
import org.keeplit.unit.Quantity;

/** A complete network in its normal state. */
public final class Network {
    private final String name;
    private final String title;
    private final ImmutableMap<String, Quantity> system;
    private final ImmutableMap<String, ImmutableMap<String, Quantity>> conductors;
    private final ImmutableMap<String, Spacing> spacings;
    private final ImmutableMap<String, Kind> kinds;
    private final ImmutableMap<String, Element> elements;
    private final ImmutableMap<String, Phases> nodes;
    private final ImmutableSet<String> sites;
    private final ImmutableSetMultimap<String, String> clearing;
    private final Span span;
    /** The elements of a sort, once they have been asked for: a large network has few sources and devices among many lines. */
    private final Map<Class<? extends Element>, ImmutableList<Element>> sorts = new ConcurrentHashMap<>();

    /**
     * Makes a network.
     *
     * @param name its name
     * @param title its title, perhaps empty
     * @param system what holds for all of it: {@code voltage} (phase to phase, volt), {@code frequency}, the factors of
     *     its load cases as {@code load case light}, the limits {@code voltage low} and {@code voltage high}
     * @param conductors the conductors of the equipment lists that it uses, each with its figures by name
     * @param spacings the spacings of these lists
     * @param kinds the kinds of equipment of these lists
     * @param elements its elements, with distinct names, in the order of the file
     * @param clearing for each device those that it clears before, all of them
     * @param span where it is declared
     * @throws IllegalArgumentException if two elements have one name
     */
    public Network(
            String name,
            String title,
            Map<String, Quantity> system,
            Map<String, ImmutableMap<String, Quantity>> conductors,
            Map<String, Spacing> spacings,
            Map<String, Kind> kinds,
            Iterable<? extends Element> elements,
            ImmutableSetMultimap<String, String> clearing,
            Span span) {
        this.name = name;
        this.title = title;
        this.system = ImmutableMap.copyOf(system);
        this.conductors = ImmutableMap.copyOf(conductors);
        this.spacings = ImmutableMap.copyOf(spacings);
        this.kinds = ImmutableMap.copyOf(kinds);
        this.clearing = clearing;
        this.span = span;
        ImmutableMap.Builder<String, Element> byName = ImmutableMap.builder();
        Map<String, Phases> at = new LinkedHashMap<>();
        Set<String> standing = new LinkedHashSet<>();
        for (Element element : elements) {
            byName.put(element.name(), element);
            if (element instanceof Element.Branch branch) {
                Phases far = branch instanceof Element.Transformer t ? t.secondaryPhases() : element.phases();
                at.merge(branch.from(), element.phases(), Phases::or);
                at.merge(branch.to(), far, Phases::or);
            } else if (element instanceof Element.Shunt shunt) {
                at.merge(shunt.node(), element.phases(), Phases::or);
            }
            if (element instanceof Element.Device device) {
                standing.add(device.site());
            } else if (element instanceof Element.Regulator regulator) {
                standing.add(regulator.site());
            }
        }
        this.elements = byName.buildOrThrow();
        this.nodes = ImmutableMap.copyOf(at);
        this.sites = ImmutableSet.copyOf(standing);
    }

    /** {@return its name} */
    public String name() {
        return name;
    }

    /** {@return its title, perhaps empty} */
    public String title() {
        return title;
    }

    /** {@return what holds for all of it, by name} */
    public ImmutableMap<String, Quantity> system() {
        return system;
    }

    /** {@return the conductors that its lines may name, each with its figures by name} */
    public ImmutableMap<String, ImmutableMap<String, Quantity>> conductors() {
        return conductors;
    }

    /**
     * {@return the kind of that name in the equipment lists that the network uses}
     *
     * @param kind the name
     */
    public Optional<Kind> kind(String kind) {
        return Optional.ofNullable(kinds.get(kind));
    }

    /** {@return the spacings that its lines may name} */
    public ImmutableMap<String, Spacing> spacings() {
        return spacings;
    }

    /**
     * Whether the protection is coordinated so that one device clears whatever both see before the other trips.
     *
     * @param one a device's name
     * @param other another's
     * @return whether it is declared, whatever lies between them
     */
    public boolean clearsBefore(String one, String other) {
        return clearing.containsEntry(one, other);
    }

    /** {@return all elements in the order of the file} */
    public ImmutableList<Element> elements() {
        return elements.values().asList();
    }

    /**
     * {@return the element of that name, if there is one}
     *
     * @param element the name
     */
    public Optional<Element> element(String element) {
        return Optional.ofNullable(elements.get(element));
    }

    /**
     * The elements of one sort, in the order of the file.
     *
     * @param type the sort
     * @param <E> the sort
     * @return the elements
     */
    public <E extends Element> Stream<E> all(Class<E> type) {
        return sorts.computeIfAbsent(type, this::find).stream().map(type::cast);
    }

    private ImmutableList<Element> find(Class<? extends Element> type) {
        return elements.values().stream().filter(type::isInstance).collect(ImmutableList.toImmutableList());
    }

    /** {@return the names of all elements} */
    public ImmutableSet<String> names() {
        return elements.keySet();
    }

    /** {@return the nodes with the conductors found there, in the order of their first mention} */
    public ImmutableMap<String, Phases> nodes() {
        return nodes;
    }

    /** {@return the three phases, and the legs of centre taps if the network has any} */
    public Phases livePhases() {
        boolean legs = all(Element.Transformer.class).anyMatch(Element.Transformer::centreTapped);
        return legs ? Phases.LIVE : Phases.ABC;
    }

    /** {@return the structures where devices stand} */
    public ImmutableSet<String> sites() {
        return sites;
    }

    /** {@return the supply systems, sorted} */
    public ImmutableSortedSet<String> supplies() {
        return all(Element.Source.class)
                .map(Element.Source::supply)
                .collect(ImmutableSortedSet.toImmutableSortedSet(String::compareTo));
    }

    /** {@return where it is declared} */
    public Span span() {
        return span;
    }

    @Override
    public String toString() {
        return "network " + name;
    }
}
