package org.keeplit.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** {@code export} as a user calls it. */
class ExportCommandTest {
    private static final String RDF = "http://www.w3.org/1999/02/22-rdf-syntax-ns#";
    private static final String CIM = "http://iec.ch/TC57/CIM100#";

    private static final String PROCEDURE =
            """
            language 1
            procedure OUT revision 3
            title "A spur <off> & on"
            keeps stick-work
            for switching device G
            crew
              west "Lineman", in charge
            proved on spur with gang as G
            stage "All"
              for each phase P of G
                look: west proves G closed on P
              end
              opening: west opens G
              closing: west closes G
            """;

    @TempDir
    Path folder;

    private Told.Ran run(String procedure) throws IOException {
        Workspace.fill(folder, Workspace.RULES, Workspace.EXAMPLES);
        String network = Workspace.EXAMPLES.substring(Workspace.EXAMPLES.indexOf("network spur \"")).replace("network spur", "language 1\nnetwork spur");
        Files.writeString(folder.resolve("shared/spur.network"), network);
        Path file = Files.writeString(folder.resolve("out.procedure"), procedure);
        return Told.run("export", file.toString(), "--out", folder.resolve("plans").toString(), "--date", "2026-03-02");
    }

    @Test
    void aPlanOfASmallProcedure() throws Exception {
        Told.Ran ran = run(PROCEDURE);
        assertEquals(ExitCode.PROVED, ran.code(), ran.err() + ran.out());
        Path plan = folder.resolve("plans/out-on-spur-with-gang-as-g");
        String xml = Files.readString(plan.resolve("plan.xml"));
        Told.assertTold("export", folder, ran.out() + "\n=== plan.xml\n" + xml + "\n=== deviations.txt\n" + Files.readString(plan.resolve("deviations.txt")));
        assertHangsTogether(xml);
    }

    @Test
    void whatDoesNotHoldIsNotExported() throws IOException {
        Told.Ran ran = run(PROCEDURE.replace("  closing: west closes G\n", "  closing: west closes G\n  again: west closes G\n"));
        assertEquals(ExitCode.BROKEN, ran.code(), ran.err() + ran.out());
        assertTrue(ran.out().startsWith("OUT on spur with gang as G: no plan, since it is not proved: "), ran.out());
        assertFalse(Files.exists(folder.resolve("plans")));
    }

    @Test
    void thePlansOfTheDemoHangTogether() throws Exception {
        for (String name : new String[] {"recloser-out", "dead-lateral"}) {
            Path out = folder.resolve(name);
            Told.Ran ran = Told.run("export", "procedures/" + name + ".procedure", "--out", out.toString(), "--date", "2026-03-02");
            assertEquals(ExitCode.PROVED, ran.code(), ran.err() + ran.out());
            try (var plans = Files.walk(out)) {
                for (Path plan : plans.filter(p -> p.endsWith("plan.xml")).toList()) {
                    assertHangsTogether(Files.readString(plan));
                }
            }
        }
    }

    /** Every reference is to an object of the plan, no two have one mRID, and every step has its group and its action. */
    private static void assertHangsTogether(String xml) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        Document document = factory.newDocumentBuilder().parse(new InputSource(new StringReader(xml)));
        NodeList objects = document.getDocumentElement().getElementsByTagNameNS(CIM, "*");
        Set<String> ids = new HashSet<>();
        int steps = 0;
        for (int i = 0; i < objects.getLength(); i++) {
            Element one = (Element) objects.item(i);
            String id = one.getAttributeNS(RDF, "about");
            assertTrue(id.isEmpty() || ids.add(id), id);
        }
        for (int i = 0; i < objects.getLength(); i++) {
            Element one = (Element) objects.item(i);
            String to = one.getAttributeNS(RDF, "resource");
            assertTrue(to.isEmpty() || to.startsWith(CIM) || ids.contains(to), one.getLocalName() + " " + to);
            if (one.getLocalName().equals("SwitchingStep")) {
                steps++;
                assertEquals(1, one.getElementsByTagNameNS(CIM, "SwitchingStep.SwitchingStepGroup").getLength());
                assertEquals(1, one.getElementsByTagNameNS(CIM, "SwitchingStep.SwitchingAction").getLength());
            }
        }
        assertTrue(steps > 3);
    }
}
