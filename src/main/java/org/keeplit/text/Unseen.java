package org.keeplit.text;

import java.util.Locale;

/** Characters that nobody sees, or that change what is seen of others: what a terminal obeys, zero width, the direction of writing. */
public final class Unseen {
    private Unseen() {}

    /**
     * {@return whether a character is one of these; a tab is none}
     *
     * @param c a code point
     */
    public static boolean is(int c) {
        return c != '\t' && Character.isISOControl(c)
                || Character.getType(c) == Character.FORMAT
                || c == 0x2028
                || c == 0x2029
                || c == 0x3164
                || c == 0xFFA0
                || c == 0x115F
                || c == 0x1160;
    }

    /**
     * {@return what a character is, for people}
     *
     * @param c one of these
     */
    public static String words(int c) {
        String name = Character.getName(c);
        return String.format(Locale.ROOT, "U+%04X", c) + (name == null ? "" : ", " + name.toLowerCase(Locale.ROOT));
    }

    /**
     * {@return a text in which each of these is written out, such as \\u001b; line ends stay}
     *
     * @param text the text
     */
    public static String shown(String text) {
        if (text.codePoints().noneMatch(c -> c != '\n' && c != '\r' && is(c))) {
            return text;
        }
        StringBuilder shown = new StringBuilder(text.length() + 8);
        for (int i = 0; i < text.length(); ) {
            int c = text.codePointAt(i);
            boolean ends = c == '\n' || c == '\r' && i + 1 < text.length() && text.charAt(i + 1) == '\n';
            if (!ends && is(c)) {
                for (char unit : Character.toChars(c)) {
                    shown.append(String.format(Locale.ROOT, "\\u%04x", (int) unit));
                }
            } else {
                shown.appendCodePoint(c);
            }
            i += Character.charCount(c);
        }
        return shown.toString();
    }
}
