package org.keeplit.insight;

import com.google.common.collect.ImmutableList;
import java.util.List;
import org.keeplit.explore.Proving;
import org.keeplit.explore.Standing;
import org.keeplit.explore.Stepper;
import org.keeplit.program.Parts;

/**
 * A procedure done once from its start, step by step in the order of the text.
 *
 * @param start how everything stands at the start
 * @param steps the steps that can be done so without a break; all of them where the procedure holds
 */
public record AsWritten(Standing start, ImmutableList<Done> steps) {
    /**
     * A step that was done.
     *
     * @param part the step
     * @param after how everything stands then; of several ways the first found
     * @param changes what people see change, in words
     */
    public record Done(Parts.Part part, Standing after, ImmutableList<String> changes) {}

    /**
     * Does the steps.
     *
     * @param prepared the procedure, ready to be explored
     * @return how it went
     */
    public static AsWritten of(Proving.Prepared prepared) {
        Parts parts = Parts.of(prepared.program());
        return Stepper.with(Proving.with(prepared, parts.free()), stepper -> {
            PartRunner runner = new PartRunner(stepper, parts);
            ImmutableList.Builder<Done> steps = ImmutableList.builder();
            long[] now = stepper.start();
            Standing start = stepper.standing(now);
            for (Parts.Part part : parts.all()) {
                PartRunner.Ran ran = runner.run(List.of(now), part.number());
                if (!ran.isSafe()) {
                    break;
                }
                long[] next = ran.states().get(0);
                steps.add(new Done(part, stepper.standing(next), stepper.changes(now, next)));
                now = next;
            }
            return new AsWritten(start, steps.build());
        });
    }
}
