package org.keeplit.language;

import com.google.common.collect.ImmutableSet;
import java.util.List;
import java.util.function.Function;
import org.antlr.v4.runtime.BaseErrorListener;
import org.antlr.v4.runtime.CommonTokenStream;
import org.antlr.v4.runtime.ListTokenSource;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.RecognitionException;
import org.antlr.v4.runtime.Recognizer;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.misc.IntervalSet;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.language.grammar.Words;
import org.keeplit.text.Problem;
import org.keeplit.text.Span;

/** Splits a line by one rule of the grammar; if it does not fit, says so in the reader's words. */
final class Shape {
    /** What stands after a comma that was forgotten, not instead of one. */
    private static final ImmutableSet<Integer> AFTER_COMMA =
            ImmutableSet.of(Words.WORD, Words.ON, Words.AT, Words.IN, Words.HELD, Words.BY);

    private Shape() {}

    /**
     * Splits a line.
     *
     * @param line the line
     * @param rule the grammar's rule
     * @param form how such a line reads, for the advice
     * @return the parts
     * @throws Misread if the line has another shape
     */
    static <C extends ParserRuleContext> C of(Line line, Function<Shapes, C> rule, String form) {
        return of(line.lexemes(), rule, form);
    }

    /** Like {@link #of(Line, Function, String)}, for a part of a line. */
    static <C extends ParserRuleContext> C of(List<Lexeme> lexemes, Function<Shapes, C> rule, String form) {
        lexemes.forEach(Lexeme::markRead);
        Shapes parser = new Shapes(new CommonTokenStream(new ListTokenSource(lexemes)));
        parser.removeErrorListeners();
        parser.addErrorListener(new BaseErrorListener() {
            @Override
            public void syntaxError(
                    Recognizer<?, ?> recognizer, Object at, int row, int column, String text, RecognitionException e) {
                throw new Misread(mistake(lexemes, (Token) at, parser.getExpectedTokens(), form));
            }
        });
        return rule.apply(parser);
    }

    /** {@return the lexemes of a part of a line} */
    static List<Lexeme> lexemes(List<Lexeme> line, ParserRuleContext part) {
        int from = part.getStart().getTokenIndex();
        // An empty part stops before it starts.
        int to = part.getStop() == null ? from : part.getStop().getTokenIndex() + 1;
        return line.subList(Math.min(from, line.size()), Math.max(from, Math.min(to, line.size())));
    }

    /** {@return the only lexeme of a part such as a name} */
    static Lexeme lexeme(ParserRuleContext part) {
        return (Lexeme) part.getStart();
    }

    /** {@return the place of a part of a line, even if nothing stands there} */
    static Span place(Line line, ParserRuleContext part) {
        return part.getStart() instanceof Lexeme lexeme ? lexeme.span() : end(line.lexemes());
    }

    private static Span end(List<Lexeme> line) {
        Span last = line.get(line.size() - 1).span();
        return new Span(last.source(), last.line(), last.column() + last.length(), 0);
    }

    private static Problem mistake(List<Lexeme> line, Token at, IntervalSet expected, String form) {
        String help = "such a line reads: " + form;
        if (!(at instanceof Lexeme here)) {
            return Code.UNFINISHED.at(end(line), "the line ends too early").help(help);
        }
        if (expected.contains(Words.COMMA) && expected.contains(Token.EOF) && AFTER_COMMA.contains(here.getType())) {
            return Code.MISSING_COMMA
                    .at(here.span(), "a comma is missing before “" + Cursor.clip(here.getText()) + "”")
                    .help(help);
        }
        if (expected.contains(Words.WORD) && here.isReserved()) {
            return Code.RESERVED
                    .at(here.span(), "“" + here.getText() + "” is a word of the language, so it cannot be a name")
                    .help("write it in quotes, or choose another name");
        }
        return Code.UNEXPECTED
                .at(here.span(), "the line does not read on at “" + Cursor.clip(here.getText()) + "”")
                .help(help);
    }
}
