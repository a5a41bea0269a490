package org.keeplit.language;

import com.google.common.collect.ImmutableSetMultimap;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.network.Element;
import org.keeplit.network.Equipment;
import org.keeplit.network.Network;

/** Builds a network from its file. */
final class NetworkResolver {
    private final Item item;
    private final Session session;
    private final Report report;
    private final List<Equipment> equipment = new ArrayList<>();
    private final SystemReader system;
    private final Map<String, Element> elements = new LinkedHashMap<>();
    private boolean uses;
    private boolean soundEquipment = true;

    NetworkResolver(Item item, Session session) {
        this.item = item;
        this.session = session;
        this.report = item.report();
        this.system = new SystemReader(report);
    }

    Resolved<Network> resolve() {
        int before = report.errors();
        String title = report.attempt(() -> {
                    var head = Shape.of(item.head().line(), Shapes::networkHead, "network NAME \"Title\"");
                    return head.STRING() == null ? "" : ((Lexeme) head.STRING().getSymbol()).value();
                })
                .orElse("");
        for (Node node : item.sections()) {
            if (node.readable() && isHeader(node.line())) {
                report.attempt(() -> header(node.line()));
            }
        }
        if (!uses) {
            report.add(Code.MISSING_LINE
                    .at(item.name().span(), "the network does not say which equipment it uses")
                    .help("add a line such as “uses overhead”"));
            return Resolved.nothing();
        }
        if (equipment.isEmpty()) {
            // Without its equipment no line of the network can be read; that was told already.
            return Resolved.nothing();
        }
        Wires wires = Wires.of(equipment, item.name(), report);
        readElements(wires);
        CoordinationReader coordination = new CoordinationReader(elements, report);
        for (Node node : item.sections()) {
            if (node.readable() && CoordinationReader.reads(node.line())) {
                report.attempt(() -> coordination.read(node.line()));
            }
        }
        ImmutableSetMultimap<String, String> clearing = coordination.all();
        requireSystem();
        NetworkChecks.check(item, elements.values(), report);
        if (report.errors() != before) {
            return Resolved.nothing();
        }
        Network network = new Network(
                item.name().value(),
                title,
                system.figures(),
                wires.conductors(),
                wires.spacings(),
                wires.kinds(),
                elements.values(),
                clearing,
                item.name().span());
        return Resolved.of(network, soundEquipment);
    }

    private static boolean isHeader(Line line) {
        return line.starts("uses") || SystemReader.reads(line);
    }

    private void header(Line line) {
        if (line.starts("uses")) {
            uses = true;
            var parts = Shape.of(line, Shapes::usesLine, "uses EQUIPMENT");
            for (Shapes.NameContext name : parts.names().name()) {
                Resolved<Equipment> found = session.equipment(Shape.lexeme(name), report);
                found.thing().ifPresent(equipment::add);
                soundEquipment &= found.sound();
            }
            return;
        }
        system.read(line);
    }

    private void requireSystem() {
        if (!system.figures().containsKey("voltage") && report.errors() == 0) {
            report.add(Code.MISSING_LINE
                    .at(item.name().span(), "the network does not say its voltage")
                    .help("add a line such as “system voltage 12.47 kV, frequency 60 Hz”"));
        }
    }

    private void readElements(Wires wires) {
        ElementResolver resolver = new ElementResolver(new Vocabulary(equipment), wires, report);
        for (Node node : item.sections()) {
            if (node.readable() && !isHeader(node.line()) && !CoordinationReader.reads(node.line())) {
                report.attempt(() -> resolver.resolve(node.line())).ifPresent(this::add);
            }
        }
    }

    private void add(Element element) {
        Element first = elements.putIfAbsent(element.name(), element);
        if (first != null) {
            report.add(Code.DUPLICATE
                    .at(element.span(), "there is already an element " + element.name())
                    .related(first.span(), "the first one"));
        }
    }
}
