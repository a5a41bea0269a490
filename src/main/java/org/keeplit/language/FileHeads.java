package org.keeplit.language;

import java.util.HashSet;
import java.util.Set;
import org.keeplit.text.Source;

/** Tells what a file declares by the first two words of its lines, without reading the rest: a large network need not be read for it. */
final class FileHeads {
    private FileHeads() {}

    /** {@return the names of what a file declares of a kind} */
    static Set<String> names(FileKind kind, Source source) {
        Set<String> names = new HashSet<>();
        source.content().lines().map(String::strip).forEach(line -> {
            for (String head : kind.heads()) {
                boolean own = kind == FileKind.NETWORK || !head.equals("network");
                if (own && line.startsWith(head) && line.length() > head.length()) {
                    name(line.substring(head.length()), names);
                }
            }
        });
        return names;
    }

    private static void name(String rest, Set<String> into) {
        String name = rest.strip();
        if (!Character.isWhitespace(rest.charAt(0)) && rest.charAt(0) != '"' || name.isEmpty()) {
            return;
        }
        boolean quoted = name.charAt(0) == '"';
        int end = quoted ? name.indexOf('"', 1) : 0;
        while (!quoted && end < name.length() && !Character.isWhitespace(name.charAt(end)) && name.charAt(end) != '"' && name.charAt(end) != '#') {
            end++;
        }
        if (end > 0) {
            into.add(name.substring(quoted ? 1 : 0, end));
        }
    }
}
