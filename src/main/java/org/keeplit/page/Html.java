package org.keeplit.page;

import com.google.common.html.HtmlEscapers;
import java.util.List;

/** Pieces of a page that are at once HTML and well-formed XML. Every text is escaped here and nowhere else. */
public final class Html {
    private Html() {}

    public static String text(String text) {
        return HtmlEscapers.htmlEscaper().escape(text);
    }

    public static String tag(String name, String style, String inner) {
        return "<" + name + (style.isEmpty() ? "" : " class=\"" + style + "\"") + ">" + inner + "</" + name + ">";
    }

    /** A list of texts. */
    public static String list(List<String> items) {
        StringBuilder all = new StringBuilder("<ul>");
        items.forEach(item -> all.append("<li>").append(text(item)).append("</li>"));
        return all.append("</ul>").toString();
    }
}
