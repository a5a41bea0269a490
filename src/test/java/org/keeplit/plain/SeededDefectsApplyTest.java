package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Every mistake that the long run puts into the source still has its place there, exactly once. */
class SeededDefectsApplyTest {
    @Test
    void eachHasItsPlace() throws IOException {
        List<String> lost = new ArrayList<>();
        for (SeededDefects.Defect defect : SeededDefects.ALL) {
            String source = Files.readString(Path.of("src/main/java/org/keeplit").resolve(defect.file()));
            int at = source.indexOf(defect.right());
            if (at < 0 || source.indexOf(defect.right(), at + 1) >= 0) {
                lost.add(defect.name() + " in " + defect.file());
            }
        }
        assertEquals(List.of(), lost);
    }
}
