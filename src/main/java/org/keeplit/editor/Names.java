package org.keeplit.editor;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.keeplit.language.Sketch;
import org.keeplit.language.Sketch.Row;
import org.keeplit.language.Sketch.Sort;
import org.keeplit.language.Sketch.Token;

/** Finds what is named where in some files, by how their lines look, so that it works on broken text, too. */
final class Names {
    private final Map<String, List<Name>> byFile = new LinkedHashMap<>();
    /** For each variant the procedure that it is a variant of. */
    private final Map<String, String> bases = new HashMap<>();
    /** For each network its elements. */
    private final Map<String, Set<String>> elements = new HashMap<>();
    /** For each procedure its people, labels and networks. */
    private final Map<String, Set<String>> people = new HashMap<>();
    private final Map<String, Set<String>> networks = new HashMap<>();
    private final Set<String> rulebooks = new LinkedHashSet<>();

    /** Looks at files. @param files the files; where a name counts in several, all should be there */
    Names(Iterable<Sketch> files) {
        files.forEach(this::declare);
        files.forEach(file -> byFile.put(file.source().name(), new Reading(file).names()));
    }

    /** {@return the names in a file, in the order of the text} */
    List<Name> in(String file) {
        return byFile.getOrDefault(file, List.of());
    }

    /** {@return the name at a place} @param line the line, from 1 @param column the column, from 1 */
    Optional<Name> at(String file, int line, int column) {
        return in(file).stream()
                .filter(n -> n.span().line() == line && n.span().column() <= column && column <= n.span().column() + n.span().length())
                .findFirst();
    }

    /** {@return all names} */
    Stream<Name> all() {
        return byFile.values().stream().flatMap(List::stream);
    }

    /** {@return every place where the same is named} */
    List<Name> same(Name name) {
        return byFile.values().stream().flatMap(List::stream).filter(name::isSame).toList();
    }

    /** {@return the procedure behind a variant; itself, if it is none} */
    String root(String procedure) {
        String at = procedure;
        for (int i = 0; i < 20 && bases.containsKey(at); i++) {
            at = bases.get(at);
        }
        return at;
    }

    /** {@return the networks that a procedure or a block of examples speaks of} */
    Set<String> networksOf(String procedure) {
        return networks.getOrDefault(root(procedure), Set.of());
    }

    Set<String> peopleOf(String procedure) {
        return people.getOrDefault(root(procedure), Set.of());
    }

    private static void put(Map<String, Set<String>> into, String key, String value) {
        into.computeIfAbsent(key, k -> new LinkedHashSet<>()).add(value);
    }

    private void declare(Sketch file) {
        String examples = "";
        for (Row row : file.rows()) {
            List<Token> words = row.tokens();
            if (row.starts("examples") && words.size() > 1) {
                examples = words.get(1).name();
            } else if (row.starts("rulebook") && words.size() > 1) {
                rulebooks.add(words.get(1).name());
            } else if (row.starts("variant") && words.size() > 3) {
                bases.put(words.get(1).name(), words.get(words.size() - 1).name());
            } else if (row.item().equals("network") && isElement(row)) {
                put(elements, row.itemName(), words.get(1).name());
            } else if (row.section().equals("crew") && isPerson(row)) {
                put(people, owner(row, examples), words.get(0).name());
            } else if (row.starts("proved", "on") && words.size() > 2) {
                put(networks, row.itemName(), words.get(2).name());
            } else if (row.starts("on") && row.section().equals("on") && words.size() > 1) {
                put(networks, owner(row, examples), words.get(words.size() - 1).name());
            }
        }
    }

    /** Of examples all names count in the whole block. */
    private static String owner(Row row, String examples) {
        return row.item().startsWith("example") ? "examples " + examples : row.itemName();
    }

    private static boolean isElement(Row row) {
        return row.tokens().size() > 3 && (row.tokens().get(2).text().equals("from") || row.tokens().get(2).text().equals("at"));
    }

    private static boolean isPerson(Row row) {
        return row.tokens().size() > 1 && row.tokens().get(1).sort() == Sort.TEXT && row.tokens().get(0).sort() == Sort.WORD;
    }

    /** The names of one file while they are found. */
    private final class Reading {
        private final Sketch file;
        private final List<Name> found = new ArrayList<>();
        private final Set<String> known = new LinkedHashSet<>();
        private String rule = "";
        private String examples = "";

        Reading(Sketch file) {
            this.file = file;
        }

        List<Name> names() {
            file.rows().forEach(this::row);
            return found;
        }

        private void add(Name.Sort sort, String scope, Token token, boolean declares) {
            found.add(new Name(sort, scope, token.name(), token.span(), declares));
        }

        private void row(Row row) {
            List<Token> words = row.tokens();
            if (head(row) || words.size() < 2) {
                return;
            }
            switch (row.item()) {
                case "network" -> network(row);
                case "equipment" -> declared(row, Map.of("kind", Name.Sort.KIND, "conductor", Name.Sort.CONDUCTOR, "spacing", Name.Sort.SPACING));
                case "rulebook" -> rules(row);
                default -> procedure(row);
            }
        }

        private void declared(Row row, Map<String, Name.Sort> sorts) {
            Name.Sort sort = sorts.get(row.tokens().get(0).text());
            if (sort != null) {
                add(sort, "", row.tokens().get(1), true);
            }
        }

