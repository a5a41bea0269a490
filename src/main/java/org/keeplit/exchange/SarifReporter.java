package org.keeplit.exchange;

import com.github.difflib.DiffUtils;
import com.github.difflib.patch.AbstractDelta;
import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.keeplit.procedure.Unjudged;
import org.keeplit.text.Problem;
import org.keeplit.text.Span;
import org.keeplit.text.Versions;

/**
 * SARIF 2.1.0 (OASIS Standard, with errata 01). What is kept is {@code pass}, what is broken {@code fail} with the shortest way as a code
 * flow, what could not be decided {@code open}, and what nothing asked for {@code notApplicable}. Rule ids are {@code RULEBOOK/RULE} and
 * {@code file/CODE}; places are relative to the working folder.
 */
public final class SarifReporter implements Reporter {
    private static final String SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

    private final ImmutableMap<String, String> pages;

    /** Makes a reporter. @param pages the pages that explain the codes of problems */
    public SarifReporter(ImmutableMap<String, String> pages) {
        this.pages = pages;
    }

    @Override
    public String tell(Answer answer, List<Unjudged> unjudged, List<Problem> problems) {
        List<Case> cases = Cases.of(answer, unjudged);
        Map<String, Case.About> rules = new LinkedHashMap<>();
        problems.forEach(p -> rules.putIfAbsent(id(p), about(p)));
        cases.forEach(c -> rules.putIfAbsent(c.about().id(), c.about()));
        List<String> ids = ImmutableList.copyOf(rules.keySet());
        List<JsonElement> results = new ArrayList<>();
        problems.forEach(p -> results.add(result(p, ids)));
        cases.forEach(c -> results.add(result(c, ids)));
        boolean read = problems.stream().noneMatch(p -> p.severity() == Problem.Severity.ERROR);
        JsonObject driver = new Tree()
                .put("name", "keeplit")
                .put("semanticVersion", Versions.PROGRAM)
                .list("rules", rules.values(), SarifReporter::rule)
                .done();
        JsonObject run = new Tree()
                .put("tool", new Tree().put("driver", driver).done())
                .list("invocations", List.of(read), ok -> new Tree().put("executionSuccessful", ok).done())
                .put("columnKind", "utf16CodeUnits")
                .list("results", results, r -> r)
                .put("properties", new Tree().put("command", answer.command()).put("language", Versions.LANGUAGE).done())
                .done();
        return Tree.text(new Tree()
                .put("$schema", SCHEMA)
                .put("version", "2.1.0")
                .list("runs", List.of(run), r -> r)
                .done());
    }

    private static String id(Problem problem) {
        return "file/" + problem.code();
    }

    private Case.About about(Problem problem) {
        String page = pages.getOrDefault(problem.code(), "").strip();
        String first = page.isEmpty() ? "A mistake in a file." : page.lines().takeWhile(l -> !l.isBlank()).reduce((a, b) -> a + " " + b).orElse(page);
        return new Case.About(id(problem), first, page);
    }

    private static JsonElement rule(Case.About about) {
        Tree tree = new Tree().put("id", about.id()).put("shortDescription", message(about.text()));
        if (!about.full().isEmpty()) {
            tree.put("fullDescription", message(about.full())).put("help", message(about.full()));
        }
        return tree.done();
    }

    private static JsonObject message(String text) {
        return new Tree().put("text", text).done();
    }

    private static JsonElement result(Problem problem, List<String> ids) {
        String help = problem.help().map(h -> "; " + h).orElse("");
        return new Tree()
                .put("ruleId", id(problem))
                .put("ruleIndex", ids.indexOf(id(problem)))
                .put("kind", "fail")
                .put("level", problem.severity() == Problem.Severity.ERROR ? "error" : "warning")
                .put("message", message(problem.message() + help))
                .list("locations", List.of(problem.span()), span -> new Tree().put("physicalLocation", physical(span)).done())
                .someList("relatedLocations", problem.related().stream().toList(), other -> new Tree()
                        .put("physicalLocation", physical(other.span()))
                        .put("message", message(other.note()))
                        .done())
                .done();
    }

