package org.keeplit.page;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.awt.image.BufferedImage;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.PDXObject;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.keeplit.card.CardPages;
import org.keeplit.card.CardSet;
import org.keeplit.card.Paper;
import org.keeplit.card.StepCard;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Watcher;
import org.keeplit.paper.Papers;
import org.keeplit.text.Problems;

/** PDF of cards, read back by other programs' eyes. */
class PdfTest {
    private static final LocalDate DATE = LocalDate.of(2026, 3, 2);

    private static final CardSet SET = Papers.cards(
                    SmallJob.of("""
                              bypass: op closes bridge
                                caution "Keep clear of the bridge: 0.3 mohm to 3 \u03a9."
                                records "amperes \u2713"
                              opening: op opens main on all phases
                                requires main is bypassed
                                because "The bridge carries the load."
                              up: hand goes aloft at main
                              hand comes down
                            """), Limits.USUAL, Watcher.NOBODY, new Problems()).get(0);

    private static final Map<String, byte[]> FILES = CardPages.files(SET, DATE, Paper.A5, told -> {});
    private static final byte[] A5 = FILES.get("crew.pdf");

    @Test
    void theTextComesOutAgainStepByStep(@TempDir Path folder) throws IOException, InterruptedException {
        Optional<Path> extractor = Stream.of(System.getenv("PATH").split(File.pathSeparator))
                .map(f -> Path.of(f, "pdftotext"))
                .filter(Files::isExecutable)
                .findFirst();
        assumeTrue(extractor.isPresent(), "there is no pdftotext on the path (poppler), so no text is taken out of a PDF with it");
        Path file = Files.write(folder.resolve("crew.pdf"), A5);
        Process process = new ProcessBuilder(extractor.get().toString(), "-enc", "UTF-8", file.toString(), "-").start();
        String text = plain(new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8));
        assertEquals(0, process.waitFor());
        compare(text);
    }

    /** The same with the library that wrote it, for machines without poppler. */
    @Test
    void theTextComesOutAgainWithPdfBox() throws IOException {
        try (PDDocument document = Loader.loadPDF(A5)) {
            compare(plain(new PDFTextStripper().getText(document)));
        }
    }

    private static String plain(String text) {
        return text.replaceAll("\\s+", " ");
    }

    private static void compare(String text) {
        int at = text.indexOf("What can hurt someone");
        assertTrue(at >= 0, text);
        for (StepCard step : SET.steps()) {
            int next = text.indexOf(step.number() + " " + step.name() + " Who: ", at);
            assertTrue(next > at, "step " + step.number() + " after " + at + " in " + text);
            at = next;
            for (List<String> told : List.of(step.what(), step.cautions(), step.records(), step.before(), step.changes())) {
                for (String one : told) {
                    int place = text.indexOf(plain(one), at);
                    assertTrue(place > 0, one + " in " + text.substring(at));
                }
            }
        }
        assertTrue(text.contains("0.3 mohm to 3 \u03a9.") && text.contains("amperes \u2713"), text);
    }

    @Test
    void everyFontIsInside() throws IOException {
        try (PDDocument document = Loader.loadPDF(A5)) {
            Map<String, PDFont> fonts = new HashMap<>();
            for (PDPage page : document.getPages()) {
                fonts(page.getResources(), fonts);
            }
            assertTrue(fonts.size() >= 2, fonts.keySet().toString());
            fonts.forEach((name, font) -> {
                assertTrue(font.isEmbedded(), name);
                assertTrue(name.contains("DejaVuSans"), name);
            });
        }
    }

    private static void fonts(PDResources resources, Map<String, PDFont> into) throws IOException {
        for (COSName name : resources.getFontNames()) {
            PDFont font = resources.getFont(name);
            into.put(font.getName(), font);
        }
        for (COSName name : resources.getXObjectNames()) {
            PDXObject object = resources.getXObject(name);
            if (object instanceof PDFormXObject form && form.getResources() != null) {
                fonts(form.getResources(), into);
            }
        }
    }

    /** ISO 216: A5 is 148 mm by 210 mm; half of a Letter sheet is 5.5 in by 8.5 in. A point is a 72nd of an inch. */
    @Test
    void aSheetIsAPageOfTheRightSize() throws IOException {
        for (Paper paper : Paper.values()) {
            Map<String, byte[]> files = paper == Paper.A5 ? FILES : CardPages.files(SET, DATE, paper, told -> {});
            int sheets = Pages.byClass(Pages.parsed(Pages.html(files).get("crew.html")), "section", "sheet").size();
            try (PDDocument document = Loader.loadPDF(files.get("crew.pdf"))) {
                assertEquals(sheets, document.getNumberOfPages());
                for (PDPage page : document.getPages()) {
                    assertEquals(paper == Paper.A5 ? 148 / 25.4 * 72 : 5.5 * 72, page.getMediaBox().getWidth(), 0.5);
                    assertEquals(paper == Paper.A5 ? 210 / 25.4 * 72 : 8.5 * 72, page.getMediaBox().getHeight(), 0.5);
                }
            }
        }
    }

    @Test
    void thePicturesAreInIt() throws IOException {
        String html = Pages.html(FILES).get("crew.html");
        long with = dark(A5);
        long without = dark(Pdf.of(html.replaceAll("(?s)<svg .*?</svg>", ""), DATE));
        // The one-line picture and the site are some hundred strokes; at 50 points an inch each is some ten dots.
        assertTrue(with > without + 1500, with + " and " + without);
    }

    /** {@return how many dots of all pages are dark at 50 dots an inch} */
    private static long dark(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDFRenderer renderer = new PDFRenderer(document);
            long all = 0;
            for (int page = 0; page < document.getNumberOfPages(); page++) {
                BufferedImage image = renderer.renderImageWithDPI(page, 50);
                for (int y = 0; y < image.getHeight(); y++) {
                    for (int x = 0; x < image.getWidth(); x++) {
                        all += (image.getRGB(x, y) >> 8 & 255) < 128 ? 1 : 0;
                    }
                }
            }
            return all;
        }
    }

    @Test
    void theSamePageGivesTheSameBytes() {
        assertArrayEquals(A5, Pdf.of(Pages.html(FILES).get("crew.html"), DATE));
    }
}
