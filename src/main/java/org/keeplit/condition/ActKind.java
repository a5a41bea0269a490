package org.keeplit.condition;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.Set;

/** The moments that a rule can bind to, each with what takes part in it. */
public enum ActKind {
    /** A pole opens by a person's act. */
    OPENING("opening", true, Set.of(Type.DEVICE)),
    /** A pole closes by a person's act. */
    CLOSING("closing", true, Set.of(Type.DEVICE)),
    /** Any contact breaks: a pole, a lead end, a clamp. */
    BREAKING("breaking", true, Set.of(Type.CONTACT)),
    /** Any contact makes. */
    MAKING("making", true, Set.of(Type.CONTACT)),
    /** A lead comes off at one end; the device it belongs to takes part. */
    LIFTING("lifting", true, Set.of(Type.DEVICE)),
    /** A lead goes on at one end. */
    LANDING("landing", true, Set.of(Type.DEVICE)),
    /** A clamp of a jumper goes on. */
    CLAMPING("clamping", true, Set.of(Type.JUMPER)),
    /** A clamp of a jumper comes off. */
    UNCLAMPING("unclamping", true, Set.of(Type.JUMPER)),
    /** The cable of a temporary source goes on a point; on one phase. */
    CONNECTING("connecting", true, Set.of(Type.MOBILE)),
    /** The cable of a temporary source comes off. */
    DISCONNECTING("disconnecting", true, Set.of(Type.MOBILE)),
    /** A temporary source is started, and gives voltage. */
    STARTING("starting", true, Set.of(Type.MOBILE)),
    /** A temporary source is stopped. */
    STOPPING("stopping", true, Set.of(Type.MOBILE)),
    /** The line end of a ground goes on at a point. */
    GROUNDING("grounding", true, Set.of(Type.POINT)),
    /** The line end of a ground comes off at a point. */
    UNGROUNDING("ungrounding", true, Set.of(Type.POINT)),
    /** The ground end of a ground goes on. */
    EARTHING("putting the ground end on with", true, Set.of(Type.GROUND)),
    /** The ground end of a ground comes off. */
    UNEARTHING("taking the ground end off with", true, Set.of(Type.GROUND)),
    /** A mode takes a value; words: mode, value. */
    SETTING("setting", true, Set.of(Type.DEVICE, Type.REGULATOR)),
    /** A regulator is run to neutral. */
    TAPPING("running to neutral", true, Set.of(Type.REGULATOR)),
    /** A person goes up at a structure. */
    GOING_ALOFT("going aloft", false, Set.of(Type.PERSON), Set.of(Type.SITE)),
    /** A person comes down. */
    COMING_DOWN("coming down", false, Set.of(Type.PERSON)),
    /** A tag is hung. */
    TAGGING("tagging", false, Set.of(Type.DEVICE)),
    /** A tag is taken off. */
    UNTAGGING("untagging", false, Set.of(Type.DEVICE)),
    /** A device is lifted onto its pole. */
    RAISING("raising", true, Set.of(Type.DEVICE)),
    /** A device is taken off its pole. */
    LOWERING("lowering", true, Set.of(Type.DEVICE)),
    /** A hold or clearance is asked for. */
    ASKING("asking for", false, Set.of(Type.HOLD, Type.CLEARANCE)),
    /** It is issued. */
    ISSUING("issuing", false, Set.of(Type.HOLD, Type.CLEARANCE)),
    /** Its holder repeats it. */
    REPEATING("repeating", false, Set.of(Type.HOLD, Type.CLEARANCE)),
    /** The repetition is confirmed. */
    CONFIRMING("confirming", false, Set.of(Type.HOLD, Type.CLEARANCE)),
    /** Its holder gives it back. */
    RELEASING("releasing", false, Set.of(Type.HOLD, Type.CLEARANCE)),
    /** A point is tested for absence of voltage. */
    TESTING("testing", true, Set.of(Type.POINT)),
    /** Hands go on a point. */
    WORKING("working on", true, Set.of(Type.POINT)),
    /** A person is briefed. */
    BRIEFING("briefing", false, Set.of(Type.PERSON)),
    /** Somebody does what the procedure says in words only; words: these. */
    DOING("doing", false),
    /** Something is written down; words: the item. */
    RECORDING("recording", false),
    /** An inspection is made; words: the item. */
    INSPECTING("inspecting", false);

    private final String words;
    private final boolean perPhase;
    private final ImmutableList<ImmutableSet<Type>> signature;

    @SafeVarargs
    @SuppressWarnings("varargs")
    ActKind(String words, boolean perPhase, Set<Type>... signature) {
        this.words = words;
        this.perPhase = perPhase;
        ImmutableList.Builder<ImmutableSet<Type>> all = ImmutableList.builder();
        for (Set<Type> types : signature) {
            all.add(ImmutableSet.copyOf(types));
        }
        this.signature = all.build();
    }

    /** {@return the words before what takes part} */
    public String words() {
        return words;
    }

    /** {@return whether it happens on one phase} */
    public boolean perPhase() {
        return perPhase;
    }

    /** {@return whether it names a text in quotes instead of a participant} */
    public boolean takesText() {
        return signature.isEmpty();
    }

    /** {@return for each participant the sorts that it may have} */
    public ImmutableList<ImmutableSet<Type>> signature() {
        return signature;
    }
}
