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
import org.keeplit.outcome.Why;
import org.keeplit.rule.Template;

/** Tells, only after a failure, which part of a condition failed and with which values. */
final class Explaining {
    private final Machine machine;
    private final DutyWords duty;

    Explaining(Machine machine) {
        this.machine = machine;
        this.duty = new DutyWords(machine);
    }

    /** {@return the condition with the value under each part, of quantifiers only what decided them} */
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
        } else if (condition instanceof Condition.Counted counted) {
            counted(counted, environment, scene, parts);
        } else if (condition instanceof Condition.Named named) {
            parts.add(why(named.body(), machine.conditions().inside(named, environment), scene));
        }
        String text = new ConditionWords(environment).say(condition);
        if (condition instanceof Condition.Compare compare) {
            text += " (" + String.join("; ", told(compare, environment, scene)) + ")";
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

    /** {@return that a moment which had to come did not} */
    Why duty(RuleInstance instance, Environment environment, Scene scene) {
        Truth came = instance.scope().eval(scene).not();
        String text = new ConditionWords(environment).moments(instance.rule().until()) + " comes afterwards";
        return new Why(text, came, ImmutableList.of());
    }

    /** Keeps of a count the first few things that are so, or may be. */
    private void counted(Condition.Counted counted, Environment environment, Scene scene, List<Why> parts) {
        Condition.Binder binder = counted.binder();
        for (Obj object : machine.conditions().domain(binder, environment)) {
            Environment inner = environment.with(binder.variable(), object);
            Why body = why(counted.body(), inner, scene);
            Truth such = such(binder, inner, scene);
            if (such.and(body.truth()) != Truth.FALSE && parts.size() < 4) {
                parts.add(body.about(object.words()));
            }
        }
    }

    Truth such(Condition.Binder binder, Environment inner, Scene scene) {
        return binder.such()
                .map(c -> machine.conditions().compile(c, inner).eval(scene))
                .orElse(Truth.TRUE);
    }

    private Set<String> told(Condition.Compare compare, Environment environment, Scene scene) {
        Set<String> all = new LinkedHashSet<>();
        Set<String> alike = new LinkedHashSet<>();
        for (Why.Beside one : figures(compare, environment, scene)) {
            String values = one.limit().isEmpty() ? one.figure() : one.figure() + " beside " + one.limit();
            all.add(one.where().isEmpty() ? values : one.where() + ": " + values);
            alike.add(values);
        }
        // What is the same on every phase and under every load is said once.
        return alike.size() == 1 ? alike : all;
    }

    /** {@return the figures that were compared, on each phase and in each load case} */
    List<Why.Beside> figures(Condition.Compare compare, Environment environment, Scene scene) {
        FigureCompiler figures = machine.conditions().figures();
        List<FigureCompiler.OnPhases> phases = figures.phases(compare, environment);
        List<Why.Beside> all = new ArrayList<>();
        for (FigureCompiler.OnPhases phase : phases) {
            Amount left = figures.amount(compare.left(), environment, phase.left());
            Amount right = figures.amount(compare.right(), environment, phase.right());
            Optional<String> missing = Amount.unstated(left).or(() -> Amount.unstated(right));
            if (missing.isPresent()) {
                all.add(new Why.Beside("", missing.get() + " is not stated", "", Double.NaN));
                continue;
            }
            for (int i = 0; i < scene.loadCases(); i++) {
                List<String> where = new ArrayList<>();
                if (phases.size() > 1) {
                    where.add("phase " + phase.left());
                }
                if (scene.loadCases() > 1) {
                    where.add(scene.power().cases().get(i));
                }
                double one = left.value(scene, i);
                double other = right.value(scene, i);
                all.add(new Why.Beside(
                        String.join(", ", where),
                        FigureCompiler.words(one, compare.left().dimension()),
                        FigureCompiler.words(other, compare.right().dimension()),
                        compare.comparison().isUpper() ? one / other : other / one));
            }
        }
        return all;
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
            } else if (part instanceof Template.ConditionGap gap) {
                Truth so = machine.conditions().compile(gap.condition(), environment).eval(scene);
                text.append(new ConditionWords(environment).told(gap.condition(), so));
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
