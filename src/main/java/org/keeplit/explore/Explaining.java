package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Figure;
import org.keeplit.condition.Predicate;
import org.keeplit.condition.Truth;
import org.keeplit.electric.Contact;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.rule.Template;

/** Tells, only after a failure, which part of a condition failed and with which values. */
final class Explaining {
    private final Machine machine;
    private final DutyWords duty;

    Explaining(Machine machine) {
        this.machine = machine;
        this.duty = new DutyWords(machine);
    }

    /** {@return the condition with the value under each part} */
    Why why(Condition condition, Environment environment, Scene scene) {
        Truth truth = machine.conditions().compile(condition, environment).eval(scene);
        List<Why> parts = new ArrayList<>();
        if (condition instanceof Condition.Not not) {
            parts.add(why(not.body(), environment, scene));
        } else if (condition instanceof Condition.All all) {
            all.parts().forEach(p -> parts.add(why(p, environment, scene)));
        } else if (condition instanceof Condition.One one) {
            one.parts().forEach(p -> parts.add(why(p, environment, scene)));
        } else if (condition instanceof Condition.Quantified quantified) {
            witnesses(quantified, environment, scene, truth, parts);
        }
        String text = new ConditionWords(environment).say(condition);
        if (condition instanceof Condition.Compare compare) {
            text += figures(compare, environment, scene);
        } else if (condition instanceof Condition.Atom atom) {
            text += fit(atom, environment, scene);
        }
        return new Why(text, truth, ImmutableList.copyOf(parts));
    }

    /** {@return what a contact is asked for, where it is judged whether it is made for that} */
    private String fit(Condition.Atom atom, Environment environment, Scene scene) {
        boolean opens = atom.predicate() == Predicate.FIT_TO_OPEN;
        if (!opens && atom.predicate() != Predicate.FIT_TO_CLOSE) {
            return "";
        }
        Obj object = machine.conditions().object(atom.terms().get(0), environment);
        Contact contact = ((Obj.Joint) object).contact();
        return " (" + (opens ? duty.opening(contact, scene) : duty.closing(contact, scene)) + ")";
    }

    /** {@return the figures that were compared, on each phase and in each load case} */
    private String figures(Condition.Compare compare, Environment environment, Scene scene) {
        FigureCompiler figures = machine.conditions().figures();
        List<FigureCompiler.OnPhases> phases = figures.phases(compare, environment);
        Set<String> all = new LinkedHashSet<>();
        Set<String> alike = new LinkedHashSet<>();
        for (FigureCompiler.OnPhases phase : phases) {
            Amount left = figures.amount(compare.left(), environment, phase.left());
            Amount right = figures.amount(compare.right(), environment, phase.right());
            Optional<String> missing = Amount.unstated(left).or(() -> Amount.unstated(right));
            if (missing.isPresent()) {
                all.add(missing.get() + " is not stated");
                continue;
            }
            for (int i = 0; i < scene.loadCases(); i++) {
                String where = (phases.size() > 1 ? "phase " + phase.left() + ", " : "")
                        + (scene.loadCases() > 1 ? scene.power().flow().loadCases().get(i) + ": " : "");
                String values = FigureCompiler.words(left.value(scene, i), compare.left().dimension()) + " beside "
                        + FigureCompiler.words(right.value(scene, i), compare.right().dimension());
                all.add(where + values);
                alike.add(values);
            }
        }
        // What is the same on every phase and under every load is said once.
        return " (" + String.join("; ", alike.size() == 1 ? alike : all) + ")";
    }

    /** Keeps of a quantifier only what decided it: the first that fails, or the first that is so. */
    private void witnesses(
            Condition.Quantified quantified, Environment environment, Scene scene, Truth truth, List<Why> parts) {
        Condition.Binder binder = quantified.binder();
        for (Obj object : machine.conditions().domain(binder, environment)) {
            Environment inner = environment.with(binder.variable(), object);
            Truth such = binder.such()
                    .map(c -> machine.conditions().compile(c, inner).eval(scene))
                    .orElse(Truth.TRUE);
            if (such == Truth.FALSE) {
                continue;
            }
            Why body = why(quantified.body(), inner, scene);
            boolean decides = switch (quantified.quantifier()) {
                case EVERY -> body.truth() != Truth.TRUE;
                case SOME -> truth != Truth.TRUE || body.truth() == Truth.TRUE;
                case NO -> body.truth() != Truth.FALSE;
            };
            if (decides) {
                parts.add(body);
                if (truth == Truth.TRUE || parts.size() >= 4) {
                    return;
                }
            }
        }
    }

    /** {@return a rule's sentence with its gaps filled} */
    String fill(Template template, Environment environment, Scene scene) {
        StringBuilder text = new StringBuilder();
        for (Template.Part part : template.parts()) {
            if (part instanceof Template.Text words) {
                text.append(words.text());
            } else if (part instanceof Template.Gap gap) {
                text.append(fill(gap, environment, scene));
            } else if (part instanceof Template.FigureGap gap) {
                text.append(figure(gap.figure(), environment, scene));
            }
        }
        return text.toString();
    }

    /** {@return a figure in the heaviest load case, on each phase that it means} */
    private String figure(Figure figure, Environment environment, Scene scene) {
        FigureCompiler figures = machine.conditions().figures();
        List<Conductor> phases = figures.phases(figure, environment);
        if (phases.isEmpty()) {
            phases = List.of(Conductor.A);
        }
        return phases.stream()
                .map(p -> words(figures.amount(figure, environment, p), figure, scene))
                .distinct()
                .collect(Collectors.joining(", "));
    }

    private static String words(Amount amount, Figure figure, Scene scene) {
        return Amount.unstated(amount).isPresent()
                ? "not stated"
                : FigureCompiler.words(amount.value(scene, 0), figure.dimension());
    }

    private String fill(Template.Gap gap, Environment environment, Scene scene) {
        Obj object = environment.get(gap.variable());
        if (object == null) {
            return gap.variable();
        }
        Element element = object instanceof Obj.Of of ? of.element() : null;
        return switch (gap.attribute()) {
            case "customers" -> element instanceof Element.Load load
                    ? load.customers() == 1 ? "1 customer" : load.customers() + " customers"
                    : object.words();
            case "critical" -> element instanceof Element.Load load ? load.critical().orElse("") : "";
            case "site" -> machine.world().siteOf(object);
            case "opening duty" -> object instanceof Obj.Joint joint
                    ? duty.opening(joint.contact(), scene)
                    : duties(object, scene, true);
            case "closing duty" -> object instanceof Obj.Joint joint
                    ? duty.closing(joint.contact(), scene)
                    : duties(object, scene, false);
            default -> object.words();
        };
    }

    private String duties(Obj object, Scene scene, boolean opening) {
        return machine.world().grid().contactsOf(object.words()).stream()
                .filter(c -> c.part() == Contact.Part.POLE)
                .map(c -> opening ? duty.opening(c, scene) : duty.closing(c, scene))
                .distinct()
                .reduce((a, b) -> a + " and " + b)
                .orElse("");
    }
}
