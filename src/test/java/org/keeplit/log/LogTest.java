package org.keeplit.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.collect.ImmutableMap;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Watcher;
import org.keeplit.page.Pages;
import org.keeplit.paper.Papers;
import org.keeplit.text.Problems;

/** Blank sheets are filled as a crew would; then one thing at a time is written otherwise. */
class LogTest {
    private static final Library GENERATOR = new Reader().read(List.of(Path.of("procedures/mobile-generator.procedure")));
    private static final Library BANK = new Reader().read(List.of(Path.of("procedures/capacitor-three-waits.procedure")));
    private static final Map<Library, Sheet> SHEETS = ImmutableMap.of(GENERATOR, sheet(GENERATOR), BANK, sheet(BANK));

    private static Sheet sheet(Library library) {
        Problems problems = new Problems();
        Sheet sheet = Papers.sheets(library, Limits.USUAL, Watcher.NOBODY, problems).get(0);
        assertEquals(List.of(), problems.sorted());
        return sheet;
    }

    /** A line of a filled log. */
    private static final class Row {
        private final String step;
        private String time = "";
        private String by = "";
        private final String item;
        private String value = "";

        Row(String step, String item) {
            this.step = step;
            this.item = item;
        }

        private static String quoted(String text) {
            return '"' + text.replace("\"", "\"\"") + '"';
        }

        String csv() {
            return String.join(",", step, "", time, quoted(by), quoted(item), quoted(value));
        }

        String json() {
            return "{\"step\":\"" + step + "\",\"time\":\"" + time + "\",\"by\":\"" + by + "\",\"item\":\"" + item.replace("\"", "\\\"") + "\",\"value\":\"" + value
                    + "\"}";
        }
    }

    /** Fills a sheet, six minutes a step; line N of the file is row N - 2. */
    private static List<Row> filled(Sheet sheet) {
        List<Row> all = new ArrayList<>();
        for (Sheet.Item item : sheet.whole()) {
            Row row = new Row("", item.name());
            row.value = item.name().equals(Sheet.JOB)
                    ? sheet.instance().words()
                    : item.name().equals(Sheet.INPUT) ? sheet.hash() : item.name().endsWith("before") ? "100" : "101";
            all.add(row);
        }
        LocalDateTime time = LocalDateTime.of(2026, 3, 2, 8, 0);
        for (Sheet.Line line : sheet.lines()) {
            if (line.words().contains("takes others") || line.words().contains("brings another")) {
                continue;
            }
            Row done = new Row(line.id(), "");
            done.time = time.toString();
            done.by = String.join(" and ", line.who());
            all.add(done);
            time = time.plusMinutes(6);
            for (Sheet.Item item : line.items()) {
                Row row = new Row(line.id(), item.name());
                row.value = switch (item.sort()) {
                    case FOUND -> item.about().get(0);
                    case MEASURED -> item.hint().contains("10 V") ? "0.4 V" : "121 V";
                    case NUMBER -> "17";
                    default -> "as it should be";
                };
                all.add(row);
            }
        }
        return all;
    }

    private static List<String> differences(Library library, String text) {
        Problems problems = new Problems();
        LogCheck.Checked checked = Papers.checkLog(library, text, problems).orElseThrow();
        assertEquals(List.of(), problems.sorted());
        return checked.differences().stream().map(d -> d.line() + ": " + d.words()).toList();
    }

    private static String csv(List<Row> rows) {
        StringBuilder text = new StringBuilder("step,what,time,by,item,value\n");
        rows.forEach(row -> text.append(row.csv()).append('\n'));
        return text.toString();
    }

    private static List<String> differences(Library library, Consumer<List<Row>> change) {
        List<Row> rows = filled(SHEETS.get(library));
        change.accept(rows);
        return differences(library, csv(rows));
    }

    private static Sheet.Line line(Library library, String words) {
        return SHEETS.get(library).lines().stream().filter(l -> l.words().contains(words)).findFirst().orElseThrow();
    }

    private static Row row(List<Row> rows, Sheet.Line line, String item) {
        return rows.stream().filter(r -> r.step.equals(line.id()) && r.item.startsWith(item) && r.item.isEmpty() == item.isEmpty()).findFirst().orElseThrow();
    }

    @Test
    void aLogFilledAsItShouldBeIsInOrder() {
        assertEquals(List.of(), differences(GENERATOR, rows -> {}));
        assertEquals(List.of(), differences(BANK, rows -> {}));
    }

