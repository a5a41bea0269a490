package org.keeplit.report;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.keeplit.card.picture.FeederPicture;
import org.keeplit.card.picture.Look;
import org.keeplit.card.picture.SitePicture;
import org.keeplit.card.picture.WorkSite;
import org.keeplit.condition.Truth;
import org.keeplit.electric.Level;
import org.keeplit.explore.Frame;
import org.keeplit.explore.Standing;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Phases;
import org.keeplit.network.Side;
import org.keeplit.network.Trait;
import org.keeplit.outcome.Why;
import org.keeplit.page.Html;
import org.keeplit.procedure.Person;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Vertex;

/** The pieces of one state on a page. */
final class FramePieces {
    private FramePieces() {}

    /** {@return the site with what the act changed, and the feeder where it changed} @param start whether nothing was done yet */
    static String pictures(Frame before, Frame now, boolean start) {
        ImmutableList<Element.Branch> site = WorkSite.of(now.standing().program());
        if (site.isEmpty()) {
            return "";
        }
        String feeder = FeederPicture.of(site.get(0), now.standing());
        boolean changed = start || !feeder.equals(FeederPicture.of(site.get(0), before.standing()));
        return SitePicture.of(site, before.standing(), now.standing(), "The work site, phase by phase")
                + "<p class=\"note\">Boxed: changed by this act. Solid: live. Dashed: dead. Dotted: grounded. Dash and dot: may be live.</p>"
                + (changed ? "<p>The way to the work:</p>" + feeder : "");
    }

    /** {@return where everybody is, and where else they may be at this point in other orders} */
    static String people(ProofReport report, Frame frame) {
        StringBuilder rows = new StringBuilder("<div><h4>Who may be where</h4><table><tr><th scope=\"col\">who</th><th scope=\"col\">is</th>"
                + "<th scope=\"col\">in other orders also</th></tr>");
        for (Person person : frame.standing().program().bound().procedure().crew()) {
            String here = person.desk()
                    ? "at control"
                    : report.whereabouts().words(frame.standing().value(new FieldKey.Where(person.name())));
            String others = person.desk()
                    ? ""
                    : report.whereabouts().of(person.name(), frame.act()).stream()
                            .filter(w -> !w.equals(here))
                            .collect(Collectors.joining(", "));
            row(rows, person.name(), here, others);
        }
        return rows.append("</table><p>").append(frame.without() == 0
                        ? "Every customer has supply."
                        : "<b>Without supply on some phase: " + frame.without() + (frame.without() == 1 ? " customer.</b>" : " customers.</b>"))
                .append("</p></div>").toString();
    }

    private static void row(StringBuilder rows, String head, String... cells) {
        rows.append("<tr><th scope=\"row\">").append(Html.text(head)).append("</th>");
        for (String cell : cells) {
            rows.append("<td>").append(Html.text(cell)).append("</td>");
        }
        rows.append("</tr>");
    }

    /** {@return how alive and how grounded each place of the site is, phase by phase; what changed is bold} */
    static String levels(Frame before, Frame now) {
        StringBuilder rows = new StringBuilder("<div><h4>Energized and grounded</h4><table><tr><th scope=\"col\">place</th>");
        Phases.ABC.forEach(phase -> rows.append("<th scope=\"col\">").append(phase).append("</th>"));
        rows.append("</tr>");
        Set<String> seen = new LinkedHashSet<>();
        for (Element.Branch branch : WorkSite.of(now.standing().program())) {
            for (Side side : Side.values()) {
                String node = branch.node(side);
                if (seen.add(node)) {
                    places(rows, "line at " + node, before, now, branch, phase -> new Vertex.AtNode(node, phase));
                }
                if (branch instanceof Element.Device && branch.kind().has(Trait.LEADS)) {
                    places(rows, side.word() + " bushing of " + branch.name(), before, now, branch,
                            phase -> new Vertex.Bushing(branch.name(), side, phase));
                }
            }
        }
        return rows.append("</table></div>").toString();
    }

