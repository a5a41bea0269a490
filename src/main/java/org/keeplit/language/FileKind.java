package org.keeplit.language;

import com.google.common.collect.ImmutableSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.keeplit.text.Problem;
import org.keeplit.text.Span;

/** The five kinds of file, each with its extension, its first words, and what its lines do. */
enum FileKind {
    NETWORK("network", "network NAME \"Title\"", "network") {
        @Override
        Role role(Line line) {
            return Role.PLAIN;
        }
    },
    EQUIPMENT("equipment", "equipment NAME \"Title\"", "equipment") {
        @Override
        Role role(Line line) {
            boolean section = line.starts("kind") || line.starts("conductor") || line.starts("spacing");
            return section ? Role.SECTION : Role.PLAIN;
        }
    },
    RULES("rules", "rulebook NAME revision 1", "rulebook") {
        @Override
        Role role(Line line) {
            if (!line.head().isText() && RULE_SECTIONS.contains(line.head().getText())) {
                return Role.SECTION;
            }
            boolean counts = line.starts("at", "least") || line.starts("at", "most");
            return !counts && RULE_CLAUSES.contains(line.head().getText()) ? Role.CLAUSE_OF_SECTION : Role.PLAIN;
        }
    },
    PROCEDURE("procedure", "procedure NAME revision 1", "procedure", "variant", "network") {
        @Override
        Role role(Line line) {
            String head = line.head().getText();
            if (line.starts("insert") || line.starts("step") && line.last().is("instead")) {
                return Role.SECTION_GROUP;
            }
            if (line.starts("for", "each") || line.starts("in", "order") || line.starts("in", "any", "order")) {
                return Role.GROUP;
            }
            if (line.starts("for") && !isMisspeltForEach(line)) {
                return isCondition(line) ? Role.PLAIN : Role.SECTION;
            }
            if (isLimit(line)) {
                return Role.CLAUSE;
            }
            if (line.starts("as", "one") || line.starts("read", "back") || line.starts("phases", "in", "order")) {
                return Role.CLAUSE;
            }
            if (GROUPS.contains(head) || isMisspeltGroup(line)) {
                return Role.GROUP;
            }
            if (STEP_CLAUSES.contains(head)) {
                return Role.CLAUSE;
            }
            return SECTIONS.contains(head) ? Role.SECTION : Role.PLAIN;
        }
    },
    EXAMPLES("examples", "examples NAME for RULEBOOK", "examples", "network") {
        @Override
        Role role(Line line) {
            boolean alone = line.starts("do") && line.lexemes().size() == 1;
            if (alone || line.starts("example") || line.starts("on")) {
                return Role.SECTION;
            }
            // The reason below "must fail" is a condition, which may begin with a text; the one below a step is a text alone.
            boolean isText = line.lexemes().size() == 2 && line.lexemes().get(1).isText();
            boolean reason = line.starts("because") && line.lexemes().size() > 1 && !isText;
            return reason ? Role.PLAIN : PROCEDURE.role(line);
        }
    };

    /** What names of files end in, for advice. */
    static final String ENDINGS = "files to read end in .network, .equipment, .rules, .procedure or .examples";

    private static final ImmutableSet<String> RULE_CLAUSES = ImmutableSet.of(
            "always",
            "never",
            "while",
            "before",
            "after",
            "between",
            "at",
            "require",
            "unless",
            "even",
            "when",
            "then",
            "any",
            "severity",
            "applies",
            "says",
            "because",
            "citation");
    private static final ImmutableSet<String> RULE_SECTIONS =
            ImmutableSet.of("rule", "title", "extends", "parameter", "define", "event", "override");
    private static final ImmutableSet<String> SECTIONS = ImmutableSet.of(
            "title",
            "keeps",
            "crew",
            "temporary",
            "hold",
            "clearance",
            "proved",
            "planned",
            "starts",
            "ends",
            "stage",
            "without",
            "step",
            "must");
    private static final ImmutableSet<String> GROUPS = ImmutableSet.of("together", "repeat", "if");
    private static final ImmutableSet<String> STEP_CLAUSES =
            ImmutableSet.of("requires", "expects", "records", "caution", "because");

    private final String extension;
    private final String opening;
    private final ImmutableSet<String> heads;

    FileKind(String extension, String opening, String... heads) {
        this.extension = extension;
        this.opening = opening;
        this.heads = ImmutableSet.copyOf(heads);
    }

    /** A single word that is nearly “together”, or words about an order: otherwise its “end” would be told too. */
    private static boolean isMisspeltGroup(Line line) {
        boolean together = line.lexemes().size() == 1
                && Suggestions.nearest(line.head().getText(), List.of("together"))
                        .isPresent();
        return together || line.starts("in") && line.last().is("order") || isMisspeltForEach(line);
    }

    /** {@code for every phase P of R}: with a comma it would be a condition, without one a group is meant. */
    private static boolean isMisspeltForEach(Line line) {
        boolean phase = line.lexemes().size() > 2
                && (line.lexemes().get(2).is("phase") || line.lexemes().get(2).is("phases"));
        return line.starts("for") && phase && line.lexemes().stream().noneMatch(l -> l.is(","));
    }

    /** The clause {@code limit at most 20 A}, and no person or label of that name. */
    private static boolean isLimit(Line line) {
        boolean named = line.lexemes().size() > 1
                && (line.lexemes().get(1).isText() || line.lexemes().get(1).is(":"));
        return line.starts("limit") && !named;
    }

    private static boolean isCondition(Line line) {
        return line.starts("for", "every") || line.starts("for", "some") || line.starts("for", "no");
    }

    /** {@return what a line does, besides the lines that mean the same in every file} */
    abstract Role role(Line line);

    /** {@return what a line does} */
    Role roleOf(Line line) {
        if (line.lexemes().size() == 1 && line.starts("end")) {
            return Role.END;
        }
        if (line.lexemes().size() == 1 && line.starts("otherwise")) {
            return Role.MIDDLE;
        }
        if (isHead(line) || line.starts("language")) {
            return Role.SECTION;
        }
        return role(line);
    }

    /** {@return whether a line starts a network, a rulebook and so on} */
    boolean isHead(Line line) {
        return !line.head().isText() && heads.contains(line.head().getText());
    }

    /** {@return what a line starts: a network may stand in the file of the procedures or examples that are on it} */
    FileKind kindOf(Line head) {
        return head.starts("network") ? NETWORK : this;
    }

    /** {@return the words that start a network, a rulebook and so on in such a file} */
    ImmutableSet<String> heads() {
        return heads;
    }

    String extension() {
        return extension;
    }

    /** {@return how the first line after the language's version reads} */
    String opening() {
        return opening;
    }

    /** {@return what one of them is called in a sentence} */
    String word() {
        return this == RULES ? "rulebook" : extension;
    }

    /** {@return the problem that the name of a file ends like that of no kind} */
    static Problem unknown(Span file) {
        return Code.UNKNOWN_FILE_KIND.at(file, "the name of this file does not say what it is").help(ENDINGS);
    }

    /** {@return whether a name that is none of ours would be one in small letters and without spaces or one more ending} */
    static boolean isNearly(String fileName) {
        String name = fileName.strip().toLowerCase(Locale.ROOT);
        return of(fileName).isEmpty() && of(name).isPresent();
    }

    /** {@return the kind of a file by its name} */
    static Optional<FileKind> of(String fileName) {
        for (FileKind kind : values()) {
            if (fileName.endsWith("." + kind.extension)) {
                return Optional.of(kind);
            }
        }
        return Optional.empty();
    }
}
