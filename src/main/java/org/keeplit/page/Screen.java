package org.keeplit.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;

/** Pages for a screen that stand alone: their style and script are inside, and they may fetch nothing. */
public final class Screen {
    /** What a browser may load for such a page: nothing from anywhere. */
    private static final String POLICY = "default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

    private Screen() {}

    /**
     * A page.
     *
     * @param title its title
     * @param style what its style adds to that of all such pages
     * @param body what is in it, well-formed
     * @param script what makes it move; empty for a page that stands still
     * @return the page, HTML and well-formed XML at once
     */
    public static String page(String title, String style, String body, String script) {
        String moving = script.isEmpty() ? "" : "<script>/*<![CDATA[*/\n" + script + "/*]]>*/</script>\n";
        return "<!DOCTYPE html>\n<html lang=\"en\" xmlns=\"http://www.w3.org/1999/xhtml\"><head><meta charset=\"utf-8\"/>"
                + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>"
                + "<meta http-equiv=\"Content-Security-Policy\" content=\"" + POLICY + "\"/><title>" + Html.text(title)
                + "</title><style>\n" + resource(Screen.class, "screen.css") + style + "</style></head><body>\n" + body + moving
                + "</body></html>\n";
    }

    /** {@return a text that lies beside a class} @param beside the class @param name the file's name */
    public static String resource(Class<?> beside, String name) {
        // Opened here, and by no library: to other modules what lies in this one is closed.
        try (InputStream in = Objects.requireNonNull(beside.getResourceAsStream(name), name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
