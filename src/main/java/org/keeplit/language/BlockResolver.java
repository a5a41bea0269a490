package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.List;
import org.keeplit.condition.Noun;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.procedure.Block;

/** Builds steps and groups of steps from their lines. */
final class BlockResolver {
    private static final int MOST_REPEATS = 100;

    private final Work work;
    private final Scope scope;

    BlockResolver(Work work, Scope scope) {
        this.work = work;
        this.scope = scope;
    }

    /** {@return what could be read of some lines} */
    ImmutableList<Block> resolve(List<Node> nodes) {
        ImmutableList.Builder<Block> blocks = ImmutableList.builder();
        for (Node node : nodes) {
            if (node.readable()) {
                work.report().attempt(() -> block(node)).ifPresent(blocks::add);
            } else if (isGroup(node)) {
                // Its own line is spoiled, but what stands inside is read for its mistakes.
                resolve(node.children());
            }
        }
        return blocks.build();
    }

    private static boolean isGroup(Node node) {
        return FileKind.PROCEDURE.roleOf(node.line()) == Role.GROUP;
    }

    private Block block(Node node) {
        Line line = node.line();
        if (line.starts("for", "each")) {
            return forEach(node);
        }
        if (line.starts("in") || line.starts("together")) {
            return group(node);
        }
        if (line.starts("repeat")) {
            return repeat(node);
        }
        if (line.starts("if")) {
            return choice(node);
        }
        if (line.starts("call")) {
            return call(line);
        }
        return new StepResolver(work, scope).resolve(node, line.lexemes());
    }

    private ImmutableList<Block> parts(Node node, Scope inside) {
        if (node.children().isEmpty() && !node.unclosed()) {
            throw new Misread(Code.EMPTY_GROUP.at(node.span(), "this group has no steps"));
        }
        return new BlockResolver(work, inside).resolve(node.children());
    }

    private Block group(Node node) {
        Shape.of(node.line(), Shapes::groupLine, "together, in order, or in any order");
        Block.Order order = node.line().starts("together")
                ? Block.Order.TOGETHER
                : node.line().starts("in", "any") ? Block.Order.ANY_ORDER : Block.Order.IN_ORDER;
        return new Block.Group(order, parts(node, scope), node.span());
    }

    private Block forEach(Node node) {
        Line line = node.line();
        Scope inner = scope.inner();
        List<Lexeme> lexemes = line.lexemes();
        boolean ordered = line.ends("in", "order");
        List<Lexeme> plain = ordered ? lexemes.subList(0, lexemes.size() - 2) : lexemes;
        try {
            var parts = Shape.of(plain, Shapes::forEachLine, "for each phase P of R");
            inner.declare((Lexeme) parts.WORD().getSymbol(), Noun.all(Type.PHASE, "phase"));
            Cursor cursor = Cursor.over(Shape.lexemes(lexemes, parts.phrase()));
            TermReader terms = new TermReader(scope);
            Term of = terms.resolve(terms.read(cursor, "what has the phases"), BinderReader.PHASED, "“phase of”");
            cursor.finish("the group's head");
            String variable = parts.WORD().getText();
            return new Block.ForEachPhase(variable, of, ordered, parts(node, inner), node.span());
        } catch (Misread misread) {
            lookInside(node, plain, inner);
            throw misread;
        }
    }

    /** The head has a mistake; the steps inside are read nevertheless, if it is clear what the variable is. */
    private void lookInside(Node node, List<Lexeme> plain, Scope inner) {
        Lexeme variable = plain.size() > 3 ? plain.get(3) : null;
        if (variable != null && variable.isVariable()) {
            if (inner.typeOf(variable.getText()).isEmpty()) {
                inner.declare(variable, Noun.all(Type.PHASE, "phase"));
            }
            new BlockResolver(work, inner).resolve(node.children());
        }
    }

    private Block repeat(Node node) {
        var parts = Shape.of(node.line(), Shapes::repeatLine, "repeat 3 times, or repeat at most 3 times");
        int times = Figures.count((Lexeme) parts.NUMBER().getSymbol(), MOST_REPEATS, "how often");
        return new Block.Repeat(times, parts.MOST() == null, parts(node, scope), node.span());
    }

    private Block choice(Node node) {
        var parts = Shape.of(node.line(), Shapes::ifLine, "if \"gasket\" is found \"wet\"");
        ImmutableList<Block> otherwise = node.otherwise() == null
                ? ImmutableList.of()
                : new BlockResolver(work, scope).resolve(node.otherwise().children());
        return new Block.IfFound(
                ((Lexeme) parts.STRING(0).getSymbol()).value(),
                ((Lexeme) parts.STRING(1).getSymbol()).value(),
                parts(node, scope),
                otherwise,
                node.span());
    }

    private Block call(Line line) {
        var parts = Shape.of(line, Shapes::callLine, "call NAME with r-24 as R and foreman as chief");
        var procedure = work.session()
                .procedure(Shape.lexeme(parts.name()), work.report())
                .orElseThrow(Misread::told);
        Arguments arguments = new Arguments(scope, work.report());
        ImmutableMap<String, Term> bound = arguments.ofCall(procedure, parts.bindings(), line.span());
        return new Block.Call(procedure, bound, line.span());
    }
}
