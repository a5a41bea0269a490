package org.keeplit.explore;

import com.google.common.base.Supplier;
import com.google.common.base.Suppliers;
import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.keeplit.condition.Condition;
import org.keeplit.network.Conductor;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.Outcome;
import org.keeplit.outcome.RuleResult;
import org.keeplit.outcome.TraceStep;
import org.keeplit.outcome.Why;
import org.keeplit.program.Act;
import org.keeplit.program.Primitive;
import org.keeplit.program.Program;
import org.keeplit.rule.Rule;

/** Makes what an explorer noted into findings that people can read. */
final class Reporting {
    private static final Comparator<Finding> NEAREST_FIRST = Comparator.comparing((Finding f) -> f.trace().size())
            .thenComparing(Finding::name)
            .thenComparing(f -> f.rulebook().orElse(""))
            .thenComparing(Finding::stepNumber)
            .thenComparing(f -> f.phase().map(Enum::ordinal).orElse(-1));

    private final Machine machine;
    private final Program program;
    private final StateStore store;
    private final Edges edges;
    /** Made only where there is something to trace: it looks at the network with scenes of its own. */
    private final Supplier<Tracer> tracer;
    private final Explaining explaining;
    private final WhyTree trees;
    /** By identity: two findings may tell the same. */
    private final Map<Finding, Tally.Root> roots = new IdentityHashMap<>();
    private final boolean full;
    private final Scene scene;

    /** A reporter. @param full whether conditions are explained in full, too */
    Reporting(Machine machine, StateStore store, Edges edges, Scene scene, boolean full) {
        this.machine = machine;
        this.program = machine.world().program();
        this.store = store;
        this.edges = edges;
        this.tracer = Suppliers.memoize(() -> new Tracer(machine, store, edges));
        this.explaining = new Explaining(machine);
        this.trees = new WhyTree(machine, explaining);
        this.full = full;
        this.scene = scene;
    }

    Outcome outcome(Explorer explorer, Tally tally) {
        Map<ViolationKey, Finding> found = new LinkedHashMap<>();
        tally.roots().forEach((key, root) -> {
            Finding finding = finding(root.nearest(), root.byBinding().size());
            found.put(key, finding);
            roots.put(finding, root);
        });
        List<RuleResult> rules = new ArrayList<>();
        for (int i = 0; i < machine.rules().size(); i++) {
            rules.add(rule(i, explorer, tally, found));
        }
        return new Outcome(
                program.steps(),
                ImmutableList.copyOf(rules),
                sorted(found, true),
                sorted(found, false),
                tally.byEvent().values().stream()
                        .map(this::finding)
                        .sorted(NEAREST_FIRST)
                        .collect(ImmutableList.toImmutableList()),
                ImmutableList.copyOf(Contradictions.among(machine.inStates())),
                store.size(),
                explorer.transitions(),
                explorer.depth(),
                explorer.endings(),
                machine.world().electric().size(),
                machine.world().loadFlows(),
                program.layout().bits(),
                explorer.bytes(),
                explorer.cut());
    }

    /** {@return the findings that break the procedure, or those that are only told} */
    private static ImmutableList<Finding> sorted(Map<ViolationKey, Finding> found, boolean stops) {
        return found.values().stream()
                .filter(f -> stops == (f.severity() == Rule.Severity.STOP))
                .sorted(NEAREST_FIRST)
                .collect(ImmutableList.toImmutableList());
    }

    private RuleResult rule(int number, Explorer explorer, Tally tally, Map<ViolationKey, Finding> found) {
        Rule rule = machine.rules().get(number);
        Optional<Finding> finding = found.entrySet().stream()
                .filter(one -> one.getKey().rule() == number)
                .map(Map.Entry::getValue)
                .min(NEAREST_FIRST);
        RuleResult.Verdict verdict;
        if (finding.isPresent()) {
            verdict = RuleResult.Verdict.BROKEN;
        } else if (tally.later().containsKey(number)) {
            verdict = RuleResult.Verdict.ONLY_AFTER;
            finding = Optional.of(finding(tally.later().get(number)));
        } else if (explorer.cut().isPresent()) {
            verdict = RuleResult.Verdict.UNDECIDED;
        } else {
            verdict = tally.isExercised(number)
                    ? RuleResult.Verdict.HOLDS
                    : RuleResult.Verdict.NOT_EXERCISED;
        }
        return new RuleResult(
                machine.rulebook(number),
                rule,
                verdict,
                machine.instances(number),
                tally.judged(number),
                finding,
                machine.memoryBits(number),
                machine.remark(number),
                full ? tally.example(number).map(this::example) : Optional.empty());
    }

