package org.keeplit.gridfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.keeplit.language.Formatter;
import org.keeplit.network.Element;
import org.keeplit.network.Network;
import org.keeplit.text.Source;

/** What becomes of each class of a grid file, and that nothing is dropped silently. */
class GridImportTest {
    @TempDir
    Path folder;

    private Imported read(Cim cim) throws IOException {
        Imported imported = GridFiles.read(cim.write(folder));
        assertEquals(List.of(), imported.problems());
        return imported;
    }

    private static String line(Imported imported, String name) {
        return imported.text().lines().filter(l -> l.matches("\\S+ +" + Pattern.quote(name) + " .*")).findFirst()
                .orElseThrow(() -> new AssertionError("no " + name + " in\n" + imported.text())).replaceAll(" +", " ");
    }

    private static boolean isNoted(Imported imported, String name, String text) {
        return imported.listing().changed().stream().anyMatch(r -> r.name().equals(name) && r.text().contains(text));
    }

    private static String reason(Imported imported, String name) {
        return imported.listing().left().stream().filter(r -> r.name().equals(name)).map(Imported.Remark::text).findFirst().orElse("");
    }

    /** As in two profiles of one model, of which the first says only that the object is there. */
    @Test
    void anObjectThatIsToldOfInTwoPlaces() {
        CimObject object = new CimObject("n1", "ConnectivityNode", 0, 3);
        object.trim();
        object.add("IdentifiedObject.name", "corner", 9);
        assertEquals("ConnectivityNode corner", object.toString());
        assertEquals(9, object.line(object.find("name")));
    }

    /** The objects of the file, counted by a plain search of its text. */
    @ParameterizedTest
    @ValueSource(strings = {"IEEE13_Assets.xml", "IEEE13.xml"})
    void everyObjectIsCarriedOrListed(String file) throws IOException {
        Path path = GridFiles.FOLDER.resolve(file);
        Map<String, Integer> there = new TreeMap<>();
        Matcher begin = Pattern.compile("(?m)^<cim:([A-Za-z0-9]+) rdf:about").matcher(Files.readString(path));
        while (begin.find()) {
            there.merge(begin.group(1), 1, Integer::sum);
        }
        Imported.Listing listing = GridFiles.read(path).listing();
        Map<String, Integer> told = listing.rows().stream().collect(Collectors.toMap(Imported.Row::type, Imported.Row::objects, (a, b) -> a, TreeMap::new));
        assertTrue(there.size() > 40);
        assertEquals(there, told);
        for (Imported.Row row : listing.rows()) {
            assertEquals(row.objects(), row.elements() + row.parts() + row.left(), row.type());
            assertEquals(row.elements(), listing.carried().stream().filter(c -> c.type().equals(row.type())).map(Imported.Carried::id).distinct().count(), row.type());
            assertEquals(row.left(), listing.left().stream().filter(r -> r.type().equals(row.type())).map(Imported.Remark::id).distinct().count(), row.type());
        }
        listing.left().forEach(r -> assertTrue(r.text().length() > 10 && !r.text().contains("no such class"), r.toString()));
        assertTrue(!listing.lacksEquipment());
    }

    @ParameterizedTest
    @ValueSource(strings = {"IEEE13_Assets.xml", "IEEE13.xml"})
    void theTextIsCanonicalAndTheSameEachTime(String file) {
        Imported once = GridFiles.read(GridFiles.FOLDER.resolve(file));
        assertEquals(once, GridFiles.read(GridFiles.FOLDER.resolve(file)));
        assertEquals(once.text(), Formatter.format(new Source("made.network", once.text())).text().orElseThrow());
    }

