package org.keeplit.explore;

import java.util.List;
import java.util.Optional;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Truth;
import org.keeplit.electric.Contact;
import org.keeplit.electric.flow.FlowSolution;
import org.keeplit.electric.power.PowerModel;

/** A figure whose objects are all known, ready to be worked out in a scene. */
interface Amount {
    /**
     * Works it out.
     *
     * @param scene where
     * @param loadCase the number of the load case
     * @return the figure in SI units; not a number if the load flow has no solution
     */
    double value(Scene scene, int loadCase);

    /** {@return whether it depends on nothing but where contacts and taps stand} */
    default boolean isOfPosition() {
        return true;
    }

    /** A figure that never changes. */
    record Fixed(double value) implements Amount {
        @Override
        public double value(Scene scene, int loadCase) {
            return value;
        }
    }

    /** A figure that nobody states, so that whatever is compared with it is unknown. @param words what it is */
    record Unstated(String words) implements Amount {
        @Override
        public double value(Scene scene, int loadCase) {
            return Double.NaN;
        }
    }

    /** {@return what is not stated of what an amount needs, or nothing} */
    static Optional<String> unstated(Amount amount) {
        return amount instanceof Unstated one
                ? Optional.of(one.words())
                : amount instanceof Part part ? unstated(part.of()) : Optional.empty();
    }

    /** A part of another. */
    record Part(double factor, Amount of) implements Amount {
        @Override
        public boolean isOfPosition() {
            return of.isOfPosition();
        }

        @Override
        public double value(Scene scene, int loadCase) {
            return factor * of.value(scene, loadCase);
        }
    }

    /** The current through whichever of some contacts are closed: a pole, or a clamp at one of its places. */
    record Through(List<Contact> contacts) implements Amount {
        @Override
        public double value(Scene scene, int loadCase) {
            FlowSolution flow = scene.flow(loadCase);
            if (flow == null) {
                return Double.NaN;
            }
            double amperes = 0;
            for (Contact contact : contacts) {
                if (scene.analysis().isClosed(contact)) {
                    amperes += flow.current(scene.power().element(contact), 0).abs();
                }
            }
            return amperes;
        }
    }

    /** The current at the sending end of a line section or a regulator. @param element in the load flow */
    record InBranch(int element, int position) implements Amount {
        @Override
        public double value(Scene scene, int loadCase) {
            FlowSolution flow = scene.flow(loadCase);
            return flow == null ? Double.NaN : flow.current(element, position).abs();
        }
    }

    /** The residual current through the poles of a device. */
    record Residual(List<Contact> poles) implements Amount {
        @Override
        public double value(Scene scene, int loadCase) {
            FlowSolution flow = scene.flow(loadCase);
            if (flow == null) {
                return Double.NaN;
            }
            int[] closed = poles.stream()
                    .filter(scene.analysis()::isClosed)
                    .mapToInt(scene.power()::element)
                    .toArray();
            return closed.length == 0 ? 0 : flow.residual(closed).abs();
        }
    }

    /** The voltage between two vertices; the second may be the earth. */
    record Between(int one, int other) implements Amount {
        @Override
        public double value(Scene scene, int loadCase) {
            FlowSolution flow = scene.flow(loadCase);
            PowerModel model = scene.power();
            return flow == null
                    ? Double.NaN
                    : flow.voltageBetween(model.terminal(one), model.terminal(other)).abs();
        }
    }

    /** The largest current of a three-phase, a line-to-ground or a line-to-line fault at a vertex. */
    record AtFault(int vertex) implements Amount {
        @Override
        public double value(Scene scene, int loadCase) {
            return scene.faultCurrent(vertex);
        }
    }

    /** A comparison, which must hold in every load case. */
    record Compared(Amount left, Condition.Comparison comparison, Amount right) implements Node {
        /** Two figures this close, relative to the larger, count as equal: load flows end within about this. */
        private static final double CLOSE = 1e-6;

        @Override
        public void reads(Reads into) {
            if (left.isOfPosition() && right.isOfPosition()) {
                into.position();
            } else {
                into.everything();
            }
        }

        @Override
        public Truth eval(Scene scene) {
            Truth all = Truth.TRUE;
            for (int i = 0; i < scene.loadCases(); i++) {
                double one = left.value(scene, i);
                double other = right.value(scene, i);
                all = all.and(Double.isNaN(one) || Double.isNaN(other) ? Truth.UNKNOWN : Truth.of(holds(one, other)));
            }
            return all;
        }

        private boolean holds(double one, double other) {
            double slack = CLOSE * Math.max(Math.abs(one), Math.abs(other));
            return switch (comparison) {
                case AT_MOST -> one <= other + slack;
                case AT_LEAST -> one >= other - slack;
                case BELOW -> one < other - slack;
                case ABOVE -> one > other + slack;
            };
        }
    }
}
