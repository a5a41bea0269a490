package org.keeplit.mend;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Procedure;

/**
 * The lines of one step with its clauses, or of one change of a variant.
 *
 * @param from its first line, from 1
 * @param to the line behind its last
 * @param indent how far it stands from the left
 * @param text its first line, without what stands to the left of it
 */
record Chunk(int from, int to, String indent, String text) {

    /** {@return the chunks of a procedure, in the order of its text} @param lines the lines of its file */
    static List<Chunk> of(Procedure procedure, List<String> lines) {
        TreeSet<Integer> starts = new TreeSet<>();
        if (procedure.edits().isEmpty()) {
            collect(procedure.body(), procedure, starts);
        } else {
            procedure.edits().forEach(edit -> starts.add(edit.span().line()));
        }
        List<Chunk> all = new ArrayList<>();
        for (int from : starts) {
            all.add(of(from, lines));
        }
        return all;
    }

    private static Chunk of(int from, List<String> lines) {
        String first = lines.get(from - 1);
        String indent = first.substring(0, first.length() - first.stripLeading().length());
        int to = from + 1;
        while (to <= lines.size() && isInside(lines.get(to - 1), indent)) {
            to++;
        }
        if (first.strip().startsWith("insert ") && to <= lines.size() && lines.get(to - 1).strip().equals("end")) {
            to++;
        }
        return new Chunk(from, to, indent, first.strip());
    }

    private static boolean isInside(String line, String indent) {
        return !line.isBlank() && line.startsWith(indent + " ");
    }

    private static void collect(List<Block> blocks, Procedure procedure, TreeSet<Integer> into) {
        for (Block block : blocks) {
            if (block instanceof Block.Step step) {
                // What is called stands in another place; only the call could be moved here.
                if (step.span().source().equals(procedure.span().source())) {
                    into.add(step.span().line());
                }
            } else if (block instanceof Block.Group group) {
                collect(group.parts(), procedure, into);
            } else if (block instanceof Block.Stage stage) {
                collect(stage.parts(), procedure, into);
            } else if (block instanceof Block.ForEachPhase each) {
                collect(each.parts(), procedure, into);
            } else if (block instanceof Block.Repeat repeat) {
                collect(repeat.parts(), procedure, into);
            } else if (block instanceof Block.IfFound choice) {
                collect(choice.then(), procedure, into);
                collect(choice.otherwise(), procedure, into);
            } else if (block instanceof Block.Call call) {
                into.add(call.span().line());
            }
        }
    }
}