    private static void places(
            StringBuilder rows, String name, Frame before, Frame now, Element.Branch branch,
            Function<Conductor, Vertex> place) {
        rows.append("<tr><th scope=\"row\">").append(Html.text(name)).append("</th>");
        for (Conductor phase : Phases.ABC) {
            String is = branch.phases().contains(phase) ? words(now.standing(), place.apply(phase)) : "";
            String was = branch.phases().contains(phase) ? words(before.standing(), place.apply(phase)) : "";
            rows.append("<td>").append(is.equals(was) ? is : "<b>" + is + "</b>").append("</td>");
        }
        rows.append("</tr>");
    }

    private static String words(Standing standing, Vertex vertex) {
        Optional<Look> look = Look.of(standing, vertex);
        String more = standing.isTiedToGround(vertex)
                ? ", grounded"
                : standing.level(vertex).filter(l -> l == Level.BACKFED).isPresent() ? " by backfeed" : "";
        return look.map(l -> l == Look.LIVE ? l.word() + more : l.word()).orElse("");
    }

    /** {@return figures beside their limits} */
    static String limits(Frame frame) {
        if (frame.limits().isEmpty()) {
            return "";
        }
        StringBuilder rows = new StringBuilder("<h4>Figures beside their limits</h4><table><tr><th scope=\"col\">what must be so</th>"
                + "<th scope=\"col\">where</th><th scope=\"col\">figure</th><th scope=\"col\">limit</th><th scope=\"col\">used</th></tr>");
        boolean kept = frame.rules().stream().allMatch(j -> j.truth() == Truth.TRUE);
        frame.limits().forEach(l -> row(rows, l.words().replaceFirst("^(require|while) ", ""), l.beside().where(), l.beside().figure(),
                l.beside().limit(), percent(l, kept)));
        return rows.append("</table><p class=\"note\">What stands at the site, and of all else the figure nearest to its limit. Of phases and load "
                + "cases the worst. Where a figure is not as it should be and all rules are kept, another part of its rule keeps it.</p>").toString();
    }

    /** @param kept whether every rule that came up is kept here, so that none hangs on this figure alone */
    private static String percent(Frame.Limited limited, boolean kept) {
        double share = limited.beside().share();
        String not = kept ? ", not so; kept by another part" : ", NOT SO";
        return (Double.isInfinite(share) ? "" : Math.round(share * 100) + " %") + (limited.truth() == Truth.TRUE ? "" : not);
    }

    /** {@return the rules whose case came up} */
    static String rules(Frame frame) {
        List<String> here = new ArrayList<>();
        List<String> standing = new ArrayList<>();
        frame.rules().forEach(j -> (j.atAct() ? here : standing).add(j.rule().name()
                + (j.bindings() == 1 ? "" : " (" + j.bindings() + " times)")
                + (j.truth() == Truth.TRUE ? ": kept" : j.truth() == Truth.FALSE ? ": BROKEN" : ": CANNOT BE SHOWN")));
        ImmutableSet<String> bad = frame.rules().stream()
                .filter(j -> j.truth() != Truth.TRUE)
                .map(j -> j.rule().name())
                .collect(ImmutableSet.toImmutableSet());
        return (here.isEmpty() ? "" : "<h4>Rules that this act brings up</h4>" + Html.list(here))
                + (standing.isEmpty()
                        ? ""
                        : "<details" + (bad.isEmpty() ? "" : " open=\"open\"") + "><summary>Rules that bind this state: " + standing.size()
                                + "</summary>" + Html.list(standing) + "</details>");
    }

    /** {@return a condition with its value and those of its parts, as items of a list} */
    static String tree(Why why) {
        String mark = why.truth() == Truth.TRUE ? "true" : why.truth() == Truth.FALSE ? "<b>false</b>" : "<b>unknown</b>";
        return "<li>" + mark + ": " + Html.text(why.text())
                + (why.parts().isEmpty()
                        ? ""
                        : "<ul class=\"tree\">" + why.parts().stream().map(FramePieces::tree).collect(Collectors.joining()) + "</ul>")
                + "</li>";
    }
}
