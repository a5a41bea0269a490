package org.keeplit.language;

import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.keeplit.condition.Figure;
import org.keeplit.condition.Measure;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;
import org.keeplit.network.Kind;
import org.keeplit.unit.Dimension;
import org.keeplit.unit.Quantity;
import org.keeplit.unit.Unit;

/** Reads figures: of the state, of a nameplate, as written, and parts of these. */
final class FigureReader {
    private static final ImmutableSet<Type> CARRIERS =
            ImmutableSet.of(Type.DEVICE, Type.JUMPER, Type.MOBILE, Type.LINE, Type.REGULATOR);
    private static final ImmutableSet<Type> CONTACTS = ImmutableSet.of(Type.DEVICE, Type.CONTACT);
    private static final ImmutableSet<Type> BROUGHT = ImmutableSet.of(Type.GROUND, Type.JUMPER);

    private static ImmutableSet<Type> objects(Measure measure) {
        return switch (measure) {
            case CURRENT -> ImmutableSet.<Type>builder().addAll(CARRIERS).add(Type.CONTACT).build();
            case LOADING -> CARRIERS;
            case RESIDUAL, SECTION_FAULT, SECTION_GROUND -> ImmutableSet.of(Type.DEVICE);
            case VOLTAGE_ACROSS, ANGLE, RECOVERY, CLOSING_CURRENT, COLD_LOAD, INRUSH, FAULT_THROUGH, TRAPPED_BEHIND -> CONTACTS;
            case VOLTAGE, FAULT_CURRENT, TRAPPED -> ImmutableSet.of(Type.POINT);
            case AVAILABLE, WITHSTAND -> BROUGHT;
        };
    }

    private final Scope scope;
    private final TermReader terms;

    FigureReader(Scope scope) {
        this.scope = scope;
        this.terms = new TermReader(scope);
    }

    /** {@return whether a figure starts here} */
    boolean starts(Cursor cursor) {
        Lexeme here = cursor.peek(0);
        return here != null
                && (here.isNumber()
                        || isSetting(here)
                        || measure(cursor).isPresent()
                        || scope.vocabulary().figures().peek(cursor).isPresent());
    }

    /** {@return the figure here} @param what what it is for, for messages */
    Figure read(Cursor cursor, String what) {
        return read(cursor, what, Optional.empty());
    }

    /** Like {@link #read(Cursor, String)}. @param expected what it should measure, if that is known */
    Figure read(Cursor cursor, String what, Optional<Dimension> expected) {
        Lexeme here = cursor.need(what);
        if (here.isNumber()) {
            return given(cursor, what, expected);
        }
        if (isSetting(here)) {
            cursor.next("");
            return new Figure.Setting(here.getText(), scope.settings().get(here.getText()), here.span());
        }
        Optional<Measure> measure = measure(cursor);
        if (measure.isPresent()) {
            return measured(cursor, measure.get());
        }
        Optional<FigureNames.Entry> entry = scope.vocabulary().figures().peek(cursor);
        if (entry.isPresent()) {
            return rated(cursor, entry.get());
        }
        throw unknown(cursor, what);
    }

    /** {@return whether a word names a parameter of the rulebook} */
    private boolean isSetting(Lexeme word) {
        return !word.isText() && scope.settings().containsKey(word.getText());
    }

    /** {@return the figure of the state here, the only sort that people can measure} */
    Figure.Measured measured(Cursor cursor) {
        if (measure(cursor).isEmpty() && starts(cursor)) {
            int start = cursor.index();
            read(cursor, "what is measured");
            throw new Misread(Code.UNKNOWN_FIGURE
                    .at(cursor.from(start), "“" + cursor.words(start) + "” is written down, so nobody measures it")
                    .help("figures of the state are " + measures()));
        }
        int start = cursor.index();
        Figure.Measured figure =
                measured(cursor, measure(cursor).orElseThrow(() -> unknown(cursor, "what is measured")));
        if (!figure.measure().isSeen()) {
            throw new Misread(Code.UNKNOWN_FIGURE
                    .at(cursor.from(start), "“" + cursor.words(start) + "” is worked out beforehand, so nobody measures it")
                    .help("people measure " + measures()));
        }
        return figure;
    }

    private static List<String> words(Measure measure) {
        return List.of(measure.words().replace("the ", "").split(" "));
    }

    private static Optional<Measure> measure(Cursor cursor) {
        return Arrays.stream(Measure.values())
                .filter(m -> cursor.sees(words(m)))
                .findFirst();
    }

    private Figure.Measured measured(Cursor cursor, Measure measure) {
        int start = cursor.index();
        cursor.moveTo(start + words(measure).size());
        ImmutableSet<Type> objects = objects(measure);
        String options = Suggestions.list(objects.stream().map(Type::phrase).toList(), "or");
        TermText text = terms.read(cursor, options);
        Term of = terms.resolve(text, objects, "“" + String.join(" ", words(measure)) + "”");
        Optional<Term> beyond = beyond(cursor, measure);
        int on = cursor.index();
        if (cursor.sees(List.of("on", "any", "phase"))) {
            throw new Misread(Code.UNEXPECTED
                    .at(cursor.here(), "a figure is on named phases")
                    .help("write: for some phase P of " + text.words() + ", … on P"));
        }
        PhaseTerm phase = PhaseReader.optional(cursor, scope);
        if (cursor.index() > on && !measure.perPhase()) {
            throw new Misread(Code.NOT_PER_PHASE
                    .at(cursor.from(on), measure.words().replace(" through", "").replace(" of", "") + " is that of all phases together")
                    .help("leave out “" + cursor.words(on) + "”"));
        }
        if (cursor.index() > on) {
            PhaseCheck.check(of, phase, cursor.from(on), scope);
        }
        return new Figure.Measured(measure, of, beyond, phase, cursor.from(start));
    }

