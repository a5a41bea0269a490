package org.keeplit.language;

import com.google.common.collect.ImmutableSetMultimap;
import com.google.common.collect.LinkedHashMultimap;
import com.google.common.collect.SetMultimap;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.antlr.v4.runtime.ParserRuleContext;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.network.Element;
import org.keeplit.network.Trait;

/** Reads which devices clear before which: {@code coordination r-24 before mill-one}. */
final class CoordinationReader {
    private static final String FORM = "coordination DEVICE before DEVICE";

    private final Map<String, Element> elements;
    private final Report report;
    private final SetMultimap<String, String> later = LinkedHashMultimap.create();
    /** Where each device was named last, for the mistake that they go round in a circle. */
    private final Map<String, Lexeme> named = new LinkedHashMap<>();

    CoordinationReader(Map<String, Element> elements, Report report) {
        this.elements = elements;
        this.report = report;
    }

    /** {@return whether a line is one of these} */
    static boolean reads(Line line) {
        return line.starts("coordination");
    }

    /** Reads a line; several devices in a row each clear before the next. */
    void read(Line line) {
        List<String> chain = new ArrayList<>();
        boolean sound = true;
        for (ParserRuleContext name : Shape.of(line, Shapes::coordinationLine, FORM).name()) {
            sound &= report.attempt(() -> device(Shape.lexeme(name))).map(chain::add).isPresent();
        }
        for (int i = 0; sound && i + 1 < chain.size(); i++) {
            later.put(chain.get(i), chain.get(i + 1));
        }
    }

    private String device(Lexeme name) {
        Element element = elements.get(name.value());
        if (element == null) {
            throw new Misread(Code.UNKNOWN_NAME
                    .at(name.span(), "there is no device " + name.value() + " in this network")
                    .help(Suggestions.didYouMean(name.value(), tripping()).orElse("devices that trip: "
                            + Suggestions.list(tripping(), "and"))));
        }
        if (!element.kind().has(Trait.TRIPS)) {
            throw new Misread(Code.WRONG_PLACE
                    .at(name.span(), name.value() + " is " + Suggestions.a(element.kind().name())
                            + ", which never trips by itself, so that it clears before nothing")
                    .help("devices that trip: " + Suggestions.list(tripping(), "and")));
        }
        named.put(name.value(), name);
        return name.value();
    }

    private List<String> tripping() {
        return elements.values().stream()
                .filter(e -> e.kind().has(Trait.TRIPS))
                .map(Element::name)
                .toList();
    }

    /** {@return for each device those that it clears before, whatever lies between} */
    ImmutableSetMultimap<String, String> all() {
        boolean more = true;
        while (more) {
            more = false;
            for (String device : List.copyOf(later.keySet())) {
                for (String next : List.copyOf(later.get(device))) {
                    more |= later.putAll(device, Set.copyOf(later.get(next)));
                }
            }
        }
        for (String device : later.keySet()) {
            if (later.containsEntry(device, device)) {
                report.add(Code.CIRCULAR
                        .at(named.get(device).span(), device + " would have to clear before itself")
                        .help("the device further from the source stands first"));
                return ImmutableSetMultimap.of();
            }
        }
        return ImmutableSetMultimap.copyOf(later);
    }
}