    @Test
    void jsonSaysTheSameAsCsv() {
        List<Row> rows = filled(SHEETS.get(GENERATOR));
        row(rows, line(GENERATOR, "repeats K"), "number").value = "71";
        String json = "[\n" + String.join(",\n", rows.stream().map(Row::json).toList()) + "\n]\n";
        assertEquals(differences(GENERATOR, csv(rows)), differences(GENERATOR, json));
        assertEquals(1, differences(GENERATOR, json).size());
    }

    @Test
    void aNumberThatWasNotReadBackIsTold() {
        Sheet.Line repeats = line(GENERATOR, "repeats K");
        List<String> told = differences(GENERATOR, rows -> row(rows, repeats, "number").value = "71");
        assertEquals(1, told.size());
        assertTrue(told.get(0).contains("has the number 71, and K was issued as 17 in line"), told.toString());
        told = differences(GENERATOR, rows -> row(rows, repeats, "number").value = "");
        assertEquals(1, told.size());
        assertTrue(told.get(0).endsWith("has no “number of K”, so nothing shows that it was read back"), told.toString());
    }

    @Test
    void aMeasuredFigureOutsideItsLimitIsTold() {
        Sheet.Line volts = SHEETS.get(GENERATOR).lines().stream()
                .filter(l -> l.items().stream().anyMatch(i -> i.hint().contains("132 V"))).findFirst().orElseThrow();
        List<String> told = differences(GENERATOR, rows -> row(rows, volts, "the voltage").value = "140 V");
        assertEquals(1, told.size());
        assertTrue(told.get(0).contains("is 140 V; it must be at most 132 V. The crew stops"), told.toString());
        assertTrue(differences(GENERATOR, rows -> row(rows, volts, "the voltage").value = "0,12 kV").isEmpty());
        assertTrue(differences(GENERATOR, rows -> row(rows, volts, "the voltage").value = "120").get(0).endsWith("is no figure with a unit, such as 118 V"));
        assertTrue(differences(GENERATOR, rows -> row(rows, volts, "the voltage").value = "120 A").get(0).contains("is not what"));
    }

    @Test
    void stepsOutOfOrderAndLeftOpenAreToldAllAtOnce() {
        List<String> told = differences(GENERATOR, rows -> {
            Row request = row(rows, line(GENERATOR, "asks for K"), "");
            Row off = row(rows, line(GENERATOR, "linda opens forge-main"), "");
            int at = rows.indexOf(request);
            rows.remove(off);
            rows.add(at, off);
            String time = off.time;
            off.time = request.time;
            request.time = time;
            rows.remove(rows.size() - 1);
        });
        assertEquals(2, told.size(), told.toString());
        assertTrue(told.get(0).contains("is done out of order: first comes step") && told.get(0).contains("asks for K"), told.toString());
        assertTrue(told.get(1).startsWith("0: left open: step "), told.toString());
    }

    @Test
    void whatIsFoundDecidesWhichBranchIsAskedFor() {
        Sheet.Line sets = line(GENERATOR, "inspects \"ground sets\"");
        List<String> told = differences(GENERATOR, rows -> row(rows, sets, "ground sets").value = "doubtful");
        assertEquals(1, told.size(), told.toString());
        assertTrue(told.get(0).startsWith("0: left open: step ") && told.get(0).contains("takes others"), told.toString());
        told = differences(GENERATOR, rows -> row(rows, sets, "ground sets").value = "fine");
        assertTrue(told.get(0).endsWith("“ground sets” is found “fine”; it can be good or doubtful"), told.toString());
    }

    @Test
    void waitsThatWereCutShortAreTold() {
        List<Sheet.Line> waits = SHEETS.get(BANK).lines().stream().filter(l -> l.words().contains("waits 5 min")).toList();
        assertFalse(waits.isEmpty());
        Sheet.Line last = waits.get(waits.size() - 1);
        List<String> told = differences(BANK, rows -> {
            // The wait, and all that follows, four minutes sooner.
            List<Row> done = rows.stream().filter(r -> !r.time.isEmpty()).toList();
            int at = done.indexOf(row(rows, last, ""));
            for (int i = at; i < done.size(); i++) {
                done.get(i).time = LocalDateTime.parse(done.get(i).time).minusMinutes(4).toString();
            }
        });
        assertTrue(told.stream().anyMatch(t -> t.contains("waits for 5 min with cap-3 dead, but only 2 min lie between line")), told.toString());
    }

