package org.keeplit.language;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;

/** Tells how deep each line of a file stands in it. The file must be sound as far as its outline goes. */
final class Indents {
    private final FileKind kind;
    private final List<Place> places = new ArrayList<>();
    /** How deep the groups that are open stand. */
    private final Deque<Integer> open = new ArrayDeque<>();
    /** How deep the section stands in which the lines are. */
    private int section;
    /** How deep a section stands that begins here: in an example or a variant it belongs to it. */
    private int sections;
    private Item inside = Item.NONE;
    /** Whether the section says what must come: what stands below is no clause of a step, whatever it looks like. */
    private boolean underMust;

    /** What the lines belong to. */
    enum Item {
        /** Nothing yet. */
        NONE,
        /** A network. */
        NETWORK,
        /** A procedure that stands for itself. */
        PROCEDURE,
        /** Anything else. */
        OTHER
    }

    Indents(FileKind kind) {
        this.kind = kind;
    }

    /**
     * Where a physical line stands.
     *
     * @param number its number, from 1
     * @param depth how deep
     * @param closes whether it closes a group
     * @param item what it belongs to
     * @param first whether it is the first line of its statement
     */
    record Place(int number, int depth, boolean closes, Item item, boolean first) {}

    /** {@return a place for each physical line with words on it} @param lines the lines of the file */
    List<Place> of(List<Line> lines) {
        lines.forEach(this::add);
        return places;
    }

    private void add(Line line) {
        Role role = kind.roleOf(line);
        boolean opens = role == Role.GROUP || role == Role.SECTION_GROUP || line.ends("one", "of") || line.ends("all", "of");
        int depth =
                switch (role) {
                    case SECTION, SECTION_GROUP -> section(line);
                    case CLAUSE_OF_SECTION -> clauseOfSection(line);
                    case CLAUSE -> underMust ? inner() : inner() + 1;
                    case MIDDLE -> open.isEmpty() ? section + 1 : open.peek();
                    case END -> open.isEmpty() ? section + 1 : open.pop();
                    case GROUP, PLAIN -> inner();
                };
        if (opens) {
            open.push(depth);
        }
        place(line, depth, role == Role.END || role == Role.MIDDLE);
    }

    private void place(Line line, int depth, boolean closes) {
        int number = 0;
        for (Lexeme lexeme : line.lexemes()) {
            if (lexeme.span().line() != number) {
                places.add(new Place(lexeme.span().line(), number == 0 ? depth : depth + 1, closes, inside, number == 0));
                number = lexeme.span().line();
            }
        }
    }

    private int inner() {
        return open.isEmpty() ? section + 1 : open.peek() + 1;
    }

    private int section(Line line) {
        open.clear();
        underMust = line.starts("must");
        if (line.starts("language") || kind.isHead(line)) {
            boolean holdsAll = line.starts("variant");
            inside = line.starts("network") ? Item.NETWORK : line.starts("procedure") ? Item.PROCEDURE : Item.OTHER;
            sections = holdsAll ? 1 : 0;
            // What stands below the head of a network or of equipment belongs to no section.
            section = inside == Item.NETWORK || kind == FileKind.EQUIPMENT ? -1 : 0;
            return 0;
        }
        if (line.starts("example") && kind == FileKind.EXAMPLES) {
            sections = 1;
            section = 0;
            return 0;
        }
        section = sections;
        return sections;
    }

    /** What excuses belongs to what is required. */
    private int clauseOfSection(Line line) {
        open.clear();
        return section + (line.starts("unless") ? 2 : 1);
    }
}
