package org.keeplit.card;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.Lists;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.keeplit.page.Html;
import org.keeplit.procedure.Person;
import org.keeplit.procedure.Procedure;
import org.keeplit.verdict.Basis;

/** The briefing as pieces of sheets: what everyone hears before the first step. */
final class BriefingPieces {
    private static final ImmutableList<String> STOPS = ImmutableList.of(
            "Anyone may stop the job, at any time, without giving a reason.",
            "Something is checked, tested, measured or proved and found otherwise than the card says.",
            "Any device operates by itself: hands off, stay clear, report to the desk.",
            "Weather, tools, cover or people are no longer fit for the work.",
            "The pole, the device or the phase is not the one on the card.");

    /** How many lines a heading takes, with what is free above it. */
    private static final double HEAD = 3;

    private final CardSet set;
    private final List<Piece> pieces = new ArrayList<>();

    private final double room;

    private BriefingPieces(CardSet set, double room) {
        this.set = set;
        this.room = room;
    }

    /** {@return the pieces in order} @param room how many lines a piece may have at most */
    static List<Piece> of(CardSet set, double room) {
        BriefingPieces briefing = new BriefingPieces(set, room);
        briefing.all();
        return briefing.pieces;
    }

    private void all() {
        Procedure procedure = set.instance().procedure();
        pieces.add(new Piece("<h2>Briefing</h2><p>" + Html.text(procedure.title()) + "</p>", 2.5 + Piece.lines(procedure.title())));
        people(procedure);
        told("Without supply by plan", set.basis().outages().stream().map(Basis::words).toList());
        told("Called outage", outage());
        told("Keep away", set.approach().isEmpty()
                ? List.of("The network states no voltage of the table: ask for the distance before work.")
                : set.approach());
        told("Energy, and how it is held", set.sources());
        told("Tools (common practice, no source, where a card names none)",
                set.steps().stream().flatMap(s -> s.tools().stream()).distinct().sorted().toList());
        told("Brought to the site", procedure.temporaries().stream().map(t -> t.name() + ": " + t.kind().name() + ", one for each phase").toList());
        told("No way back after", set.steps().stream()
                .filter(s -> s.back().map(StepCard.WayBack::none).orElse(false))
                .map(s -> "step " + s.number() + ", " + s.name())
                .toList());
        told("What stops the job (common practice, no source)", STOPS);
        told("What can hurt someone in this job", set.hazards());
        told("What the proof rests on", set.basis().all());
        // Lists flow over sheets, pictures do not: first all of the one, then all of the other.
        picture("The network, with what this job leaves alone folded", Optional.of(set.network()));
        picture("The way to the work", set.feeder());
        picture("The work site at the start", set.site());
        signs(procedure);
    }

    private List<String> outage() {
        List<String> all = new ArrayList<>(List.of("Always safe, at any step: stop, hands off, all clear, and call the desk for an outage."));
        set.outage().filter(o -> !o.devices().isEmpty()).ifPresent(o -> all.add("At the start it opens "
                + String.join(", ", o.devices()) + " and leaves " + o.customers() + " customers at " + o.loads() + " loads without supply."));
        return all;
    }

    private void people(Procedure procedure) {
        told("People", procedure.crew().stream()
                .map(p -> p.name() + ": " + p.title() + (p.inCharge() ? ", in charge" : "") + (p.desk() ? ", at control" : ""))
                .toList());
    }

    /** A list is taken apart only between its items. */
    private void told(String head, List<String> items) {
        List<String> parts = items.stream().flatMap(item -> Piece.parts(item, room - HEAD).stream()).toList();
        for (int i = 0; i < parts.size(); i++) {
            String title = i == 0 ? "<h2 class=\"part\">" + Html.text(head) + "</h2>" : "";
            pieces.add(new Piece(
                    title + Html.list(List.of(parts.get(i))), Piece.lines(parts.get(i)) + (i == 0 ? 1.5 : 0) + 0.25));
        }
    }

    /** Draws as large as a sheet allows; what would be too small to read there goes on over several. */
    private void picture(String head, Optional<String> svg) {
        if (svg.isEmpty()) {
            return;
        }
        double free = room - 1.4;
        double full = Piece.pictureLines(svg.get());
        int bands = (int) Math.max(1, Math.ceil(full * Piece.SMALLEST * (1 + Piece.OVERLAP) / free));
        String title = head;
        for (String band : Piece.bands(svg.get(), bands)) {
            double share = Math.min(1, free / Piece.pictureLines(band));
            String drawn = share == 1 ? band : "<div style=\"width:" + Math.floor(share * 100) + "%\">" + band + "</div>";
            pieces.add(new Piece("<h2 class=\"part\">" + title + "</h2>" + drawn, Piece.pictureLines(band) * share + 1.4));
            title = head + ", continued";
        }
    }

    private void signs(Procedure procedure) {
        int most = (int) Math.max(1, (room - HEAD) / 1.4);
        for (List<Person> some : Lists.partition(procedure.crew(), most)) {
            StringBuilder rows = new StringBuilder("<h2 class=\"part\">Briefed, and agreed</h2><table>");
            for (Person person : some) {
                rows.append("<tr><td>").append(Html.text(person.name())).append("</td><td>name</td><td>signature</td><td>time</td></tr>");
            }
            pieces.add(new Piece(rows.append("</table>").toString(), 1.5 + 1.4 * some.size()));
        }
    }
}