    @Test
    void countersAgreeWithWhatWasOpened() {
        Library recloser = new Reader().read(List.of(Path.of("procedures/recloser-out.procedure")));
        Sheet sheet = sheet(recloser);
        assertEquals(List.of(), differences(recloser, csv(filled(sheet))));
        List<Row> rows = filled(sheet);
        rows.stream().filter(r -> r.item.equals("counter of r-24 on B, after")).forEach(r -> r.value = "103");
        rows.stream().filter(r -> r.item.equals("counter of r-24 on C, after")).forEach(r -> r.value = "99");
        rows.stream().filter(r -> r.item.equals("input")).forEach(r -> r.value = "0123456789ab");
        List<String> told = differences(recloser, csv(rows));
        assertEquals(3, told.size(), told.toString());
        assertTrue(told.get(0).contains("was changed after the sheet was printed"), told.toString());
        assertTrue(told.get(1).contains("it went from 100 to 103, which is 3; by the steps it was opened 1 time. Did it operate by itself"), told.toString());
        assertTrue(told.get(2).contains("it went back, from 100 to 99"), told.toString());
    }

    @Test
    void linesThatNameNothingAreToldWithTheirNumbers() {
        List<String> told = differences(BANK, rows -> {
            rows.get(5).by = "nobody-known";
            rows.get(6).time = "8.15";
            rows.get(7).time = "";
            rows.get(7).value = "yes";
            rows.add(new Row("99", ""));
            rows.get(rows.size() - 1).time = "2026-03-02T23:00";
            rows.add(new Row("1", "colour of the truck"));
            rows.get(rows.size() - 1).value = "white";
            rows.add(rows.get(5));
        });
        assertEquals(6, told.size(), told.toString());
        assertTrue(told.get(0).startsWith("7: step ") && told.get(0).contains("not for nobody-known"), told.toString());
        assertEquals("8: “8.15” is no time; write it like 2026-03-02T08:15", told.get(1));
        assertTrue(told.get(2).startsWith("9: step ") && told.get(2).endsWith(" has no time"), told.toString());
        assertTrue(told.get(3).contains("there is no step “99”; the steps go from 1 to"), told.toString());
        assertTrue(told.get(4).contains("has no “colour of the truck”"), told.toString());
        assertTrue(told.get(5).contains("is written as done already in line 7"), told.toString());
    }

    @Test
    void whatIsNoLogIsToldAsSuch() {
        assertEquals(List.of("1: there is no column “time”; the first line names the columns: step,what,time,by,item,value"),
                only("step,by,item,value\n1,,,\n"));
        assertEquals(1, only("[{\"step\":\"1\"},\n {\"stp\":\"2\"}]").size());
        assertTrue(only("[{\"step\":\"1\"},\n {\"stp\":\"2\"}]").get(0).startsWith("2: nothing is called “stp” in a log"));
        assertTrue(only("[{\"step\":\"1\",\n").get(0).contains("this is not the JSON of a log"));
        assertTrue(only("step,what,time,by,item,value\n1,,\"2026").get(0).contains("this is not the CSV of a log"));
    }

    private static List<String> only(String text) {
        return LogReader.of(text).mistakes().stream().map(d -> d.line() + ": " + d.words()).toList();
    }

    @Test
    void semicolonsAndAMarkOfTheByteOrderAreRead() {
        String text = "\uFEFFstep;what;time;by;item;value\n1;;2026-03-02T08:00;linda;;\n";
        assertEquals(List.of(), only(text));
        assertEquals(new Entry(2, "1", "2026-03-02T08:00", "linda", "", ""), LogReader.of(text).entries().get(0));
    }

    @Test
    void blankSheetsTellEveryStepAndAskForEveryRecord() {
        for (Sheet sheet : SHEETS.values()) {
            String page = SheetPage.of(sheet, LocalDate.of(2026, 3, 2));
            String text = Pages.parsed(page).getDocumentElement().getTextContent();
            sheet.lines().forEach(line -> {
                assertTrue(text.contains(line.words()), line.words());
                line.items().forEach(item -> assertTrue(text.contains(item.name()), item.name()));
            });
            LogReader.Read csv = LogReader.of(SheetPage.csv(sheet));
            LogReader.Read json = LogReader.of(SheetPage.json(sheet));
            assertEquals(List.of(), csv.mistakes());
            assertEquals(List.of(), json.mistakes());
            // Only what is known before the job is filled.
            assertEquals(2, csv.entries().size());
            assertEquals(2, json.entries().size());
        }
    }
}
