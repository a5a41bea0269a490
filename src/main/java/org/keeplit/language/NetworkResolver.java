package org.keeplit.language;

import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.antlr.v4.runtime.ParserRuleContext;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.network.Element;
import org.keeplit.network.Equipment;
import org.keeplit.network.Network;
import org.keeplit.unit.Dimension;
import org.keeplit.unit.Quantity;

/** Builds a network from its file. */
final class NetworkResolver {
    private static final Map<String, Dimension> SYSTEM =
            Map.of("voltage", Dimension.VOLTAGE, "frequency", Dimension.FREQUENCY);

    private final Item item;
    private final Session session;
    private final Report report;
    private final List<Equipment> equipment = new ArrayList<>();
    private final Map<String, Quantity> system = new LinkedHashMap<>();
    private final Map<String, Element> elements = new LinkedHashMap<>();
    private boolean uses;
    private boolean soundEquipment = true;

    NetworkResolver(Item item, Session session) {
        this.item = item;
        this.session = session;
        this.report = item.report();
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
        readElements();
        requireSystem();
        NetworkChecks.check(item, elements.values(), report);
        if (report.errors() != before) {
            return Resolved.nothing();
        }
        Network network = new Network(
                item.name().value(),
                title,
                system,
                elements.values(),
                item.name().span());
        return Resolved.of(network, soundEquipment);
    }

    private static boolean isHeader(Line line) {
        return line.starts("uses") || line.starts("system");
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
        var parts = Shape.of(line, Shapes::systemLine, "system voltage 12.47 kV, frequency 60 Hz");
        for (ParserRuleContext part : parts.attribute()) {
            List<Lexeme> words = Shape.lexemes(line.lexemes(), part);
            report.attempt(() -> system(words, line));
        }
    }

    private void system(List<Lexeme> words, Line line) {
        if (words.isEmpty()) {
            throw new Misread(Code.UNEXPECTED.at(line.span(), "there is nothing between two commas"));
        }
        Cursor cursor = Cursor.over(words);
        Lexeme name = cursor.next("a figure");
        Dimension dimension = SYSTEM.get(name.getText());
        if (dimension == null) {
            List<String> known = List.of("voltage", "frequency");
            throw new Misread(Code.UNKNOWN_ATTRIBUTE
                    .at(name.span(), "a system has no figure “" + Cursor.clip(name.getText()) + "”")
                    .help(Suggestions.didYouMean(name.getText(), known).orElse("it has voltage and frequency")));
        }
        Quantity quantity = Figures.positive(cursor, dimension, "the system's " + name.getText());
        cursor.finish("the " + name.getText());
        if (system.putIfAbsent(name.getText(), quantity) != null) {
            throw new Misread(Code.DUPLICATE.at(name.span(), "the " + name.getText() + " is given twice"));
        }
    }

    private void requireSystem() {
        if (!system.containsKey("voltage") && report.errors() == 0) {
            report.add(Code.MISSING_LINE
                    .at(item.name().span(), "the network does not say its voltage")
                    .help("add a line such as “system voltage 12.47 kV, frequency 60 Hz”"));
        }
    }

    private void readElements() {
        ImmutableSet.Builder<String> conductors = ImmutableSet.builder();
        equipment.forEach(e -> conductors.addAll(e.conductors().keySet()));
        ElementResolver resolver = new ElementResolver(new Vocabulary(equipment), conductors.build(), report);
        for (Node node : item.sections()) {
            if (node.readable() && !isHeader(node.line())) {
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
