package org.keeplit.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.keeplit.explore.Proving;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.page.Pages;
import org.keeplit.procedure.Instance;
import org.keeplit.procedure.Procedure;
import org.keeplit.text.Problems;
import org.w3c.dom.Element;

/** The geometry of the pictures of every shipped procedure that must hold, at every place where it is proved. */
class PicturesTest {
    private static final Map<String, Set<String>> PICTURES = new LinkedHashMap<>();
    private static final FontRenderContext CONTEXT = new FontRenderContext(null, true, true);
    private static Font plain;
    private static Font bold;

    @BeforeAll
    static void drawn() throws Exception {
        plain = font("DejaVuSans.ttf");
        bold = font("DejaVuSans-Bold.ttf");
        Library library = new Reader().read(List.of(Path.of("procedures")));
        assertEquals(List.of(), library.problems());
        for (Procedure procedure : library.givenProcedures()) {
            if (procedure.mustFail().isEmpty()) {
                for (Instance one : Instance.of(procedure, library.networks())) {
                    Proving.using(one.procedure(), one.network(), one.proof(), new Problems(), CardMaker::pictures)
                            .ifPresent(all -> PICTURES.computeIfAbsent(one.words(), n -> new LinkedHashSet<>()).addAll(all));
                }
            }
        }
        assertTrue(PICTURES.size() > 25, PICTURES.keySet().toString());
    }

    private static Font font(String file) throws Exception {
        return Font.createFont(Font.TRUETYPE_FONT, Path.of("src/main/resources/org/keeplit/page/fonts", file).toFile()).deriveFont(11f);
    }

    /** Every text of every picture lies within it, and no two lie over one another, as the font that is in the PDF measures them. */
    @Test
    void noLabelLeavesItsPictureOrLiesOverAnother() {
        List<String> wrong = new ArrayList<>();
        int labels = 0;
        for (var of : PICTURES.entrySet()) {
            for (String svg : of.getValue()) {
                labels += labels(of.getKey(), svg, wrong);
            }
        }
        assertEquals(List.of(), wrong.stream().distinct().toList());
        assertTrue(labels > 5000, labels + " labels");
    }

    private static int labels(String of, String svg, List<String> wrong) {
        Element picture = Pages.parsed(svg).getDocumentElement();
        String title = of + ", " + picture.getElementsByTagName("title").item(0).getTextContent() + ": ";
        String[] box = picture.getAttribute("viewBox").split(" ");
        Map<Rectangle2D, String> boxes = new LinkedHashMap<>();
        var texts = picture.getElementsByTagName("text");
        for (int i = 0; i < texts.getLength(); i++) {
            Element text = (Element) texts.item(i);
            String words = text.getTextContent();
            double width = (text.hasAttribute("font-weight") ? bold : plain).getStringBounds(words, CONTEXT).getWidth();
            double x = Double.parseDouble(text.getAttribute("x"));
            double left = switch (text.getAttribute("text-anchor")) {
                case "start" -> x;
                case "middle" -> x - width / 2;
                default -> x - width;
            };
            // From the top of a small letter to its foot: what stands over or under the line may touch another's.
            Rectangle2D here = new Rectangle2D.Double(left, Double.parseDouble(text.getAttribute("y")) - 7, width, 8);
            if (here.getMinX() < -0.5 || here.getMaxX() > Double.parseDouble(box[2]) + 0.5 || here.getMinY() < 0
                    || here.getMaxY() > Double.parseDouble(box[3])) {
                wrong.add(title + "\u201C" + words + "\u201D leaves it");
            }
            boxes.forEach((other, its) -> {
                if (here.intersects(other)) {
                    wrong.add(title + "\u201C" + words + "\u201D lies over \u201C" + its + "\u201D");
                }
            });
            boxes.put(here, words);
        }
        return texts.getLength();
    }

    /** Nothing that is drawn leaves its picture: lines, boxes and circles by their coordinates. */
    @Test
    void nothingDrawnIsClipped() {
        List<String> wrong = new ArrayList<>();
        PICTURES.forEach((of, all) -> all.forEach(svg -> {
            Element picture = Pages.parsed(svg).getDocumentElement();
            String[] box = picture.getAttribute("viewBox").split(" ");
            Rectangle2D whole = new Rectangle2D.Double(0, 0, Double.parseDouble(box[2]), Double.parseDouble(box[3]));
            var shapes = picture.getElementsByTagName("*");
            for (int i = 0; i < shapes.getLength(); i++) {
                Element shape = (Element) shapes.item(i);
                Rectangle2D extent = switch (shape.getTagName()) {
                    case "line" -> extent(shape, "x1", "y1", "x2", "y2");
                    case "rect" -> new Rectangle2D.Double(number(shape, "x"), number(shape, "y"), number(shape, "width"), number(shape, "height"));
                    case "circle" -> new Rectangle2D.Double(number(shape, "cx") - number(shape, "r"), number(shape, "cy") - number(shape, "r"),
                            2 * number(shape, "r"), 2 * number(shape, "r"));
                    default -> null;
                };
                if (extent != null && (extent.getMinX() < 0 || extent.getMinY() < 0 || extent.getMaxX() > whole.getMaxX()
                        || extent.getMaxY() > whole.getMaxY())) {
                    wrong.add(of + ": " + shape.getTagName() + " " + extent + " leaves " + whole);
                }
            }
        }));
        assertEquals(List.of(), wrong.stream().distinct().toList());
    }

    private static Rectangle2D extent(Element shape, String x1, String y1, String x2, String y2) {
        Rectangle2D all = new Rectangle2D.Double(number(shape, x1), number(shape, y1), 0, 0);
        all.add(number(shape, x2), number(shape, y2));
        return all;
    }

    private static double number(Element shape, String attribute) {
        return Double.parseDouble(shape.getAttribute(attribute));
    }

    /** The work site shows what hangs there, by word and by the symbol of its sort. */
    @Test
    void theWorkSiteShowsWhatHangsThere() {
        String all = PICTURES.values().stream().flatMap(Set::stream).filter(svg -> svg.contains("<title>The work site at the start"))
                .collect(Collectors.joining());
        for (String word : List.of(", capacitor bank: ", ", load: ", ", transformer: ")) {
            assertTrue(all.contains(word), word);
        }
    }
}
