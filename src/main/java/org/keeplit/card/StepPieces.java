package org.keeplit.card;

import java.util.ArrayList;
import java.util.List;
import org.keeplit.page.Html;

/** The card of one step as a piece of a sheet. */
final class StepPieces {
    /** How many lines the head of a card takes at least. */
    private static final double HEAD = 3;

    private final CardSet set;
    private final StringBuilder html = new StringBuilder();
    private final List<Piece> pieces = new ArrayList<>();
    private String name = "";
    private double lines;

    private final double room;

    private StepPieces(CardSet set, double room) {
        this.set = set;
        this.room = room;
    }

    /** {@return the card in full; several pieces if it is higher than a sheet} @param step the step @param field whether whoever reads it stands at the line @param room how many lines there are */
    static List<Piece> full(CardSet set, StepCard step, boolean field, double room) {
        return new StepPieces(set, room).card(step, field);
    }

    /** {@return a step of others in a line or two, so that everyone knows where the job stands} @param room how many lines a piece may have at most */
    static List<Piece> other(StepCard step, double room) {
        String text = step.number() + "  " + String.join("; ", step.what());
        return Piece.parts(text, room - 1).stream()
                .map(part -> new Piece(Html.tag("p", "other", Html.text(part)), Piece.lines(part) + 0.5))
                .toList();
    }

    private List<Piece> card(StepCard step, boolean field) {
        name = step.number() + " " + step.name();
        html.append("<section class=\"card\"><h2><span class=\"number\">").append(step.number()).append("</span>")
                .append(Html.text(step.name())).append("</h2>");
        lines += 1.4 * Piece.lines(step.name()) + 1.6;
        told("Who", List.of(String.join(", ", step.who())));
        told("Does", step.what());
        told("With", step.tools().isEmpty() ? List.of() : List.of(String.join("; ", step.tools())));
        told("To what", step.objects().isEmpty() ? List.of() : List.of(String.join(", ", step.objects())));
        step.cautions().stream().flatMap(caution -> Piece.parts(caution, room - HEAD - 1).stream()).forEach(caution -> {
            need(Piece.lines(caution) + 1);
            html.append(Html.tag("p", "caution", "CAUTION: " + Html.text(caution)));
            lines += Piece.lines(caution) + 1;
        });
        told("Must be true before", step.before());
        told("Must come after", step.follows().stream()
                .map(e -> "step " + e.number() + " (" + e.name() + "), because otherwise: " + e.because()
                        + (e.asWritten() ? " (as long as nothing else is changed)" : ""))
                .toList());
        told("Say and read back", step.speech());
        told("Will be true after", step.after());
        told("Changes", step.changes().isEmpty() ? List.of() : List.of(String.join("; ", step.changes())));
        step.because().ifPresent(because -> told("Why", List.of(because)));
        told("Figures", step.data());
        if (field && step.near() && !set.approach().isEmpty()) {
            told("Keep away", List.of("local rules first; by table R-6 at least " + String.join("; ", set.approach().subList(0, 2))));
        }
        List<String> records = step.records().stream().flatMap(record -> Piece.parts(record, room / 2).stream()).toList();
        double written = records.stream().mapToDouble(record -> Piece.lines(record + " ".repeat(30)) + 0.2).sum();
        // As many as would leave no room for anything else come first, on as many sheets as they take.
        int ahead = 0;
        while (written > room / 2) {
            String record = records.get(ahead++);
            double takes = Piece.lines(record + " ".repeat(30)) + 0.2;
            need(takes);
            record(record);
            written -= takes;
        }
        records = records.subList(ahead, records.size());
        double least = records.size() * 1.5 + 5
                + (step.pictures().isEmpty() ? 0 : Piece.pictureLines(step.pictures().get(1)) * Piece.SMALLEST + 2);
        need(least);
        StringBuilder above = new StringBuilder(html);
        html.setLength(0);
        records(records);
        step.back().ifPresent(this::back);
        if (!step.pictures().isEmpty()) {
            pictures(step, above);
        }
        html.insert(0, above);
        end();
        return pieces;
    }