    private static JsonElement result(Case one, List<String> ids) {
        return new Tree()
                .put("ruleId", one.about().id())
                .put("ruleIndex", ids.indexOf(one.about().id()))
                .put("kind", kind(one.came()))
                .put("level", level(one.came()))
                .put("message", message(one.owner() + ": " + one.name() + ": " + one.message()))
                .list("locations", List.of(one), SarifReporter::location)
                .someList("codeFlows", one.way().isEmpty() ? List.of() : List.of(one.way()), SarifReporter::flow)
                .someList("fixes", one.fixes(), SarifReporter::fix)
                .put("partialFingerprints", new Tree().put("placeAndCase/v1", one.suite() + ": " + one.name()).done())
                .done();
    }

    /** Whole lines are taken out and put in, as a difference of the texts tells. */
    private static JsonElement fix(Case.Fix fix) {
        List<String> was = fix.source().content().lines().toList();
        String end = fix.source().content().contains("\r\n") ? "\r\n" : "\n";
        JsonObject change = new Tree()
                .put("artifactLocation", new Tree().put("uri", Where.uri(fix.source().name())).done())
                .list("replacements", DiffUtils.diff(was, fix.text().lines().toList()).getDeltas(), delta -> replacement(delta, end))
                .done();
        return new Tree().put("description", message(fix.words())).list("artifactChanges", List.of(change), c -> c).done();
    }

    private static JsonElement replacement(AbstractDelta<String> delta, String end) {
        int first = delta.getSource().getPosition() + 1;
        JsonObject region = new Tree()
                .put("startLine", first)
                .put("startColumn", 1)
                .put("endLine", first + delta.getSource().size())
                .put("endColumn", 1)
                .done();
        String text = delta.getTarget().getLines().stream().map(line -> line + end).collect(Collectors.joining());
        return new Tree().put("deletedRegion", region).put("insertedContent", new Tree().put("text", text).done()).done();
    }

    private static JsonElement location(Case one) {
        Tree tree = new Tree();
        one.place().ifPresent(span -> tree.put("physicalLocation", physical(span)));
        return tree.list("logicalLocations", List.of(one.suite()), s -> new Tree().put("fullyQualifiedName", s).done())
                .done();
    }

    private static JsonElement flow(List<Case.Act> way) {
        JsonObject thread = new Tree()
                .list("locations", way, act -> new Tree()
                        .put("location", location(act))
                        .put("importance", act == way.get(way.size() - 1) ? "essential" : "important")
                        .done())
                .done();
        return new Tree().list("threadFlows", List.of(thread), t -> t).done();
    }

    private static JsonElement location(Case.Act act) {
        Tree tree = new Tree();
        act.place().ifPresent(span -> tree.put("physicalLocation", physical(span)));
        String changes = act.changes().isEmpty() ? "" : ": " + String.join("; ", act.changes());
        return tree.put("message", message(act.text() + changes)).done();
    }

    private static JsonElement physical(Span span) {
        Tree tree = new Tree().put("artifactLocation", new Tree().put("uri", Where.uri(span.source().name())).done());
        if (span.line() > 0) {
            tree.put("region", region(span));
        }
        return tree.done();
    }

    private static JsonElement region(Span span) {
        Tree region = new Tree().put("startLine", span.line());
        if (span.length() > 0) {
            region.put("startColumn", span.column()).put("endColumn", span.column() + span.length());
        }
        return region.done();
    }

    private static JsonElement kind(Case.Came came) {
        return new JsonPrimitive(switch (came) {
            case KEPT -> "pass";
            case BROKEN, AFTER, WARNED, NOTED -> "fail";
            case NOT_ASKED, MISSED -> "notApplicable";
            case OPEN -> "open";
        });
    }

    /** By the standard a level stands only beside the kind {@code fail}. */
    private static JsonElement level(Case.Came came) {
        return new JsonPrimitive(switch (came) {
            case BROKEN -> "error";
            case WARNED -> "warning";
            case AFTER, NOTED -> "note";
            case KEPT, NOT_ASKED, MISSED, OPEN -> "none";
        });
    }
}
