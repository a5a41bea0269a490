package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.network.Side;
import org.keeplit.procedure.Example;
import org.keeplit.procedure.Examples;
import org.keeplit.procedure.Person;
import org.keeplit.rule.Rulebook;

/** Builds the examples of a file: what stands above the first of them is common to all. */
final class ExamplesResolver {
    private static final ImmutableSet<String> COMMON =
            ImmutableSet.of("title", "on", "crew", "temporary", "hold", "clearance", "planned", "starts");

    private final Item item;
    private final Session session;
    private final Report report;

    ExamplesResolver(Item item, Session session) {
        this.item = item;
        this.session = session;
        this.report = item.report();
    }

    /** {@return the examples, with what could be read of them} */
    Resolved<Examples> resolve() {
        int before = report.errors();
        Header common = new Header();
        Scope scope = Scope.root(session.vocabulary(item));
        HeaderResolver reader = new HeaderResolver(session, report, common, scope);
        report.attempt(() -> head(reader));
        common.allRulebooks &= !common.keeps.isEmpty();
        List<Node> sections = item.sections();
        int first = next(sections, 0);
        if (sections.subList(0, first).stream().noneMatch(s -> s.line().starts("crew"))) {
            usualCrew(common);
            common.crew.keySet().forEach(scope::addPerson);
        }
        reader.read(sections.subList(0, first));
        ExampleResolver.strangers(sections.subList(0, first), COMMON, report);
        Map<String, Lexeme> titles = new LinkedHashMap<>();
        List<Example> examples = new ArrayList<>();
        for (int at = first; at < sections.size(); ) {
            int to = next(sections, at + 1);
            new ExampleResolver(item, session, common, titles)
                    .resolve(sections.get(at), sections.subList(at + 1, to))
                    .ifPresent(examples::add);
            at = to;
        }
        if (first == sections.size() && report.errors() == before) {
            report.add(Code.MISSING_LINE
                    .at(item.name().span(), "there is no example here")
                    .help("each begins with a line such as " + ExampleResolver.FORM));
        }
        return Resolved.of(
                new Examples(
                        item.name().value(),
                        common.title,
                        common.keeps.stream().map(Rulebook::name).collect(ImmutableList.toImmutableList()),
                        ImmutableList.copyOf(examples),
                        item.name().span()),
                report.errors() == before && common.soundReferences());
    }

    private void head(HeaderResolver reader) {
        Line line = item.head().line();
        var parts = Shape.of(line, Shapes::examplesHead, "examples NAME for RULEBOOK, RULEBOOK");
        reader.keeps(line, parts.kept());
    }

    /** {@return where the next example begins} */
    private static int next(List<Node> sections, int from) {
        int at = from;
        while (at < sections.size() && !sections.get(at).line().starts("example")) {
            at++;
        }
        return at;
    }

    /** Where nobody is named, there are a foreman, two lineworkers on the two sides of the work and an operator. */
    private void usualCrew(Header common) {
        person(common, "foreman", "Person in charge", false, true, Optional.empty());
        person(common, "east", "Lineworker, source side", false, false, Optional.of(Side.SOURCE));
        person(common, "west", "Lineworker, load side", false, false, Optional.of(Side.LOAD));
        person(common, "desk", "System operator", true, false, Optional.empty());
    }

    private void person(
            Header common, String name, String title, boolean desk, boolean inCharge, Optional<Side> side) {
        common.crew.put(
                name,
                new Person(
                        name, title, desk, inCharge, side, false, false, false, ImmutableSet.of(), item.name().span()));
    }
}