    /** Reads {@code beyond R} where a measure needs it. */
    private Optional<Term> beyond(Cursor cursor, Measure measure) {
        if (!measure.hasBeyond()) {
            return Optional.empty();
        }
        cursor.expect("“beyond” and the device whose section is meant", "beyond");
        TermText text = terms.read(cursor, Type.DEVICE.phrase());
        return Optional.of(terms.resolve(text, ImmutableSet.of(Type.DEVICE), "“beyond”"));
    }

    private Figure rated(Cursor cursor, FigureNames.Entry entry) {
        int start = cursor.index();
        cursor.moveTo(start + entry.said().split(" ").length + 1);
        TermText text = terms.read(cursor, "what has the " + entry.said());
        Term of = terms.resolve(text, entry.of().keySet(), "“" + entry.said() + " of”");
        List<Kind> kinds = terms.kinds(of);
        boolean has = kinds.isEmpty()
                || kinds.stream()
                        .anyMatch(k -> k.ratings().containsKey(entry.kept())
                                || AttributeTable.figures(k.base()).containsKey(entry.kept())
                                || AttributeTable.powers(k.base()).containsKey(entry.kept()));
        if (!has) {
            throw new Misread(Code.UNKNOWN_FIGURE
                    .at(
                            cursor.from(start),
                            Suggestions.a(kinds.get(0).name()) + " has no " + entry.said() + ": its kind states none")
                    .help("add a line “rating " + entry.kept() + " …” to the kind "
                            + kinds.get(0).name()));
        }
        return new Figure.Rated(entry.kept(), entry.of().get(of.type()), of, cursor.from(start));
    }

    /** Reads a quantity, or a part of another figure: {@code 80 % of FIGURE}. */
    private Figure given(Cursor cursor, String what, Optional<Dimension> expected) {
        int start = cursor.index();
        Dimension dimension = Figures.peekUnit(cursor, 1)
                .map(Unit::dimension)
                .or(() -> expected)
                .orElse(Dimension.NUMBER);
        if (Figures.peekUnit(cursor, 1).isEmpty() && cursor.sees(1, "of")) {
            throw new Misread(Code.MISSING_UNIT
                    .at(cursor.here(), "a part of a figure is written in %")
                    .help("write: " + cursor.need("").getText() + " % of …"));
        }
        if (dimension == Dimension.RATIO && cursor.sees(2, "of")) {
            double factor =
                    Figures.positive(cursor, Dimension.RATIO, "the part").si();
            cursor.next("of");
            Figure whole = read(cursor, "the figure of which it is a part");
            return new Figure.Part(factor, whole, cursor.from(start));
        }
        Quantity quantity = Figures.read(cursor, dimension, what);
        if (quantity.si() < 0) {
            throw new Misread(Code.BAD_NUMBER.at(
                    cursor.from(start), "figures are magnitudes, never less than zero as " + cursor.words(start)));
        }
        return new Figure.Given(quantity, cursor.from(start));
    }

    private Misread unknown(Cursor cursor, String what) {
        List<Lexeme> words = new ArrayList<>();
        for (Lexeme word : cursor.rest()) {
            if (!words.isEmpty() && (word.is("is") || word.isVariable() || word.is(",") || words.size() == 4)) {
                break;
            }
            words.add(word);
        }
        String written = Line.written(words);
        if (words.size() == 1 && (words.get(0).isVariable() || scope.element(written).isPresent())) {
            return new Misread(Code.UNKNOWN_FIGURE
                    .at(words.get(0).span(), "“" + Cursor.clip(written) + "” is a thing and " + what + " is a figure")
                    .help("say which figure, such as the current through " + Cursor.clip(written) + " on A"));
        }
        if (words.size() == 1) {
            Optional<String> near = Suggestions.nearest(written, scope.settings().keySet());
            if (near.isPresent()) {
                return new Misread(Code.UNKNOWN_FIGURE
                        .at(Line.spanOf(words), "“" + Cursor.clip(written) + "” is no figure")
                        .help("did you mean the " + near.get() + "?"));
            }
        }
        List<String> known = known();
        return new Misread(Code.UNKNOWN_FIGURE
                .at(Line.spanOf(words), "“" + Cursor.clip(written) + "” is no figure")
                .help(nearest(words, known)
                        .map(near -> "did you mean the " + near + " …?")
                        .orElse("figures of the state are " + measures())));
    }

    private static String measures() {
        return Suggestions.list(
                Arrays.stream(Measure.values())
                        .filter(Measure::isSeen)
                        .map(m -> m.words() + " …")
                        .toList(),
                "and");
    }

    private List<String> known() {
        List<String> known = new ArrayList<>();
        for (Measure measure : Measure.values()) {
            known.add(String.join(" ", words(measure)));
        }
        scope.vocabulary().figures().names().forEach(name -> known.add(name + " of"));
        return known;
    }

    private static Optional<String> nearest(List<Lexeme> words, List<String> known) {
        for (int length = words.size(); length > 1; length--) {
            Optional<String> near = Suggestions.nearest(Vocabulary.join(words.subList(0, length)), known);
            if (near.isPresent()) {
                return near;
            }
        }
        return Optional.empty();
    }
}
