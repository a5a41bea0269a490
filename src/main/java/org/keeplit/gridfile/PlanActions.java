package org.keeplit.gridfile;

import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.keeplit.condition.Type;
import org.keeplit.network.Base;
import org.keeplit.network.Element;
import org.keeplit.network.Mode;
import org.keeplit.network.OpeningDuty;
import org.keeplit.network.Trait;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.Permit;
import org.keeplit.program.Act;
import org.keeplit.program.Primitive;
import org.keeplit.program.Program;

/** Finds the action class for what an act does, and writes it. */
final class PlanActions {
    /** Classes of kinds that the standard knows by name; others follow from what the kind can break. */
    private static final ImmutableMap<String, String> SWITCHES = ImmutableMap.of(
            "breaker", "Breaker", "disconnect", "Disconnector", "sectionalizer", "Sectionaliser");

    private final Program program;
    private final PlanXml xml;
    private final Set<Deviation> deviations;

    PlanActions(Program program, PlanXml xml, Set<Deviation> deviations) {
        this.program = program;
        this.xml = xml;
        this.deviations = deviations;
    }

    /** Writes an action. @param id what makes its mRID @param words what is done @return the reference to it */
    String write(String id, Act act, Primitive primitive, String words) {
        List<String> own = new ArrayList<>();
        String type = type(act, primitive, own);
        List<String> all = new ArrayList<>(List.of(
                "IdentifiedObject.description", words,
                "SwitchingAction.phases", phases(act, primitive),
                "SwitchingAction.SwitchingPlan", xml.id("SwitchingPlan", "plan")));
        if (!act.actor().isEmpty()) {
            all.addAll(List.of("SwitchingAction.Crew", xml.refer("Crew", act.actor())));
        }
        all.addAll(own);
        xml.object(type, id, id, all.toArray(new String[0]));
        return xml.id(type, id);
    }

    private static String phases(Act act, Primitive primitive) {
        String code = primitive instanceof Primitive.MovePole p ? p.phases().toString() : act.phase().map(Object::toString).orElse("");
        return code.matches("[ABC]+") ? "@PhaseCode." + code : "";
    }

    private String type(Act act, Primitive primitive, List<String> own) {
        if (primitive instanceof Primitive.MovePole p) {
            own.addAll(List.of("SwitchAction.kind", "@SwitchActionKind." + (p.closed() ? "close" : "open"), "SwitchAction.OperatedSwitch", device(p.device())));
            return "SwitchAction";
        } else if (primitive instanceof Primitive.MoveClamp p) {
            return clamp(p, own);
        } else if (primitive instanceof Primitive.SetMode p) {
            return mode(p, own);
        } else if (primitive instanceof Primitive.RunToNeutral p) {
            deviations.add(Deviation.MODE);
            own.addAll(List.of("ControlAction.discreteValue", "0", "ControlAction.Control", xml.refer("Control", "tap of " + p.regulator(), "Control.PowerSystemResource", device(p.regulator()))));
            return "ControlAction";
        } else if (primitive instanceof Primitive.Speak p) {
            return speech(p, own);
        } else if (primitive instanceof Primitive.MoveTag p) {
            own.addAll(List.of("TagAction.kind", "@TagActionKind." + (p.on() ? "place" : "remove"), "TagAction.OperationalTag",
                    xml.refer("OperationalTag", "tag on " + p.device(), "OperationalTag.PowerSystemResource", device(p.device()))));
            return "TagAction";
        } else if (act.step().action() instanceof Action.MeasureFigure) {
            deviations.add(Deviation.LOOK);
            own.addAll(List.of("MeasurementAction.Measurement", xml.refer("Measurement", act.text())));
            return "MeasurementAction";
        } else if (primitive instanceof Primitive.Look || primitive instanceof Primitive.Prove || primitive instanceof Primitive.TestDead
                || primitive instanceof Primitive.Await || primitive instanceof Primitive.ComeOut) {
            deviations.add(Deviation.LOOK);
            own.addAll(List.of("VerificationAction.verificationCondition", act.text(),
                    "VerificationAction.PowerSystemResource", primitive instanceof Primitive.Prove p ? device(p.subject()) : ""));
            return "VerificationAction";
        }
        String about = primitive instanceof Primitive.MoveEnd p ? device(p.device()) : primitive instanceof Primitive.Carry p ? device(p.device()) : "";
        deviations.add(primitive instanceof Primitive.MoveEnd ? Deviation.LEAD : Deviation.WORK);
        own.addAll(List.of("GenericAction.PowerSystemResource", about));
        return "GenericAction";
    }

