package org.keeplit.card.picture;

import com.google.common.xml.XmlEscapers;
import java.util.Locale;

/** Writes a drawing as SVG that stands inside a page or alone. All text is escaped. */
final class Svg {
    private final StringBuilder body = new StringBuilder();

    /** Where a text stands at its point. */
    enum Anchor {
        START,
        MIDDLE,
        END
    }

    void line(double x1, double y1, double x2, double y2, Look look) {
        String dashes = look.dashes().isEmpty() ? "" : " stroke-dasharray=\"" + look.dashes() + "\"";
        body.append(String.format(
                Locale.ROOT,
                "<line x1=\"%s\" y1=\"%s\" x2=\"%s\" y2=\"%s\" stroke=\"%s\" stroke-width=\"2\"%s/>",
                n(x1), n(y1), n(x2), n(y2), look.colour(), dashes));
    }

    void path(String data, double width) {
        body.append("<path d=\"").append(data).append("\" fill=\"none\" stroke=\"#000000\" stroke-width=\"")
                .append(n(width)).append("\"/>");
    }

    /** A path of a conductor. */
    void path(String data, Look look) {
        String dashes = look.dashes().isEmpty() ? "" : " stroke-dasharray=\"" + look.dashes() + "\"";
        body.append("<path d=\"").append(data).append("\" fill=\"none\" stroke=\"").append(look.colour())
                .append("\" stroke-width=\"2\"").append(dashes).append("/>");
    }

    void circle(double x, double y, double r, boolean filled) {
        body.append("<circle cx=\"").append(n(x)).append("\" cy=\"").append(n(y)).append("\" r=\"").append(n(r))
                .append("\" fill=\"").append(filled ? "#000000" : "#ffffff")
                .append("\" stroke=\"#000000\" stroke-width=\"1.4\"/>");
    }

    void box(double x, double y, double width, double height, double stroke) {
        body.append("<rect x=\"").append(n(x)).append("\" y=\"").append(n(y)).append("\" width=\"").append(n(width))
                .append("\" height=\"").append(n(height))
                .append("\" fill=\"none\" stroke=\"#000000\" stroke-width=\"").append(n(stroke)).append("\"/>");
    }

    void text(double x, double y, Anchor anchor, boolean bold, String text) {
        body.append("<text x=\"").append(n(x)).append("\" y=\"").append(n(y)).append("\" text-anchor=\"")
                .append(anchor.name().toLowerCase(Locale.ROOT)).append('"')
                .append(bold ? " font-weight=\"bold\">" : ">")
                .append(escaped(text)).append("</text>");
    }

    /** {@return the whole drawing} @param title what it shows, for who cannot see it */
    String whole(double width, double height, String title) {
        return "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" viewBox=\"0 0 " + n(width) + " " + n(height)
                + "\" font-family=\"DejaVu Sans, sans-serif\" font-size=\"11\" fill=\"#000000\"><title>" + escaped(title) + "</title>"
                + body + "</svg>";
    }

    private static String escaped(String text) {
        return XmlEscapers.xmlAttributeEscaper().escape(text);
    }

    /** {@return a coordinate with at most one decimal} */
    static String n(double number) {
        return number == Math.rint(number)
                ? String.valueOf((long) number)
                : String.format(Locale.ROOT, "%.1f", number);
    }
}
