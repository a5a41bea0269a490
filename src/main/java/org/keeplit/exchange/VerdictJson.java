package org.keeplit.exchange;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.function.Predicate;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.RuleResult;
import org.keeplit.outcome.RuleSeen;
import org.keeplit.rule.Overridden;
import org.keeplit.verdict.Basis;
import org.keeplit.verdict.Coverage;
import org.keeplit.verdict.ExampleJudgement;
import org.keeplit.verdict.Judgement;
import org.keeplit.verdict.TextReport;

/** Verdicts, examples and explanations as JSON. */
final class VerdictJson {
    private VerdictJson() {}

    static void checks(Answer.Checks answer, Tree tree) {
        Tree counts = new Tree();
        for (Judgement.Status status : Judgement.Status.values()) {
            counts.put(Shared.word(status), count(answer.all(), j -> j.status() == status));
        }
        tree.put("counts", counts.done());
        if (answer.all().stream().anyMatch(j -> j.outcome().loadFlows() > 0)) {
            tree.put("figures", TextReport.FIGURES.replace('\n', ' '));
        }
        tree.list("checks", answer.all(), VerdictJson::check);
    }

    private static <T> long count(Iterable<T> all, Predicate<T> which) {
        long count = 0;
        for (T one : all) {
            count += which.test(one) ? 1 : 0;
        }
        return count;
    }

    private static JsonElement check(Judgement one) {
        return judgement(one, Shared.place(one.instance())).done();
    }

    private static Tree judgement(Judgement one, Tree tree) {
        tree.put("status", Shared.word(one.status()))
                .put("basis", basis(one.basis()))
                .some("cut", one.outcome().cut())
                .words("differences", one.differences())
                .words("reliances", one.reliances())
                .list("overridden", one.overridden(), VerdictJson::overridden)
                .words("contradictions", one.outcome().contradictions())
                .put("states", one.outcome().states())
                .put("transitions", one.outcome().transitions())
                .put("depth", one.outcome().depth())
                .put("endings", one.outcome().endings())
                .put("stateBits", one.outcome().stateBits())
                .list("rules", one.outcome().rules(), VerdictJson::rule)
                .list("findings", one.outcome().findings(), f -> finding(f, one))
                .list("notes", one.outcome().notes(), f -> finding(f, one))
                .list("byEvent", one.outcome().byEvent(), f -> finding(f, one));
        return tree;
    }

    private static JsonElement finding(Finding finding, Judgement of) {
        return Shared.finding(finding, of.outcome().steps(), of.procedure().span());
    }

    private static JsonObject basis(Basis basis) {
        return new Tree()
                .list("rulebooks", basis.rulebooks(), book -> new Tree()
                        .put("name", book.name())
                        .put("revision", book.revision())
                        .put("file", Where.file(book.span().source().name()))
                        .done())
                .list("parameters", basis.settings(), setting -> new Tree()
                        .put("rulebook", setting.rulebook())
                        .put("parameter", setting.parameter())
                        .put("value", setting.value())
                        .put("usual", setting.usual())
                        .done())
                .list("outages", basis.outages(), load -> new Tree()
                        .put("load", load.name())
                        .put("customers", load.customers())
                        .some("critical", load.critical())
                        .done())
                .list("calls", basis.calls(), call -> new Tree()
                        .put("procedure", call.name())
                        .put("revision", call.revision())
                        .put("file", Where.file(call.span().source().name()))
                        .done())
                .words("orders", basis.orders())
                .done();
    }

    private static JsonElement overridden(Overridden one) {
        return new Tree()
                .put("rule", one.rule())
                .put("rulebook", one.rulebook())
                .put("by", one.by())
                .put("replaced", one.replaced())
                .put("because", one.because())
                .done();
    }

    private static JsonElement rule(RuleResult one) {
        Tree tree = new Tree()
                .put("rulebook", one.rulebook())
                .put("rule", one.rule().name())
                .put("severity", one.rule().severity().word())
                .put("verdict", Shared.word(one.verdict()))
                .put("instances", one.instances())
                .put("judged", one.judged())
                .put("memoryBits", one.memoryBits())
                .put("file", Where.file(one.rule().span().source().name()))
                .put("line", one.rule().span().line())
                .put("because", one.rule().because())
                .some("citation", one.rule().citation())
                .some("remark", one.remark().map(RuleResult.Remark::sentence))
                .some("after", one.finding().flatMap(Finding::after));
        return tree.some("example", one.example().map(Shared::why)).done();
    }

    static void tests(Answer.Tests answer, Tree tree) {
        JsonObject counts = new Tree()
                .put("passed", count(answer.all(), ExampleJudgement::isPassed))
                .put("failed", count(answer.all(), e -> !e.differences().isEmpty()))
                .put("undecided", count(answer.all(), ExampleJudgement::isUndecided))
                .done();
        tree.put("counts", counts)
                .list("examples", answer.all(), VerdictJson::example)
                .list("coverage", answer.coverage().books(), VerdictJson::book);
    }

    private static JsonElement example(ExampleJudgement one) {
        String status = one.isPassed() ? "passed" : one.isUndecided() ? "undecided" : "failed";
        Tree tree = new Tree()
                .put("group", one.group())
                .put("title", one.example().title())
                .some("start", one.judgement().instance().start())
                .put("file", Where.file(one.example().span().source().name()))
                .put("line", one.example().span().line())
                .put("network", one.judgement().instance().network().name())
                .words("of", one.example().of())
                .put("mustHold", one.example().mustHold())
                .put("status", status)
                .some("cut", one.judgement().outcome().cut())
                .words("differences", one.differences())
                .put("states", one.judgement().outcome().states());
        return tree.list("findings", one.judgement().outcome().findings(), f -> finding(f, one.judgement()))
                .list("notes", one.judgement().outcome().notes(), f -> finding(f, one.judgement()))
                .done();
    }

    private static JsonElement book(Coverage.Book book) {
        return new Tree()
                .put("rulebook", book.name())
                .list("rules", book.rules(), VerdictJson::ofRule)
                .done();
    }

    private static JsonElement ofRule(Coverage.OfRule one) {
        return new Tree()
                .put("rule", one.rule().name())
                .put("exercised", one.exercised())
                .put("kept", one.kept())
                .put("broken", one.broken())
                .list("questions", one.parts(), VerdictJson::question)
                .done();
    }

    private static JsonElement question(RuleSeen.PartSeen seen) {
        return new Tree()
                .put("place", Shared.word(seen.part().place()))
                .put("text", seen.part().text())
                .put("seenTrue", seen.isTrue())
                .put("seenFalse", seen.isFalse())
                .done();
    }

    static void whys(Answer.Whys answer, Tree tree) {
        tree.list("explanations", answer.all(), at -> new Tree()
                .put("place", at.place())
                .put("rule", at.found().rule().name())
                .put("step", at.found().step())
                .put("safe", at.found().safe())
                .put("firstOfStep", at.found().firstOfStep())
                .list("way", at.found().way(), Shared::act)
                .list("before", at.found().before(), Shared::why)
                .list("after", at.found().after(), Shared::why)
                .done());
    }

    /** {@return what a finding is called with its place, as {@code must fail on} would state it} */
    static String words(Finding finding) {
        return finding.name()
                + (finding.step().isEmpty() ? "" : " at " + finding.step())
                + finding.phase().map(p -> " on phase " + p).orElse("");
    }
}
