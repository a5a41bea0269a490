package org.keeplit.card;

import com.google.common.collect.ImmutableList;
import java.util.Optional;

/**
 * What a card tells of one step.
 *
 * @param number its number in the order of the text, from 1
 * @param name its name, with the phase if it is done on one only
 * @param line the line of the procedure file
 * @param who the people who act, by the names that the procedure uses
 * @param what what each does, one line an act, as the proof reads it
 * @param objects to what: the devices, leads, temporary equipment, holds and points that the acts name
 * @param before what must be true before, and nobody but the crew looks
 * @param after what the procedure says will be true after
 * @param changes what the simulated run changes, in words
 * @param records what is to be written down
 * @param cautions what the crew is told
 * @param because why it is done, if said
 * @param speech what is said and read back between crew and desk, a line each
 * @param follows the steps that must come before it
 * @param back the way back from here
 * @param tools what is taken in hand
 * @param data figures that the step needs, with their source
 * @param near whether who acts may come within reach of live parts
 * @param pictures the part of the work site that the step changes, before and after it, as SVG; nothing where it changes nothing
 */
public record StepCard(
        int number,
        String name,
        int line,
        ImmutableList<String> who,
        ImmutableList<String> what,
        ImmutableList<String> objects,
        ImmutableList<String> before,
        ImmutableList<String> after,
        ImmutableList<String> changes,
        ImmutableList<String> records,
        ImmutableList<String> cautions,
        Optional<String> because,
        ImmutableList<String> speech,
        ImmutableList<Earlier> follows,
        Optional<WayBack> back,
        ImmutableList<String> tools,
        ImmutableList<String> data,
        boolean near,
        ImmutableList<String> pictures) {

    /**
     * A step that must come before this one.
     *
     * @param number its number, from 1
     * @param name its name
     * @param because what goes wrong otherwise
     * @param asWritten whether that is so only as long as nothing else of the text is changed
     */
    public record Earlier(int number, String name, String because, boolean asWritten) {}

    /**
     * The way back to normal once the step is done.
     *
     * @param acts how many acts the way takes
     * @param first its first acts, in words
     * @param longest how many acts it takes at most from wherever the other orders may stand
     * @param none whether from some state no way back was found
     * @param proved whether there is none for certain
     */
    public record WayBack(int acts, ImmutableList<String> first, int longest, boolean none, boolean proved) {}
}
