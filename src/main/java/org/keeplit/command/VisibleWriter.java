package org.keeplit.command;

import java.io.FilterWriter;
import java.io.IOException;
import java.io.Writer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.keeplit.text.Unseen;

/** Writes characters that nobody sees, and those that a terminal obeys, in a form that is seen; colors as this program sets them stay. */
final class VisibleWriter extends FilterWriter {
    private static final Pattern COLOR = Pattern.compile("\u001b\\[[0-9;]{1,8}m");

    VisibleWriter(Writer out) {
        super(out);
    }

    @Override
    public void write(int c) throws IOException {
        write(String.valueOf((char) c));
    }

    @Override
    public void write(char[] text, int from, int length) throws IOException {
        write(new String(text, from, length));
    }

    @Override
    public void write(String text, int from, int length) throws IOException {
        write(text.substring(from, from + length));
    }

    @Override
    public void write(String text) throws IOException {
        StringBuilder shown = new StringBuilder(text.length());
        Matcher color = COLOR.matcher(text);
        int at = 0;
        while (color.find()) {
            shown.append(Unseen.shown(text.substring(at, color.start()))).append(color.group());
            at = color.end();
        }
        out.write(at == 0 ? Unseen.shown(text) : shown.append(Unseen.shown(text.substring(at))).toString());
    }
}
