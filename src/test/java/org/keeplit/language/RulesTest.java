package org.keeplit.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Moment;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Predicate;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;
import org.keeplit.network.Phases;
import org.keeplit.condition.ActKind;
import org.keeplit.rule.Rule;
import org.keeplit.rule.Template;
import org.keeplit.rule.Trigger;

/** What the sample rulebooks say, as typed trees. */
class RulesTest {
    private final Library library = Samples.library();

    private Rule rule(String book, String name) {
        return library.rulebooks().get(book).rules().stream()
                .filter(r -> r.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private Rule rule(String name) {
        return rule("every-condition", name);
    }

    private static Condition.Atom atom(Condition condition) {
        return assertInstanceOf(Condition.Atom.class, condition);
    }

    private static Condition.Atom not(Condition condition) {
        return atom(assertInstanceOf(Condition.Not.class, condition).body());
    }

    @Test
    void alwaysEveryBindsForTheWholeRule() {
        Rule rule = rule("no-interruption", "load-stays-supplied");
        assertEquals(Rule.Form.ALWAYS, rule.form());
        assertEquals(
                List.of("L"),
                rule.binders().stream().map(Condition.Binder::variable).toList());
        assertEquals(Predicate.SUPPLIED, atom(rule.body()).predicate());
        assertEquals(Predicate.OUTAGE_PLANNED, atom(rule.unless().orElseThrow()).predicate());
        assertEquals(
                List.of(
                        new Template.Gap("", "L"),
                        new Template.Text(", "),
                        new Template.Gap("customers", "L"),
                        new Template.Text(", loses supply")),
                rule.says().parts());
        assertEquals(Optional.empty(), rule.citation());
    }

    @Test
    void beforeAnActBindsWhatTakesPart() {
        Rule rule = rule("no-interruption", "open-only-what-is-bypassed");
        Trigger trigger = rule.triggers().get(0);
        assertEquals(ActKind.OPENING, trigger.act());
        assertEquals("D", trigger.binders().get(0).variable());
        assertEquals(Optional.of("P"), trigger.phase());
        Condition.One one = assertInstanceOf(Condition.One.class, rule.body());
        Condition.Atom duty = atom(one.parts().get(2));
        assertEquals(Predicate.OPENING_DUTY, duty.predicate());
        assertEquals(6, duty.words().size());
        assertEquals("capacitor bank", duty.words().get(5));
        assertEquals(new PhaseTerm.Variable("P"), duty.phase());
        assertEquals(
                Optional.of("29 CFR 1910.269 (l)(12)(i)"),
                rule("no-interruption", "breaks-within-duty").citation());
    }

    @Test
    void whileBindsByAny() {
        Rule rule = rule("live-line", "feeding-devices-do-not-reclose");
        assertEquals(Rule.Form.WHILE, rule.form());
        assertEquals(
                List.of("W", "S"),
                rule.binders().stream().map(Condition.Binder::variable).toList());
        assertEquals(Predicate.ALOFT, atom(rule.scope().orElseThrow()).predicate());
        Condition.One one = assertInstanceOf(Condition.One.class, rule.body());
        assertEquals(Predicate.LIVE_SITE, not(one.parts().get(0)).predicate());
        Condition.Quantified every =
                assertInstanceOf(Condition.Quantified.class, one.parts().get(1));
        assertEquals(Predicate.FEEDS, atom(every.binder().such().orElseThrow()).predicate());
        assertEquals(List.of("reclosing", "blocked"), atom(every.body()).words());
    }

    @Test
    void neverIsAlwaysNot() {
        Rule rule = rule("never-with");
        assertEquals(Rule.Form.ALWAYS, rule.form());
        assertEquals(
                List.of("D", "J"),
                rule.binders().stream().map(Condition.Binder::variable).toList());
        Condition.All all = assertInstanceOf(
                Condition.All.class,
                assertInstanceOf(Condition.Not.class, rule.body()).body());
        assertEquals(new PhaseTerm.Given(Phases.ABC), atom(all.parts().get(0)).phase());
        assertEquals(Predicate.ALOFT, not(rule("never-any").body()).predicate());
        assertEquals(2, rule("never-any").binders().size());
    }

    @Test
    void severalMomentsShareTheirVariables() {
        Rule rule = rule("opening-or-closing");
        assertEquals(
                List.of(ActKind.OPENING, ActKind.CLOSING),
                rule.triggers().stream().map(Trigger::act).toList());
        assertEquals(Optional.of("W"), rule.triggers().get(1).by());
        assertEquals(
                Set.of("recloser"),
                rule.triggers().get(1).binders().get(0).noun().kinds());
        assertEquals(
                List.of("ground-trip", "on"), rule("setting").triggers().get(0).words());
        assertEquals(ActKind.TAPPING, rule("neutral").triggers().get(0).act());
        assertEquals(ActKind.EARTHING, rule("earth").triggers().get(0).act());
        assertEquals(ActKind.LIFTING, rule("lead").triggers().get(0).act());
        Trigger aloft = rule("aloft").triggers().get(0);
        assertEquals(
                List.of("W", "S"),
                aloft.binders().stream().map(Condition.Binder::variable).toList());
    }

    @Test
    void aDeviceWhereASiteIsAskedForMeansItsSite() {
        Condition.One one =
                assertInstanceOf(Condition.One.class, rule("opening-or-closing").body());
        Condition.Quantified no =
                assertInstanceOf(Condition.Quantified.class, one.parts().get(0));
        Condition.All all = assertInstanceOf(Condition.All.class, no.body());
        Term site = atom(all.parts().get(1)).terms().get(1);
        assertEquals(Type.SITE, site.type());
        assertEquals("the site of D", site.toString());
    }

    @Test
    void theStartTheEndAndTheQuestionsInQuotes() {
        assertEquals(Rule.Form.AT_START, rule("start").form());
        assertEquals(Rule.Form.AT_END, rule("ending").form());
        Condition.One one = assertInstanceOf(Condition.One.class, rule("start").body());
        Condition.Quantified waited =
                assertInstanceOf(Condition.Quantified.class, one.parts().get(0));
        assertEquals(List.of("300"), atom(waited.body()).words());
        Condition.All earth =
                assertInstanceOf(Condition.All.class, rule("earth").body());
        assertEquals(List.of("grounds inspected"), atom(earth.parts().get(0)).words());
        assertEquals(List.of("grounds", "good"), atom(earth.parts().get(1)).words());
    }

    @Test
    void phasesOfAnObjectAndOnAnyPhase() {
        Condition.Binder phase = rule("for-any").binders().get(1);
        assertEquals(Type.PHASE, phase.noun().type());
        assertEquals("D", phase.of().orElseThrow().toString());
        Rule left = rule("good-housekeeping", "nothing-left-behind");
        Condition.Quantified every = assertInstanceOf(Condition.Quantified.class, left.body());
        Condition.Quantified some = assertInstanceOf(
                Condition.Quantified.class,
                assertInstanceOf(Condition.Not.class, every.body()).body());
        assertEquals(Condition.Quantifier.SOME, some.quantifier());
        assertEquals("J", some.binder().of().orElseThrow().toString());
        assertEquals(
                new PhaseTerm.Variable(some.binder().variable()),
                atom(some.body()).phase());
    }

    @Test
    void nestedBlocks() {
        Condition.All all = assertInstanceOf(Condition.All.class, rule("down").body());
        Condition.One one = assertInstanceOf(Condition.One.class, all.parts().get(1));
        assertEquals(2, one.parts().size());
        assertTrue(one.parts().get(0) instanceof Condition.Quantified q && q.quantifier() == Condition.Quantifier.NO);
    }

    @Test
    void aStretchBindsWithItsFirstMomentAndNamesTheSecond() {
        Rule rule = rule("past", "tag-while-open");
        assertEquals(Rule.Form.BETWEEN, rule.form());
        assertEquals(Rule.Severity.CAUTION, rule.severity());
        assertEquals("D", rule.triggers().get(0).binders().get(0).variable());
        Moment end = rule.until().get(0);
        assertEquals(ActKind.CLOSING, end.act());
        assertEquals(Optional.of(new PhaseTerm.Variable("P")), end.phase());
        assertEquals("D", assertInstanceOf(Moment.The.class, end.participants().get(0)).term().toString());
        assertTrue(rule("past", "nothing-before-the-briefing").triggers().isEmpty());
        assertTrue(rule("past", "jumper-to-the-end").until().isEmpty());
    }

    @Test
    void whatMustComeIsAMomentOrACondition() {
        Rule moment = rule("past", "comes-off-again");
        assertEquals(Rule.Form.EVENTUALLY, moment.form());
        assertEquals(ActKind.UNCLAMPING, moment.until().get(0).act());
        Rule condition = rule("past", "closed-at-last");
        assertTrue(condition.until().isEmpty());
        assertEquals(Predicate.CLOSED, atom(condition.body()).predicate());
    }

    @Test
    void thePastIsAskedForByMoments() {
        Condition.Happened happened = assertInstanceOf(Condition.Happened.class, rule("past", "briefed-again").body());
        assertEquals(List.of("job briefing"), happened.moments().get(0).words());
        assertEquals(
                List.of(ActKind.GOING_ALOFT, ActKind.COMING_DOWN),
                happened.since().stream().map(Moment::act).toList());
        Condition.Since since = assertInstanceOf(Condition.Since.class, rule("past", "open-since").body());
        assertInstanceOf(Condition.Quantified.class, since.body());
    }

    @Test
    void numbersCountInWordsDigitsAndByParameters() {
        List<Condition> all =
                assertInstanceOf(Condition.All.class, rule("past", "counts").body()).parts();
        Condition.Counted two = assertInstanceOf(Condition.Counted.class, all.get(0));
        assertEquals(2, two.least());
        assertEquals(Integer.MAX_VALUE, two.most());
        assertEquals(1, assertInstanceOf(Condition.Counted.class, all.get(1)).most());
        Condition.Counted dead = assertInstanceOf(Condition.Counted.class, all.get(2));
        assertEquals(0, dead.least());
        assertEquals(List.of("300"), atom(dead.body()).words());
        assertEquals(
                2, assertInstanceOf(Condition.Counted.class, rule("past", "enough-people").body()).least());
    }

    @Test
    void aBookThatExtendsTakesOverWhatItDoesNotOverride() {
        var book = library.rulebooks().get("stricter");
        assertEquals(List.of("past"), book.extended());
        assertEquals(10, book.parameters().get("sharing-voltage").si());
        assertEquals(20, library.rulebooks().get("past").parameters().get("sharing-voltage").si());
        assertEquals(
                List.of("closed-at-last", "enough-people"),
                book.overridden().stream().map(o -> o.rule()).toList());
        assertTrue(book.rules().stream().noneMatch(r -> r.name().equals("closed-at-last")));
        Condition.Counted people = assertInstanceOf(Condition.Counted.class, rule("stricter", "enough-people").body());
        assertEquals(4, people.least());
        assertEquals("one-more", book.rules().get(book.rules().size() - 1).name());
    }

    @Test
    void whatARuleAppliesToNarrowsItsVariablesAndItsScope() {
        Rule rule = rule("past", "named");
        assertEquals(
                Set.of("recloser", "breaker"),
                rule.triggers().get(0).binders().get(0).noun().kinds());
        List<Condition> scope = assertInstanceOf(Condition.All.class, rule.scope().orElseThrow()).parts();
        assertEquals(List.of("above", "600"), atom(scope.get(0)).words());
        assertEquals(2, assertInstanceOf(Condition.One.class, scope.get(1)).parts().size());
        Condition.Named named = assertInstanceOf(
                Condition.Named.class, assertInstanceOf(Condition.Not.class, rule.body()).body());
        assertEquals(List.of("D", "P"), named.arguments().stream().map(Condition.Argument::parameter).toList());
    }
}
