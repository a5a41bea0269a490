package org.keeplit.gridfile;

import java.util.HashSet;
import java.util.Locale;
import java.util.Set;
import org.keeplit.language.FreeNames;

/**
 * Names of a network text from those of a grid file, the same way each time: small letters, hyphens for what no name can have;
 * what is no name then, or stands for something else already, has its sort before it, and a number behind it if that is taken, too.
 */
final class Names {
    private final Set<String> used = new HashSet<>();

    /** {@return a name that nothing else has} @param wanted the name in the file @param sort such as {@code line} */
    String of(String wanted, String sort) {
        String plain = plain(wanted);
        if (isFree(plain)) {
            return take(plain);
        }
        String longer = plain.isEmpty() ? sort : sort + "-" + plain;
        String name = longer;
        for (int i = 2; !isFree(name); i++) {
            name = longer + "-" + i;
        }
        return take(name);
    }

    private boolean isFree(String name) {
        return !name.isEmpty() && Character.isLetter(name.charAt(0)) && !used.contains(name) && FreeNames.mistake(name).isEmpty();
    }

    private String take(String name) {
        used.add(name);
        return name;
    }

    /** {@return a name with only what names can have} */
    static String plain(String wanted) {
        return wanted.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9_-]+", "-").replaceAll("^[-_]+|[-_]+$", "");
    }
}
