package org.keeplit.insight;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.keeplit.condition.Noun;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;
import org.keeplit.network.Element;
import org.keeplit.network.Network;
import org.keeplit.procedure.Instance;
import org.keeplit.procedure.Procedure;

/**
 * Finds what a procedure could be done to: every choice of objects of a network that are what its parameters ask for. Where there are
 * several, each must stand at the structure of one before it, or share a node with one: a job is at one place.
 */
public final class Fitting {
    private final Procedure procedure;
    private final Network network;
    private final List<Map<String, Element>> all = new ArrayList<>();

    private Fitting(Procedure procedure, Network network) {
        this.procedure = procedure;
        this.network = network;
    }

    /**
     * Finds every instance.
     *
     * @param procedure the procedure
     * @param network the network
     * @return its instances there, from each of its starts, in the order of the network
     */
    public static ImmutableList<Instance> of(Procedure procedure, Network network) {
        Fitting fitting = new Fitting(procedure, network);
        fitting.choose(new LinkedHashMap<>());
        ImmutableList.Builder<Instance> instances = ImmutableList.builder();
        for (Map<String, Element> choice : fitting.all) {
            ImmutableMap.Builder<String, Term> arguments = ImmutableMap.builder();
            for (Procedure.Parameter parameter : procedure.parameters()) {
                Element element = choice.get(parameter.name());
                Type type = parameter.noun().type();
                arguments.put(parameter.name(), new Term.Name(element.name(), type, procedure.span()));
            }
            Procedure.Proof proof = new Procedure.Proof(network.name(), arguments.build(), procedure.span());
            procedure.everyStart().forEach(b -> instances.add(new Instance(b.procedure(), network, proof, b.start())));
        }
        return instances.build();
    }

    private void choose(Map<String, Element> chosen) {
        if (chosen.size() == procedure.parameters().size()) {
            all.add(new LinkedHashMap<>(chosen));
            return;
        }
        Procedure.Parameter parameter = procedure.parameters().get(chosen.size());
        network.elements().stream()
                .filter(e -> fits(e, parameter) && !chosen.containsValue(e))
                .filter(e -> chosen.isEmpty() || chosen.values().stream().anyMatch(c -> near(c, e)))
                .forEach(e -> {
                    chosen.put(parameter.name(), e);
                    choose(chosen);
                    chosen.remove(parameter.name());
                });
    }

    private static boolean fits(Element element, Procedure.Parameter parameter) {
        Noun noun = parameter.noun();
        boolean device = element instanceof Element.Device;
        boolean sort = noun.kinds().isEmpty()
                ? noun.type() == Type.DEVICE && device || element.kind().base().name().equals(noun.type().name())
                : noun.kinds().contains(element.kind().name());
        boolean build = parameter.ganged().isEmpty()
                || element instanceof Element.Device d && d.ganged() == parameter.ganged().get();
        return sort && build;
    }

    private static boolean near(Element one, Element other) {
        Optional<String> site = site(one);
        return site.isPresent() && site.equals(site(other)) || nodes(one).stream().anyMatch(nodes(other)::contains);
    }

    private static Optional<String> site(Element element) {
        if (element instanceof Element.Device device) {
            return Optional.of(device.site());
        } else if (element instanceof Element.Regulator regulator) {
            return Optional.of(regulator.site());
        }
        return Optional.empty();
    }

    private static Set<String> nodes(Element element) {
        return element instanceof Element.Branch branch
                ? Set.of(branch.from(), branch.to())
                : Set.of(((Element.Shunt) element).node());
    }
}
