package org.keeplit.page;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** Pages read back as a reader of XML finds them. */
public final class Pages {
    private Pages() {}

    /** {@return a page as a tree; a text that was not escaped, or a tag left open, does not come through} @param page the page */
    public static Document parsed(String page) {
        try {
            return DocumentBuilderFactory.newInstance().newDocumentBuilder()
                    .parse(new ByteArrayInputStream(page.getBytes(StandardCharsets.UTF_8)));
        } catch (Exception e) {
            throw new AssertionError(e);
        }
    }

    /** {@return the HTML among some files, by the files' names} @param files the files */
    public static Map<String, String> html(Map<String, byte[]> files) {
        Map<String, String> all = new LinkedHashMap<>();
        files.forEach((name, bytes) -> {
            if (name.endsWith(".html")) {
                all.put(name, new String(bytes, StandardCharsets.UTF_8));
            }
        });
        return all;
    }

    /** {@return the elements of one class} @param page the page @param tag their tag @param style their class */
    public static List<Element> byClass(Document page, String tag, String style) {
        List<Element> all = new ArrayList<>();
        var list = page.getElementsByTagName(tag);
        for (int i = 0; i < list.getLength(); i++) {
            Element one = (Element) list.item(i);
            if (one.getAttribute("class").equals(style)) {
                all.add(one);
            }
        }
        return all;
    }
}
