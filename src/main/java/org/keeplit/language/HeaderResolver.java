package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.keeplit.condition.Noun;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.network.Network;
import org.keeplit.procedure.DeviceSet;
import org.keeplit.procedure.Permit;
import org.keeplit.procedure.Procedure;
import org.keeplit.procedure.Temporary;
import org.keeplit.rule.Definition;
import org.keeplit.rule.Rulebook;

/** Reads the header of a procedure, or what a variant restates of its base's. */
final class HeaderResolver {
    private static final ImmutableSet<Type> OF_A_CREW =
            ImmutableSet.of(Type.PERSON, Type.GROUND, Type.JUMPER, Type.MOBILE);
    private static final ImmutableSet<Type> UNDER_WORK = ImmutableSet.of(Type.DEVICE, Type.REGULATOR);
    private static final ImmutableSet<String> OF_LINES = ImmutableSet.of("crew", "temporary", "starts", "ends");
    private static final String PERMIT = "hold H for R, held at every device that feeds R and at R, by foreman";

    private final Session session;
    private final Report report;
    private final Header header;
    private final Scope scope;
    private final Set<String> restated = new LinkedHashSet<>();
    private final List<Rulebook> named = new ArrayList<>();
    private List<Rulebook> defining = List.of();
    private List<Definition> defined = List.of();

    /**
     * A reader.
     *
     * @param header what it is read into
     * @param scope the names of the procedure, filled on the way
     */
    HeaderResolver(Session session, Report report, Header header, Scope scope) {
        this.session = session;
        this.report = report;
        this.header = header;
        this.scope = scope;
        // Seen through the list, since what is kept may still be read or said again.
        scope.define(this::definitions);
    }

    /** {@return the conditions that have names in the rulebooks that are kept or said; asked anew only when those have changed} */
    private List<Definition> definitions() {
        List<Rulebook> books = new ArrayList<>(header.keeps);
        books.addAll(named);
        if (!isSame(books, defining)) {
            defining = books;
            Set<Rulebook> met = Collections.newSetFromMap(new IdentityHashMap<>());
            defined = books.stream().filter(met::add).flatMap(book -> book.definitions().stream()).toList();
        }
        return defined;
    }

    /** {@return whether these are the very same rulebooks; they are long to compare} */
    private static boolean isSame(List<Rulebook> some, List<Rulebook> others) {
        boolean same = some.size() == others.size();
        for (int i = 0; same && i < some.size(); i++) {
            same = some.get(i) == others.get(i);
        }
        return same;
    }

    /** Reads lines that start with some words, in a few passes: what later ones speak of comes first. */
    void read(List<Node> sections) {
        pass(sections, "title", n -> header.title = RulebookResolver.titleOf(n.line(), restates("title") ? "" : header.title));
        pass(sections, "for", this::parameters);
        pass(sections, "crew", n -> new CrewResolver(report, header, scope).read(n));
        pass(sections, "keeps", this::keeps);
        pass(sections, "proved", this::network);
        pass(sections, "on", this::place);
        scope.addNetworks(header.networks, header.allNetworks);
        pass(sections, "temporary", this::temporaries);
        pass(sections, "hold", n -> permit(n, Type.HOLD));
        pass(sections, "clearance", n -> permit(n, Type.CLEARANCE));
        pass(sections, "planned", this::outage);
        pass(sections, "starts", this::starts);
        pass(sections, "ends", this::ends);
    }

    private void pass(List<Node> sections, String word, Consumer<Node> reading) {
        for (Node section : sections) {
            if (section.readable() && section.line().starts(word)) {
                if (OF_LINES.contains(word) && section.children().isEmpty()) {
                    report.add(Code.EMPTY_GROUP
                            .at(section.span(), "nothing stands below this line")
                            .help("take it out, or list below it what it is about"));
                }
                report.attempt(() -> reading.accept(section));
            }
        }
    }

    /** {@return whether this is the first such section here, so that what the base has is replaced} */
    private boolean restates(String what) {
        return restated.add(what);
    }

    private void keeps(Node node) {
        var parts = Shape.of(node.line(), Shapes::keepsLine, "keeps RULEBOOK, RULEBOOK with PARAMETER 15 V");
        keeps(node.line(), parts.kept());
    }

