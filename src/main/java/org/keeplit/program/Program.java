package org.keeplit.program;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Set;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Bound;

/**
 * A bound procedure lowered to acts.
 *
 * @param bound the procedure
 * @param acts all atomic acts, by number
 * @param steps the steps, by number
 * @param plan the orders in which the acts may come, as a tree
 * @param numbered up to how many combinations of acts are numbered through, see {@link Orders}
 * @param orders the same, ready to be followed
 * @param layout the packed state
 * @param start the values at the start
 * @param sites the structures where people may go up, by the number that a person's field holds less one
 * @param spots for each clamp the places where it may be, by the number that its field holds less one
 * @param outcomesOf for each inspection its outcomes, in order
 * @param reactions what devices may do by themselves, by number; only those devices that can come to it
 * @param heldAt for each hold or clearance the devices named when it is issued
 */
public record Program(
        Bound bound,
        ImmutableList<Act> acts,
        ImmutableList<Block.Step> steps,
        Plan plan,
        int numbered,
        Orders orders,
        Layout layout,
        StartValues start,
        ImmutableList<String> sites,
        ImmutableMap<FieldKey.Clamp, ImmutableList<Vertex>> spots,
        ImmutableMap<String, ImmutableList<String>> outcomesOf,
        ImmutableList<Reaction> reactions,
        ImmutableMap<String, ImmutableList<String>> heldAt) {

    /** {@return the outcomes of an inspection; none if the procedure does not make it} @param item the inspection */
    public ImmutableList<String> outcomes(String item) {
        return outcomesOf.getOrDefault(item, ImmutableList.of());
    }

    /** {@return this program with devices that come to trip by themselves} @param devices their names */
    public Program arming(Set<String> devices) {
        return Assembly.again(this, plan, acts, steps, devices);
    }

    /**
     * This program with acts besides, which no order calls for.
     *
     * @param more the acts, numbered on from the last
     * @param moreSteps the steps that they belong to, numbered on from the last
     * @param devices devices that come to trip by themselves
     */
    public Program with(List<Act> more, List<Block.Step> moreSteps, Set<String> devices) {
        return Assembly.again(
                this,
                plan,
                ImmutableList.<Act>builder().addAll(acts).addAll(more).build(),
                ImmutableList.<Block.Step>builder().addAll(steps).addAll(moreSteps).build(),
                devices);
    }

    /** {@return this program with a longer state} @param longer its layout */
    public Program with(Layout longer) {
        return new Program(
                bound, acts, steps, plan, numbered, orders, longer, start, sites, spots, outcomesOf, reactions, heldAt);
    }
}
