package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Noun;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.condition.Predicate;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;
import org.keeplit.rule.Rule;
import org.keeplit.rule.Trigger;
import org.keeplit.text.Span;
import org.keeplit.unit.Dimension;

/**
 * What a rule or a whole rulebook applies to: {@code applies to reclosers and breakers, above 600 V, at pole-24}.
 *
 * @param kinds the kinds that count of each sort; a sort with no kinds counts whole
 * @param volts bounds of the nominal voltage, phase to phase, as words of {@link Predicate#IN_CLASS}; empty for none
 * @param sites the structures that count; none for all
 * @param span where it stands
 */
record Applies(Map<Type, Set<String>> kinds, ImmutableList<String> volts, ImmutableList<String> sites, Span span) {
    private static final ImmutableSet<Type> WITH_SITE = ImmutableSet.of(
            Type.DEVICE, Type.REGULATOR, Type.JUMPER, Type.GROUND, Type.MOBILE, Type.SITE, Type.CONTACT);
    private static final ImmutableSet<Type> EQUIPMENT = ImmutableSet.of(
            Type.DEVICE,
            Type.REGULATOR,
            Type.CAPACITOR,
            Type.TRANSFORMER,
            Type.LINE,
            Type.LOAD,
            Type.GENERATOR,
            Type.SOURCE,
            Type.JUMPER,
            Type.MOBILE,
            Type.GROUND);

    /** {@return what stands on such a line} */
    static Applies read(Cursor cursor, Scope scope) {
        cursor.next("applies");
        cursor.expect("“to”", "to");
        Map<Type, Set<String>> kinds = new EnumMap<>(Type.class);
        List<String> volts = new ArrayList<>();
        List<String> sites = new ArrayList<>();
        do {
            if (cursor.take("above")) {
                volts.addAll(List.of("above", volts(cursor)));
            } else if (cursor.take("below")) {
                volts.addAll(List.of("below", volts(cursor)));
            } else if (cursor.need("what it applies to").isNumber()) {
                range(cursor, volts);
            } else if (cursor.take("at")) {
                do {
                    sites.add(cursor.next("the name of a site").value());
                } while (cursor.take("and") || cursor.take("or"));
            } else {
                do {
                    kind(cursor, scope, kinds);
                } while (cursor.take("and") || cursor.take("or"));
            }
        } while (cursor.take(","));
        cursor.finish("what it applies to");
        return new Applies(kinds, ImmutableList.copyOf(volts), ImmutableList.copyOf(sites), cursor.from(0));
    }

    private static void range(Cursor cursor, List<String> volts) {
        int start = cursor.index();
        String low = volts(cursor);
        cursor.expect("“to” and the upper voltage", "to");
        String high = volts(cursor);
        if (new BigDecimal(low).compareTo(new BigDecimal(high)) >= 0) {
            throw new Misread(Code.BAD_NUMBER
                    .at(cursor.from(start), "no voltage is from " + cursor.words(start))
                    .help("the lower voltage comes first"));
        }
        volts.addAll(List.of("from", low, "to", high));
    }

    private static String volts(Cursor cursor) {
        return BigDecimal.valueOf(Figures.positive(cursor, Dimension.VOLTAGE, "the voltage").si())
                .stripTrailingZeros()
                .toPlainString();
    }

    private static void kind(Cursor cursor, Scope scope, Map<Type, Set<String>> kinds) {
        int start = cursor.index();
        Noun noun = scope.vocabulary().noun(cursor);
        if (!EQUIPMENT.contains(noun.type())) {
            throw new Misread(Code.WRONG_SORT
                    .at(cursor.from(start), "rules apply to kinds of equipment, and this is " + noun.type().phrase())
                    .help("or to a voltage, “above 600 V”, or to a site, “at pole-24”"));
        }
        boolean whole = kinds.containsKey(noun.type()) && kinds.get(noun.type()).isEmpty();
        Set<String> known = kinds.computeIfAbsent(noun.type(), t -> new LinkedHashSet<>());
        if (noun.kinds().isEmpty()) {
            known.clear();
        } else if (!whole) {
            known.addAll(noun.kinds());
        }
    }

