package org.keeplit.gridfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.keeplit.network.Conductor;

class Ieee13FromGridFileTest {
    @Test
    void show() throws IOException {
        for (String f : List.of("IEEE13_Assets.xml", "IEEE13.xml")) {
            Imported imported = GridFiles.read(GridFiles.FOLDER.resolve(f));
            System.out.println(imported.problems());
            System.out.println(new ImportReport(false).tell(imported));
            System.out.println(imported.text());
            GridFiles.Solved s = GridFiles.solve(GridFiles.network(imported));
            System.out.println(f + " load " + s.flow().loadPower() + " loss " + s.flow().losses());
            double worst = 0, worstDeg = 0;
            double base = 4160 / Math.sqrt(3);
            for (String line : Files.readAllLines(Path.of("src/test/resources/outside/ieee13/voltages.csv"))) {
                if (line.startsWith("#")) continue;
                String[] c = line.split(",");
                String node = c[0].equals("RG60") ? "rg60" : "n-" + c[0];
                double b = c[0].equals("634") ? 480 / Math.sqrt(3) : base;
                var v = s.volts(node, Conductor.valueOf(c[1]));
                double dv = v.abs() / b - Double.parseDouble(c[2]);
                double dd = v.degrees() + 30 - Double.parseDouble(c[3]);
                dd = (dd + 540) % 360 - 180;
                worst = Math.max(worst, Math.abs(dv)); worstDeg = Math.max(worstDeg, Math.abs(dd));
                System.out.printf("%s %s %.4f %s  d %.5f  deg %.2f%n", node, c[1], v.abs() / b, c[2], dv, dd);
            }
            System.out.println("worst " + worst + " " + worstDeg);
        }
    }
}