    /** Reads the rulebooks that are kept. @param line the line on which they stand @param books the rulebooks */
    void keeps(Line line, List<Shapes.KeptContext> books) {
        if (restates("keeps")) {
            header.keeps.clear();
        }
        for (Shapes.KeptContext kept : books) {
            Resolved<Rulebook> book = Settings.rulebook(session, line, kept, Map.of(), report);
            header.allRulebooks &= book.ifSound().isPresent();
            book.ifSound().ifPresent(b -> report.attempt(() -> header.keep(b, Shape.lexeme(kept.name()).span(), "")));
            book.thing().ifPresent(named::add);
        }
    }

    private void parameters(Node node) {
        Line line = node.line();
        var parts = Shape.of(line, Shapes::parameterLine, "for recloser R with single-phase units");
        for (Shapes.ParameterContext part : parts.parameter()) {
            report.attempt(() -> parameter(Cursor.over(Shape.lexemes(line.lexemes(), part))));
        }
    }

    private void parameter(Cursor cursor) {
        int start = cursor.index();
        Noun noun = scope.vocabulary().noun(cursor);
        Lexeme name = cursor.next("a variable for the " + noun.words());
        scope.declare(name, noun);
        // Known from here on, whatever follows, so that no other line stumbles over it.
        header.parameters.put(
                name.getText(), new Procedure.Parameter(name.getText(), noun, Optional.empty(), cursor.from(start)));
        Optional<Boolean> ganged = Optional.empty();
        if (cursor.take("with")) {
            cursor.expect("“single-phase units”", "single-phase", "units");
            ganged = Optional.of(false);
        } else if (cursor.take("ganged")) {
            ganged = Optional.of(true);
        }
        cursor.finish("the parameter");
        header.parameters.put(
                name.getText(), new Procedure.Parameter(name.getText(), noun, ganged, cursor.from(start)));
    }

    private void network(Node node) {
        Line line = node.line();
        var parts = Shape.of(line, Shapes::provedLine, "proved on NETWORK with R as r-24");
        if (restates("proved")) {
            header.proofs.clear();
            header.networks.clear();
        }
        Lexeme name = Shape.lexeme(parts.name());
        Optional<Network> network = session.network(name, report).ifSound();
        if (network.isEmpty()) {
            header.allNetworks = false;
            return;
        }
        if (!header.networks.contains(network.get())) {
            header.networks.add(network.get());
        }
        var arguments = new Arguments(scope, report)
                .ofProof(
                        "the procedure",
                        List.copyOf(header.parameters.values()),
                        network.get(),
                        parts.bindings(),
                        line.span());
        header.proofs.add(new Procedure.Proof(name.value(), arguments, line.span()));
    }

    /** {@code on network NAME}: whoever says so has no parameters. */
    private void place(Node node) {
        Line line = node.line();
        Lexeme name = Shape.lexeme(Shape.of(line, Shapes::onLine, "on network NAME").name());
        header.proofs.clear();
        header.networks.clear();
        Optional<Network> network = session.network(name, report).ifSound();
        header.allNetworks &= network.isPresent();
        network.ifPresent(header.networks::add);
        header.proofs.add(new Procedure.Proof(name.value(), ImmutableMap.of(), line.span()));
    }

    private void temporaries(Node section) {
        Cursor.over(section.line());
        if (section.line().lexemes().size() > 1) {
            throw new Misread(Code.UNEXPECTED
                    .at(section.line().lexemes().get(1).span(), "“temporary” stands alone on its line")
                    .help("list the temporary equipment on the lines below"));
        }
        for (Node node : section.children()) {
            if (node.readable()) {
                report.attempt(() -> temporary(node.line()));
            }
        }
    }

    private void temporary(Line line) {
        var parts = Shape.of(line, Shapes::temporaryLine, "bypass-jumper J for each phase of R");
        Cursor kindCursor = Cursor.over(line);
        Lexeme kindName = Shape.lexeme(parts.name());
        Noun noun = scope.vocabulary().noun(kindCursor);
        var kinds = scope.vocabulary().kindsOf(noun);
        if (noun.kinds().isEmpty() || kinds.isEmpty() || !kinds.get(0).base().isTemporary()) {
            List<String> known = new ArrayList<>();
            scope.vocabulary().kinds().forEach(k -> {
                if (k.base().isTemporary()) {
                    known.add(k.name());
                }
            });
            throw new Misread(Code.WRONG_SORT
                    .at(kindName.span(), "“" + Cursor.clip(kindName.getText()) + "” is no kind of temporary equipment")
                    .help("there is " + Suggestions.list(known, "and")));
        }
        Lexeme name = (Lexeme) parts.WORD().getSymbol();
        if (!header.temporaries.containsKey(name.getText()) || !restates("temporary " + name.getText())) {
            scope.declare(name, noun);
            restates("temporary " + name.getText());
        }
        Term of = term(Shape.lexemes(line.lexemes(), parts.phrase()), BinderReader.PHASED, "“each phase of”");
        header.temporaries.put(name.getText(), new Temporary(name.getText(), kinds.get(0), of, name.span()));
    }