    /**
     * {@return the rule, judged only for what this applies to}
     *
     * @param must whether it is a mistake if nothing that the rule binds could be that; a line on a whole book leaves
     *     such rules as they are
     */
    Rule to(Rule rule, boolean must) {
        List<Condition> scope = new ArrayList<>(rule.scope().map(List::of).orElse(List.of()));
        int before = scope.size();
        List<Condition.Binder> binders = new ArrayList<>();
        List<Trigger> triggers = new ArrayList<>();
        Set<String> done = new LinkedHashSet<>();
        boolean narrowed = false;
        for (Condition.Binder binder : rule.binders()) {
            binders.add(narrow(binder));
            narrowed |= kinds.containsKey(binder.noun().type());
            limit(binder, scope, done);
        }
        for (Trigger trigger : rule.triggers()) {
            ImmutableList.Builder<Condition.Binder> all = ImmutableList.builder();
            for (Condition.Binder binder : trigger.binders()) {
                all.add(narrow(binder));
                narrowed |= kinds.containsKey(binder.noun().type());
                limit(binder, scope, done);
            }
            triggers.add(new Trigger(trigger.act(), all.build(), trigger.phase(), trigger.by(), trigger.words()));
        }
        if (must && !narrowed && scope.size() == before) {
            throw new Misread(Code.NOTHING_APPLIES
                    .at(span, "the rule " + rule.name() + " binds nothing that this could be said of")
                    .help("it is about the variables that “any” binds in the rule's head"));
        }
        return new Rule(
                rule.name(),
                rule.form(),
                ImmutableList.copyOf(triggers),
                rule.until(),
                ImmutableList.copyOf(binders),
                scope.isEmpty()
                        ? Optional.empty()
                        : Optional.of(
                                scope.size() == 1
                                        ? scope.get(0)
                                        : new Condition.All(ImmutableList.copyOf(scope), span)),
                rule.body(),
                rule.unless(),
                rule.evenIf(),
                rule.severity(),
                rule.says(),
                rule.because(),
                rule.citation(),
                rule.span());
    }

    /** {@return whether a rule binds anything that this could be said of} */
    boolean touches(Rule rule) {
        return Stream.concat(rule.binders().stream(), rule.triggers().stream().flatMap(t -> t.binders().stream()))
                .map(binder -> binder.noun().type())
                .anyMatch(type -> kinds.containsKey(type)
                        || !volts.isEmpty() && Predicate.IN_CLASS.signature().get(0).contains(type)
                        || !sites.isEmpty() && WITH_SITE.contains(type));
    }

    private Condition.Binder narrow(Condition.Binder binder) {
        Set<String> some = kinds.get(binder.noun().type());
        if (some == null || some.isEmpty()) {
            return binder;
        }
        Set<String> left = new LinkedHashSet<>(some);
        if (!binder.noun().kinds().isEmpty()) {
            left.retainAll(binder.noun().kinds());
            if (left.isEmpty()) {
                throw new Misread(Code.NOTHING_APPLIES.at(
                        span, binder.variable() + " is " + Suggestions.a(binder.noun().words()) + ", never one of these"));
            }
        }
        Noun noun = new Noun(binder.noun().type(), ImmutableSet.copyOf(left), binder.noun().words());
        return new Condition.Binder(binder.variable(), noun, binder.of(), binder.such(), binder.span());
    }

    private void limit(Condition.Binder binder, List<Condition> scope, Set<String> done) {
        if (!done.add(binder.variable())) {
            return;
        }
        Type type = binder.noun().type();
        Term variable = new Term.Variable(binder.variable(), type, span);
        if (!volts.isEmpty() && Predicate.IN_CLASS.signature().get(0).contains(type)) {
            scope.add(new Condition.Atom(
                    Predicate.IN_CLASS, ImmutableList.of(variable), PhaseTerm.ALL, volts, span));
        }
        if (!sites.isEmpty() && WITH_SITE.contains(type)) {
            ImmutableList.Builder<Condition> any = ImmutableList.builder();
            for (String site : sites) {
                any.add(new Condition.Atom(
                        Predicate.STANDS_AT,
                        ImmutableList.of(variable, new Term.Name(site, Type.SITE, span)),
                        PhaseTerm.ALL,
                        ImmutableList.of(),
                        span));
            }
            scope.add(new Condition.One(any.build(), span));
        }
    }
}
