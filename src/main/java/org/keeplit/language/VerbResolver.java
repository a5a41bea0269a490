package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.network.Base;
import org.keeplit.network.Effect;
import org.keeplit.network.Mode;
import org.keeplit.network.Place;
import org.keeplit.network.Verb;
import org.keeplit.text.Span;

/** Builds a verb of a kind from its line: two forms around the hole X, then what it does. */
final class VerbResolver {
    private static final String FORM = "verb opens X / open X  opens";

    private final Line line;
    private final List<Mode> modes;
    private final Base base;

    VerbResolver(Line line, List<Mode> modes, Base base) {
        this.line = line;
        this.modes = modes;
        this.base = base;
    }

    Verb resolve() {
        Shapes.VerbLineContext parts = Shape.of(line, Shapes::verbLine, FORM);
        List<Lexeme> first = Shape.lexemes(line.lexemes(), parts.form(0));
        List<Lexeme> second = Shape.lexemes(line.lexemes(), parts.form(1));
        int hole = hole(first);
        Verb.Form one = new Verb.Form(words(first.subList(0, hole)), words(first.subList(hole + 1, first.size())));
        int otherHole = hole(second);
        int end = otherHole + 1 + one.after().size();
        ImmutableList<String> before = words(second.subList(0, otherHole));
        if (end > second.size() || !words(second.subList(otherHole + 1, end)).equals(one.after())) {
            throw new Misread(Code.BAD_VERB
                    .at(Line.spanOf(second), "both forms of a verb have the same words after X")
                    .help("such a line reads: verb puts X in non-reclose / put X in non-reclose  reclosing"
                            + " becomes blocked"));
        }
        return new Verb(one, new Verb.Form(before, one.after()), effects(second, end), Line.spanOf(first));
    }

    private static int hole(List<Lexeme> form) {
        for (int i = 0; i < form.size(); i++) {
            if (form.get(i).is("X")) {
                if (i == 0) {
                    break;
                }
                return i;
            }
        }
        throw new Misread(Code.BAD_VERB
                .at(Line.spanOf(form), "this form of the verb has no X after its first word")
                .help("X stands for what the step is done to: " + FORM));
    }

    private static ImmutableList<String> words(List<Lexeme> some) {
        return some.stream().map(Lexeme::getText).collect(ImmutableList.toImmutableList());
    }

    private ImmutableList<Effect> effects(List<Lexeme> second, int from) {
        if (from >= second.size()) {
            throw new Misread(Code.BAD_VERB
                    .at(Line.spanOf(second), "the line does not say what the verb does")
                    .help("after the two forms comes opens, closes, MODE becomes VALUE, runs to neutral or"
                            + " goes to the ground"));
        }
        List<Effect> effects = new ArrayList<>();
        Cursor cursor = Cursor.over(second.subList(from, second.size()));
        do {
            effects.add(effect(cursor));
        } while (cursor.take(","));
        cursor.finish("what the verb does");
        return ImmutableList.copyOf(effects);
    }

    private Effect effect(Cursor cursor) {
        int start = cursor.index();
        if (cursor.take("opens")) {
            return pole(false, cursor.from(start));
        }
        if (cursor.take("closes")) {
            return pole(true, cursor.from(start));
        }
        if (cursor.take("runs", "to", "neutral")) {
            if (base != Base.REGULATOR) {
                throw wrongFamily(cursor.from(start), "only a regulator runs to neutral");
            }
            return new Effect.ToNeutral();
        }
        if (cursor.take("goes", "to")) {
            return new Effect.Carry(place(cursor));
        }
        if (cursor.sees(1, "becomes")) {
            return mode(cursor);
        }
        Lexeme here = cursor.need("what the verb does");
        throw new Misread(Code.BAD_VERB
                .at(here.span(), "“" + Cursor.clip(here.getText()) + "” is nothing that a verb can do")
                .help("a verb opens, closes, sets a mode (MODE becomes VALUE), runs to neutral, or goes to"
                        + " the pole, the ground or the shop"));
    }

    private Effect pole(boolean closed, Span span) {
        if (base != Base.SWITCH) {
            throw wrongFamily(span, "only a switching device opens and closes");
        }
        return new Effect.Pole(closed);
    }

    private static Misread wrongFamily(Span span, String message) {
        return new Misread(Code.BAD_VERB.at(span, message));
    }

    private static Place place(Cursor cursor) {
        if (cursor.take("pole")) {
            return Place.POLE;
        }
        if (cursor.take("ground")) {
            return Place.LOWERED;
        }
        if (cursor.take("shop")) {
            return Place.SHOP;
        }
        throw cursor.unexpected("pole, ground or shop");
    }

    private Effect mode(Cursor cursor) {
        Lexeme name = cursor.next("a mode");
        cursor.next("becomes");
        Lexeme value = cursor.next("a value");
        Optional<Mode> mode =
                modes.stream().filter(m -> m.name().equals(name.value())).findFirst();
        if (mode.isEmpty()) {
            List<String> known = modes.stream().map(Mode::name).toList();
            throw new Misread(Code.UNKNOWN_MODE
                    .at(name.span(), "this kind has no mode “" + Cursor.clip(name.value()) + "”")
                    .help(Suggestions.didYouMean(name.value(), known)
                            .orElse("declare it with a line mode NAME value, value")));
        }
        if (!mode.get().values().contains(value.value())) {
            throw new Misread(Code.UNKNOWN_MODE
                    .at(value.span(), "the mode " + name.value() + " has no value “" + Cursor.clip(value.value()) + "”")
                    .help("it is " + Suggestions.list(mode.get().values(), "or")));
        }
        return new Effect.SetMode(mode.get().name(), value.value());
    }
}
