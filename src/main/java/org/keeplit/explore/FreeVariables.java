package org.keeplit.explore;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Figure;
import org.keeplit.condition.Moment;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Term;

/** The variables on which a condition depends, those left out that it binds itself. */
final class FreeVariables {
    private final Set<String> all = new LinkedHashSet<>();

    private FreeVariables() {}

    static Set<String> of(Condition condition) {
        FreeVariables free = new FreeVariables();
        free.add(condition);
        return free.all;
    }

    static Set<String> of(List<Moment> moments) {
        FreeVariables free = new FreeVariables();
        moments.forEach(free::add);
        return free.all;
    }

    private void add(Condition condition) {
        if (condition instanceof Condition.Not not) {
            add(not.body());
        } else if (condition instanceof Condition.All parts) {
            parts.parts().forEach(this::add);
        } else if (condition instanceof Condition.One parts) {
            parts.parts().forEach(this::add);
        } else if (condition instanceof Condition.Quantified some) {
            bound(some.binder(), some.body());
        } else if (condition instanceof Condition.Counted some) {
            bound(some.binder(), some.body());
        } else if (condition instanceof Condition.Named named) {
            named.arguments().forEach(a -> {
                a.term().ifPresent(this::add);
                a.phase().ifPresent(this::add);
            });
        } else if (condition instanceof Condition.Happened happened) {
            happened.moments().forEach(this::add);
            happened.since().forEach(this::add);
        } else if (condition instanceof Condition.Since since) {
            since.since().forEach(this::add);
            add(since.body());
        } else if (condition instanceof Condition.Compare compare) {
            add(compare.left());
            add(compare.right());
        } else if (condition instanceof Condition.Atom atom) {
            atom.terms().forEach(this::add);
            add(atom.phase());
        }
    }

    private void bound(Condition.Binder binder, Condition body) {
        FreeVariables inner = new FreeVariables();
        inner.add(body);
        binder.such().ifPresent(inner::add);
        inner.all.remove(binder.variable());
        binder.of().ifPresent(this::add);
        all.addAll(inner.all);
    }

    private void add(Moment moment) {
        moment.participants().forEach(this::add);
        moment.by().ifPresent(this::add);
        moment.phase().ifPresent(this::add);
    }

    private void add(Moment.Participant participant) {
        if (participant instanceof Moment.The the) {
            add(the.term());
        }
    }

    private void add(Figure figure) {
        if (figure instanceof Figure.Part part) {
            add(part.figure());
        } else if (figure instanceof Figure.Rated rated) {
            add(rated.of());
        } else if (figure instanceof Figure.Measured measured) {
            add(measured.of());
            measured.beyond().ifPresent(this::add);
            add(measured.phase());
        }
    }

    private void add(PhaseTerm phase) {
        if (phase instanceof PhaseTerm.Variable variable) {
            all.add(variable.name());
        }
    }

    private void add(Term term) {
        if (term instanceof Term.Variable variable) {
            all.add(variable.name());
        } else {
            part(term).ifPresent(this::add);
        }
    }

    /** {@return the term of which another is a part, if it is} */
    private static Optional<Term> part(Term term) {
        if (term instanceof Term.LineOf t) {
            return Optional.of(t.of());
        } else if (term instanceof Term.BushingOf t) {
            return Optional.of(t.of());
        } else if (term instanceof Term.LeadOf t) {
            return Optional.of(t.of());
        } else if (term instanceof Term.NodeOf t) {
            return Optional.of(t.of());
        } else if (term instanceof Term.SiteOf t) {
            return Optional.of(t.of());
        }
        return Optional.empty();
    }
}