    private String clamp(Primitive.MoveClamp p, List<String> own) {
        Base base = program.bound().temporary(p.family()).orElseThrow().kind().base();
        String type = base == Base.GROUND ? "GroundAction" : base == Base.MOBILE ? "EnergySourceAction" : "JumperAction";
        String object = base == Base.GROUND ? "Ground" : base == Base.MOBILE ? "EnergySource" : "Jumper";
        if (base != Base.MOBILE) {
            deviations.add(base == Base.GROUND ? Deviation.GROUND : Deviation.JUMPER);
        }
        String piece = p.family() + " for phase " + p.phase();
        own.addAll(List.of(type + ".kind", "@TempEquipActionKind." + (p.spot() != null ? "connect" : "disconnect"), type + "." + object, xml.refer(object, piece)));
        if (base == Base.JUMPER && p.spot() != null) {
            own.addAll(List.of("JumperAction.Clamp", xml.refer("Clamp", "clamp " + p.clamp() + " of " + piece + " at " + p.spot())));
        }
        return type;
    }

    private String mode(Primitive.SetMode p, List<String> own) {
        if (p.mode().equals("reclosing")) {
            boolean off = !p.value().equals(mode(p.device(), p.mode()).get(0));
            own.addAll(List.of("SwitchAction.kind", "@SwitchActionKind." + (off ? "disableReclosing" : "enableReclosing"), "SwitchAction.OperatedSwitch", device(p.device())));
            return "SwitchAction";
        }
        deviations.add(Deviation.MODE);
        own.addAll(List.of("ControlAction.discreteValue", String.valueOf(mode(p.device(), p.mode()).indexOf(p.value())), "ControlAction.Control",
                xml.refer("Control", p.mode() + " of " + p.device(), "Control.PowerSystemResource", device(p.device()))));
        return "ControlAction";
    }

    /** {@return the values of a setting, the normal one first} */
    private List<String> mode(String device, String name) {
        return program.bound().network().element(device)
                .map(Element::kind)
                .or(() -> program.bound().temporary(device).map(t -> t.kind()))
                .flatMap(k -> k.mode(name))
                .map(Mode::values)
                .map(List::copyOf)
                .orElse(List.of(""));
    }

    private String speech(Primitive.Speak p, List<String> own) {
        deviations.add(Deviation.HOLD);
        if (p.speech() == Action.Speech.ASK) {
            deviations.add(Deviation.WORK);
            own.addAll(List.of("GenericAction.PowerSystemResource", ""));
            return "GenericAction";
        }
        boolean hold = program.bound().permit(p.permit()).map(Permit::type).filter(t -> t == Type.HOLD).isPresent();
        String document = xml.refer("ClearanceDocument", p.permit(), "ClearanceDocument.mustBeDeenergised", String.valueOf(!hold), "ClearanceDocument.mustBeGrounded", "false",
                "SafetyDocument.SwitchingPlan", xml.id("SwitchingPlan", "plan"));
        String kind = switch (p.speech()) {
            case ISSUE -> "issue";
            case RELEASE -> "release";
            default -> "update";
        };
        own.addAll(List.of("ClearanceAction.kind", "@ClearanceActionKind." + kind, "ClearanceAction.Clearance", document));
        return "ClearanceAction";
    }

    /** {@return the reference to what is operated: an element of the network, else temporary equipment, by the class that comes nearest} */
    private String device(String name) {
        return program.bound().network().element(name)
                .map(e -> xml.refer(classOf(e), name))
                .orElseGet(() -> program.bound().temporary(name).map(t -> t.kind().base())
                        .map(b -> xml.refer(b == Base.GROUND ? "Ground" : b == Base.MOBILE ? "EnergySource" : "Jumper", name))
                        .orElse(""));
    }

    private static String classOf(Element element) {
        if (element instanceof Element.Regulator || element instanceof Element.Transformer) {
            return "PowerTransformer";
        } else if (element instanceof Element.Capacitor) {
            return "LinearShuntCompensator";
        } else if (!(element instanceof Element.Device)) {
            return element instanceof Element.Line ? "ACLineSegment" : element instanceof Element.Source ? "EnergySource" : "EnergyConsumer";
        }
        String named = SWITCHES.get(element.kind().name());
        if (named != null) {
            return named;
        }
        boolean trips = element.kind().has(Trait.TRIPS);
        return element.kind().has(Trait.FUSIBLE) ? "Fuse"
                : trips && element.kind().has(Trait.RECLOSES) ? "Recloser"
                : element.kind().breaks().contains(OpeningDuty.LOAD) ? "LoadBreakSwitch" : "Switch";
    }
}
