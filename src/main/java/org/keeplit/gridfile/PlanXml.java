package org.keeplit.gridfile;

import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/** Writes objects of a CIM100 document, one after another; each mRID follows from the document's seed and the object's name. */
final class PlanXml {
    private static final String CIM = "http://iec.ch/TC57/CIM100#";
    private static final String RDF = "http://www.w3.org/1999/02/22-rdf-syntax-ns#";

    private final String seed;
    private final StringWriter text = new StringWriter();
    private final XMLStreamWriter xml;
    /** Attributes of objects that others refer to, written at the end, by class and name. */
    private final Map<String, String[]> later = new LinkedHashMap<>();

    PlanXml(String seed) {
        this.seed = seed;
        try {
            xml = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(text);
            xml.writeStartDocument("UTF-8", "1.0");
            xml.writeCharacters("\n");
            xml.writeStartElement("rdf", "RDF", RDF);
            xml.writeNamespace("cim", CIM);
            xml.writeNamespace("rdf", RDF);
            xml.writeCharacters("\n");
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    /** {@return the reference to an object} @param type its class @param name its name in this document */
    String id(String type, String name) {
        return "urn:uuid:" + UUID.nameUUIDFromBytes((seed + "\n" + type + "\n" + name).getBytes(StandardCharsets.UTF_8));
    }

    /** {@return the reference to an object that is written at the end} @param attributes as in {@link #object} */
    String refer(String type, String name, String... attributes) {
        later.putIfAbsent(type + "\n" + name, attributes);
        return id(type, name);
    }

    /**
     * Writes an object.
     *
     * @param type its class
     * @param key what makes its mRID
     * @param name its name
     * @param attributes names and values; a value that begins with {@code urn:uuid:} is a reference, one with {@code @} a value of an
     *     enumeration, an empty one is left out
     */
    void object(String type, String key, String name, String... attributes) {
        try {
            xml.writeStartElement("cim", type, CIM);
            xml.writeAttribute("rdf", RDF, "about", id(type, key));
            line();
            attribute("IdentifiedObject.mRID", id(type, key).substring(9));
            attribute("IdentifiedObject.name", name);
            for (int i = 0; i < attributes.length; i += 2) {
                attribute(attributes[i], attributes[i + 1]);
            }
            xml.writeEndElement();
            line();
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    private void attribute(String name, String value) throws XMLStreamException {
        if (value.isEmpty()) {
            return;
        }
        xml.writeCharacters("  ");
        boolean choice = value.startsWith("@");
        if (choice || value.startsWith("urn:uuid:")) {
            xml.writeEmptyElement("cim", name, CIM);
            xml.writeAttribute("rdf", RDF, "resource", choice ? CIM + value.substring(1) : value);
        } else {
            xml.writeStartElement("cim", name, CIM);
            xml.writeCharacters(plain(value));
            xml.writeEndElement();
        }
        line();
    }

    /** {@return a text without what no XML can have} */
    private static String plain(String text) {
        return text.replaceAll("[\\p{Cntrl}&&[^\\n\\t]]", " ");
    }

    private void line() throws XMLStreamException {
        xml.writeCharacters("\n");
    }

    /** {@return the whole document} */
    String done() {
        later.forEach((key, attributes) -> {
            String[] parts = key.split("\n", 2);
            object(parts[0], parts[1], parts[1], attributes);
        });
        try {
            xml.writeEndElement();
            xml.writeCharacters("\n");
            xml.writeEndDocument();
            xml.close();
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
        return text.toString();
    }
}
