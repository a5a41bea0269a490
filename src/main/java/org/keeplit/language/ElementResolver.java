package org.keeplit.language;

import java.util.ArrayList;
import java.util.List;
import org.antlr.v4.runtime.ParserRuleContext;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.network.Base;
import org.keeplit.network.Element;
import org.keeplit.network.Kind;
import org.keeplit.network.Phases;
import org.keeplit.network.Trait;
import org.keeplit.text.Span;

/** Builds one element of a network from its line. */
final class ElementResolver {
    private final Vocabulary vocabulary;
    private final Wires wires;
    private final Report report;

    ElementResolver(Vocabulary vocabulary, Wires wires, Report report) {
        this.vocabulary = vocabulary;
        this.wires = wires;
        this.report = report;
    }

    Element resolve(Line line) {
        Kind kind = kind(line.head());
        boolean branch = isBranch(kind.base());
        String form = kind.name() + (branch ? " NAME from NODE to NODE" : " NAME at NODE") + ", phases ABC, …";
        Shapes.ElementLineContext parts = Shape.of(line, Shapes::elementLine, form);
        Lexeme name = Shape.lexeme(parts.name(1));
        Letters.small(name, report);
        List<String> nodes = new ArrayList<>();
        for (Shapes.NameContext node : parts.place().name()) {
            Letters.small(Shape.lexeme(node), report);
            nodes.add(Shape.lexeme(node).value());
        }
        if ((nodes.size() == 2) != branch) {
            throw new Misread(Code.WRONG_PLACE
                    .at(
                            Line.spanOf(Shape.lexemes(line.lexemes(), parts.place())),
                            Suggestions.a(kind.base().phrase()) + (branch ? " joins two nodes" : " hangs on one node"))
                    .help("such a line reads: " + form));
        }
        if (branch && nodes.get(0).equals(nodes.get(1))) {
            throw new Misread(Code.WRONG_PLACE.at(
                    Line.spanOf(Shape.lexemes(line.lexemes(), parts.place())),
                    name.value() + " starts and ends at the same node"));
        }
        return build(kind, name, nodes, attributes(line, parts, name, kind));
    }

    private Kind kind(Lexeme word) {
        return vocabulary
                .kind(word.value())
                .filter(k -> !k.base().isTemporary())
                .orElseThrow(() -> {
                    List<String> known = new ArrayList<>();
                    vocabulary.kinds().forEach(k -> {
                        if (!k.base().isTemporary()) {
                            known.add(k.name());
                        }
                    });
                    return new Misread(Code.UNKNOWN_KIND
                            .at(word.span(), "there is no kind of equipment “" + Cursor.clip(word.value()) + "”")
                            .help(Suggestions.didYouMean(word.value(), known)
                                    .orElse("there is " + Suggestions.list(known, "and"))));
                });
    }

    private static boolean isBranch(Base base) {
        return switch (base) {
            case LINE, TRANSFORMER, REGULATOR, SWITCH -> true;
            default -> false;
        };
    }

    private AttributeReader attributes(Line line, Shapes.ElementLineContext parts, Lexeme name, Kind kind) {
        int before = report.errors();
        AttributeReader reader = new AttributeReader(name.value(), kind, wires);
        Attributes attributes = reader.attributes();
        for (ParserRuleContext part : parts.attribute()) {
            List<Lexeme> words = Shape.lexemes(line.lexemes(), part);
            if (words.isEmpty()) {
                report.add(Code.UNEXPECTED.at(Shape.place(line, part), "an attribute is missing here"));
            } else {
                report.attempt(() -> reader.read(words));
            }
        }
        // An attribute with a mistake in it was meant to be there, so nothing is called missing.
        if (report.errors() == before) {
            legs(attributes, name, kind);
        }
        if (report.errors() == before) {
            reader.finish(name, report);
            missing(attributes, name, kind);
        }
        if (report.errors() != before) {
            throw Misread.told();
        }
        return reader;
    }

