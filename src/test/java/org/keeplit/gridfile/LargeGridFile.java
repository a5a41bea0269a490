package org.keeplit.gridfile;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.UUID;

/** Writes a grid file of a wanted size: laterals of line sections, switches and consumers from one source, with locations and measurements. */
final class LargeGridFile {
    private final PrintWriter out;

    private LargeGridFile(PrintWriter out) {
        this.out = out;
    }

    /** Writes a file. @param arguments where, and how many sections */
    public static void main(String[] arguments) throws IOException {
        write(Path.of(arguments[0]), Integer.parseInt(arguments[1]));
    }

    static void write(Path file, int sections) throws IOException {
        try (PrintWriter out = new PrintWriter(Files.newBufferedWriter(file, StandardCharsets.UTF_8))) {
            new LargeGridFile(out).all(sections);
        }
    }

    private void all(int sections) {
        out.println("<?xml version=\"1.0\" encoding=\"utf-8\"?>");
        out.println("<rdf:RDF xmlns:cim=\"http://iec.ch/TC57/CIM100#\" xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">");
        object("Feeder", "feeder");
        object("BaseVoltage", "base", "BaseVoltage.nominalVoltage", "12470");
        object("PerLengthPhaseImpedance", "code", "PerLengthPhaseImpedance.conductorCount", "3");
        for (int row = 1; row <= 3; row++) {
            for (int column = 1; column <= row; column++) {
                object("PhaseImpedanceData", "z" + row + column, "PhaseImpedanceData.PhaseImpedance", "#code", "PhaseImpedanceData.row", "" + row,
                        "PhaseImpedanceData.column", "" + column, "PhaseImpedanceData.r", row == column ? "0.0003" : "0.0001",
                        "PhaseImpedanceData.x", row == column ? "0.0006" : "0.0002", "PhaseImpedanceData.b", row == column ? "3E-9" : "-1E-9");
            }
        }
        object("ConnectivityNode", "node0");
        object("EnergySource", "source", "EnergySource.nominalVoltage", "12470", "EnergySource.r", "0.1", "EnergySource.x", "1");
        terminal("source", 1, 0);
        for (int i = 1; i <= sections; i++) {
            section(i);
        }
        out.println("</rdf:RDF>");
    }

    /** A section to a new node, every tenth of them a switch, with what hangs at the node. A lateral begins at every 50th. */
    private void section(int i) {
        int from = i % 50 == 1 ? i / 50 * 50 : i - 1;
        object("ConnectivityNode", "node" + i, "ConnectivityNode.ConnectivityNodeContainer", "#feeder");
        String name = (i % 10 == 0 ? "switch" : "section") + i;
        if (i % 10 == 0) {
            object("LoadBreakSwitch", name, "Switch.normalOpen", "false", "Switch.open", "false", "Switch.ratedCurrent", "600", "Equipment.EquipmentContainer", "#feeder");
        } else {
            object("ACLineSegment", name, "Conductor.length", "" + (30 + i % 70), "ACLineSegment.PerLengthImpedance", "#code", "Equipment.EquipmentContainer", "#feeder",
                    "ConductingEquipment.BaseVoltage", "#base");
            for (int phase = 1; phase <= 3; phase++) {
                object("ACLineSegmentPhase", name + "ABC".charAt(phase - 1), "ACLineSegmentPhase.phase", "http://iec.ch/TC57/CIM100#SinglePhaseKind." + "ABC".charAt(phase - 1),
                        "ACLineSegmentPhase.sequenceNumber", "" + phase, "ACLineSegmentPhase.ACLineSegment", "#" + name);
            }
        }
        terminal(name, 1, from);
        terminal(name, 2, i);
        if (i % 3 == 0) {
            object("EnergyConsumer", "load" + i, "EnergyConsumer.p", "2500", "EnergyConsumer.q", "800", "EnergyConsumer.customerCount", "3", "Equipment.EquipmentContainer", "#feeder");
            terminal("load" + i, 1, i);
        }
        object("Location", "place" + i);
        object("PositionPoint", "point" + i, "PositionPoint.Location", "#place" + i, "PositionPoint.xPosition", "" + i, "PositionPoint.yPosition", "0");
        object("Analog", "measured" + i, "Measurement.PowerSystemResource", "#" + name, "Measurement.measurementType", "A");
    }

    private void terminal(String equipment, int number, int node) {
        object("Terminal", equipment + "T" + number, "Terminal.ConductingEquipment", "#" + equipment, "ACDCTerminal.sequenceNumber", "" + number,
                "Terminal.ConnectivityNode", "#node" + node);
    }

    /** An object. @param attributes names and values; a reference begins with {@code #}, a value of an enumeration with {@code http} */
    private void object(String type, String name, String... attributes) {
        out.println("<cim:" + type + " rdf:about=\"" + id(name) + "\">");
        out.println("  <cim:IdentifiedObject.mRID>" + id(name).substring(9) + "</cim:IdentifiedObject.mRID>");
        out.println("  <cim:IdentifiedObject.name>" + name + "</cim:IdentifiedObject.name>");
        for (int i = 0; i < attributes.length; i += 2) {
            String value = attributes[i + 1];
            boolean reference = value.startsWith("#") || value.startsWith("http");
            out.println("  <cim:" + attributes[i] + (reference
                    ? " rdf:resource=\"" + (value.startsWith("#") ? id(value.substring(1)) : value) + "\"/>"
                    : ">" + value + "</cim:" + attributes[i] + ">"));
        }
        out.println("</cim:" + type + ">");
    }

    private static String id(String name) {
        return "urn:uuid:" + UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8));
    }
}