    private void end() {
        pieces.add(new Piece(html.append("</section>").toString(), lines));
        html.setLength(0);
        lines = 0;
    }

    /** Goes on with another piece where there is no room left for some lines on a sheet. */
    private void need(double more) {
        if (lines + more > room && lines > HEAD) {
            end();
            html.append("<section class=\"card\"><p><b>").append(Html.text(name)).append(", continued</b></p>");
            lines = HEAD / 2;
        }
    }

    /** Draws as large as there is room for on one sheet, and never so small that it cannot be read; what was before only where there is room. */
    private void pictures(StepCard step, StringBuilder above) {
        double free = room - lines - 2;
        double both = step.pictures().stream().mapToDouble(svg -> Piece.pictureLines(svg) + 1).sum();
        double after = Piece.pictureLines(step.pictures().get(1));
        boolean before = both * Piece.SMALLEST <= free;
        double share = Math.max(Piece.SMALLEST, Math.min(1, free / (before ? both : after)));
        above.append("<div style=\"width:").append(Math.round(share * 100)).append("%\">");
        if (before) {
            above.append("<p class=\"note\">Before:</p>").append(step.pictures().get(0)).append("<p class=\"note\">After:</p>");
            lines += Piece.pictureLines(step.pictures().get(0)) * share + 2.2;
        }
        above.append(step.pictures().get(1)).append("</div><p class=\"note\">Boxed: changed by this step. Solid: live. Dashed: dead. Dotted: grounded. "
                + "Dash and dot: may be live.</p>");
        lines += after * share + 2;
    }

    private void told(String head, List<String> items) {
        if (items.isEmpty()) {
            return;
        }
        if (items.size() == 1) {
            List<String> parts = Piece.parts(items.get(0), room - HEAD - Piece.lines(head));
            if (parts.size() > 1) {
                parts.forEach(part -> told(head, List.of(part)));
                return;
            }
            need(Piece.lines(head + items.get(0)) + 0.15);
            html.append("<p><b>").append(head).append(":</b> ").append(Html.text(items.get(0))).append("</p>");
            lines += Piece.lines(head + items.get(0)) + 0.15;
            return;
        }
        need(1.2 + Piece.lines(items.get(0)));
        html.append("<p><b>").append(head).append(":</b></p><ul>");
        lines += 1.2;
        for (String item : items.stream().flatMap(one -> Piece.parts(one, room - HEAD).stream()).toList()) {
            if (lines + Piece.lines(item) > room) {
                html.append("</ul>");
                need(Piece.lines(item));
                html.append("<ul>");
            }
            html.append("<li>").append(Html.text(item)).append("</li>");
            lines += Piece.lines(item);
        }
        html.append("</ul>");
    }

    /** One line for each thing to record, and the box that says that the step is done. */
    private void records(List<String> records) {
        records.forEach(this::record);
        html.append("<p><span class=\"box\"></span><b>Done</b> at <span class=\"blank\"></span></p>");
        lines += 1.2;
    }

    private void record(String record) {
        html.append("<p><span class=\"box\"></span><b>Record:</b> ").append(Html.text(record))
                .append(" <span class=\"blank\"></span></p>");
        lines += Piece.lines(record + " ".repeat(30)) + 0.2;
    }

    private void back(StepCard.WayBack back) {
        if (back.none()) {
            html.append(Html.tag("p", "caution", "POINT OF NO RETURN: no way back "
                    + (back.proved() ? "exists" : "was found") + " from here. Called outage: stop, hands off, all clear, call the desk."));
            lines += 3;
            return;
        }
        String words = back.acts() == 0
                ? "nothing is to be put back."
                : back.acts() + (back.acts() == 1 ? " act" : " acts")
                        + (back.longest() > back.acts() ? " (up to " + back.longest() + ")" : "") + ", first: "
                        + String.join("; ", back.first()) + (back.acts() > back.first().size() ? "; \u2026" : ".");
        String text = "Called outage, always: stop, hands off, all clear, call the desk. Else " + words;
        html.append("<p><b>Way back:</b> ").append(Html.text(text)).append("</p>");
        lines += Piece.lines(text + " ".repeat(10));
    }
}
