package org.keeplit.log;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.keeplit.condition.Condition;
import org.keeplit.explore.Proving;
import org.keeplit.explore.Stepper;
import org.keeplit.network.Element;
import org.keeplit.network.Trait;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Watcher;
import org.keeplit.page.InputHash;
import org.keeplit.page.Proof;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Instance;
import org.keeplit.program.Act;
import org.keeplit.program.Parts;
import org.keeplit.program.Primitive;
import org.keeplit.program.Program;

/** Makes log sheets. */
public final class SheetMaker {
    private final Program program;

    private SheetMaker(Program program) {
        this.program = program;
    }

    /**
     * Makes a sheet.
     *
     * @param instance the procedure, where it is explored and from which start
     * @param prepared the same, ready to be explored
     * @param limits how far to go for the proof
     * @param watcher is told how it gets on
     * @return the sheet
     */
    public static Sheet of(Instance instance, Proving.Prepared prepared, Limits limits, Watcher watcher) {
        return of(instance, prepared, Proof.of(Proving.proved(prepared, limits, watcher).outcome()));
    }

    /** Makes the sheet of a procedure of which is known what is proved. {@return it} */
    static Sheet of(Instance instance, Proving.Prepared prepared, Proof proof) {
        SheetMaker maker = new SheetMaker(prepared.program());
        return new Sheet(instance, proof, InputHash.of(instance), maker.whole(), maker.lines());
    }

    private ImmutableList<Sheet.Item> whole() {
        ImmutableList.Builder<Sheet.Item> all = ImmutableList.builder();
        all.add(new Sheet.Item(Sheet.JOB, Sheet.Sort.ABOUT, ImmutableList.of(), ""));
        all.add(new Sheet.Item(Sheet.INPUT, Sheet.Sort.ABOUT, ImmutableList.of(), ""));
        Set<List<String>> counted = new LinkedHashSet<>();
        Parts.of(program).all().stream().flatMap(part -> part.acts().stream()).forEach(act -> act.primitives().forEach(p -> {
            if (p instanceof Primitive.MovePole pole && counts(pole.device())) {
                counted.add(List.of(pole.device(), pole.phases().toString()));
            }
        }));
        for (List<String> one : counted) {
            for (String when : List.of("before", "after")) {
                all.add(new Sheet.Item(counter(one.get(0), one.get(1), when), Sheet.Sort.COUNTER, ImmutableList.copyOf(one), "a whole number"));
            }
        }
        return all.build();
    }

    /** {@return the name of a reading} @param when before or after the job */
    static String counter(String device, String phases, String when) {
        return "counter of " + device + " on " + phases + ", " + when;
    }

    private boolean counts(String device) {
        return program.bound().network().element(device)
                .filter(e -> e instanceof Element.Device)
                .filter(e -> e.kind().has(Trait.COUNTS))
                .isPresent();
    }

    private ImmutableList<Sheet.Line> lines() {
        ImmutableList.Builder<Sheet.Line> all = ImmutableList.builder();
        for (Parts.Part part : Parts.of(program).all()) {
            List<Integer> steps = part.acts().stream().map(Act::stepNumber).distinct().filter(s -> !isGoingOn(program.steps().get(s))).toList();
            for (int i = 0; i < steps.size(); i++) {
                int step = steps.get(i);
                List<Act> acts = part.acts().stream().filter(a -> a.stepNumber() == step).toList();
                String id = String.valueOf(part.number() + 1) + (steps.size() == 1 ? "" : "." + (i + 1));
                all.add(line(id, step, acts));
            }
        }
        return all.build();
    }

    /** {@return whether nothing is done: one way of a choice without steps} */
    static boolean isGoingOn(Block.Step step) {
        return step.actors().isEmpty();
    }

    private Sheet.Line line(String id, int number, List<Act> acts) {
        Block.Step step = acts.get(0).step();
        boolean look = step.action() instanceof Action.Inspect;
        String words = look
                ? acts.get(0).actor() + " " + acts.get(0).text().replaceFirst(" and finds \".*\"$", "")
                : acts.stream().map(a -> a.actor() + " " + a.text()).distinct().collect(Collectors.joining("; "));
        List<Sheet.Item> items = new ArrayList<>();
        for (Act act : acts) {
            item(act).filter(i -> items.stream().noneMatch(known -> known.name().equals(i.name()))).ifPresent(items::add);
        }
        step.records().forEach(r -> items.add(new Sheet.Item(r, Sheet.Sort.RECORD, ImmutableList.of(), "")));
        return new Sheet.Line(
                id, number, words,
                step.actors().stream().map(Object::toString).collect(ImmutableList.toImmutableList()), ImmutableList.copyOf(items));
    }

    /** {@return what an act itself is written down for} */
    private Optional<Sheet.Item> item(Act act) {
        if (act.step().action() instanceof Action.Inspect inspect) {
            return Optional.of(new Sheet.Item(inspect.item(), Sheet.Sort.FOUND, inspect.outcomes(), String.join(" or ", inspect.outcomes())));
        } else if (act.step().action() instanceof Action.Record record) {
            return Optional.of(new Sheet.Item(record.item(), Sheet.Sort.RECORD, ImmutableList.of(), ""));
        } else if (act.step().action() instanceof Action.MeasureFigure) {
            String name = act.text().replaceFirst("^measures? ", "");
            String limit = act.primitives().stream()
                    .filter(Primitive.Look.class::isInstance)
                    .map(p -> limit(((Primitive.Look) p).condition()))
                    .collect(Collectors.joining(", "));
            return Optional.of(new Sheet.Item(name, Sheet.Sort.MEASURED, ImmutableList.of(), limit));
        }
        return act.primitives().stream()
                .filter(p -> p instanceof Primitive.Speak speak && speak.speech() != Action.Speech.ASK)
                .map(p -> ((Primitive.Speak) p).permit())
                .map(permit -> new Sheet.Item("number of " + permit, Sheet.Sort.NUMBER, ImmutableList.of(permit), ""))
                .findFirst();
    }

    /** {@return a limit without what is measured} */
    private static String limit(Condition condition) {
        if (condition instanceof Condition.All all) {
            return all.parts().stream().map(SheetMaker::limit).collect(Collectors.joining(" and "));
        }
        Condition.Compare compare = (Condition.Compare) condition;
        String words = Stepper.words(condition);
        return words.substring(words.lastIndexOf(compare.comparison().words()) + 3);
    }
}
