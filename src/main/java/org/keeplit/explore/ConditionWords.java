package org.keeplit.explore;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.keeplit.condition.ActKind;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Figure;
import org.keeplit.condition.Moment;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Term;
import org.keeplit.condition.Truth;
import org.keeplit.unit.Quantity;

/** Says a condition in words, with what its variables stand for. */
final class ConditionWords {
    private static final String[][] VERBS = {
        {" has happened", " has not happened"},
        {" is ", " is not "},
        {" has ", " does not have "},
        {" covers ", " does not cover "},
        {" includes ", " does not include "},
        {" feeds ", " does not feed "},
        {" stands at ", " does not stand at "}
    };

    private final Environment environment;

    ConditionWords(Environment environment) {
        this.environment = environment;
    }

    String say(Condition condition) {
        if (condition instanceof Condition.Not not) {
            boolean simple = not.body() instanceof Condition.Atom
                    || not.body() instanceof Condition.Named
                    || not.body() instanceof Condition.Happened;
            return simple ? denied(say(not.body())) : "not: " + say(not.body());
        } else if (condition instanceof Condition.All all) {
            return all.parts().size() == 2 ? joined(all.parts(), " and ") : "all of these";
        } else if (condition instanceof Condition.One one) {
            return one.parts().size() == 2 ? joined(one.parts(), " or ") : "one of these";
        } else if (condition instanceof Condition.Quantified q) {
            return q.quantifier().name().toLowerCase(Locale.ROOT) + " " + of(q.binder(), q.body());
        } else if (condition instanceof Condition.Counted c) {
            return many(c) + " " + of(c.binder(), c.body());
        } else if (condition instanceof Condition.Named named) {
            return named(named);
        } else if (condition instanceof Condition.Happened happened) {
            String since = happened.since().isEmpty() ? "" : " since " + moments(happened.since());
            return moments(happened.moments()) + " has happened" + since;
        } else if (condition instanceof Condition.Since since) {
            return "since " + moments(since.since()) + ", " + say(since.body());
        }
        if (condition instanceof Condition.Compare compare) {
            return figure(compare.left()) + " " + compare.comparison().words() + " " + figure(compare.right());
        }
        return say((Condition.Atom) condition);
    }

    /** {@return what a quantifier ranges over, and what it says of that: as one sentence where that is the subject of both} */
    private String of(Condition.Binder binder, Condition body) {
        String thing = binder.noun().words() + " " + binder.variable() + such(binder);
        String said = say(body);
        String subject = binder.variable() + " ";
        boolean simple = body instanceof Condition.Atom
                || body instanceof Condition.Not not && not.body() instanceof Condition.Atom;
        return simple && binder.such().isEmpty() && said.startsWith(subject)
                ? thing + said.substring(subject.length() - 1)
                : thing + ": " + said;
    }

    /** {@return what is further said of whatever a variable ranges over} */
    String such(Condition.Binder binder) {
        String subject = binder.variable() + " ";
        return binder.such()
                .map(this::say)
                .map(said -> said.startsWith(subject)
                        ? " that "
                                + said.substring(subject.length())
                                        .replace(" and " + subject, " and ")
                                        .replace(" or " + subject, " or ")
                        : ", where " + said)
                .orElse("");
    }

    /** {@return a condition as it is in a state: as it stands, denied, or in doubt} */
    String told(Condition condition, Truth truth) {
        if (truth == Truth.UNKNOWN) {
            return "it is not known whether " + say(condition);
        }
        return truth == Truth.TRUE ? say(condition) : say(new Condition.Not(condition, condition.span()));
    }

    private static String many(Condition.Counted counted) {
        if (counted.most() == Integer.MAX_VALUE) {
            return "at least " + counted.least();
        }
        return counted.least() == counted.most() ? "exactly " + counted.most() : "at most " + counted.most();
    }

