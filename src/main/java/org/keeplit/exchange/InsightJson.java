package org.keeplit.exchange;

import com.google.gson.JsonElement;
import org.keeplit.outcome.Mend;
import org.keeplit.outcome.OrderTable;
import org.keeplit.outcome.Part;
import org.keeplit.outcome.PlanResult;
import org.keeplit.outcome.RetreatTable;
import org.keeplit.outcome.SlipResult;
import org.keeplit.outcome.SlipTable;
import org.keeplit.outcome.SweepResult;

/** What follows from procedures as JSON. */
final class InsightJson {
    private InsightJson() {}

    static JsonElement order(OrderTable table) {
        return Shared.place(table.instance())
                .put("holds", table.holds())
                .put("cut", table.cut())
                .put("exhaustive", table.exhaustive())
                .list("steps", table.parts(), InsightJson::part)
                .list("pairs", table.pairs(), pair -> new Tree()
                        .put("before", pair.before())
                        .put("after", pair.after())
                        .put("kind", Shared.word(pair.kind()))
                        .put("direct", pair.direct())
                        .some("harm", pair.harm().map(Shared::harm))
                        .done())
                .put("necessary", every(table.necessary()))
                .put("asWritten", every(table.asWritten()))
                .done();
    }

    private static JsonElement part(Part part) {
        return new Tree().put("number", part.number()).put("step", part.name()).put("line", part.line()).done();
    }

    private static JsonElement every(OrderTable.Every every) {
        return new Tree()
                .put("answer", Shared.word(every.answer()))
                .put("states", every.states())
                .some("exception", every.exception().map(f -> new Tree()
                        .put("name", f.name())
                        .put("sentence", f.sentence())
                        .some("step", f.step())
                        .some("phase", f.phase())
                        .list("trace", f.trace(), Shared::act)
                        .done()))
                .done();
    }

    static JsonElement slips(SlipTable table) {
        Tree counts = new Tree();
        for (SlipResult.Ending ending : SlipResult.Ending.values()) {
            counts.put(ending.word(), table.count(ending));
        }
        return Shared.place(table.instance())
                .put("holds", table.holds())
                .put("cut", table.cut())
                .put("counts", counts.done())
                .list("slips", table.slips(), InsightJson::slip)
                .done();
    }

    private static JsonElement slip(SlipResult one) {
        return new Tree()
                .put("kind", Shared.word(one.kind()))
                .put("step", one.step())
                .put("act", one.act())
                .put("words", one.words())
                .put("ending", one.ending().word())
                .list("findings", one.findings(), f -> new Tree()
                        .put("kind", f.kind().word())
                        .put("name", f.name())
                        .put("sentence", f.sentence())
                        .put("unknown", f.unknown())
                        .put("bindings", Shared.words(f.bindings()))
                        .some("step", f.step())
                        .some("phase", f.phase())
                        .list("trace", f.trace(), Shared::act)
                        .done())
                .some("cure", one.cure().map(cure -> new Tree()
                        .put("actor", cure.actor())
                        .put("look", cure.look())
                        .some("before", cure.before())
                        .done()))
                .done();
    }

    static JsonElement retreat(RetreatTable table) {
        return Shared.place(table.instance())
                .put("holds", table.holds())
                .some("calledOutage", table.outage().map(Shared::outage))
                .put("states", table.states())
                .put("longest", table.longest())
                .put("withoutWay", table.none())
                .put("cut", table.cut())
                .list("stops", table.stops(), stop -> new Tree()
                        .put("step", stop.part().name())
                        .put("line", stop.part().line())
                        .put("states", stop.states())
                        .put("longest", stop.longest())
                        .put("atLeast", stop.atLeast())
                        .put("withoutWay", stop.none())
                        .put("proved", stop.proved())
                        .some("way", stop.way().map(way -> Tree.array(way, Shared::act)))
                        .done())
                .done();
    }

    static JsonElement plan(PlanResult plan) {
        return Shared.place(plan.instance())
                .list("brokenAtStart", plan.broken(), Shared::harm)
                .put("calledOutage", Shared.outage(plan.outage()))
                .put("shortest", plan.isShortest())
                .put("atLeast", plan.atLeast())
                .put("exhausted", plan.exhausted())
                .put("states", plan.states())
                .some("way", plan.way().map(way -> Tree.array(way, Shared::act)))
                .done();
    }

    static void sweep(Answer.Sweeps answer, Tree tree) {
        Tree counts = new Tree();
        for (SweepResult.Answer one : SweepResult.Answer.values()) {
            counts.put(
                    Shared.word(one),
                    answer.all().stream().filter(r -> r.answer() == one).count());
        }
        tree.put("counts", counts.done()).list("places", answer.all(), result -> new Tree()
                .put("procedure", result.procedure())
                .put("place", result.place())
                .put("answer", Shared.word(result.answer()))
                .put("detail", result.detail())
                .done());
    }

    static JsonElement mend(Mend mend) {
        return new Tree()
                .put("procedure", mend.procedure().name())
                .put("file", Where.file(mend.source().name()))
                .put("line", mend.procedure().span().line())
                .put("holds", mend.holds())
                .put("cut", mend.cut())
                .put("tried", mend.tried())
                .put("whole", mend.whole())
                .list("changes", mend.mends(), change -> new Tree()
                        .words("edits", change.edits())
                        .put("text", change.text())
                        .done())
                .done();
    }
}
