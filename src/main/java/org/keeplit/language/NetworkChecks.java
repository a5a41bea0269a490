package org.keeplit.language;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.keeplit.network.Element;
import org.keeplit.network.Phases;
import org.keeplit.text.Span;

/** Looks whether the elements of a network hang together: what no source can reach was probably misspelt. */
final class NetworkChecks {
    private final Map<String, Phases> brought = new LinkedHashMap<>();
    private final Map<String, List<Element.Branch>> at = new LinkedHashMap<>();
    private final Map<String, Element> first = new LinkedHashMap<>();
    private final Report report;

    private NetworkChecks(Report report) {
        this.report = report;
    }

    /** Warns of nodes that no source reaches, and of phases that nothing brings to their node. */
    static void check(Item item, Collection<Element> elements, Report report) {
        if (elements.stream().noneMatch(Element.Source.class::isInstance)) {
            // A source line with a mistake in it is no missing source.
            if (report.errors() == 0) {
                Span span = item.name().span();
                report.add(Code.NO_SOURCE
                        .at(span, "the network has no source")
                        .help("add a line such as “source NAME at NODE, phases ABC, supply NAME”"));
            }
            return;
        }
        if (report.errors() > 0) {
            return;
        }
        elements.forEach(element -> along(element, elements, report));
        NetworkChecks checks = new NetworkChecks(report);
        elements.forEach(checks::index);
        elements.forEach(checks::start);
        checks.warnUnreached();
        elements.forEach(checks::warnPhases);
    }

    /** A load that is spread along a section hangs on the node where the section ends. */
    private static void along(Element element, Collection<Element> elements, Report report) {
        if (!(element instanceof Element.Load load) || load.along().isEmpty()) {
            return;
        }
        String name = load.along().get();
        List<String> fitting = elements.stream()
                .filter(e -> e instanceof Element.Line line
                        && line.to().equals(load.node())
                        && line.phases().containsAll(load.phases()))
                .map(Element::name)
                .toList();
        if (!fitting.contains(name)) {
            report.add(Code.NOT_ALONG
                    .at(
                            load.span(),
                            load.name() + " cannot be spread along " + name + ", which is no line section that ends at "
                                    + load.node() + " with its phases")
                    .help(fitting.isEmpty()
                            ? "a load along a section hangs on the node after it: at " + load.node()
                                    + " no section ends that has its phases"
                            : "did you mean along " + String.join(" or along ", fitting) + "?"));
        }
    }

    private void index(Element element) {
        if (element instanceof Element.Branch branch) {
            at.computeIfAbsent(branch.from(), n -> new ArrayList<>()).add(branch);
            at.computeIfAbsent(branch.to(), n -> new ArrayList<>()).add(branch);
            first.putIfAbsent(branch.from(), element);
            first.putIfAbsent(branch.to(), element);
        } else if (element instanceof Element.Shunt shunt) {
            first.putIfAbsent(shunt.node(), element);
        }
    }

    private void start(Element element) {
        if (element instanceof Element.Source source) {
            Deque<String> work = new ArrayDeque<>();
            bring(source.node(), source.phases(), work);
            while (!work.isEmpty()) {
                String node = work.poll();
                for (Element.Branch branch : at.getOrDefault(node, List.of())) {
                    String far = branch.from().equals(node) ? branch.to() : branch.from();
                    bring(far, through(branch, brought.get(node)), work);
                }
            }
        }
    }

    private static Phases through(Element.Branch branch, Phases phases) {
        Phases same = phases.and(branch.phases());
        // A bank whose primary is not whole gives what it can; the windings that are there decide the rest.
        return branch instanceof Element.Transformer t && same.containsAll(t.phases()) ? t.secondaryPhases() : same;
    }

    private void bring(String node, Phases phases, Deque<String> work) {
        Phases before = brought.getOrDefault(node, Phases.NONE);
        Phases after = before.or(phases);
        if (!after.equals(before)) {
            brought.put(node, after);
            work.add(node);
        }
    }

    /** One message for each piece that hangs together but reaches no source. */
    private void warnUnreached() {
        Set<String> told = new LinkedHashSet<>();
        first.forEach((node, element) -> {
            if (!report.isFull() && !brought.containsKey(node) && !told.contains(node)) {
                int before = told.size();
                collect(node, told);
                int more = told.size() - before - 1;
                String others = more == 0 ? "" : more == 1 ? " and one more" : " and " + more + " more";
                report.add(Code.UNREACHED
                        .warn(element.span(), "nothing joins the node " + node + others + " to a source")
                        .help(Suggestions.didYouMean(node, brought.keySet()).orElse("look for a misspelt node")));
            }
        });
    }

    private void collect(String from, Set<String> nodes) {
        Deque<String> work = new ArrayDeque<>(List.of(from));
        while (!work.isEmpty()) {
            String node = work.poll();
            if (nodes.add(node)) {
                at.getOrDefault(node, List.of()).forEach(b -> work.add(b.from().equals(node) ? b.to() : b.from()));
            }
        }
    }

    private void warnPhases(Element element) {
        if (element instanceof Element.Branch branch) {
            warnPhases(element, branch.from());
            if (!(branch instanceof Element.Transformer)) {
                warnPhases(element, branch.to());
            }
        } else if (element instanceof Element.Shunt shunt) {
            warnPhases(element, shunt.node());
        }
    }

    private void warnPhases(Element element, String node) {
        Phases here = brought.get(node);
        if (here != null && !here.containsAll(element.phases().and(Phases.LIVE))) {
            report.add(Code.PHASE_NOT_BROUGHT.warn(
                    element.span(),
                    element.name() + " has the phases " + element.phases() + ", but only " + here + " come to its node "
                            + node));
        }
    }
}