    @Test
    void switchesOfAllClasses() throws IOException {
        Cim cim = Cim.source();
        List<String> classes = List.copyOf(SwitchTranslator.KINDS.keySet());
        for (int i = 0; i < classes.size(); i++) {
            String name = classes.get(i).toLowerCase(java.util.Locale.ROOT) + "-1";
            cim.add(classes.get(i) + " " + name + " Switch.normalOpen=" + (i % 2 == 1)).at(name, "n" + i, "n" + (i + 1));
        }
        Network network = GridFiles.network(read(cim));
        for (int i = 0; i < classes.size(); i++) {
            Element.Device device = (Element.Device) network.element(classes.get(i).toLowerCase(java.util.Locale.ROOT) + "-1").orElseThrow();
            assertEquals(SwitchTranslator.KINDS.get(classes.get(i)), device.kind().name());
            assertEquals(i % 2 == 1 ? 0 : 3, device.closed().size(), device.name());
        }
    }

    @Test
    void polesByThemselves() throws IOException {
        Cim cim = Cim.source().add("Recloser r Switch.ratedCurrent=560 ProtectedSwitch.breakingCapacity=8000").at("r", "n0", "n1")
                .add("SwitchPhase ra SwitchPhase.phaseSide1=@SinglePhaseKind.A SwitchPhase.phaseSide2=@SinglePhaseKind.A SwitchPhase.normalOpen=false SwitchPhase.closed=false SwitchPhase.Switch=#r")
                .add("SwitchPhase rb SwitchPhase.phaseSide1=@SinglePhaseKind.B SwitchPhase.phaseSide2=@SinglePhaseKind.C SwitchPhase.normalOpen=true SwitchPhase.Switch=#r")
                .add("Breaker b Switch.normalOpen=false").at("b", "n1", "n2")
                .add("SwitchPhase ba SwitchPhase.phaseSide1=@SinglePhaseKind.A SwitchPhase.normalOpen=false SwitchPhase.Switch=#b")
                .add("SwitchPhase bb SwitchPhase.phaseSide1=@SinglePhaseKind.B SwitchPhase.normalOpen=true SwitchPhase.Switch=#b");
        Imported imported = read(cim);
        assertEquals("recloser r from n0 to n1, phases AB, single-phase units, open on B, continuous 560 A, interrupting 8000 A", line(imported, "r"));
        assertTrue(isNoted(imported, "ra", "open at the moment"));
        assertTrue(isNoted(imported, "r", "is C on its other side"));
        assertTrue(isNoted(imported, "b", "moves all poles together"));
    }

    @Test
    void devicesAtOnePlaceStandAtOneSite() throws IOException {
        Imported imported = read(Cim.source().add("Location Pole_24")
                .add("Disconnector d-1 PowerSystemResource.Location=#Pole_24").at("d-1", "n0", "n1")
                .add("Recloser r-1 PowerSystemResource.Location=#Pole_24").at("r-1", "n1", "n2"));
        assertEquals("disconnect d-1 from n0 to n1, phases ABC, at pole_24", line(imported, "d-1"));
        assertEquals("recloser r-1 from n1 to n2, phases ABC, ganged, at pole_24", line(imported, "r-1"));
    }

    @Test
    void theSourceSideIsTheSideOfTheSource() throws IOException {
        Imported imported = read(Cim.source()
                .add("LoadBreakSwitch back").at("back", "n1", "n0")
                .add("ACLineSegment line-1 Conductor.length=100 ACLineSegment.r=0.1 ACLineSegment.x=0.2").at("line-1", "n2", "n1")
                .add("LoadBreakSwitch tie-1 Switch.normalOpen=true").at("tie-1", "n2", "n3"));
        assertEquals("switch back from n0 to n1, phases ABC", line(imported, "back"));
        assertEquals("line line-1 from n1 to n2, phases ABC, length 100 m, resistance 1 ohm per km, reactance 2 ohm per km", line(imported, "line-1"));
        assertEquals("switch tie-1 from n2 to n3, phases ABC, open", line(imported, "tie-1"));
    }

