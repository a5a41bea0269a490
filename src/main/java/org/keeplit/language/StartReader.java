package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import org.keeplit.procedure.Procedure;

/** Reads the lines of {@code starts with}. */
final class StartReader {
    private final Scope scope;
    private final Report report;

    StartReader(Scope scope, Report report) {
        this.scope = scope;
        this.report = report;
    }

    /** {@return what a line says of the start, changed or checked} */
    Procedure.Start start(Node node, Cursor cursor) {
        int start = cursor.index();
        boolean given = cursor.take("given");
        var condition = new ConditionReader(scope, report, node).read(cursor);
        return new Procedure.Start(given, condition, cursor.from(start));
    }

    /** {@code either given A and given B or given C}. */
    Procedure.Choice choice(Node node) {
        List<Lexeme> all = node.line().lexemes();
        List<List<Lexeme>> ways = split(all.subList(1, all.size()), "or");
        if (ways.size() < 2) {
            throw new Misread(Code.UNFINISHED
                    .at(node.line().span(), "“either” leaves only one way to start")
                    .help("such as: either given R is closed or given R is open"));
        }
        ImmutableList.Builder<Procedure.Way> read = ImmutableList.builder();
        for (List<Lexeme> way : ways) {
            ImmutableList.Builder<Procedure.Start> starts = ImmutableList.builder();
            for (List<Lexeme> part : split(way, "and")) {
                Cursor cursor = Cursor.over(part);
                if (!cursor.sees(0, "given")) {
                    throw new Misread(cursor.problem(Code.UNEXPECTED, "each way to start begins with “given”")
                            .help("what is only checked stands on a line of its own"));
                }
                starts.add(start(node, cursor));
            }
            read.add(new Procedure.Way(starts.build(), words(way)));
        }
        return new Procedure.Choice(read.build(), node.line().span());
    }

    private static String words(List<Lexeme> way) {
        return Line.written(way).replaceAll("\\bgiven ", "").replaceAll("[, ]+$", "");
    }

    /** Splits where a connective stands before {@code given}; a comma before it belongs to neither. */
    private static List<List<Lexeme>> split(List<Lexeme> line, String connective) {
        List<List<Lexeme>> parts = new ArrayList<>();
        int from = 0;
        for (int i = 0; i + 1 < line.size(); i++) {
            if (line.get(i).is(connective) && line.get(i + 1).is("given")) {
                int to = i > from && line.get(i - 1).is(",") ? i - 1 : i;
                add(parts, line.subList(from, to));
                from = i + 1;
            }
        }
        add(parts, line.subList(from, line.size()));
        return parts;
    }

    private static void add(List<List<Lexeme>> parts, List<Lexeme> part) {
        if (!part.isEmpty()) {
            parts.add(part);
        }
    }
}
