package org.keeplit.gridfile;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * Reads RDF/XML as a stream: one object after another, nothing else kept. Document types and external entities are refused, so
 * nothing outside of the file is ever read.
 */
final class RdfReader {
    private static final String RDF = "http://www.w3.org/1999/02/22-rdf-syntax-ns#";
    private static final String CIM100 = "http://iec.ch/TC57/CIM100#";
    private static final int SHORT = 12;

    private final CimModel model;
    private final Map<String, String> kept = new HashMap<>();
    private int file;
    private boolean otherCim;

    /** No honest model of one feeder is larger: published ones of 10,000 sections have some 60 MB. */
    private static final long LARGEST = 1L << 30;

    RdfReader(CimModel model) {
        this.model = model;
    }

    void read(Path path) {
        file = model.addFile(path);
        otherCim = false;
        if (Files.isDirectory(path)) {
            model.mark("unreadable", file, 0, "this is a folder; name the files in it", "");
            return;
        }
        try {
            if (Files.exists(path) && !Files.isRegularFile(path)) {
                model.mark("unreadable", file, 0, "this is no regular file, so it is not read", "");
                return;
            } else if (Files.exists(path) && Files.size(path) > LARGEST) {
                model.mark("unreadable", file, 0,
                        "the file has " + Files.size(path) + " bytes; the largest that is read has " + LARGEST, "divide the model by feeders");
                return;
            }
        } catch (IOException e) {
            // Told below, where it is opened.
        }
        try (InputStream in = new BufferedInputStream(Files.newInputStream(path), 1 << 16)) {
            read(in);
        } catch (NoSuchFileException e) {
            model.mark("missing-file", file, 0, "there is no such file", "");
        } catch (IOException e) {
            model.mark("unreadable", file, 0, "the file cannot be read", "");
        }
    }

    /** Reads one document. @param in its bytes */
    private void read(InputStream in) {
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_COALESCING, true);
        // Else the parser prints mistakes by itself.
        factory.setXMLReporter((message, type, about, location) -> {});
        factory.setXMLResolver((publicId, systemId, base, namespace) -> {
            throw new XMLStreamException("external entities are not read");
        });
        int line = 0;
        try {
            XMLStreamReader xml = factory.createXMLStreamReader(in);
            boolean root = false;
            while (xml.hasNext()) {
                line = xml.getLocation().getLineNumber();
                int event = xml.next();
                if (event == XMLStreamConstants.DTD) {
                    model.mark("document-type", file, xml.getLocation().getLineNumber(),
                            "the file has a document type declaration, which is refused: it can name other files to be read",
                            "take it out; a model in RDF/XML needs none");
                    return;
                } else if (event == XMLStreamConstants.START_ELEMENT && !root) {
                    root = true;
                    if (!RDF.equals(xml.getNamespaceURI()) || !xml.getLocalName().equals("RDF")) {
                        model.mark("not-a-grid-file", file, xml.getLocation().getLineNumber(),
                                "the file begins with " + xml.getLocalName() + ", and a model in RDF/XML begins with rdf:RDF",
                                "an IEC 61970 CIM100 model was meant");
                        return;
                    }
                } else if (event == XMLStreamConstants.START_ELEMENT) {
                    object(xml);
                }
            }
        } catch (XMLStreamException e) {
            int at = e.getLocation() == null ? line : e.getLocation().getLineNumber();
            model.mark("bad-xml", file, Math.max(at, 0), "this is no well-formed XML: " + plain(e), "");
        }
    }

    private static String plain(XMLStreamException e) {
        String text = e.getMessage() == null ? "it ends too soon" : e.getMessage();
        int said = text.indexOf("Message: ");
        text = (said < 0 ? text : text.substring(said + 9)).strip();
        int end = text.indexOf('\n');
        text = end < 0 ? text : text.substring(0, end);
        return text.length() > 200 ? text.substring(0, 200) + "…" : text;
    }

    private void object(XMLStreamReader xml) throws XMLStreamException {
        int line = xml.getLocation().getLineNumber();
        String id = id(xml);
        String type = type(xml);
        if (id == null) {
            model.mark("no-identifier", file, line, type + " has neither rdf:ID nor rdf:about", "give it its mRID as rdf:about=\"urn:uuid:…\"");
            id = "object in line " + line + " of file " + (file + 1);
        }
        CimObject object = model.object(id, type, file, line);
        while (xml.next() != XMLStreamConstants.END_ELEMENT) {
            if (xml.getEventType() == XMLStreamConstants.START_ELEMENT) {
                attribute(xml, object);
            }
        }
        object.trim();
    }

    private void attribute(XMLStreamReader xml, CimObject object) throws XMLStreamException {
        int line = xml.getLocation().getLineNumber();
        String key = keep(xml.getLocalName());
        String reference = xml.getAttributeValue(RDF, "resource");
        StringBuilder text = new StringBuilder();
        int depth = 1;
        boolean nested = false;
        while (depth > 0) {
            int event = xml.next();
            if (event == XMLStreamConstants.START_ELEMENT) {
                depth++;
                nested = true;
            } else if (event == XMLStreamConstants.END_ELEMENT) {
                depth--;
            } else if (event == XMLStreamConstants.CHARACTERS || event == XMLStreamConstants.CDATA) {
                text.append(xml.getText());
            }
        }
        if (nested) {
            model.mark("nested-object", file, line, "an object stands inside " + key + " of " + object + ", and is not read there",
                    "let it stand by itself, and refer to it with rdf:resource");
            return;
        }
        object.add(key, keep(reference != null ? plainId(reference) : text.toString().strip()), line);
    }

    private String id(XMLStreamReader xml) {
        String about = xml.getAttributeValue(RDF, "about");
        String id = about != null ? about : xml.getAttributeValue(RDF, "ID");
        return id == null || id.isBlank() ? null : plainId(id);
    }

    /** {@return a class's name; of another namespace than the standard's with its prefix} */
    private String type(XMLStreamReader xml) {
        String namespace = xml.getNamespaceURI() == null ? "" : xml.getNamespaceURI();
        if (namespace.equals(CIM100)) {
            return keep(xml.getLocalName());
        }
        if (namespace.contains("TC57") && namespace.toLowerCase(java.util.Locale.ROOT).contains("cim") && !otherCim) {
            otherCim = true;
            model.mark("other-version", file, xml.getLocation().getLineNumber(),
                    "the file is written for " + namespace + ", and CIM100 is read (" + CIM100 + ")",
                    "export the model as CIM100; classes and attributes differ between versions");
        }
        return keep((xml.getPrefix() == null || xml.getPrefix().isEmpty() ? "" : xml.getPrefix() + ":") + xml.getLocalName());
    }

    /** {@return an identifier without what only says that it is one; of a value of an enumeration what stands behind the class's} */
    private static String plainId(String id) {
        String plain = id.startsWith("urn:uuid:") ? id.substring(9) : id;
        int hash = plain.lastIndexOf('#');
        plain = hash < 0 ? plain : plain.substring(hash + 1);
        return plain.startsWith("_") ? plain.substring(1) : plain;
    }

    /** {@return the same text, one copy of it if it comes often} */
    private String keep(String text) {
        if (text.length() > SHORT && !text.contains(".") || kept.size() > 200_000) {
            String before = kept.get(text);
            return before == null ? model.kept(text) : before;
        }
        String before = kept.putIfAbsent(text, text);
        return before == null ? text : before;
    }
}