    private Term term(List<Lexeme> lexemes, Set<Type> expected, String asker) {
        Cursor cursor = Cursor.over(lexemes);
        TermReader terms = new TermReader(scope);
        Term term = terms.resolve(terms.read(cursor, "a name"), expected, asker);
        cursor.finish("the name");
        return term;
    }

    private void permit(Node node, Type type) {
        Line line = node.line();
        String form = type == Type.HOLD ? PERMIT : PERMIT.replace("hold H", "clearance K");
        var parts = Shape.of(line, Shapes::permitLine, form);
        Lexeme name = (Lexeme) parts.WORD().getSymbol();
        Permit before = header.permits.get(name.getText());
        if (before == null || before.type() != type || !restates("permit " + name.getText())) {
            scope.declare(name, Noun.all(type, type == Type.HOLD ? "hold" : "clearance"));
            restates("permit " + name.getText());
        }
        Term target = term(Shape.lexemes(line.lexemes(), parts.phrase()), UNDER_WORK, "a hold");
        TermText person = new TermText.Ref(Shape.lexeme(parts.name()));
        Optional<Term> holder =
                report.attempt(() -> new TermReader(scope).resolve(person, ImmutableSet.of(Type.PERSON), "“by”"));
        Cursor cursor = Cursor.over(Shape.lexemes(line.lexemes(), parts.holders()));
        Work none = new Work(session, report, header.crew, new LinkedHashMap<>());
        StepText reading = new StepText(none, scope, node, List.of(), cursor);
        var heldAt = ImmutableList.<DeviceSet>builder();
        do {
            cursor.take("and");
            cursor.take("at");
            for (StepText.SetItem item : reading.readSet(cursor)) {
                heldAt.add(reading.set(item, ImmutableSet.of(Type.DEVICE), "“held at”"));
            }
        } while (cursor.take(",") || cursor.sees(0, "and"));
        cursor.finish("where it is held");
        Term by = holder.orElseThrow(Misread::told);
        ImmutableSet<String> with = crewUnder(parts);
        header.permits.put(
                name.getText(), new Permit(name.getText(), type, target, heldAt.build(), by, with, name.span()));
    }

    /** {@return the people and the equipment that a hold or clearance names as its own} */
    private ImmutableSet<String> crewUnder(Shapes.PermitLineContext parts) {
        ImmutableSet.Builder<String> all = ImmutableSet.builder();
        if (parts.names() != null) {
            for (Shapes.NameContext name : parts.names().name()) {
                Term term = new TermReader(scope)
                        .resolve(new TermText.Ref(Shape.lexeme(name)), OF_A_CREW, "“with”");
                all.add(term.toString());
            }
        }
        return all.build();
    }

    private void outage(Node node) {
        var parts = Shape.of(node.line(), Shapes::outageLine, "planned outage of LOAD, LOAD");
        if (restates("planned")) {
            header.outages.clear();
        }
        for (Shapes.NameContext name : parts.names().name()) {
            TermText text = new TermText.Ref(Shape.lexeme(name));
            report.attempt(() -> new TermReader(scope).resolve(text, ImmutableSet.of(Type.LOAD), "“planned outage of”"))
                    .ifPresent(header.outages::add);
        }
    }

    private void starts(Node section) {
        Shape.of(section.line(), Shapes::startsLine, "starts with");
        if (restates("starts")) {
            header.starts.clear();
            header.choices.clear();
        }
        StartReader reader = new StartReader(scope, report);
        for (Node node : section.children()) {
            if (node.readable() && node.line().starts("either")) {
                report.attempt(() -> header.choices.add(reader.choice(node)));
            } else if (node.readable()) {
                report.attempt(() -> header.starts.add(reader.start(node, Cursor.over(node.line()))));
            }
        }
    }

    private void ends(Node section) {
        Shape.of(section.line(), Shapes::endsLine, "ends with");
        if (restates("ends")) {
            header.ends.clear();
        }
        for (Node node : section.children()) {
            if (node.readable()) {
                report.attempt(() -> new ConditionReader(scope, report, node).read(Cursor.over(node.line())))
                        .ifPresent(header.ends::add);
            }
        }
    }
}
