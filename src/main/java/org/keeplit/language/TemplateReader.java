package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.keeplit.condition.Figure;
import org.keeplit.condition.Type;
import org.keeplit.rule.Template;
import org.keeplit.text.Span;

/** Reads a sentence with gaps, such as {@code "{D} drops {customers of L}"}, and checks each gap's sort. */
final class TemplateReader {
    private static final ImmutableMap<String, ImmutableSet<Type>> ATTRIBUTES = ImmutableMap.of(
            "customers", ImmutableSet.of(Type.LOAD),
            "critical", ImmutableSet.of(Type.LOAD),
            "opening duty", ImmutableSet.of(Type.DEVICE, Type.CONTACT),
            "closing duty", ImmutableSet.of(Type.DEVICE, Type.CONTACT),
            "site", ImmutableSet.of(Type.DEVICE, Type.REGULATOR, Type.JUMPER, Type.GROUND, Type.MOBILE));

    private final Scope scope;
    private final Lexeme text;
    private final ImmutableList.Builder<Template.Part> parts = ImmutableList.builder();

    TemplateReader(Scope scope, Lexeme text) {
        this.scope = scope;
        this.text = text;
    }

    Template read() {
        String value = text.value();
        int at = 0;
        while (at < value.length()) {
            int open = value.indexOf('{', at);
            int stray = value.indexOf('}', at);
            if (stray >= 0 && (open < 0 || stray < open)) {
                throw new Misread(Code.BAD_TEMPLATE.at(span(stray, 1), "this } closes no gap"));
            }
            if (open < 0) {
                parts.add(new Template.Text(value.substring(at)));
                break;
            }
            if (open > at) {
                parts.add(new Template.Text(value.substring(at, open)));
            }
            int close = value.indexOf('}', open);
            if (close < 0) {
                throw new Misread(Code.BAD_TEMPLATE
                        .at(span(open, value.length() - open), "this gap is not closed")
                        .help("close it with }"));
            }
            parts.add(gap(value.substring(open + 1, close), open + 1));
            at = close + 1;
        }
        return new Template(parts.build());
    }

    private Span span(int from, int length) {
        Span span = text.span();
        return new Span(span.source(), span.line(), span.column() + 1 + from, length);
    }

    private Template.Part gap(String inside, int from) {
        Span span = span(from, Math.max(1, inside.length()));
        List<Lexeme> lexemes = LineReader.inside(inside, span);
        if (lexemes.size() > 1 && lexemes.get(0).is("whether")) {
            return whether(Cursor.over(lexemes));
        }
        if (isFigure(lexemes)) {
            return figure(Cursor.over(lexemes));
        }
        List<String> words = Arrays.stream(inside.trim().split("\\s+"))
                .filter(w -> !w.equals("the"))
                .toList();
        int of = words.indexOf("of");
        String variable = words.get(words.size() - 1);
        String attribute = of < 0 ? "" : String.join(" ", words.subList(0, of));
        if (words.size() != (of < 0 ? 1 : of + 2)) {
            throw new Misread(Code.BAD_TEMPLATE
                    .at(span, "a gap holds a variable, or something of a variable")
                    .help("such as {D}, {opening duty of D} or {the current through D on P}"));
        }
        Optional<Type> type = scope.typeOf(variable);
        if (type.isEmpty() && !scope.isForgiving()) {
            throw new Misread(Code.UNKNOWN_NAME
                    .at(span, "nothing is called " + Cursor.clip(variable) + " here")
                    .help(Suggestions.didYouMean(variable, scope.variables())
                            .orElse("the variables here are " + Suggestions.list(scope.variables(), "and"))));
        }
        if (of >= 0 && type.isPresent()) {
            check(attribute, variable, type.get(), span);
        }
        return new Template.Gap(attribute, variable);
    }

    /** {@code {whether W is covered at S}}: told as it is in the state, denied if it is not so. */
    private Template.ConditionGap whether(Cursor cursor) {
        cursor.next("whether");
        Lexeme last = cursor.rest().get(cursor.rest().size() - 1);
        if (last.is("of")) {
            throw new Misread(Code.BAD_TEMPLATE.at(cursor.here(), "a gap has no room for a block of conditions"));
        }
        return new Template.ConditionGap(new ConditionReader(scope, null, null).read(cursor));
    }

    /** {@return whether a gap holds a figure, or what was meant as one} */
    private boolean isFigure(List<Lexeme> inside) {
        if (inside.isEmpty()) {
            return false;
        }
        boolean other = ATTRIBUTES.keySet().stream().anyMatch(a -> Vocabulary.join(inside).startsWith(a + " of "));
        return !other
                && (new FigureReader(scope).starts(Cursor.over(inside))
                        || inside.stream().anyMatch(l -> l.is("through") || l.is("at") || l.is("across")));
    }

    private Template.FigureGap figure(Cursor cursor) {
        int start = cursor.index();
        Figure figure = new FigureReader(scope).read(cursor, "what the gap tells");
        cursor.finish("the figure");
        if (figure instanceof Figure.Given) {
            throw new Misread(Code.BAD_TEMPLATE
                    .at(cursor.from(start), "“" + cursor.words(start) + "” is known already, so no gap is needed")
                    .help("write it without braces"));
        }
        return new Template.FigureGap(figure);
    }

    private static void check(String attribute, String variable, Type type, Span span) {
        ImmutableSet<Type> fitting = ATTRIBUTES.get(attribute);
        if (fitting == null) {
            throw new Misread(Code.BAD_TEMPLATE
                    .at(span, "nothing has a “" + Cursor.clip(attribute) + "” that could be told")
                    .help(Suggestions.didYouMean(attribute, ATTRIBUTES.keySet())
                            .orElse("there is " + Suggestions.list(ATTRIBUTES.keySet(), "and"))));
        }
        if (!fitting.contains(type)) {
            throw new Misread(Code.WRONG_SORT.at(
                    span,
                    "“" + attribute + "” goes with "
                            + Suggestions.list(
                                    fitting.stream().map(Type::phrase).toList(), "or") + ", and " + variable
                            + " is " + type.phrase()));
        }
    }
}