    private String named(Condition.Named named) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < named.arguments().size(); i++) {
            Condition.Argument argument = named.arguments().get(i);
            text.append(i == 0 ? "" : " ")
                    .append(argument.term().map(this::term).orElseGet(() -> phase(argument.phase().get())
                            .replaceFirst("^ on (phase )?", "")));
            String words = named.words().get(i);
            text.append(words.isEmpty() ? "" : " " + words);
        }
        return text.toString();
    }

    /** {@return moments in words} */
    String moments(List<Moment> moments) {
        String acts = moments.stream().map(m -> m.act().words()).distinct().collect(Collectors.joining(" or "));
        Moment one = moments.get(0);
        StringBuilder text = new StringBuilder(acts);
        boolean aloft = one.act() == ActKind.GOING_ALOFT;
        if (one.act().takesText()) {
            text.append(" \"").append(one.words().get(0)).append('"');
        } else if (one.act() == ActKind.SETTING) {
            text.append(' ').append(one.words().get(0)).append(" of ").append(participant(one.participants().get(0)))
                    .append(" to ").append(one.words().get(1));
        } else {
            for (int i = 0; i < one.participants().size(); i++) {
                String before = aloft ? i == 0 ? " by " : " at " : " ";
                text.append(one.act() == ActKind.COMING_DOWN ? " by " : before)
                        .append(participant(one.participants().get(i)));
            }
        }
        one.phase().ifPresent(p -> text.append(phase(p)));
        one.by().ifPresent(by -> text.append(" by ").append(participant(by)));
        return text.toString();
    }

    private String participant(Moment.Participant participant) {
        return participant instanceof Moment.The the
                ? term(the.term())
                : "any " + ((Moment.Any) participant).noun().words();
    }

    /** {@return a statement denied, by its first verb} */
    private static String denied(String statement) {
        for (String[] verb : VERBS) {
            int at = statement.indexOf(verb[0]);
            if (at >= 0) {
                return statement.substring(0, at) + verb[1] + statement.substring(at + verb[0].length());
            }
        }
        return "not: " + statement;
    }

    private String joined(List<Condition> parts, String by) {
        return parts.stream().map(this::say).collect(Collectors.joining(by));
    }

    private String say(Condition.Atom atom) {
        String first = atom.terms().isEmpty() ? "" : term(atom.terms().get(0)) + " ";
        String rest = atom.terms().size() > 1 ? " " + term(atom.terms().get(1)) : "";
        String phase = atom.predicate().perPhase() ? phase(atom.phase()) : "";
        return switch (atom.predicate()) {
            case MODE -> atom.words().get(0) + " of " + first + "is " + atom.words().get(1) + phase;
            case PLACED -> first + "is " + atom.words().get(0) + phase;
            case RECORDED -> "\"" + atom.words().get(0) + "\" is recorded";
            case FOUND -> "\"" + atom.words().get(0) + "\" is found \"" + atom.words().get(1) + "\"";
            case OPENING_DUTY, CLOSING_DUTY -> first + atom.predicate().words() + " "
                    + String.join(" or ", atom.words()) + phase;
            case PHASE_IN -> first + phase(atom.phase()).replaceFirst(" on ", "is ");
            case ON_SIDE -> first + "is on the " + atom.words().get(0) + " side";
            case QUALIFIED_FOR -> first + atom.predicate().words() + " \"" + atom.words().get(0) + "\"";
            case IN_CLASS -> first + "is of the voltage class that counts";
            case HAS, COUNTED -> first + atom.predicate().words() + " " + atom.words().get(0) + phase;
            default -> first + atom.predicate().words() + rest + phase;
        };
    }

    /** {@return a figure in words} */
    String figure(Figure figure) {
        if (figure instanceof Figure.Part part) {
            return Quantity.number(part.factor() * 100) + " % of " + figure(part.figure());
        } else if (figure instanceof Figure.Rated rated) {
            return "the " + rated(rated.name()) + " of " + term(rated.of());
        } else if (figure instanceof Figure.Measured measured) {
            return measured.measure().words() + " " + term(measured.of())
                    + measured.beyond().map(b -> " beyond " + term(b)).orElse("") + phase(measured.phase());
        }
        return figure.toString();
    }

    /** {@return how people say the name of a figure that is stated} */
    static String rated(String name) {
        return switch (name) {
            case "voltage low" -> "lower voltage limit";
            case "voltage high" -> "upper voltage limit";
            case "continuous", "interrupting", "making", "short-time" -> name + " rating";
            default -> name;
        };
    }

    private String phase(PhaseTerm phase) {
        if (phase instanceof PhaseTerm.Variable variable) {
            Obj object = environment.get(variable.name());
            return " on phase " + (object == null ? variable.name() : object.words());
        }
        if (phase instanceof PhaseTerm.All all) {
            return all.said() ? " on all phases" : "";
        }
        return " on phase " + ((PhaseTerm.Given) phase).phases();
    }

    String term(Term term) {
        if (term instanceof Term.Variable variable) {
            Obj object = environment.get(variable.name());
            return object == null ? variable.name() : object.words();
        } else if (term instanceof Term.LineOf line) {
            return "the " + line.side().word() + "-side line of " + term(line.of());
        } else if (term instanceof Term.BushingOf bushing) {
            return "the " + bushing.side().word() + " bushing of " + term(bushing.of());
        } else if (term instanceof Term.LeadOf lead) {
            return "the " + lead.side().word() + " lead of " + term(lead.of());
        } else if (term instanceof Term.NodeOf node) {
            return "the node of " + term(node.of());
        } else if (term instanceof Term.SiteOf site) {
            return "the site of " + term(site.of());
        }
        return term.toString();
    }
}
