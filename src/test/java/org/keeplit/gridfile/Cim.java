package org.keeplit.gridfile;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Small grid files in tests. */
final class Cim {
    static final String HEAD = "<?xml version=\"1.0\" encoding=\"utf-8\"?>\n"
            + "<rdf:RDF xmlns:cim=\"http://iec.ch/TC57/CIM100#\" xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\n";
    static final String END = "</rdf:RDF>\n";

    private final StringBuilder text = new StringBuilder(HEAD);

    /** A file with a source of 12.47 kV at node {@code n0}. */
    static Cim source() {
        return new Cim().add("ConnectivityNode n0").add("EnergySource source EnergySource.nominalVoltage=12470 EnergySource.r=0.1 EnergySource.x=1").at("source", "n0");
    }

    /** Adds an object. @param line its class, its name, and attributes as NAME=VALUE, NAME=#OBJECT or NAME=@Enumeration.value */
    Cim add(String line) {
        String[] words = line.split(" ");
        text.append("<cim:").append(words[0]).append(" rdf:ID=\"_").append(words[1]).append("\">\n  <cim:IdentifiedObject.name>").append(words[1]).append("</cim:IdentifiedObject.name>\n");
        for (int i = 2; i < words.length; i++) {
            String[] parts = words[i].split("=", 2);
            char first = parts[1].isEmpty() ? ' ' : parts[1].charAt(0);
            text.append("  <cim:").append(parts[0]);
            if (first == '#') {
                text.append(" rdf:resource=\"#_").append(parts[1].substring(1)).append("\"/>\n");
            } else if (first == '@') {
                text.append(" rdf:resource=\"http://iec.ch/TC57/CIM100#").append(parts[1].substring(1)).append("\"/>\n");
            } else {
                text.append('>').append(parts[1]).append("</cim:").append(parts[0]).append(">\n");
            }
        }
        text.append("</cim:").append(words[0]).append(">\n");
        return this;
    }

    /** Adds nodes that are not there yet, and a terminal for each. */
    Cim at(String equipment, String... nodes) {
        for (int i = 0; i < nodes.length; i++) {
            if (!text.toString().contains("rdf:ID=\"_" + nodes[i] + "\"")) {
                add("ConnectivityNode " + nodes[i]);
            }
            add("Terminal " + equipment + "-T" + (i + 1) + " Terminal.ConductingEquipment=#" + equipment + " ACDCTerminal.sequenceNumber=" + (i + 1)
                    + " Terminal.ConnectivityNode=#" + nodes[i]);
        }
        return this;
    }

    /** Adds phases of some equipment. @param line the class of its phases, the attribute for the phase, that which refers to the equipment */
    Cim phases(String equipment, String type, String phase, String to, String phases, String more) {
        for (int i = 0; i < phases.length(); i++) {
            add(type + " " + equipment + "-" + phases.charAt(i) + " " + phase + "=@SinglePhaseKind." + phases.charAt(i) + " " + to + "=#" + equipment + " "
                    + type + ".sequenceNumber=" + (i + 1) + (more.isEmpty() ? "" : " " + more));
        }
        return this;
    }

    String text() {
        return text + END;
    }

    Path write(Path folder) throws IOException {
        return Files.writeString(folder.resolve("model.xml"), text());
    }
}
