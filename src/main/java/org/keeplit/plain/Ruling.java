package org.keeplit.plain;

import java.util.List;
import java.util.Map;
import org.keeplit.condition.Truth;
import org.keeplit.rule.Rule;

/** What a rule says with its variables bound: what they stand for, when it is judged, what excuses, whether it is kept. */
final class Ruling {
    private final Doings doings;
    private final Recalling recalling;
    private final Mishaps mishaps;

    Ruling(Doings doings, Recalling recalling, Mishaps mishaps) {
        this.doings = doings;
        this.recalling = recalling;
        this.mishaps = mishaps;
    }

    Truth excuse(Rule rule, Map<String, Thing> env, Asking asking) {
        Truth said = rule.unless().map(c -> asking.ask(c, env)).orElse(Truth.FALSE);
        return said.or(Truth.of(mishaps.excuses(rule, asking.facts())));
    }

    Truth kept(Rule rule, Map<String, Thing> env, Asking asking) {
        Truth kept = scope(rule, env, asking).not().or(excuse(rule, env, asking));
        boolean duty = rule.form() == Rule.Form.EVENTUALLY;
        return duty || kept == Truth.TRUE ? kept : kept.or(asking.ask(rule.body(), env));
    }

    List<Map<String, Thing>> bindings(Rule rule, PlainAct act, Asking asking) {
        boolean isStretch = rule.form() == Rule.Form.BETWEEN || rule.form() == Rule.Form.EVENTUALLY;
        return isStretch ? recalling.bindings(rule) : doings.bindings(rule, act, asking);
    }

    Truth scope(Rule rule, Map<String, Thing> env, Asking asking) {
        Truth scope = doings.scope(rule, env, asking);
        boolean isStretch = rule.form() == Rule.Form.BETWEEN || rule.form() == Rule.Form.EVENTUALLY;
        return isStretch ? scope.and(Recalling.isOpen(rule, env, asking.facts())) : scope;
    }
}
