package org.keeplit.exchange;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.keeplit.outcome.CalledOutage;
import org.keeplit.outcome.ChosenAct;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.Harm;
import org.keeplit.outcome.TraceStep;
import org.keeplit.outcome.Why;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Unjudged;
import org.keeplit.procedure.Instance;
import org.keeplit.text.Problem;
import org.keeplit.text.Span;

/** What the JSON of several commands has in common; described in {@code common.schema.json}. */
final class Shared {
    private Shared() {}

    /** {@return a word of an enumeration as JSON has it: {@code FAILS_AS_STATED} is {@code fails-as-stated}} */
    static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** {@return the beginning of what is told of a procedure at one place} */
    static Tree place(Instance one) {
        Tree tree = new Tree()
                .put("procedure", one.procedure().name())
                .put("revision", one.procedure().revision())
                .some("title", one.procedure().title())
                .put("file", Where.file(one.procedure().span().source().name()))
                .put("line", one.procedure().span().line())
                .put("network", one.network().name())
                .put("arguments", words(one.proof().arguments()))
                .some("start", one.start());
        return tree.put("place", one.words());
    }

    static JsonObject words(Map<String, ?> map) {
        JsonObject object = new JsonObject();
        map.forEach((name, value) -> object.addProperty(name, value.toString()));
        return object;
    }

    static JsonElement problem(Problem problem) {
        Tree tree = new Tree()
                .put("code", problem.code())
                .put("severity", word(problem.severity()));
        span(problem.span(), tree);
        tree.put("message", problem.message()).some("help", problem.help());
        problem.related().ifPresent(related -> {
            Tree other = new Tree();
            span(related.span(), other);
            tree.put("related", other.put("note", related.note()).done());
        });
        return tree.done();
    }

    private static void span(Span span, Tree tree) {
        tree.put("file", Where.file(span.source().name()));
        if (span.line() > 0) {
            tree.put("line", span.line()).put("column", span.column()).put("length", span.length());
        }
    }

    /** {@return a finding} @param steps the steps of what was explored @param head the head of the procedure, for one at the start */
    static JsonElement finding(Finding finding, List<Block.Step> steps, Span head) {
        Span at = Where.of(finding, steps, head);
        Tree tree = new Tree()
                .put("kind", finding.kind().word())
                .put("name", finding.name())
                .some("rulebook", finding.rulebook())
                .put("severity", finding.severity().word())
                .put("sentence", finding.sentence())
                .put("unknown", finding.unknown())
                .put("bindings", words(finding.bindings()))
                .put("others", finding.others())
                .some("step", finding.step())
                .some("phase", finding.phase())
                .put("file", Where.file(at.source().name()))
                .put("line", at.line())
                .some("after", finding.after());
        finding.rule().ifPresent(r -> tree.put("because", r.because()).some("citation", r.citation()));
        tree.list("trace", finding.trace(), act -> act(act, steps));
        if (!finding.why().text().isEmpty()) {
            tree.put("why", why(finding.why()));
        }
        if (!finding.tree().text().isEmpty()) {
            tree.put("tree", why(finding.tree()));
        }
        return tree.done();
    }

    static JsonElement unjudged(Unjudged one) {
        return new Tree()
                .put("kind", one.kind())
                .put("name", one.name())
                .put("status", one.reason().words().replace(' ', '-'))
                .put("because", one.because())
                .words("files", one.files().stream().map(Where::file).toList())
                .put("file", Where.file(one.span().source().name()))
                .put("line", one.span().line())
                .done();
    }

    /** {@return an act of a way} @param steps the steps of what was explored */
    static JsonElement act(TraceStep act, List<Block.Step> steps) {
        Tree tree = begun(act);
        Where.of(act, steps).ifPresent(s -> tree.put("file", Where.file(s.source().name())).put("line", s.line()));
        return ended(act, tree);
    }

    /** {@return an act of a way of which only the line is known} */
    static JsonElement act(TraceStep act) {
        return ended(act, begun(act).put("line", act.line()));
    }

    private static Tree begun(TraceStep act) {
        return new Tree()
                .put("number", act.number())
                .put("byItself", act.byItself())
                .put("actor", act.actor())
                .put("text", act.text())
                .put("step", act.step());
    }

    private static JsonElement ended(TraceStep act, Tree tree) {
        return tree.words("changes", act.changes())
                .list("lost", act.lost(), lost -> new Tree()
                        .put("load", lost.load())
                        .put("customers", lost.customers())
                        .put("phases", lost.phases())
                        .some("critical", lost.critical())
                        .done())
                .done();
    }

    static JsonElement why(Why why) {
        Tree tree = new Tree().put("text", why.text()).put("truth", word(why.truth())).some("witness", why.witness());
        tree.someList("figures", why.figures(), beside -> new Tree()
                .some("where", beside.where())
                .put("figure", beside.figure())
                .put("limit", beside.limit())
                .done());
        tree.someList("path", why.path(), JsonPrimitive::new);
        return tree.someList("parts", why.parts(), Shared::why).done();
    }

    static JsonElement harm(Harm harm) {
        return new Tree()
                .put("kind", harm.kind().word())
                .put("name", harm.name())
                .put("sentence", harm.sentence())
                .put("unknown", harm.unknown())
                .some("step", harm.step())
                .some("phase", harm.phase())
                .done();
    }

    /** {@return an act that was chosen, not explored} */
    static JsonElement act(ChosenAct act) {
        Span span = act.span();
        return new Tree()
                .put("actor", act.actor())
                .put("text", act.text())
                .put("step", act.step())
                .put("file", Where.file(span.source().name()))
                .put("line", span.line())
                .done();
    }

    static JsonElement outage(CalledOutage outage) {
        return new Tree()
                .words("devices", outage.devices())
                .put("loads", outage.loads())
                .put("customers", outage.customers())
                .done();
    }
}
