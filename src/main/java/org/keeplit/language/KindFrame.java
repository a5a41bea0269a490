package org.keeplit.language;

import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;
import org.keeplit.network.Kind;
import org.keeplit.network.Verb;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.DeviceSet;

/** Makes the action of a verb that kinds declare. */
final class KindFrame implements StepPattern.Frame {
    private final Map<Kind, Verb> verbs;

    /** A frame. @param verbs the kinds that declare these words, with their verb */
    KindFrame(Map<Kind, Verb> verbs) {
        this.verbs = verbs;
    }

    @Override
    public List<Action> build(StepPattern.Match match, StepText step) {
        Verb.Form form = verbs.values().iterator().next().one();
        List<Action> actions = new ArrayList<>();
        for (Object item : match.get(0, List.class)) {
            DeviceSet set = step.set(
                    (StepText.SetItem) item, ImmutableSet.of(Type.DEVICE, Type.REGULATOR), "“" + form.with("…") + "”");
            actions.add(new Action.Operate(verb(set, form, step), set));
        }
        return actions;
    }

    private Verb verb(DeviceSet set, Verb.Form form, StepText step) {
        if (set instanceof DeviceSet.Feeding) {
            return verbs.entrySet().stream()
                    .filter(e -> e.getKey().recloses())
                    .findFirst()
                    .or(() -> verbs.entrySet().stream().findFirst())
                    .orElseThrow()
                    .getValue();
        }
        Term device = ((DeviceSet.One) set).device();
        List<Kind> kinds = step.terms().kinds(device);
        for (Map.Entry<Kind, Verb> entry : verbs.entrySet()) {
            if (kinds.isEmpty()
                    || kinds.stream()
                            .anyMatch(k -> k.name().equals(entry.getKey().name()))) {
                return entry.getValue();
            }
        }
        Set<String> known = new LinkedHashSet<>();
        kinds.get(0).verbs().forEach(v -> known.add(v.one().with("…")));
        throw new Misread(Code.VERB_NOT_OF_KIND
                .at(device.span(), Suggestions.a(kinds.get(0).name()) + " has no step “" + form.with("…") + "”")
                .help(
                        known.isEmpty()
                                ? "its kind declares no steps at all"
                                : "it has “" + String.join("”, “", known) + "”"));
    }
}
