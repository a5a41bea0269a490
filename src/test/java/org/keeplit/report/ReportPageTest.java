package org.keeplit.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.keeplit.condition.Truth;
import org.keeplit.explore.Frame;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.TraceStep;
import org.keeplit.outcome.Watcher;
import org.keeplit.page.Browser;
import org.keeplit.page.Pages;
import org.keeplit.page.SmallJob;
import org.keeplit.paper.Papers;
import org.keeplit.text.Problems;
import org.keeplit.verdict.Judgement;

/** A report against what an exploration found, and its page in a browser. */
class ReportPageTest {
    private static final LocalDate DATE = LocalDate.of(2026, 3, 2);

    private static ProofReport report(String steps) {
        Problems problems = new Problems();
        List<ProofReport> all = Papers.report(SmallJob.of(steps), Limits.USUAL, Watcher.NOBODY, problems);
        assertEquals(List.of(), problems.sorted());
        return all.get(0);
    }

    private static final ProofReport HOLDS = report("""
              bypass: op closes bridge
              together
                hand goes aloft at main
                op does "looks up"
              end
              opening: op opens main on all phases
              gasket: hand inspects "gasket", finds "good" or "wet"
              if "gasket" is found "wet"
                hand does "dries it"
              end
            """);

    private static final ProofReport BROKEN = report("  opening: op opens main on all phases\n");

    @Test
    void theWayAsWrittenIsTheTextAndEveryBranchIsOnAWay() {
        assertEquals(Judgement.Status.HOLDS, HOLDS.judgement().status());
        assertEquals(2, HOLDS.ways().size());
        List<String> acts = HOLDS.ways().get(0).frames().stream()
                .flatMap(f -> f.step().stream())
                .map(s -> s.actor() + " " + s.text())
                .toList();
        assertEquals("op closes bridge", acts.get(0));
        assertEquals(List.of("op opens main on phase A", "op opens main on phase B", "op opens main on phase C"), acts.subList(3, 6));
        assertTrue(HOLDS.ways().stream().flatMap(w -> w.frames().stream()).flatMap(f -> f.step().stream())
                .map(TraceStep::text).anyMatch("dries it"::equals));
    }

    /** In other orders the hand is already aloft when the other looks up, or not yet. */
    @Test
    void whoMayBeWhereIsToldOfEveryOrder() {
        Frame looking = HOLDS.ways().get(0).frames().stream()
                .filter(f -> f.step().map(s -> s.text().equals("looks up")).orElse(false))
                .findFirst()
                .orElseThrow();
        assertEquals(2, HOLDS.whereabouts().of("hand", looking.act()).size());
        assertEquals(1, HOLDS.whereabouts().of("op", looking.act()).size());
    }

    /** Of 300 kW and 30 kvar at 12.47 kV, sqrt(300^2 + 30^2) / (sqrt(3) 12.47) A = 13.96 A flow, a little more with the losses. */
    @Test
    void figuresStandBesideTheirLimits() {
        Frame start = HOLDS.ways().get(0).frames().get(0);
        Frame.Limited main = start.limits().stream().filter(l -> l.words().contains("through main")).findFirst().orElseThrow();
        assertEquals("50 A", main.beside().limit());
        assertEquals(13.96, Double.parseDouble(main.beside().figure().replace(" A", "")), 0.1);
        assertEquals(13.96 / 50, main.beside().share(), 0.003);
        assertEquals(Truth.TRUE, main.truth());
        assertTrue(start.rules().stream().allMatch(j -> j.truth() == Truth.TRUE && !j.atAct()));
        Frame opened = HOLDS.ways().get(0).frames().stream()
                .filter(f -> f.step().map(s -> s.step().equals("opening")).orElse(false))
                .findFirst()
                .orElseThrow();
        assertEquals(List.of("bridged"), opened.rules().stream().filter(Frame.Judged::atAct).map(j -> j.rule().name()).toList());
    }

    @Test
    void ofWhatBreaksThereIsTheStory() {
        assertEquals(BROKEN.judgement().outcome().findings().size(), BROKEN.ways().size());
        for (ProofReport.Way way : BROKEN.ways()) {
            assertEquals(
                    way.finding().orElseThrow().trace(),
                    way.frames().stream().flatMap(f -> f.step().stream()).toList());
        }
        String page = ReportPage.of(BROKEN, DATE);
        assertTrue(page.contains("main opens with no bridge on phase A") || page.contains("Main opens with no bridge on phase A"));
        assertTrue(page.contains("Loses supply: 12 customers: mill on phase A"), page);
        assertTrue(page.contains("NOT PROVED"));
        assertEquals(12, BROKEN.ways().get(0).frames().get(1).without());
    }

    @Test
    void aPageIsWellFormedAndWhatFilesSayIsText() {
        for (ProofReport report : List.of(HOLDS, BROKEN)) {
            String page = ReportPage.of(report, DATE);
            Pages.parsed(page);
            assertFalse(page.contains("<script>alert"));
            assertFalse(page.contains("<i>only"));
            assertEquals(page, ReportPage.of(report, DATE));
        }
    }

    @Test
    void inABrowserItOpensAndStepsWithNoErrorAndNoRequest() {
        assumeTrue(Browser.chromium().isPresent(), "there is no Chromium on the path, so no page is opened in one");
        try (Browser browser = new Browser(ReportPage.of(HOLDS, DATE))) {
            String shown = "Array.from(document.querySelectorAll('.frame')).filter(f => f.offsetParent).map(f => f.id).join()";
            assertEquals("w0-0", browser.run(shown));
            browser.press("ArrowRight");
            assertEquals("w0-1", browser.run(shown));
            assertTrue(browser.run("document.getElementById('said').textContent").startsWith("1 of 8: op closes bridge. bridge closed"));
            browser.run("document.getElementById('last').click()");
            assertEquals("w0-8", browser.run(shown));
            assertEquals("true", browser.run("document.getElementById('on').disabled"));
            browser.press("p");
            browser.press("p");
            // The step before the last two: its first act, of three.
            assertEquals("op opens main on phase A", browser.run("document.querySelector('.list a[aria-current]').textContent"));
            browser.press("n");
            assertEquals("hand inspects \"gasket\" and finds \"good\"", browser.run("document.querySelector('.list a[aria-current]').textContent"));
            browser.press("Home");
            browser.run("(() => { const c = document.getElementById('choice'); c.value = '1'; c.dispatchEvent(new Event('change')); })()");
            assertEquals("w1-0", browser.run(shown));
            browser.run("document.querySelectorAll('.way:not([hidden]) .list a')[2].click()");
            assertEquals("w1-2", browser.run(shown));
            assertEquals("polite", browser.run("document.getElementById('said').getAttribute('aria-live')"));
            assertEquals(List.of(), browser.complaints());
            assertEquals(List.of(), browser.requests());
        }
    }
}