    @Test
    void sequenceFiguresPerLength() throws IOException {
        Imported imported = read(Cim.source()
                .add("PerLengthSequenceImpedance code PerLengthSequenceImpedance.r=0.0003 PerLengthSequenceImpedance.x=0.0004 PerLengthSequenceImpedance.r0=0.0009"
                        + " PerLengthSequenceImpedance.x0=0.0012 PerLengthSequenceImpedance.bch=3E-9")
                .add("ACLineSegment l Conductor.length=250 ACLineSegment.PerLengthImpedance=#code").at("l", "n0", "n1"));
        assertEquals("line l from n0 to n1, phases ABC, length 250 m, resistance 0.3 ohm per km, reactance 0.4 ohm per km, zero resistance 0.9 ohm per km,"
                + " zero reactance 1.2 ohm per km, susceptance 3 uS per km", line(imported, "l"));
    }

    /** Such as a bus bar: written longer, it would have more impedance than the file says. */
    @Test
    void aShortLineKeepsItsLength() throws IOException {
        Imported imported = read(Cim.source().add("ACLineSegment l Conductor.length=0.05 ACLineSegment.r=0.0001 ACLineSegment.x=0.0002").at("l", "n0", "n1"));
        assertTrue(line(imported, "l").contains("length 0.05 m, resistance 2 ohm per km, reactance 4 ohm per km"), line(imported, "l"));
    }

    @Test
    void aNeutralInAMatrixIsReduced() throws IOException {
        Cim cim = Cim.source().add("PerLengthPhaseImpedance code").add("ACLineSegment l Conductor.length=100 ACLineSegment.PerLengthImpedance=#code").at("l", "n0", "n1")
                .phases("l", "ACLineSegmentPhase", "ACLineSegmentPhase.phase", "ACLineSegmentPhase.ACLineSegment", "BN", "");
        for (String entry : List.of("1 1 0.0004 0.0008", "2 1 0.0001 0.0004", "2 2 0.0005 0.0009")) {
            String[] e = entry.split(" ");
            cim.add("PhaseImpedanceData z" + e[0] + e[1] + " PhaseImpedanceData.PhaseImpedance=#code PhaseImpedanceData.row=" + e[0] + " PhaseImpedanceData.column=" + e[1]
                    + " PhaseImpedanceData.r=" + e[2] + " PhaseImpedanceData.x=" + e[3]);
        }
        Imported imported = read(cim);
        // By hand: 0.4 + 0.8j less (0.1 + 0.4j)² / (0.5 + 0.9j), all in ohm per km.
        Element.Line made = (Element.Line) GridFiles.network(imported).element("l").orElseThrow();
        assertEquals(0.4 - (-0.15 * 0.5 + 0.08 * 0.9) / 1.06, made.figures().get("resistance BB").si() * 1000, 1e-6);
        assertEquals(0.8 - (0.08 * 0.5 + 0.15 * 0.9) / 1.06, made.figures().get("reactance BB").si() * 1000, 1e-6);
        assertTrue(isNoted(imported, "code", "grounded all along"));
    }

    @Test
    void clampsAndCutsPartASegment() throws IOException {
        Imported imported = read(Cim.source()
                .add("ACLineSegment l Conductor.length=100 ACLineSegment.r=1 ACLineSegment.x=2").at("l", "n0", "n9")
                .add("Clamp c Clamp.ACLineSegment=#l Clamp.lengthFromTerminal1=30").at("c", "n3")
                .add("Cut k Cut.ACLineSegment=#l Cut.lengthFromTerminal1=70 Switch.normalOpen=false").at("k", "n6", "n7"));
        assertTrue(line(imported, "l").startsWith("line l from n0 to n3, phases ABC, length 30 m"));
        assertTrue(line(imported, "l-2").startsWith("line l-2 from n3 to n6, phases ABC, length 40 m"));
        assertEquals("disconnect k from n6 to n7, phases ABC", line(imported, "k"));
        assertTrue(line(imported, "l-3").startsWith("line l-3 from n7 to n9, phases ABC, length 30 m"));
    }