    /** Legs are behind a centre tap: what belongs to the phases of the system is not there, and nothing has both. */
    private void legs(Attributes attributes, Lexeme name, Kind kind) {
        Phases phases = attributes.phases;
        if (phases == null || phases.and(Phases.LEGS).isEmpty()) {
            return;
        }
        boolean fits = switch (kind.base()) {
            case LINE, SWITCH, LOAD, GENERATOR -> true;
            default -> false;
        };
        if (!fits) {
            report.add(Code.UNKNOWN_PHASE
                    .at(name.span(), Suggestions.a(kind.base().phrase()) + " has phases, and " + name.value()
                            + " says " + phases + ", the legs of a centre tap")
                    .help("lines, switching devices, loads and generators may hang on legs"));
        } else if (!phases.and(Phases.ABC).isEmpty()) {
            report.add(Code.UNKNOWN_PHASE
                    .at(name.span(), name.value() + " has phases and legs together: " + phases)
                    .help("phases are before the transformer, the legs of its centre tap behind it"));
        }
    }

    private void missing(Attributes attributes, Lexeme name, Kind kind) {
        if (attributes.phases == null) {
            tellMissing(name, kind, "phases");
        }
        for (String must : AttributeTable.must(kind.base())) {
            if (!attributes.says(must)) {
                tellMissing(name, kind, must);
            }
        }
        if (attributes.phases != null) {
            attributes
                    .openOutside()
                    .ifPresent(span -> report.add(Code.UNKNOWN_PHASE.at(
                            span,
                            name.value() + " cannot be open there: it has the phases " + attributes.phases + " only")));
        }
    }

    private void tellMissing(Lexeme name, Kind kind, String attribute) {
        Code code = attribute.equals("impedance") ? Code.MISSING_IMPEDANCE : Code.MISSING_ATTRIBUTE;
        report.add(code.at(name.span(), "the " + kind.name() + " " + name.value() + " does not say its " + attribute)
                .help("add it, such as " + AttributeTable.example(kind.base(), attribute)));
    }

    private Element build(Kind kind, Lexeme name, List<String> nodes, AttributeReader reader) {
        Attributes a = reader.attributes();
        String first = nodes.get(0);
        String second = nodes.get(nodes.size() - 1);
        String own = name.value();
        Span span = name.span();
        return switch (kind.base()) {
            case SOURCE -> new Element.Source(
                    own, kind, first, a.phases, a.word().orElseThrow(), a.figures(), span);
            case LINE -> new Element.Line(
                    own, kind, first, second, a.phases, a.word(), reader.spacing(), a.figures(), span);
            case TRANSFORMER -> new Element.Transformer(
                    own,
                    kind,
                    first,
                    second,
                    a.phases,
                    a.connection(),
                    a.secondary,
                    Math.max(0, a.clock),
                    a.windings,
                    a.centreTapped,
                    a.figures(),
                    span);
            case REGULATOR -> new Element.Regulator(
                    own, kind, first, second, a.phases, a.word().orElse(own), a.settings(), a.figures(), span);
            case CAPACITOR -> new Element.Capacitor(own, kind, first, a.phases, a.connection(), a.figures(), span);
            case LOAD -> new Element.Load(
                    own,
                    kind,
                    first,
                    a.phases,
                    a.connection(),
                    a.model,
                    a.along(),
                    a.customers,
                    a.critical(),
                    a.motor,
                    a.figures(),
                    span);
            case GENERATOR -> new Element.Generator(own, kind, first, a.phases, a.figures(), span);
            case SWITCH -> new Element.Device(
                    own,
                    kind,
                    first,
                    second,
                    a.phases,
                    ganged(name, kind, a),
                    a.word().orElse(own),
                    a.closed(),
                    a.settings(),
                    a.figures(),
                    span);
            case JUMPER, GROUND, MOBILE -> throw new IllegalStateException("temporary equipment in a network");
        };
    }

    private static boolean ganged(Lexeme name, Kind kind, Attributes attributes) {
        boolean single = kind.has(Trait.SINGLE_PHASE_UNITS);
        boolean gang = kind.has(Trait.GANGED);
        if (attributes.ganged != null) {
            return attributes.ganged;
        }
        if (single && gang && attributes.phases.size() > 1) {
            throw new Misread(Code.MISSING_ATTRIBUTE
                    .at(
                            name.span(),
                            "the " + kind.name() + " " + name.value() + " does not say whether its poles move together")
                    .help("add ganged or single-phase units"));
        }
        return gang && !single;
    }
}
