package org.keeplit.gridfile;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.keeplit.procedure.Instance;
import org.keeplit.program.Act;
import org.keeplit.program.Parts;
import org.keeplit.program.Primitive;
import org.keeplit.program.Program;

/**
 * A procedure that holds as a switching plan of the CIM Operations package (IEC 61968): one SwitchingPlan with a SwitchingStepGroup for each
 * step of the procedure, a SwitchingStep for each act, and the action that fits it.
 *
 * @param instance the procedure, and where it was proved
 * @param xml the plan as RDF/XML
 * @param deviations where the procedure is something else than the standard's classes say, a sentence each
 */
public record SwitchingPlan(Instance instance, String xml, ImmutableList<String> deviations) {
    /**
     * Makes a plan.
     *
     * @param instance the procedure, and where it was proved
     * @param program the same as acts
     * @param hash the short hash of everything that the proof read
     * @return the plan; the same each time
     */
    public static SwitchingPlan of(Instance instance, Program program, String hash) {
        return new Writing(instance, program, hash).plan();
    }

    /** Writes one plan. */
    private static final class Writing {
        private final Instance instance;
        private final Program program;
        private final String hash;
        private final PlanXml xml;
        private final PlanActions actions;
        private final Set<Deviation> deviations = EnumSet.of(Deviation.ORDER, Deviation.IDENTITY, Deviation.PEOPLE, Deviation.TIME);

        Writing(Instance instance, Program program, String hash) {
            this.instance = instance;
            this.program = program;
            this.hash = hash;
            this.xml = new PlanXml(instance.words() + "\n" + hash);
            this.actions = new PlanActions(program, xml, deviations);
        }

        SwitchingPlan plan() {
            xml.object("SwitchingPlan", "plan", instance.words(),
                    "IdentifiedObject.description", instance.procedure().title(),
                    "Document.revisionNumber", String.valueOf(instance.procedure().revision()),
                    "Document.comment", "Proved in every order that the procedure allows; input " + hash + ". Local rules and the person in charge come first.",
                    "SwitchingPlan.purpose", instance.procedure().title());
            Parts parts = Parts.of(program);
            for (Parts.Part part : parts.all()) {
                group(parts, part);
            }
            return new SwitchingPlan(instance, xml.done(), deviations.stream().map(Deviation::words).collect(ImmutableList.toImmutableList()));
        }

        private void group(Parts parts, Parts.Part part) {
            int all = parts.all().size();
            int number = part.number();
            List<Integer> earlier = IntStream.range(0, all).filter(i -> parts.isBefore(i, number)).boxed().toList();
            boolean free = IntStream.range(0, all).anyMatch(i -> i != number && !parts.isBefore(i, number) && !parts.isBefore(number, i));
            // What follows from others is left out: only the last ones before it.
            String after = earlier.stream().filter(i -> earlier.stream().noneMatch(j -> parts.isBefore(i, j))).map(i -> String.valueOf(i + 1)).collect(Collectors.joining(", "));
            String id = "group " + (number + 1);
            xml.object("SwitchingStepGroup", id, part.name(),
                    "IdentifiedObject.description", after.isEmpty() ? "" : "after " + after,
                    "SwitchingStepGroup.isFreeSequence", String.valueOf(free),
                    "SwitchingStepGroup.sequenceNumber", String.valueOf(number + 1),
                    "SwitchingStepGroup.SwitchingPlan", xml.id("SwitchingPlan", "plan"));
            if (!part.when().isEmpty()) {
                deviations.add(Deviation.BRANCH);
            }
            int sequence = 0;
            for (Act act : part.acts()) {
                sequence++;
                step(id, act, sequence, part.acts().size() > 1 && !act.step().ordered(), part.when());
            }
        }

        /** A step for an act; one for each thing that it does at once. */
        private void step(String group, Act act, int sequence, boolean free, ImmutableMap<Integer, String> when) {
            List<Primitive> primitives = new ArrayList<>(act.primitives());
            for (int i = 0; i < Math.max(1, primitives.size()); i++) {
                String id = "act " + (act.id() + 1) + (primitives.size() > 1 ? "." + (i + 1) : "");
                String words = act.actor() + " " + act.text();
                String condition = when.getOrDefault(act.stepNumber(), "");
                String action = actions.write(id, act, primitives.isEmpty() ? new Primitive.Nothing() : primitives.get(i), condition.isEmpty() ? words : condition + ": " + words);
                xml.object("SwitchingStep", id, id,
                        "SwitchingStep.isFreeSequence", String.valueOf(free),
                        "SwitchingStep.sequenceNumber", String.valueOf(sequence),
                        "SwitchingStep.subStepSequenceNumber", primitives.size() > 1 ? String.valueOf(i + 1) : "",
                        "SwitchingStep.SwitchingStepGroup", xml.id("SwitchingStepGroup", group),
                        "SwitchingStep.SwitchingAction", action);
            }
        }
    }
}
