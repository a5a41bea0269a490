package org.keeplit.card;

import com.google.common.collect.ImmutableList;
import java.math.BigDecimal;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.keeplit.network.Base;
import org.keeplit.network.Network;
import org.keeplit.procedure.Action;
import org.keeplit.procedure.Bound;
import org.keeplit.procedure.Person;
import org.keeplit.program.Act;
import org.keeplit.program.Primitive;
import org.keeplit.reference.Discharge;
import org.keeplit.reference.Insulation;

/** What is taken in hand for a step, and what figures it needs. The tools are common practice, no source, unless one is named. */
final class StepTools {
    private StepTools() {}

    /** {@return the tools, the same for acts of one sort} @param bound the procedure @param acts the acts of a step */
    static ImmutableList<String> of(Bound bound, List<Act> acts) {
        Set<String> all = new LinkedHashSet<>();
        for (Act act : acts) {
            boolean desk = bound.procedure().crew().stream().anyMatch(p -> p.name().equals(act.actor()) && p.desk());
            act.primitives().forEach(p -> tool(bound, p, desk, all));
        }
        return ImmutableList.copyOf(all);
    }

    private static void tool(Bound bound, Primitive primitive, boolean desk, Set<String> into) {
        if (primitive instanceof Primitive.MovePole || primitive instanceof Primitive.SetMode || primitive instanceof Primitive.RunToNeutral) {
            into.add(desk ? "the control system" : "an operating stick, or the control at the structure");
        } else if (primitive instanceof Primitive.MoveEnd) {
            into.add("a clamp stick and rated gloves");
        } else if (primitive instanceof Primitive.MoveClamp clamp) {
            Base base = bound.temporary(clamp.family()).orElseThrow().kind().base();
            into.add(base == Base.GROUND
                    ? "the grounding set " + clamp.family() + " and a live-line tool (29 CFR 1910.269 (n)(6))"
                    : clamp.family() + " and a clamp stick, with rated gloves");
        } else if (primitive instanceof Primitive.TestDead) {
            into.add("a voltage detector made for it, proved on a live part before and after");
        } else if (primitive instanceof Primitive.Prove prove) {
            into.add(switch (prove.proof()) {
                case OPEN, CLOSED, CARRYING -> "an ammeter on a stick";
                case IN_PHASE -> "a phasing tool, both sides tried";
                case NEUTRAL -> "the position indicator, the lamp and a voltmeter";
            });
        } else if (primitive instanceof Primitive.MoveTag) {
            into.add("a tag");
        } else if (primitive instanceof Primitive.Carry) {
            into.add("rigging rated for the weight, with a tag line");
        } else if (primitive instanceof Primitive.GoUp) {
            into.add("the lift or climbing gear, rated gloves on before reach begins");
        }
    }

    /** {@return figures that a step needs, with their source} @param network the network @param acts its acts @param records what it writes down */
    static ImmutableList<String> data(Network network, List<Act> acts, List<String> records) {
        ImmutableList.Builder<String> all = ImmutableList.builder();
        boolean waits = acts.stream().anyMatch(a -> a.step().action() instanceof Action.WaitDead);
        if (waits) {
            Discharge.all().forEach(d -> all.add(d.standard() + ": units above 600 V are built to come down to " + number(d.volts()) + " V within "
                    + number(d.minutes()) + " min of being switched off; short-circuit and ground all the same"));
        }
        if (records.stream().anyMatch(r -> r.toLowerCase(Locale.ROOT).contains("insulation resistance")) && network.system().containsKey("voltage")) {
            Insulation row = Insulation.of(network.system().get("voltage").si());
            all.add("ANSI/NETA MTS table 100.1, rating " + number(row.rating()) + " V: " + number(row.testVoltage()) + " V dc, at least "
                    + number(row.megohms()) + " Mohm at 20 degrees C; the maker's sheet first");
        }
        return all.build();
    }

    private static String number(double number) {
        return new BigDecimal(String.valueOf(number)).stripTrailingZeros().toPlainString();
    }

    /** {@return whether who acts may come within reach of live parts: aloft, or with a tool at a conductor} @param acts the acts @param aloft who is up before or after them */
    static boolean isNear(Bound bound, List<Act> acts, Set<String> aloft) {
        Set<String> desk = new LinkedHashSet<>();
        bound.procedure().crew().stream().filter(Person::desk).forEach(p -> desk.add(p.name()));
        return acts.stream().anyMatch(act -> !desk.contains(act.actor())
                && (List.of(act.actor().split(" and ")).stream().anyMatch(aloft::contains) || act.primitives().stream().anyMatch(StepTools::reaches)));
    }

    private static boolean reaches(Primitive p) {
        return p instanceof Primitive.MovePole || p instanceof Primitive.MoveEnd || p instanceof Primitive.MoveClamp
                || p instanceof Primitive.Prove || p instanceof Primitive.TestDead || p instanceof Primitive.Touch || p instanceof Primitive.Carry
                || p instanceof Primitive.SetMode;
    }
}
