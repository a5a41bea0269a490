package org.keeplit.page;

import com.google.common.hash.Hashing;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import java.util.logging.Level;
import java.util.logging.Logger;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.w3c.dom.Document;
import org.xml.sax.SAXException;

/** Makes PDF of pages, with their pictures and with fonts inside. The same page and date give the same bytes. */
public final class Pdf {
    /** The one family of fonts, DejaVu Sans 2.37, whose licence lies beside it: it has the ohm, check marks and dashes. */
    private static final String FAMILY = "DejaVu Sans";

    /** Points in a millimetre. */
    private static final double POINTS = 72 / 25.4;

    /** Kept, so that what is set of it is not forgotten. */
    private static final Logger QUIET = Logger.getLogger("org.apache.pdfbox");

    static {
        System.setProperty("java.awt.headless", "true");
        // The library looks which fonts the system has, though none is used, and keeps a list: not in the user's home.
        if (System.getProperty("pdfbox.fontcache") == null) {
            System.setProperty("pdfbox.fontcache", System.getProperty("java.io.tmpdir"));
        }
        XRLog.setLoggingEnabled(false);
        QUIET.setLevel(Level.OFF);
    }

    private Pdf() {}

    /**
     * Makes a PDF.
     *
     * @param page a page, HTML and well-formed XML at once
     * @param date the date that stands in the file as that of its making
     * @return the PDF
     */
    public static byte[] of(String page, LocalDate date) {
        return printed(page, date).bytes();
    }

    /** A PDF. @param bytes the file @param pages how many pages it has */
    public record Printed(byte[] bytes, int pages) {}

    /** Like {@link #of}, with the number of pages. {@return it} @param page a page @param date the date of its making */
    public static Printed printed(String page, LocalDate date) {
        int pages;
        PdfRendererBuilder builder = builder(page);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        builder.toStream(out);
        try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
            renderer.layout();
            renderer.createPDFWithoutClosing();
            PDDocument document = renderer.getPdfDocument();
            Calendar made = new GregorianCalendar(TimeZone.getTimeZone("UTC"), Locale.ROOT);
            made.setTimeInMillis(date.atStartOfDay().toInstant(ZoneOffset.UTC).toEpochMilli());
            document.getDocumentInformation().setCreationDate(made);
            document.getDocumentInformation().setModificationDate(made);
            document.getDocumentInformation().setProducer("keeplit");
            document.setDocumentId(Hashing.sha256().hashString(page, StandardCharsets.UTF_8).asLong());
            pages = document.getNumberOfPages();
            document.save(out);
            document.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return new Printed(out.toByteArray(), pages);
    }

    /**
     * Measures parts of a page as they come out on paper.
     *
     * @param page a page, HTML and well-formed XML at once, on paper so high that nothing is broken off
     * @return for each element with an {@code id} its height with its padding and border, in mm
     */
    public static Map<String, Double> heights(String page) {
        PdfRendererBuilder builder = builder(page);
        builder.toStream(OutputStream.nullOutputStream());
        try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
            renderer.layout();
            Map<String, Double> heights = new HashMap<>();
            collect(renderer.getRootBox(), renderer.getDotsPerPoint() * POINTS, heights);
            return heights;
        }
    }

    private static void collect(Box box, double dots, Map<String, Double> into) {
        if (box.getElement() != null && box.getElement().hasAttribute("id")) {
            into.put(box.getElement().getAttribute("id"), box.getHeight() / dots);
        }
        for (int i = 0; i < box.getChildCount(); i++) {
            collect(box.getChild(i), dots, into);
        }
    }

    private static PdfRendererBuilder builder(String page) {
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.withW3cDocument(parsed(page), "");
        builder.useFont(() -> Pdf.class.getResourceAsStream("fonts/DejaVuSans.ttf"), FAMILY, 400, FontStyle.NORMAL, true);
        builder.useFont(() -> Pdf.class.getResourceAsStream("fonts/DejaVuSans-Bold.ttf"), FAMILY, 700, FontStyle.NORMAL, true);
        builder.useSVGDrawer(new BatikSVGDrawer());
        builder.useUriResolver((base, address) -> null);
        return builder;
    }

    /** {@return a page as a tree; nothing that it could name is fetched} */
    private static Document parsed(String page) {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setNamespaceAware(true);
            DocumentBuilder builder = factory.newDocumentBuilder();
            builder.setErrorHandler(null);
            return builder.parse(new ByteArrayInputStream(page.getBytes(StandardCharsets.UTF_8)));
        } catch (ParserConfigurationException | SAXException | IOException e) {
            throw new IllegalStateException("a page is not well-formed", e);
        }
    }
}
