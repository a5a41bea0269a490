package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.rule.Chance;
import org.keeplit.rule.Definition;
import org.keeplit.rule.Rulebook;
import org.keeplit.unit.Quantity;

/** Builds a rulebook from its file. */
final class RulebookResolver {
    private static final List<String> LINES =
            List.of("title", "extends", "parameter", "applies", "define", "event", "rule", "override");
    private static final List<String> ALONE = List.of("title", "extends", "parameter");

    private final Item item;
    private final Session session;
    private final Map<String, Quantity> set;
    private final Report report;
    private final Scope scope;
    private final List<String> extended = new ArrayList<>();
    private final Map<String, Quantity> parameters = new LinkedHashMap<>();
    private final Map<String, Quantity> changed = new LinkedHashMap<>();
    private final Map<String, Lexeme> parameterPlaces = new LinkedHashMap<>();
    private final List<Definition> definitions = new ArrayList<>();
    private final List<Chance> chances = new ArrayList<>();
    private final RuleTable rules;
    private final List<Applies> applies = new ArrayList<>();
    private String revision = "";
    private String title = "";
    private boolean sound = true;

    /**
     * A reader of one rulebook.
     *
     * @param item the rulebook as it stands
     * @param session finds the rulebooks that it extends
     * @param set the figures that whoever keeps it has set, by name
     */
    RulebookResolver(Item item, Session session, Map<String, Quantity> set) {
        this.item = item;
        this.session = session;
        this.set = set;
        this.report = item.report();
        this.scope = Scope.root(session.vocabulary(item));
        this.rules = new RuleTable(item.name().value(), report);
        scope.set(parameters);
        scope.define(() -> definitions);
        scope.remember();
    }

    Resolved<Rulebook> resolve() {
        int before = report.errors();
        report.attempt(() -> {
            var head = Shape.of(item.head().line(), Shapes::rulebookHead, "rulebook NAME revision 1");
            revision = Shape.lexeme(head.revision()).value();
        });
        List<Node> sections = sections();
        pass(sections, "title", section -> title = titleOf(section.line(), title));
        pass(sections, "parameter", this::parameter);
        pass(sections, "extends", this::extend);
        DefinitionResolver defining = new DefinitionResolver(scope, report, definitions);
        pass(sections, "define", defining::head);
        pass(sections, "define", defining::body);
        pass(sections, "event", section -> new ChanceResolver(section, scope, report, chances).read());
        // Also those that could not be read, so that no rule stumbles over them.
        rules.knowing(Stream.concat(
                        chances.stream().map(Chance::name),
                        sections.stream().filter(s -> s.line().starts("event")).map(s -> s.line().last().value()))
                .distinct()
                .toList());
        pass(sections, "applies", section -> applies.add(Applies.read(Cursor.over(section.line()), scope)));
        pass(sections, "rule", section -> rules.add(section, scope, applies));
        pass(sections, "override", section -> rules.override(section, scope, applies));
        applies.stream().filter(one -> rules.rules().stream().noneMatch(one::touches)).forEach(one -> report.add(Code.NOTHING_APPLIES
                .at(one.span(), "no rule of this book binds anything that this could be said of")
                .help("it is about the variables that “any” binds in the heads of the rules")));
        Rulebook rulebook = new Rulebook(
                item.name().value(),
                revision,
                title,
                ImmutableList.copyOf(extended),
                ImmutableMap.copyOf(parameters),
                ImmutableMap.copyOf(changed),
                ImmutableList.copyOf(definitions),
                ImmutableList.copyOf(chances),
                rules.rules(),
                rules.overridden(),
                item.name().span());
        return Resolved.of(rulebook, report.errors() == before && sound);
    }

    /** {@return the lines of the book; a line on what the whole book applies to may stand below any other of them} */
    private List<Node> sections() {
        List<Node> all = new ArrayList<>();
        for (Node section : item.sections()) {
            all.add(section);
            if (ALONE.contains(section.head().getText())) {
                all.addAll(section.children());
            }
        }
        for (Node section : all) {
            if (section.readable() && !LINES.contains(section.head().getText())) {
                String head = section.head().getText();
                report.add(Code.UNKNOWN_LINE
                        .at(section.head().span(), "“" + Cursor.clip(head) + "” starts no line of a rulebook")
                        .help(Suggestions.didYouMean(head, LINES)
                                .orElse("lines here start with " + Suggestions.list(LINES, "or"))));
            }
        }
        return all;
    }

    private void pass(List<Node> sections, String word, Consumer<Node> reading) {
        for (Node section : sections) {
            if (section.readable() && section.line().starts(word)) {
                report.attempt(() -> reading.accept(section));
            }
        }
    }

    /** {@code parameter sharing-voltage 20 V}. */
    private void parameter(Node section) {
        Line line = section.line();
        var parts = Shape.of(line, Shapes::settingLine, "parameter NAME 20 V");
        Lexeme name = Shape.lexeme(parts.setting().name());
        Lexeme first = parameterPlaces.putIfAbsent(name.value(), name);
        if (first != null) {
            throw new Misread(Code.DUPLICATE
                    .at(name.span(), "there is already a parameter " + name.value())
                    .related(first.span(), "the first one"));
        }
        Quantity usual = Settings.quantity(line, parts.setting(), Optional.empty());
        Quantity value = set.getOrDefault(name.value(), usual);
        parameters.put(name.value(), value);
        if (!value.equals(usual)) {
            changed.put(name.value(), usual);
        }
    }

    /** {@code extends no-interruption}, perhaps with other values for its parameters. */
    private void extend(Node section) {
        Line line = section.line();
        var parts = Shape.of(line, Shapes::extendsLine, "extends RULEBOOK");
        Resolved<Rulebook> found = Settings.rulebook(session, line, parts.kept(), set, report);
        sound &= found.ifSound().isPresent();
        if (found.thing().isEmpty()) {
            rules.forgive();
            return;
        }
        // Even of a book with mistakes the names are known, so that no line stumbles over them.
        Rulebook base = found.thing().get();
        if (extended.contains(base.name())) {
            throw new Misread(Code.DUPLICATE.at(
                    Shape.lexeme(parts.kept().name()).span(), base.name() + " is extended already"));
        }
        extended.add(base.name());
        extended.addAll(base.extended());
        for (var entry : base.parameters().entrySet()) {
            Lexeme own = parameterPlaces.get(entry.getKey());
            if (own != null) {
                throw new Misread(Code.DUPLICATE
                        .at(own.span(), base.name() + " has a parameter " + entry.getKey() + " already")
                        .help("set it where the book is extended: extends " + base.name() + " with " + entry.getKey()
                                + " …"));
            }
            parameters.put(entry.getKey(), entry.getValue());
        }
        changed.putAll(base.usual());
        definitions.addAll(base.definitions());
        chances.addAll(base.chances());
        rules.inherit(base, Shape.lexeme(parts.kept().name()));
    }

    /** {@return the text of a title line} @param before what was the title before it; empty if nothing was */
    static String titleOf(Line line, String before) {
        var parts = Shape.of(line, Shapes::titleLine, "title \"…\"");
        if (!before.isEmpty()) {
            throw new Misread(Code.DUPLICATE.at(line.span(), "the title is given twice"));
        }
        return ((Lexeme) parts.STRING().getSymbol()).value();
    }
}
