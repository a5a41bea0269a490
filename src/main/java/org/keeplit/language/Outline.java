package org.keeplit.language;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import org.keeplit.text.Span;

/** Nests the lines of a file: sections, groups closed by {@code end}, clauses below their statement. */
final class Outline {
    /** Nobody reads deeper. */
    static final int DEEPEST = 40;

    private final FileKind kind;
    private final Report report;
    private final List<Node> sections = new ArrayList<>();
    private final Deque<Node> open = new ArrayDeque<>();
    private final Deque<List<Node>> places = new ArrayDeque<>();
    private int tooDeep;

    private Outline(FileKind kind, Report report) {
        this.kind = kind;
        this.report = report;
        places.push(sections);
    }

    /** {@return the sections of a file, each with its lines} */
    static List<Node> of(List<Line> lines, FileKind kind, Report report) {
        Outline outline = new Outline(kind, report);
        for (Line line : lines) {
            outline.add(new Node(line));
        }
        outline.closeAll(null);
        return outline.sections;
    }

    private void add(Node node) {
        Role role = kind.roleOf(node.line());
        boolean block = node.line().ends("one", "of") || node.line().ends("all", "of");
        if (tooDeep > 0 && !closes(role)) {
            // What is nested too deep is skipped as a whole.
            tooDeep += role == Role.GROUP || block ? 1 : role == Role.END ? -1 : 0;
            return;
        }
        switch (role) {
            case SECTION, SECTION_GROUP -> section(node, role == Role.SECTION_GROUP || block);
            case CLAUSE_OF_SECTION -> {
                closeAll(node);
                places.peek().add(node);
                openIf(block, node);
            }
            case CLAUSE -> clause(node, block);
            case GROUP, PLAIN -> {
                places.peek().add(node);
                openIf(block || role == Role.GROUP, node);
            }
            case MIDDLE -> middle(node);
            case END -> end(node);
        }
    }

    private static boolean closes(Role role) {
        return role == Role.SECTION || role == Role.SECTION_GROUP || role == Role.CLAUSE_OF_SECTION;
    }

    private void section(Node node, boolean group) {
        closeAll(node);
        places.clear();
        places.push(sections);
        sections.add(node);
        places.push(node.children());
        if (group) {
            open.push(node);
            places.push(node.children());
        }
    }

    private void clause(Node node, boolean block) {
        List<Node> place = places.peek();
        if (place.isEmpty() || kind.roleOf(place.get(place.size() - 1).line()) != Role.PLAIN) {
            report.add(Code.CLAUSE_ALONE
                    .at(
                            node.span(),
                            "“" + node.head().getText() + "” belongs below a step, but no step stands above it")
                    .help("write it on the line after the step that it is about"));
            openIf(block, node);
            return;
        }
        place.get(place.size() - 1).children().add(node);
        openIf(block, node);
    }

    private void openIf(boolean opens, Node node) {
        if (!opens) {
            return;
        }
        if (open.size() >= DEEPEST) {
            report.add(Code.TOO_DEEP.at(node.span(), "groups are nested more than " + DEEPEST + " deep here"));
            tooDeep = 1;
            return;
        }
        open.push(node);
        places.push(node.children());
    }

    private void middle(Node node) {
        Node choice = open.peek();
        if (choice == null || !choice.line().starts("if") || choice.otherwise() != null) {
            report.add(Code.STRAY_END.at(node.span(), "“otherwise” stands here, but no “if” is open"));
            return;
        }
        choice.otherwise(node);
        places.pop();
        places.push(node.children());
    }

    private void end(Node node) {
        if (open.isEmpty()) {
            report.add(Code.STRAY_END
                    .at(node.span(), "“end” stands here, but no group is open")
                    .help("take it out, or look for an “end” too many above"));
            return;
        }
        open.pop();
        places.pop();
    }

    /** Closes every open group; each should have been closed before. @param at the line that shows it, or null */
    private void closeAll(Node at) {
        tooDeep = 0;
        while (!open.isEmpty()) {
            Node group = open.pop();
            places.pop();
            group.leaveUnclosed();
            Span here = group.span();
            var problem = Code.MISSING_END
                    .at(here, "this group has no “end”")
                    .help("close it with a line “end” where it ends");
            report.add(at == null ? problem : problem.related(at.span(), "it is still open here"));
        }
    }
}
