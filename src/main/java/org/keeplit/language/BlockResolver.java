package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.function.Function;
import org.keeplit.condition.Noun;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Procedure;

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
        if (!isGroup(node)) {
            return node.line().starts("call")
                    ? call(node.line())
                    : new StepResolver(work, scope).resolve(node, node.line().lexemes());
        }
        Head head;
        try {
            head = head(node);
        } catch (Misread misread) {
            // The head has a mistake; what stands inside is read nevertheless.
            resolve(node.children());
            throw misread;
        }
        return head.around(parts(node, head.scope()));
    }

    /** The head of a group: the names inside, and how the parts become a block. */
    private record Head(Scope scope, Function<ImmutableList<Block>, Block> block) {
        Block around(ImmutableList<Block> parts) {
            return block.apply(parts);
        }
    }

    private Head head(Node node) {
        Line line = node.line();
        if (line.starts("for")) {
            return forEach(node);
        }
        if (line.starts("repeat")) {
            return repeat(node);
        }
        if (line.starts("if")) {
            return choice(node);
        }
        return group(node);
    }

    private ImmutableList<Block> parts(Node node, Scope inside) {
        if (node.children().isEmpty() && !node.unclosed()) {
            throw new Misread(Code.EMPTY_GROUP.at(node.span(), "this group has no steps"));
        }
        return new BlockResolver(work, inside).resolve(node.children());
    }

    private Head group(Node node) {
        Line line = node.line();
        if (!line.starts("in") && !line.starts("together")) {
            throw new Misread(Code.UNKNOWN_LINE
                    .at(line.head().span(), "“" + Cursor.clip(line.head().getText()) + "” starts no line here")
                    .help("did you mean together?"));
        }
        Shape.of(line, Shapes::groupLine, "together, in order, or in any order");
        Block.Order order = line.starts("together")
                ? Block.Order.TOGETHER
                : line.starts("in", "any") ? Block.Order.ANY_ORDER : Block.Order.IN_ORDER;
        return new Head(scope, parts -> new Block.Group(order, parts, node.span()));
    }

    private Head forEach(Node node) {
        Line line = node.line();
        List<Lexeme> lexemes = line.lexemes();
        boolean ordered = line.ends("in", "order");
        List<Lexeme> plain = ordered ? lexemes.subList(0, lexemes.size() - 2) : lexemes;
        Scope inner = scope.inner();
        Term of;
        String variable;
        try {
            if (line.starts("for", "each", "phase", "of")) {
                throw new Misread(Code.BAD_VARIABLE
                        .at(lexemes.get(2).span(), "the phase needs a variable, by which the steps inside name it")
                        .help("such a line reads: for each phase P of R"));
            }
            var parts = Shape.of(plain, Shapes::forEachLine, "for each phase P of R");
            variable = parts.WORD().getText();
            inner.declare((Lexeme) parts.WORD().getSymbol(), Noun.all(Type.PHASE, "phase"));
            Cursor cursor = Cursor.over(Shape.lexemes(lexemes, parts.phrase()));
            TermReader terms = new TermReader(scope);
            of = terms.resolve(terms.read(cursor, "what has the phases"), BinderReader.PHASED, "“phase of”");
            cursor.finish("the group's head");
        } catch (Misread misread) {
            work.report().add(misread);
            lookInside(node, plain);
            throw Misread.told();
        }
        return new Head(inner, parts -> new Block.ForEachPhase(variable, of, ordered, parts, node.span()));
    }

    /** Reads the steps inside for their mistakes, if it is clear what the variable is. */
    private void lookInside(Node node, List<Lexeme> plain) {
        Lexeme variable = plain.size() > 3 ? plain.get(3) : null;
        if (variable != null && variable.isVariable()) {
            Scope inner = scope.inner();
            inner.inherit(variable.getText(), Noun.all(Type.PHASE, "phase"), variable.span());
            new BlockResolver(work, inner).resolve(node.children());
        }
        node.children().clear();
    }

    private Head repeat(Node node) {
        var parts = Shape.of(node.line(), Shapes::repeatLine, "repeat 3 times, or repeat at most 3 times");
        int times = Figures.count((Lexeme) parts.NUMBER().getSymbol(), MOST_REPEATS, "how often");
        boolean exactly = parts.MOST() == null;
        return new Head(scope, blocks -> new Block.Repeat(times, exactly, blocks, node.span()));
    }

    private Head choice(Node node) {
        var parts = Shape.of(node.line(), Shapes::ifLine, "if \"gasket\" is found \"wet\"");
        String item = ((Lexeme) parts.STRING(0).getSymbol()).value();
        String outcome = ((Lexeme) parts.STRING(1).getSymbol()).value();
        return new Head(scope, then -> new Block.IfFound(item, outcome, then, otherwise(node), node.span()));
    }

    private ImmutableList<Block> otherwise(Node node) {
        return node.otherwise() == null
                ? ImmutableList.of()
                : resolve(node.otherwise().children());
    }

    private Block call(Line line) {
        var parts = Shape.of(line, Shapes::callLine, "call NAME with r-24 as R and foreman as chief");
        // What is wrong in the other procedure was told there.
        Procedure procedure = work.session()
                .procedure(Shape.lexeme(parts.name()), work.report())
                .ifSound()
                .orElseThrow(Misread::told);
        Arguments arguments = new Arguments(scope, work.report());
        ImmutableMap<String, Term> bound = arguments.ofCall(procedure, parts.bindings(), line.span());
        return new Block.Call(procedure, bound, line.span());
    }
}