    /** {@return a rule explained in full where it was first put to the question} */
    private Why example(Judging.Example example) {
        look(example.at(), example.instance().rule().form() == Rule.Form.BEFORE);
        return trees.rule(example.instance(), scene);
    }

    private Finding finding(Judging.Break broken) {
        return finding(broken, broken.environments().size());
    }

    /** @param bindings how many bindings break it at the same place */
    private Finding finding(Judging.Break broken, int bindings) {
        Optional<Act> act =
                broken.at().act() < 0 ? Optional.empty() : Optional.of(program.acts().get(broken.at().act()));
        ImmutableList<TraceStep> trace = tracer.get().trace(broken.at().state(), edge(broken.at()));
        look(broken);
        Environment environment = broken.environment();
        ImmutableMap.Builder<String, String> bound = ImmutableMap.builder();
        environment.objects().forEach((name, object) -> bound.put(name, object.words()));
        return new Finding(
                broken.kind(),
                Optional.ofNullable(broken.instance()).map(RuleInstance::rule),
                Optional.ofNullable(broken.instance()).map(instance -> machine.rulebook(instance.number())),
                broken.unknown(),
                bound.build(),
                Math.max(0, bindings - 1),
                BreakWords.sentence(explaining, broken, act, scene),
                act.map(Act::stepName)
                        .orElse(trace.isEmpty() ? "" : trace.get(trace.size() - 1).step()),
                act.map(Act::stepNumber).orElse(-1),
                BreakWords.phase(broken, act),
                Optional.ofNullable(broken.at().because()),
                trace,
                why(broken, environment, act),
                full && broken.instance() != null ? trees.rule(broken.instance(), scene) : Why.NOTHING);
    }

    /** {@return what a finding was made of} @param finding one of those that are told */
    Tally.Root root(Finding finding) {
        return Optional.ofNullable(roots.get(finding))
                .orElseThrow(() -> new IllegalArgumentException("not a finding of this run: " + finding.name()));
    }

    /** {@return conditions with their values where a break was judged} */
    ImmutableList<Why> reasons(Judging.Break broken, Environment environment, List<Condition> conditions) {
        look(broken);
        return conditions.stream()
                .map(c -> explaining.why(c, environment, scene))
                .collect(ImmutableList.toImmutableList());
    }

    /** {@return a rule with its bindings explained in full where a scene looks} */
    Why tree(RuleInstance instance, Scene there) {
        return trees.rule(instance, there);
    }

    /** {@return what replays ways} */
    Tracer tracer() {
        return tracer.get();
    }

    /** {@return the way to a state and one act further} */
    ImmutableList<TraceStep> way(int state, int act) {
        return tracer.get().trace(state, new Edges.Edge(act, ImmutableList.of()));
    }

    /** {@return the act that led to a state} */
    int act(int state) {
        return edges.edge(store.edge(state)).act();
    }

    /** Looks at the state in which the break was judged. */
    private void look(Judging.Break broken) {
        look(broken.at(), broken.isJudgedBefore());
    }

    private void look(Judging.At at, boolean judgedBefore) {
        long[] state = new long[program.layout().words()];
        store.load(at.state(), state);
        scene.at(at.act() < 0 || judgedBefore ? state : tracer.get().after(state, edge(at)));
    }

    private static Edges.Edge edge(Judging.At at) {
        return new Edges.Edge(at.act(), at.reactions());
    }

    private Why why(Judging.Break broken, Environment environment, Optional<Act> act) {
        if (broken.instance() != null
                && broken.instance().isDuty()
                && !broken.instance().rule().until().isEmpty()) {
            return explaining.duty(broken.instance(), environment, scene);
        }
        Condition condition = switch (broken.kind()) {
            case RULE -> broken.instance().rule().body();
            case REQUIREMENT -> act.orElseThrow().step().requires().get(broken.part());
            case EXPECTATION -> act.orElseThrow().step().expects().get(broken.part());
            case ENDING -> program.bound().ends().get(broken.part());
            case STOP -> act.orElseThrow().primitives().stream()
                    .filter(Primitive.Look.class::isInstance)
                    .map(p -> ((Primitive.Look) p).condition())
                    .findFirst()
                    .orElse(null);
            default -> null;
        };
        return condition == null ? Why.NOTHING : explaining.why(condition, environment, scene);
    }
}
