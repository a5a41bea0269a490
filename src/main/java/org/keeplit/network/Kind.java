package org.keeplit.network;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.Optional;
import org.keeplit.text.Span;
import org.keeplit.unit.Quantity;

/**
 * A kind of equipment, as an equipment file declares it.
 *
 * @param name its name, such as {@code recloser}
 * @param base the family that fixes its anatomy
 * @param traits its yes-or-no facts
 * @param modes its settings
 * @param duties what its poles, clamps or ends are made to break and to make
 * @param leadDuties what its leads may break and make by hand
 * @param ratings its ratings and impedances by name, such as {@code continuous} or {@code impedance}
 * @param verbs the steps that people do to it
 * @param span where it is declared
 */
public record Kind(
        String name,
        Base base,
        ImmutableSet<Trait> traits,
        ImmutableList<Mode> modes,
        DutyTable duties,
        DutyTable leadDuties,
        ImmutableMap<String, Quantity> ratings,
        ImmutableList<Verb> verbs,
        Span span) {

    @Override
    public int hashCode() {
        return name.hashCode();
    }

    /** {@return the opening duties that it is made for} */
    public ImmutableSet<OpeningDuty> breaks() {
        return duties.breaks().keySet();
    }

    /** {@return the closing duties that it is made for} */
    public ImmutableSet<ClosingDuty> makes() {
        return duties.makes().keySet();
    }

    /**
     * {@return whether it has the trait}
     *
     * @param trait the trait
     */
    public boolean has(Trait trait) {
        return traits.contains(trait);
    }

    /**
     * {@return the mode of that name, if it has one}
     *
     * @param mode the name
     */
    public Optional<Mode> mode(String mode) {
        return modes.stream().filter(m -> m.name().equals(mode)).findFirst();
    }

    /**
     * {@return the verb of this kind that is said with the same words}
     *
     * @param like a verb, perhaps of another kind
     */
    public Optional<Verb> verb(Verb like) {
        return verbs.stream().filter(v -> v.one().equals(like.one())).findFirst();
    }

    /** {@return whether it interrupts by itself and closes again by itself} */
    public boolean recloses() {
        return has(Trait.TRIPS) && has(Trait.RECLOSES);
    }
}