    /** Three tanks from phase to phase, to three from phase to neutral: by the vector group Dyn1 each high winding ends on the phase before. */
    @Test
    void banksOfSinglePhaseTanks() throws IOException {
        Cim cim = Cim.source().add("ConnectivityNode n1").add("PowerTransformer bank").add("TransformerTankInfo sheet")
                .add("TransformerEndInfo s1 TransformerEndInfo.TransformerTankInfo=#sheet TransformerEndInfo.endNumber=1 TransformerEndInfo.ratedU=12470 TransformerEndInfo.ratedS=25000"
                        + " TransformerEndInfo.connectionKind=@WindingConnection.I")
                .add("TransformerEndInfo s2 TransformerEndInfo.TransformerTankInfo=#sheet TransformerEndInfo.endNumber=2 TransformerEndInfo.ratedU=277 TransformerEndInfo.ratedS=25000"
                        + " TransformerEndInfo.connectionKind=@WindingConnection.I")
                .add("ShortCircuitTest t ShortCircuitTest.EnergisedEnd=#s1 ShortCircuitTest.GroundedEnds=#s2 ShortCircuitTest.leakageImpedance=124.4 ShortCircuitTest.loss=0.25 TransformerTest.basePower=25000");
        String[] high = {"AC", "BA", "CB"};
        for (int i = 0; i < 3; i++) {
            String phase = "ABC".substring(i, i + 1);
            cim.add("TransformerTank t" + phase + " TransformerTank.PowerTransformer=#bank TransformerTank.TransformerTankInfo=#sheet");
            end(cim, "t" + phase, 1, high[i], "n0", "bank");
            end(cim, "t" + phase, 2, phase + "N", "n1", "bank");
        }
        Imported imported = read(cim);
        // 124.4 ohm of 12470² / 25000 = 6220 ohm are 2 %, of which 1 % is resistance.
        assertEquals("transformer bank from n0 to n1, phases ABC, delta to grounded wye, clock 1, rating 75 kVA, low voltage 0.4797781 kV, resistance 1 %, reactance 1.732037 %", line(imported, "bank"));
    }

    private static void end(Cim cim, String tank, int number, String phases, String node, String bank) {
        String name = tank + "-" + number;
        // The terminal belongs to the transformer.
        cim.add("Terminal " + name + "-terminal Terminal.ConductingEquipment=#" + bank + " ACDCTerminal.sequenceNumber=" + number + " Terminal.ConnectivityNode=#" + node);
        cim.add("TransformerTankEnd " + name + " TransformerTankEnd.TransformerTank=#" + tank + " TransformerEnd.endNumber=" + number + " TransformerTankEnd.orderedPhases=@OrderedPhaseCodeKind."
                + phases + " TransformerEnd.Terminal=#" + name + "-terminal");
    }

    @Test
    void wholeTransformersByTheirEnds() throws IOException {
        Cim cim = Cim.source().add("PowerTransformer t").at("t", "n0", "n1")
                .add("PowerTransformerEnd e1 PowerTransformerEnd.PowerTransformer=#t TransformerEnd.endNumber=1 TransformerEnd.Terminal=#t-T1 PowerTransformerEnd.ratedU=12470 PowerTransformerEnd.ratedS=500000"
                        + " PowerTransformerEnd.connectionKind=@WindingConnection.D PowerTransformerEnd.phaseAngleClock=0 PowerTransformerEnd.r=3.11 PowerTransformerEnd.x=15.55")
                .add("PowerTransformerEnd e2 PowerTransformerEnd.PowerTransformer=#t TransformerEnd.endNumber=2 TransformerEnd.Terminal=#t-T2 PowerTransformerEnd.ratedU=480 PowerTransformerEnd.ratedS=500000"
                        + " PowerTransformerEnd.connectionKind=@WindingConnection.Yn PowerTransformerEnd.phaseAngleClock=11 TransformerEnd.grounded=true PowerTransformerEnd.r=0 PowerTransformerEnd.x=0")
                .add("RatioTapChanger changer TapChanger.step=3 RatioTapChanger.TransformerEnd=#e2");
        Imported imported = read(cim);
        assertTrue(line(imported, "t").startsWith("transformer t from n0 to n1, phases ABC, delta to grounded wye, clock 11, rating 500 kVA, low voltage 0.48 kV, resistance 0.9999942 %, reactance 4.999971 %"), line(imported, "t"));
        assertTrue(reason(imported, "changer").contains("step 3 from neutral"));
    }

