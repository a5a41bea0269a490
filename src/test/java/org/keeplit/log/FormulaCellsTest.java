package org.keeplit.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A cell of a log that a spreadsheet would take as a formula. */
class FormulaCellsTest {
    @ParameterizedTest
    @ValueSource(strings = {"=HYPERLINK(\"x\")", "+1", "-5 °C", "@sum", "\tx", "\rx", "'=x", "''-x", "'plain", "plain", "", "1=2"})
    void aFormulaInACellWasPassedOn(String text) {
        String cell = LogReader.cell(text);
        assertFalse(cell.matches("(?s)[=+@\\-\\t\\r].*"), cell);
        assertEquals(text, LogReader.text(cell));
    }

    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "-5 °C", "@home", "'=quoted"})
    void whatIsReadBackIsWhatWasWritten(String item) {
        String csv = "step,what,time,by,item,value\n1,,,,\"" + LogReader.cell(item) + "\",\"" + LogReader.cell(item) + "\"\n";
        LogReader.Read read = LogReader.of(csv);
        assertEquals(List.of(), read.mistakes());
        assertTrue(read.entries().toString().contains(item), read.entries()::toString);
        assertFalse(read.entries().toString().contains("'" + item), read.entries()::toString);
    }
}
