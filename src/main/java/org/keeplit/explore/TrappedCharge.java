package org.keeplit.explore;

import java.util.List;
import org.keeplit.electric.Analysis;
import org.keeplit.electric.Contact;
import org.keeplit.electric.Level;
import org.keeplit.program.FieldKey;

/**
 * The most voltage that capacitor banks may have kept: the peak of their rated voltage when they were cut off, falling
 * evenly by parts to their residual voltage over their discharge time, as far as they were waited for.
 */
final class TrappedCharge {
    private TrappedCharge() {}

    /**
     * One bank on one phase.
     *
     * @param vertex where it hangs
     * @param shorted the vertices that a ground must reach to take its charge
     * @param waited the field of its waiting time
     * @param peak its peak voltage
     * @param residual what is left after the discharge time
     * @param minutes the discharge time
     */
    record Bank(
            int vertex, List<Integer> shorted, FieldKey.Waited waited, double peak, double residual, double minutes) {
        double kept(Scene scene) {
            Level level = scene.analysis().level(vertex);
            if (level.isAlive() || shorted.stream().allMatch(scene.analysis()::tiedToGround)) {
                return 0;
            }
            int passed = scene.layout().value(scene.state(), waited);
            return peak * Math.pow(residual / peak, passed / minutes);
        }
    }

    /** At a point: of the banks that are joined to it. */
    record At(int vertex, List<Bank> banks) implements Amount {
        @Override
        public boolean isOfPosition() {
            return false;
        }

        @Override
        public double value(Scene scene, int loadCase) {
            return banks.stream()
                    .filter(b -> scene.analysis().joined(b.vertex(), vertex))
                    .mapToDouble(b -> b.kept(scene))
                    .max()
                    .orElse(0);
        }
    }

    /** Behind a contact: of the banks that closing it makes alive. */
    record Behind(Contact contact, List<Bank> banks) implements Amount {
        @Override
        public boolean isOfPosition() {
            return false;
        }

        @Override
        public double value(Scene scene, int loadCase) {
            Analysis then = scene.analysis().switched(contact, true);
            return banks.stream()
                    .filter(b -> then.level(b.vertex()).isAlive())
                    .mapToDouble(b -> b.kept(scene))
                    .max()
                    .orElse(0);
        }
    }
}