        private boolean head(Row row) {
            List<Token> words = row.tokens();
            Name.Sort sort = switch (words.get(0).text()) {
                case "network" -> Name.Sort.NETWORK;
                case "equipment" -> Name.Sort.EQUIPMENT;
                case "rulebook" -> Name.Sort.RULEBOOK;
                case "procedure", "variant" -> Name.Sort.PROCEDURE;
                default -> null;
            };
            if (row.starts("examples") && words.size() > 1) {
                examples = words.get(1).name();
                words.stream().skip(2).filter(w -> rulebooks.contains(w.name())).forEach(w -> add(Name.Sort.RULEBOOK, "", w, false));
                return true;
            } else if (row.starts("example")) {
                words.stream().skip(2).filter(w -> w.sort() == Sort.WORD).forEach(w -> add(Name.Sort.RULE, "", w, false));
                return true;
            } else if (row.depth() != 0 || sort == null || words.size() < 2) {
                return false;
            }
            add(sort, "", words.get(1), true);
            if (row.starts("variant") && words.size() > 3) {
                add(Name.Sort.PROCEDURE, "", words.get(words.size() - 1), false);
            }
            return true;
        }

        private void network(Row row) {
            List<Token> words = row.tokens();
            if (row.starts("uses")) {
                words.stream().skip(1).filter(w -> w.sort() == Sort.WORD).forEach(w -> add(Name.Sort.EQUIPMENT, "", w, false));
            } else if (isElement(row)) {
                add(Name.Sort.KIND, "", words.get(0), false);
                add(Name.Sort.ELEMENT, row.itemName(), words.get(1), true);
                node(row, 3);
                if (words.size() > 5 && words.get(4).text().equals("to")) {
                    node(row, 5);
                }
                for (int i = 5; i < words.size(); i++) {
                    if (words.get(i - 1).text().equals("conductor")) {
                        add(Name.Sort.CONDUCTOR, "", words.get(i), false);
                    } else if (words.get(i - 1).text().equals("spacing")) {
                        add(Name.Sort.SPACING, "", words.get(i), false);
                    }
                }
            }
        }

        private void node(Row row, int at) {
            add(Name.Sort.NODE, row.itemName(), row.tokens().get(at), known.add(row.itemName() + " " + row.tokens().get(at).name()));
        }

        private void rules(Row row) {
            List<Token> words = row.tokens();
            if (row.starts("rule") || row.starts("override", "rule")) {
                Token name = words.get(Math.min(row.starts("rule") ? 1 : 2, words.size() - 1));
                rule = row.itemName() + "/" + name.name();
                add(Name.Sort.RULE, "", name, row.starts("rule"));
            } else if (row.starts("event")) {
                rule = row.itemName() + "/event " + words.get(1).name();
                add(Name.Sort.EVENT, "", words.get(1), true);
            } else if (row.starts("even", "if")) {
                words.stream().skip(2).filter(w -> w.sort() == Sort.WORD || w.sort() == Sort.TEXT).forEach(w -> add(Name.Sort.EVENT, "", w, false));
            } else if (row.starts("extends")) {
                words.stream().filter(w -> rulebooks.contains(w.name())).forEach(w -> add(Name.Sort.RULEBOOK, "", w, false));
            } else {
                variables(row, row.starts("define") ? "define " + row.number() : "rule " + rule);
            }
        }

        /** A variable is declared where it is first named. */
        private void variables(Row row, String scope) {
            for (Token word : row.tokens()) {
                if (word.sort() == Sort.VARIABLE) {
                    add(Name.Sort.VARIABLE, scope, word, known.add(scope + " " + word.name()));
                }
            }
        }

        private void procedure(Row row) {
            List<Token> words = row.tokens();
            String owner = owner(row, examples);
            String root = root(owner);
            boolean crew = row.section().equals("crew") && isPerson(row);
            for (int i = 0; i < words.size(); i++) {
                Token word = words.get(i);
                String before = i == 0 ? "" : words.get(i - 1).text();
                if (crew && i == 0) {
                    add(Name.Sort.PERSON, root, word, root.equals(owner));
                } else if (i == 0 && words.get(1).text().equals(":")) {
                    add(Name.Sort.LABEL, root, word, true);
                } else if (before.equals("step") || row.starts("must") && before.equals("at")) {
                    add(Name.Sort.LABEL, root, word, false);
                } else if (row.starts("must", "fail", "on") && i == 3) {
                    add(Name.Sort.RULE, "", word, false);
                } else if (row.starts("proved", "on") && i == 2 || row.section().equals("on") && row.starts("on") && i == words.size() - 1) {
                    add(Name.Sort.NETWORK, "", word, false);
                } else if (row.starts("keeps") && rulebooks.contains(word.name())) {
                    add(Name.Sort.RULEBOOK, "", word, false);
                } else if (before.equals("call")) {
                    add(Name.Sort.PROCEDURE, "", word, false);
                } else if (word.sort() == Sort.VARIABLE) {
                    add(Name.Sort.VARIABLE, root, word, known.add(root + " " + word.name()));
                } else if (word.sort() == Sort.WORD) {
                    free(root, word);
                }
            }
        }

        private void free(String root, Token word) {
            if (people.getOrDefault(root, Set.of()).contains(word.name())) {
                add(Name.Sort.PERSON, root, word, false);
                return;
            }
            networks.getOrDefault(root, Set.of()).stream()
                    .filter(n -> elements.getOrDefault(n, Set.of()).contains(word.name()))
                    .findFirst()
                    .ifPresent(n -> add(Name.Sort.ELEMENT, n, word, false));
        }
    }
}
