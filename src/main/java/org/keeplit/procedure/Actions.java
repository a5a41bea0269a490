package org.keeplit.procedure;

import java.util.Optional;
import org.keeplit.condition.Term;

/** What can be said of an action whatever its shape. */
public final class Actions {
    private Actions() {}

    /**
     * The object whose phases an action is done on.
     *
     * @param action the action
     * @return the object, or nothing for actions without phases
     */
    public static Optional<Term> object(Action action) {
        if (action instanceof Action.Operate a && a.object() instanceof DeviceSet.One one) {
            return Optional.of(one.device());
        } else if (action instanceof Action.MoveLead a) {
            return Optional.of(a.device());
        } else if (action instanceof Action.Install a) {
            return Optional.of(a.jumper());
        } else if (action instanceof Action.Remove a) {
            return Optional.of(a.jumper());
        } else if (action instanceof Action.Clamp a) {
            return Optional.of(a.jumper());
        } else if (action instanceof Action.Unclamp a) {
            return Optional.of(a.jumper());
        } else if (action instanceof Action.ApplyGround a) {
            return Optional.of(a.ground());
        } else if (action instanceof Action.RemoveGround a) {
            return Optional.of(a.ground());
        } else if (action instanceof Action.Run a) {
            return Optional.of(a.source());
        } else if (action instanceof Action.Prove a) {
            return Optional.of(a.of());
        } else if (action instanceof Action.TestDead a) {
            return Optional.of(a.point());
        } else if (action instanceof Action.MeasureFigure a && a.figure().measure().perPhase()) {
            return Optional.of(a.figure().of());
        } else if (action instanceof Action.WaitDead a) {
            return Optional.of(a.of());
        } else if (action instanceof Action.Work a) {
            return Optional.of(a.point());
        }
        return Optional.empty();
    }
}
