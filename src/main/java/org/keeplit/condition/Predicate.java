package org.keeplit.condition;

import static org.keeplit.condition.Type.CAPACITOR;
import static org.keeplit.condition.Type.CLEARANCE;
import static org.keeplit.condition.Type.CONTACT;
import static org.keeplit.condition.Type.DEVICE;
import static org.keeplit.condition.Type.GENERATOR;
import static org.keeplit.condition.Type.GROUND;
import static org.keeplit.condition.Type.MOBILE;
import static org.keeplit.condition.Type.HOLD;
import static org.keeplit.condition.Type.JUMPER;
import static org.keeplit.condition.Type.LINE;
import static org.keeplit.condition.Type.LOAD;
import static org.keeplit.condition.Type.PERSON;
import static org.keeplit.condition.Type.PHASE;
import static org.keeplit.condition.Type.POINT;
import static org.keeplit.condition.Type.REGULATOR;
import static org.keeplit.condition.Type.SITE;
import static org.keeplit.condition.Type.SOURCE;
import static org.keeplit.condition.Type.TRANSFORMER;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.Arrays;
import java.util.Set;

/**
 * Everything that can be asked of a state, with its signature and one plain sentence: the single table from
 * which the language takes its words, the engines their work and the explanations their gloss.
 */
public enum Predicate {
    /** The pole is open. */
    OPEN("is open", true, "its pole is open", in(DEVICE)),
    /** The pole is closed. */
    CLOSED("is closed", true, "its pole is closed", in(DEVICE)),
    /** The lead is on at both ends; argument: the lead. */
    ATTACHED("is attached", true, "it is on at its line end and at its bushing", in(POINT)),
    /** The lead is off at its line end or its bushing; argument: the lead. */
    DETACHED("is off", true, "it is off at its line end or at its bushing", in(POINT)),
    /** A mode has a value; words: mode, value. */
    MODE("has mode", true, "the setting has that value", in(DEVICE, REGULATOR)),
    /** The regulator stands on neutral. */
    NEUTRAL("is at neutral", true, "its tap is at neutral", in(REGULATOR)),
    /** Both ends are on. */
    INSTALLED("is installed", true, "both its ends are on", in(JUMPER, GROUND)),
    /** At least one end is on. */
    IN_USE("is in use", true, "at least one of its ends is on, or it runs", in(JUMPER, GROUND, MOBILE)),
    /** The temporary source runs and its output switch is closed. */
    RUNNING("is running", true, "it was started and not stopped", in(MOBILE)),
    /** The device is where the word says; words: place. */
    PLACED("is placed", true, "it is at that place", in(DEVICE)),
    /** The person is aloft at the site. */
    ALOFT("is aloft at", false, "the person is up at that structure", in(PERSON), in(SITE)),
    /** The person is on the ground. */
    ON_GROUND("is on the ground", false, "the person is down and clear", in(PERSON)),
    /** The hold or clearance was asked for, and has not been released. */
    ASKED("is asked for", false, "it has been asked for and not yet issued", in(HOLD, CLEARANCE)),
    /** It was issued, repeated and confirmed, and has not been released. */
    IN_FORCE("is in force", false, "it was issued, repeated and confirmed, and not released", in(HOLD, CLEARANCE)),
    /** It was issued, whether or not it was read back, and has not been released. */
    OUT("is out", false, "it was issued and not released", in(HOLD, CLEARANCE)),
    /** It was in force and has been released. */
    RELEASED("is released", false, "it was given back", in(HOLD, CLEARANCE)),
    /** The hold or clearance is for this device's structure. */
    COVERS("covers", false, "it was issued for that structure", in(HOLD, CLEARANCE), in(SITE)),
    /** The hold is held at this device. */
    HELD_AT("is held at", false, "the device was named when it was issued", in(HOLD, CLEARANCE), in(DEVICE)),
    /** The person or the equipment belongs to the crew that works under it. */
    INCLUDES(
            "includes",
            false,
            "its line names that as its own, or names no crew",
            in(HOLD, CLEARANCE),
            in(PERSON, JUMPER, GROUND, MOBILE)),
    /** The person holds it. */
    HELD_BY("is held by", false, "it was issued to that person", in(HOLD, CLEARANCE), in(PERSON)),
    /** A tag hangs on the device. */
    TAGGED("is tagged", false, "a tag hangs on it", in(DEVICE)),
    /** Tested dead there, and nothing since made it doubtful. */
    PROVED_DEAD("is proved dead", true, "it was tested dead there and nothing since made that doubtful", in(POINT)),
    /** Looked at and found open since it last moved. */
    PROVED_OPEN("is proved open", true, "it was found open and has not moved since", in(DEVICE)),
    /** Looked at and found closed since it last moved. */
    PROVED_CLOSED("is proved closed", true, "it was found closed and has not moved since", in(DEVICE)),
    /** Read with an ammeter, or otherwise shown to carry its share, since it was clamped. */
    PROVED_CARRYING(
            "is proved to carry current", true, "it was measured since it was put on", in(JUMPER, DEVICE)),
    /** Voltage read near zero across and full crosswise since its leads last moved. */
    PROVED_IN_PHASE(
            "is proved in phase", true, "voltage across it was read near zero and crosswise full", in(DEVICE)),
    /** The regulator's neutral was confirmed by two indications since its tap last could move. */
    PROVED_NEUTRAL("is proved at neutral", true, "neutral was confirmed by two indications", in(REGULATOR)),
    /** The item was written down; words: item. */
    RECORDED("is recorded", false, "it was written down"),
    /** An inspection came out so; words: item, outcome. */
    FOUND("is found", false, "the inspection found that"),
    /** The waiting time has passed since the bank went dead; words: minutes. */
    WAITED("has been dead long enough", true, "the waiting time passed since it was opened", in(CAPACITOR)),
    /** Joined to a source in service; unknown where only a generator that may run feeds it. */
    ENERGIZED("is energized", true, "it is joined to a source in service", in(POINT, JUMPER, GROUND, MOBILE)),
    /** It has voltage from any source, backwards included; unknown where a generator may run. */
    ALIVE("is alive", true, "it has voltage from some source, backfeed included", in(POINT, JUMPER, GROUND, MOBILE)),
    /** It has no voltage from any source. */
    DEAD("is dead", true, "no source can put voltage on it", in(POINT, JUMPER, GROUND, MOBILE)),
    /** Joined to an applied ground by conductor alone. */
    GROUNDED("is grounded", true, "plain conductor joins it to an applied ground", in(POINT, JUMPER, GROUND, MOBILE)),
    /** Every phase of the place is joined to an applied ground by conductor alone. */
    GROUNDED_THROUGHOUT(
            "is grounded on every phase there",
            true,
            "plain conductor joins it, and each other phase of that place, to an applied ground",
            in(POINT)),
    /** One of its ends is on that very place, whichever else it is joined to. */
    CLAMPED_TO("is clamped to", false, "an end of it is on that very place", in(JUMPER, GROUND, MOBILE), in(POINT)),
    /** Joined to an applied ground by anything that conducts. */
    TIED_TO_GROUND("is tied to a ground", true, "some conducting path joins it to an applied ground", in(POINT, JUMPER, GROUND, MOBILE)),
    /** Without it, its sides are still solidly joined on site. */
    BYPASSED("is bypassed", true, "without it both its sides are still solidly joined at its site", in(DEVICE, REGULATOR)),
    /** Without it, its sides are still joined some other way. */
    LOOPED("is looped", true, "without it both its sides are still joined through the network", in(DEVICE, REGULATOR)),
    /** Opening it would be one of these duties; words: duties. */
    OPENING_DUTY("has opening duty", true, "opening it now would ask that of it", in(DEVICE, CONTACT)),
    /** Closing it would be one of these duties; words: duties. */
    CLOSING_DUTY("has closing duty", true, "closing it now would ask that of it", in(DEVICE, CONTACT)),
    /** Its kind is made for what opening it now would ask. */
    FIT_TO_OPEN("is fit to open", true, "its kind is made for what opening it now would ask", in(CONTACT)),
    /** Its kind is made for what closing it now would ask. */
    FIT_TO_CLOSE("is fit to close", true, "its kind is made for what closing it now would ask", in(CONTACT)),
    /** Every path from it to anything that is or may be alive has an isolating open. */
    ISOLATED("is isolated", false, "every path to anything alive has an isolating open", in(DEVICE, REGULATOR)),
    /** Every phase that the load uses is energized, in sequence. */
    SUPPLIED("is supplied", false, "every phase that it uses is energized, in sequence", in(LOAD)),
    /** The procedure says that this load goes without. */
    OUTAGE_PLANNED("has a planned outage", false, "the procedure says that it goes without supply", in(LOAD)),
    /** It is one of the automatic devices that feed the structure. */
    FEEDS("feeds", false, "it is the nearest reclosing device on a path from a source", in(DEVICE), in(SITE)),
    /** Some conductor at the structure is neither proved dead nor grounded. */
    LIVE_SITE("is live", false, "some conductor there is not both proved dead and grounded", in(SITE)),
    /** The kind has the trait or the mode; words: trait or mode. */
    HAS("has", false, "its kind is built that way", in(DEVICE, REGULATOR)),
    /** The load is critical. */
    CRITICAL("is critical", false, "the network marks it as critical", in(LOAD)),
    /** The person is in charge of the crew. */
    IN_CHARGE("is in charge", false, "the crew list says so", in(PERSON)),
    /** The person sits at control. */
    AT_CONTROL("is at control", false, "the crew list says so", in(PERSON)),
    /** The person only watches. */
    OBSERVER("is the observer", false, "the crew list says so", in(PERSON)),
    /** The person helps from the ground. */
    GROUND_HAND("is a ground hand", false, "the crew list says so", in(PERSON)),
    /** The person stands on that side of the work; words: source or load. */
    ON_SIDE("is on the side", false, "the crew list says so", in(PERSON)),
    /** The person is qualified, for something or at all. */
    QUALIFIED("is qualified", false, "the crew list says so", in(PERSON)),
    /** The person is qualified for this; words: what. */
    QUALIFIED_FOR("is qualified for", false, "the crew list says so", in(PERSON)),
    /** The nominal voltage, phase to phase, is in a range; words: least and most in volt. */
    IN_CLASS(
            "is of the class",
            false,
            "the network's nominal voltage there is in that range",
            in(DEVICE, REGULATOR, CAPACITOR, TRANSFORMER, LINE, LOAD, GENERATOR, SOURCE, POINT, JUMPER, GROUND, MOBILE, CONTACT)),
    /** The object stands at the structure. */
    STANDS_AT("stands at", false, "it stands at that structure", in(DEVICE, REGULATOR, JUMPER, GROUND, MOBILE), in(SITE)),
    /** Both name one object. */
    SAME("is the same as", false, "both are one", Set.of(Type.values()), Set.of(Type.values())),
    /** The counter went up by this many; words: number. */
    COUNTED("has counted", true, "its counter rose by that many since the start", in(DEVICE)),
    /** Two phases, two supplies or a ground and a live conductor meet somewhere. */
    SHORTED("is short-circuited", true, "two voltages, or a voltage and a ground, meet there", in(POINT)),
    /** The variable stands for one of the phases. */
    PHASE_IN("is phase", true, "the phase is one of those", in(PHASE));

    private final String words;
    private final boolean perPhase;
    private final String gloss;
    private final ImmutableList<ImmutableSet<Type>> signature;

    @SafeVarargs
    @SuppressWarnings("varargs")
    Predicate(String words, boolean perPhase, String gloss, Set<Type>... signature) {
        this.words = words;
        this.perPhase = perPhase;
        this.gloss = gloss;
        this.signature =
                Arrays.stream(signature).map(ImmutableSet::copyOf).collect(ImmutableList.toImmutableList());
    }

    private static Set<Type> in(Type... types) {
        return ImmutableSet.copyOf(types);
    }

    /** {@return the words between the first and the second argument} */
    public String words() {
        return words;
    }

    /** {@return whether it is asked of each phase} */
    public boolean perPhase() {
        return perPhase;
    }

    /** {@return one plain clause on what makes it true} */
    public String gloss() {
        return gloss;
    }

    /** {@return for each argument the sorts that it may have} */
    public ImmutableList<ImmutableSet<Type>> signature() {
        return signature;
    }
}
