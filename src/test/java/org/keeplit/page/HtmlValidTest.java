package org.keeplit.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.FutureTask;
import nu.validator.client.EmbeddedValidator;
import org.junit.jupiter.api.Test;
import org.keeplit.card.CardPages;
import org.keeplit.card.Paper;
import org.keeplit.drill.Drill;
import org.keeplit.drill.DrillPage;
import org.keeplit.language.Library;
import org.keeplit.log.SheetPage;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Watcher;
import org.keeplit.paper.Papers;
import org.keeplit.report.ReportPage;
import org.keeplit.text.Problems;

/**
 * Every kind of page is valid HTML, by the checker that the W3C runs for everyone (the Nu Html Checker). Its notes on slashes in void
 * elements do not count: pages are well-formed XML at once, which the makers of PDF read.
 */
class HtmlValidTest {
    private static final LocalDate DATE = LocalDate.of(2026, 3, 2);

    private static final String HOLDS = """
              bypass: op closes bridge
                caution "Keep clear of the bridge: 0.3 mohm to 3 \u03a9."
                records "amperes \u2713"
              opening: op opens main on all phases
                requires main is bypassed
                expects main is open
                because "The bridge carries the load."
              up: hand goes aloft at main
              hand comes down
            """;

    private static final String BROKEN = """
              opening: op opens main on all phases
              op closes bridge
            """;

    @Test
    void everyKindOfPageIsValid() throws Exception {
        Map<String, String> pages = pages("holds", SmallJob.of(HOLDS));
        pages.putAll(pages("broken", SmallJob.of(BROKEN)));
        for (String kind : List.of("crew", "role-op", "desk-desk", "report", "drill", "answers", "log")) {
            assertTrue(pages.containsKey("holds " + kind), pages.keySet().toString());
        }
        assertTrue(pages.containsKey("broken report") && pages.containsKey("broken crew"), pages.keySet().toString());
        List<String> wrong = new ArrayList<>();
        for (Map.Entry<String, String> page : pages.entrySet()) {
            problems(page.getValue()).forEach(p -> wrong.add(page.getKey() + ": " + p));
        }
        assertEquals(List.of(), wrong);
    }

    @Test
    void theCheckerFindsWhatIsWrong() throws Exception {
        String page = Screen.page("A page", "", "<main><h1>One</h1><p><ul><li>x</li></ul></p><img src=\"data:,\"/></main>", "");
        assertFalse(problems(page).isEmpty());
    }

    private static Map<String, String> pages(String name, Library library) {
        Map<String, String> all = new LinkedHashMap<>();
        Problems problems = new Problems();
        Papers.cards(library, Limits.USUAL, Watcher.NOBODY, problems).forEach(set ->
                Pages.html(CardPages.files(set, DATE, Paper.A5, told -> {})).forEach((file, page) -> all.put(name + " " + file.replace(".html", ""), page)));
        Papers.report(library, Limits.USUAL, Watcher.NOBODY, problems).forEach(one -> all.put(name + " report", ReportPage.of(one, DATE)));
        for (Drill drill : Papers.drill(library, Limits.USUAL, Watcher.NOBODY, problems)) {
            if (!drill.places().isEmpty()) {
                all.put(name + " drill", DrillPage.of(drill, DATE));
                all.put(name + " answers", DrillPage.answers(drill, DATE));
            }
        }
        Papers.sheets(library, Limits.USUAL, Watcher.NOBODY, problems).forEach(sheet -> all.put(name + " log", SheetPage.of(sheet, DATE)));
        assertEquals(List.of(), problems.sorted());
        return all;
    }

    /** {@return errors and warnings} */
    private static List<String> problems(String page) throws Exception {
        EmbeddedValidator validator = new EmbeddedValidator();
        validator.setForceHTML(true);
        validator.setNoLangDetect(true);
        validator.setOutputFormat(EmbeddedValidator.OutputFormat.JSON);
        String said = withDeepStack(() -> validator.validate(new ByteArrayInputStream(page.getBytes(StandardCharsets.UTF_8))));
        List<String> all = new ArrayList<>();
        for (JsonElement one : JsonParser.parseString(said).getAsJsonObject().getAsJsonArray("messages")) {
            JsonObject message = one.getAsJsonObject();
            String words = message.get("message").getAsString();
            if (!words.startsWith("Trailing slash on void elements")) {
                all.add(message.get("type").getAsString() + " " + words + " " + message.get("extract"));
            }
        }
        return all;
    }

    /** The checker reads its schemas by recursion, deeper than a usual stack where code is little optimized. */
    private static <T> T withDeepStack(Callable<T> work) throws Exception {
        FutureTask<T> task = new FutureTask<>(work);
        new Thread(null, task, "checker", 16 << 20).start();
        return task.get();
    }
}
