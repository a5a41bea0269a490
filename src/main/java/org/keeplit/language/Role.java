package org.keeplit.language;

/** What a line does to the outline of a file. */
enum Role {
    /** Starts a section of its own; whatever is open should have been closed. */
    SECTION,
    /** Starts a section that needs an {@code end}. */
    SECTION_GROUP,
    /** A clause of the section, closing whatever is open inside it. */
    CLAUSE_OF_SECTION,
    /** A clause of the statement above it. */
    CLAUSE,
    /** Starts a group that needs an {@code end}. */
    GROUP,
    /** Parts a group in two. */
    MIDDLE,
    /** Closes a group. */
    END,
    /** A statement. */
    PLAIN
}
