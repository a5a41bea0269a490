package org.keeplit.log;

import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.keeplit.page.Html;
import org.keeplit.page.Proof;
import org.keeplit.page.Screen;
import org.keeplit.procedure.Procedure;

/** Writes blank log sheets: to print, and as files to fill. The same sheet gives the same bytes. */
public final class SheetPage {
    private static final String CAUTION = "This sheet does not replace local rules, the utility's safety manual or the person in charge.";

    private SheetPage() {}

    /** {@return the sheet to print} @param sheet the sheet @param date the date that stands on it */
    public static String of(Sheet sheet, LocalDate date) {
        Procedure procedure = sheet.instance().procedure();
        String title = "Log: " + sheet.instance().words();
        StringBuilder html = new StringBuilder();
        if (sheet.proof() != Proof.HOLDS) {
            html.append(Html.tag("p", "bar", Html.text(sheet.proof().words())));
        }
        html.append("<h1>").append(Html.text(title)).append("</h1><p>").append(Html.text(procedure.title())).append("</p><h2>The whole job</h2><table>");
        sheet.whole().forEach(item -> html.append("<tr><td class=\"name\">").append(Html.text(item.name())).append("</td><td>")
                .append(Html.text(known(sheet, item))).append("</td></tr>"));
        html.append("<tr><td class=\"name\">day, weather, people</td><td></td></tr></table><h2>Step by step</h2><table class=\"steps\"><thead><tr>"
                        + "<th colspan=\"5\" class=\"head\">")
                .append(Html.text(procedure.name() + " revision " + procedure.revision() + ", network " + sheet.instance().network().name()
                        + ", input " + sheet.hash() + ", " + date + ". " + sheet.proof().words() + " " + CAUTION))
                .append("</th></tr><tr><th>step</th><th>what</th><th>who</th><th>done at</th><th>to write down</th></tr></thead><tbody>");
        sheet.lines().forEach(line -> line(line, html));
        html.append("</tbody></table><p class=\"last\">Checked by: <span class=\"blank\"></span> at: <span class=\"blank\"></span></p>");
        return Screen.page(title, Screen.resource(SheetPage.class, "sheet.css"), html.toString(), "");
    }

    private static void line(Sheet.Line line, StringBuilder html) {
        html.append("<tr><td>").append(Html.text(line.id())).append("</td><td>").append(Html.text(line.words())).append("</td><td>")
                .append(Html.text(String.join(", ", line.who()))).append("</td><td><span class=\"box\"></span></td><td>");
        line.items().forEach(item -> html.append("<p>").append(Html.text(item.name() + (item.hint().isEmpty() ? "" : " (" + item.hint() + ")")))
                .append(":</p><div class=\"fill\"></div>"));
        html.append("</td></tr>\n");
    }

    /** {@return what is known before anything is done} */
    private static String known(Sheet sheet, Sheet.Item item) {
        return item.name().equals(Sheet.JOB) ? sheet.instance().words() : item.name().equals(Sheet.INPUT) ? sheet.hash() : "";
    }

    /** {@return the rows of a file to fill} */
    private static List<List<String>> rows(Sheet sheet) {
        List<List<String>> all = new ArrayList<>();
        sheet.whole().forEach(item -> all.add(List.of("", "", "", "", item.name(), known(sheet, item))));
        for (Sheet.Line line : sheet.lines()) {
            all.add(List.of(line.id(), line.words(), "", String.join(" and ", line.who()), "", ""));
            line.items().forEach(item -> all.add(List.of(line.id(), "", "", "", item.name(), "")));
        }
        return all;
    }

    /** {@return the sheet as CSV to fill} @param sheet the sheet */
    public static String csv(Sheet sheet) {
        StringWriter out = new StringWriter();
        CSVFormat format = CSVFormat.DEFAULT.builder()
                .setHeader(LogReader.COLUMNS.toArray(String[]::new))
                .setRecordSeparator("\n")
                .get();
        try (CSVPrinter printer = new CSVPrinter(out, format)) {
            for (List<String> row : rows(sheet)) {
                printer.printRecord(row.stream().map(LogReader::cell).toList());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toString();
    }

    /** {@return the sheet as JSON to fill} @param sheet the sheet */
    public static String json(Sheet sheet) {
        JsonArray all = new JsonArray();
        for (List<String> row : rows(sheet)) {
            JsonObject one = new JsonObject();
            for (int i = 0; i < row.size(); i++) {
                boolean fill = i >= 2 && (i == 2 || i == 3) == row.get(4).isEmpty();
                if (fill || !row.get(i).isEmpty()) {
                    one.addProperty(LogReader.COLUMNS.get(i), row.get(i));
                }
            }
            all.add(one);
        }
        return new GsonBuilder().setPrettyPrinting().disableHtmlEscaping().create().toJson(all) + "\n";
    }
}
