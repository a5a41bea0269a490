package org.keeplit.card;

import com.google.common.html.HtmlEscapers;
import java.util.List;

/** Pieces of a page that are at once HTML and well-formed XML. Every text is escaped here and nowhere else. */
final class Html {
    private Html() {}

    static String text(String text) {
        return HtmlEscapers.htmlEscaper().escape(text);
    }

    static String tag(String name, String style, String inner) {
        return "<" + name + (style.isEmpty() ? "" : " class=\"" + style + "\"") + ">" + inner + "</" + name + ">";
    }

    /** A list of texts. */
    static String list(List<String> items) {
        StringBuilder all = new StringBuilder("<ul>");
        items.forEach(item -> all.append("<li>").append(text(item)).append("</li>"));
        return all.append("</ul>").toString();
    }
}