    @Test
    void whatIsNotKnownIsListed() throws IOException {
        Imported imported = read(Cim.source().add("EnergyConsumr typo EnergyConsumer.p=5").add("GroundDisconnector g").at("g", "n0").add("Substation s"));
        assertEquals("keeplit carries no such class; did you mean EnergyConsumer?", reason(imported, "typo"));
        assertTrue(imported.listing().lacksEquipment());
        assertTrue(reason(imported, "s").contains("no substations"));
    }

    @Test
    void consumersAndBanks() throws IOException {
        Imported imported = read(Cim.source()
                .add("LoadResponseCharacteristic mix LoadResponseCharacteristic.exponentModel=true LoadResponseCharacteristic.pVoltageExponent=1.3 LoadResponseCharacteristic.qVoltageExponent=2")
                .add("EnergyConsumer Shop,7 EnergyConsumer.p=9000 EnergyConsumer.q=3000 EnergyConsumer.LoadResponse=#mix EnergyConsumer.customerCount=4").at("Shop,7", "n0")
                .add("EnergyConsumer shop-7 EnergyConsumer.phaseConnection=@PhaseShuntConnectionKind.D").at("shop-7", "n0")
                .phases("shop-7", "EnergyConsumerPhase", "EnergyConsumerPhase.phase", "EnergyConsumerPhase.EnergyConsumer", "C", "EnergyConsumerPhase.p=0 EnergyConsumerPhase.q=0")
                .add("LinearShuntCompensator bank ShuntCompensator.nomU=12470 LinearShuntCompensator.bPerSection=0.001929 ShuntCompensator.normalSections=2 ShuntCompensator.sections=1").at("bank", "n0")
                .add("LinearShuntCompensator out ShuntCompensator.nomU=12470 LinearShuntCompensator.bPerSection=0.001 ShuntCompensator.normalSections=0").at("out", "n0"));
        assertEquals("load shop-7 at n0, phases ABC, constant current, 9 kW, 3 kvar, 4 customers", line(imported, "shop-7"));
        assertTrue(isNoted(imported, "Shop,7", "mixture"));
        assertEquals("load load-shop-7 at n0, phases AC, delta, 0.001 kW, 1 customer", line(imported, "load-shop-7"));
        assertEquals("capacitor bank at n0, phases ABC, grounded wye, 599.9225 kvar", line(imported, "bank"));
        assertTrue(isNoted(imported, "bank", "1 of its sections are in"));
        assertTrue(reason(imported, "out").contains("normally out"));
    }

    @Test
    void aRegulatorTurnedAroundRaisesTheOtherWay() throws IOException {
        Cim cim = Cim.source().add("PowerTransformer reg").at("reg", "n1", "n0");
        for (int i = 1; i <= 2; i++) {
            cim.add("PowerTransformerEnd e" + i + " PowerTransformerEnd.PowerTransformer=#reg TransformerEnd.endNumber=" + i + " TransformerEnd.Terminal=#reg-T" + i
                    + " PowerTransformerEnd.ratedU=12470 PowerTransformerEnd.ratedS=2000000 PowerTransformerEnd.connectionKind=@WindingConnection.Y");
        }
        Imported imported = read(cim.add("RatioTapChanger changer TapChanger.step=3 TapChanger.neutralStep=0 RatioTapChanger.TransformerEnd=#e2"));
        assertEquals("regulator reg from n0 to n1, phases ABC, rating 160.3849 A, control manual, tap A -3, tap B -3, tap C -3", line(imported, "reg"));
    }
}
