package org.keeplit.plain;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.keeplit.condition.Condition;
import org.keeplit.network.Kind;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Bound;
import org.keeplit.text.Span;

/**
 * A bound procedure in lines, one for each step and each thing that it declares. Left out are the places of words in files, but not the
 * lines of steps, by which findings are known; groups of one, groups without steps, and sequences inside sequences, which say nothing. A
 * stage is a sequence, and all of one condition is that condition.
 */
final class BoundWords {
    private final List<String> lines = new ArrayList<>();

    private BoundWords() {}

    static List<String> of(Bound bound) {
        BoundWords words = new BoundWords();
        words.lines.add("procedure " + bound.procedure().name() + " on " + bound.network().name() + " with " + bound.arguments());
        bound.temporaries().forEach(t -> words.lines.add("temporary " + said(t)));
        bound.permits().forEach(p -> words.lines.add("permit " + said(p)));
        bound.outages().forEach(o -> words.lines.add("outage " + o));
        bound.starts().forEach(s -> words.lines.add("start " + said(s)));
        words.sequence(bound.body(), "");
        bound.ends().forEach(e -> words.lines.add("end " + said(e)));
        return words.lines;
    }

    /** {@return the first line in which two differ, with both; empty if none} */
    static String difference(Bound plain, Bound shared) {
        List<String> one = of(plain);
        List<String> other = of(shared);
        for (int i = 0; i < Math.max(one.size(), other.size()); i++) {
            String a = i < one.size() ? one.get(i) : "nothing more";
            String b = i < other.size() ? other.get(i) : "nothing more";
            if (!a.equals(b)) {
                return "line " + (i + 1) + ": plain " + a + "\n  shared " + b;
            }
        }
        return "";
    }

    private void sequence(List<Block> blocks, String indent) {
        blocks.forEach(block -> block(block, true, indent));
    }

    private static boolean isEmpty(Block block) {
        return block instanceof Block.Group group && group.parts().stream().allMatch(BoundWords::isEmpty)
                || block instanceof Block.Stage stage && stage.parts().stream().allMatch(BoundWords::isEmpty);
    }

    private void block(Block block, boolean inOrder, String indent) {
        if (block instanceof Block.Group group) {
            List<Block> parts = group.parts().stream().filter(part -> !isEmpty(part)).toList();
            if (parts.size() == 1) {
                block(parts.get(0), inOrder, indent);
            } else if (group.order() == Block.Order.IN_ORDER && inOrder) {
                sequence(parts, indent);
            } else if (!parts.isEmpty()) {
                lines.add(indent + group.order());
                parts.forEach(part -> block(part, group.order() == Block.Order.IN_ORDER, indent + "  "));
            }
        } else if (block instanceof Block.Stage stage) {
            block(new Block.Group(Block.Order.IN_ORDER, stage.parts(), stage.span()), inOrder, indent);
        } else if (block instanceof Block.Repeat repeat) {
            lines.add(indent + "repeat " + repeat.times() + (repeat.exactly() ? "" : " at most"));
            sequence(repeat.parts(), indent + "  ");
        } else if (block instanceof Block.IfFound choice) {
            lines.add(indent + "if " + choice.item() + " is " + choice.outcome());
            sequence(choice.then(), indent + "  ");
            lines.add(indent + "otherwise");
            sequence(choice.otherwise(), indent + "  ");
        } else if (block instanceof Block.Step step) {
            lines.add(indent + "line " + step.span().line() + " of " + step.span().source().name() + ": " + said(step));
        } else {
            lines.add(indent + "not written out: " + said(block));
        }
    }

    /** {@return a value with all its parts but places in files} */
    private static String said(Object value) {
        if (value instanceof Optional<?> o) {
            return o.map(BoundWords::said).orElse("-");
        } else if (value instanceof Iterable<?> all && !(value instanceof Record)) {
            List<String> parts = new ArrayList<>();
            all.forEach(part -> parts.add(said(part)));
            return parts.toString();
        } else if (value instanceof Map<?, ?> map) {
            return said(map.entrySet().stream().map(e -> e.getKey() + "=" + said(e.getValue())).toList());
        } else if (value instanceof Kind kind) {
            return kind.name() + " at " + kind.span() + " " + kind.duties() + kind.traits();
        } else if (value instanceof Condition.All all && all.parts().size() == 1) {
            return said(all.parts().get(0));
        } else if (!(value instanceof Record)) {
            return String.valueOf(value);
        }
        List<String> parts = new ArrayList<>();
        for (RecordComponent component : value.getClass().getRecordComponents()) {
            if (component.getType() != Span.class) {
                try {
                    parts.add(said(component.getAccessor().invoke(value)));
                } catch (ReflectiveOperationException e) {
                    throw new IllegalStateException(e);
                }
            }
        }
        return value.getClass().getSimpleName() + parts;
    }
}
