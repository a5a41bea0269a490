package org.keeplit.drill;

import com.google.gson.Gson;
import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.keeplit.page.Html;
import org.keeplit.page.Screen;
import org.keeplit.procedure.Procedure;

/** Writes a drill as one page that stands alone, and the trainer's answer sheet. The same drill gives the same bytes. */
public final class DrillPage {
    private static final String CAUTION = "A drill is about the model. It does not replace local rules, the utility's safety manual, training under "
            + "qualified supervision or the person in charge.";

    private DrillPage() {}

    /** {@return the page for the trainee} @param drill the drill @param date the date that stands on it */
    public static String of(Drill drill, LocalDate date) {
        String title = "Drill: " + drill.instance().words();
        String body = head(drill, title, date)
                + "<main><p><label><input type=\"checkbox\" id=\"hints\"/> Hints</label></p>"
                + "<p id=\"where\" class=\"note\"></p><div id=\"then\" class=\"note\"></div><section id=\"scene\" aria-label=\"How things stand\"></section>"
                + "<h2 id=\"ask\" tabindex=\"-1\">What comes next?</h2><ul id=\"hint\"></ul><ol id=\"options\"></ol>"
                + "<div id=\"came\" aria-live=\"polite\"></div><div id=\"end\"></div></main>"
                + "<p class=\"note\">In pictures boxed: changed. Solid: live. Dashed: dead. Dotted: grounded. Dash and dot: may be live.</p>"
                + "<p class=\"note keys\">Keys: a number picks, Enter goes on, H shows hints or hides them.</p>"
                // This way the library writes the less-than sign and its like as escapes, so that no text can end the script.
                + "<script type=\"application/json\" id=\"drill\">" + new Gson().toJson(json(drill)) + "</script>\n";
        return Screen.page(
                title, Screen.resource(DrillPage.class, "drill.css"), body, Screen.resource(DrillPage.class, "drill.js"));
    }

    private static String head(Drill drill, String title, LocalDate date) {
        Procedure procedure = drill.instance().procedure();
        return "<header><h1>" + Html.text(title) + "</h1><p>" + Html.text(procedure.title()) + "</p><p class=\"note\">"
                + Html.text("Revision " + procedure.revision() + ", network " + drill.instance().network().name() + ", input " + drill.hash() + ", "
                        + date + ". " + drill.proof().words())
                + "</p><p class=\"note\"><b>" + Html.text(CAUTION) + "</b></p></header>\n";
    }

    private static JsonObject json(Drill drill) {
        JsonObject all = new JsonObject();
        all.addProperty("name", drill.instance().words());
        JsonArray places = new JsonArray();
        drill.places().forEach(place -> places.add(json(place)));
        all.add("start", json(drill.start()));
        all.add("places", places);
        all.add("pictures", array(drill.pictures()));
        return all;
    }

    private static JsonArray array(List<String> texts) {
        JsonArray all = new JsonArray();
        texts.forEach(all::add);
        return all;
    }

    private static JsonObject json(Drill.Next next) {
        JsonObject all = new JsonObject();
        all.addProperty("place", next.place());
        all.addProperty("found", next.found().orElse(""));
        all.add("then", array(next.then()));
        return all;
    }

    private static JsonObject json(Drill.Place place) {
        JsonObject all = new JsonObject();
        all.addProperty("done", place.done());
        all.add("people", array(place.people()));
        all.addProperty("picture", place.picture());
        all.add("hint", array(place.hint()));
        JsonArray options = new JsonArray();
        place.options().forEach(option -> options.add(json(option)));
        all.add("options", options);
        return all;
    }

    private static JsonObject json(Drill.Option option) {
        JsonObject all = new JsonObject();
        all.addProperty("words", option.words());
        all.addProperty("right", option.isRight());
        all.addProperty("ending", option.ending().name().toLowerCase(Locale.ROOT));
        all.addProperty("endingWords", option.ending().words());
        all.add("now", array(option.now()));
        all.add("told", array(DrillWords.told(option)));
        all.addProperty("cost", DrillWords.cost(option));
        all.addProperty("customers", option.customers());
        all.addProperty("by", option.by());
        all.addProperty("picture", option.picture());
        JsonArray next = new JsonArray();
        option.next().forEach(n -> next.add(json(n)));
        all.add("next", next);
        return all;
    }

    /** {@return the answer sheet: each place on the way as written with all its options} @param drill the drill @param date the date that stands on it */
    public static String answers(Drill drill, LocalDate date) {
        String title = "Answers: " + drill.instance().words();
        StringBuilder html = new StringBuilder(head(drill, title, date)).append("<main><p>For the trainer. Places in the order of the text at which something can go wrong; where the "
                + "procedure leaves the order free, the trainee may come by others, with choices of the same kind.</p>");
        for (Drill.Place place : drill.places()) {
            if (place.asWritten() && place.isAsked()) {
                place(place, html);
            }
        }
        return Screen.page(title, Screen.resource(DrillPage.class, "drill.css"), html.append("</main>").toString(), "");
    }

    private static void place(Drill.Place place, StringBuilder html) {
        html.append("<section class=\"place\"><h2>After ").append(place.done()).append(place.done() == 1 ? " step" : " steps").append("</h2><table>")
                .append("<tr><th scope=\"col\">pick</th><th scope=\"col\">comes out as</th><th scope=\"col\">why</th></tr>");
        for (int i = 0; i < place.options().size(); i++) {
            Drill.Option option = place.options().get(i);
            html.append("<tr><td>").append(i + 1).append(". ").append(option.isRight() ? "<b>" : "").append(Html.text(option.words()))
                    .append(option.isRight() ? "</b>" : "").append("</td><td>").append(Html.text(option.ending().words())).append("</td><td>")
                    .append(Html.text(option.isRight() ? String.join("; ", option.now()) : String.join(" ", DrillWords.told(option))))
                    .append("</td></tr>");
        }
        html.append("</table><p class=\"note\">").append(Html.text(place.hint().stream().skip(1).collect(Collectors.joining(" ")))).append("</p></section>\n");
    }
}
