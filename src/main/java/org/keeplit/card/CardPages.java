package org.keeplit.card;

import com.google.common.collect.ImmutableMap;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.keeplit.page.Html;
import org.keeplit.page.Pdf;
import org.keeplit.page.Proof;
import org.keeplit.page.WholeFolder;
import org.keeplit.procedure.Person;
import org.keeplit.procedure.Procedure;

/** Lays the cards out on sheets and writes them as pages that stand alone. The same cards give the same bytes. */
public final class CardPages {
    /** The caution that stands on every sheet. */
    static final String CAUTION = "This sheet does not replace local rules, the utility's safety manual or the person in charge. "
            + "A proof is about the model; field conditions are checked on site.";

    /** How many lines a card may have, as they are guessed, before it goes on on another sheet. */
    private static final double ROOM = 41;
    /** With so few lines a piece of a card fits on a page however badly its height was guessed. */
    private static final double LEAST = 15;

    private static final double LESS = 2;
    /** What is left free at the foot of a sheet, in mm: rounding of heights. */
    private static final double SPARE = 0.5;

    private final CardSet set;
    private final LocalDate date;
    private final Paper paper;

    private final Measured measured;

    private CardPages(CardSet set, LocalDate date, Paper paper, Measured measured) {
        this.measured = measured;
        this.set = set;
        this.date = date;
        this.paper = paper;
    }

    /**
     * Writes the pages, with as much on a sheet as a page of the paper holds.
     *
     * @param set the cards
     * @param date the date that stands on them
     * @param paper what they are printed on
     * @param told is told before each page for whom it is
     * @return each page by the name of its file, as HTML and as PDF: the whole crew's, one for each role, the desk's
     */
    public static ImmutableMap<String, byte[]> files(CardSet set, LocalDate date, Paper paper, Consumer<String> told) {
        ImmutableMap.Builder<String, byte[]> all = ImmutableMap.builder();
        CardPages pages = new CardPages(set, date, paper, new Measured());
        readers(set).forEach((file, role) -> {
            told.accept("for " + reader(role));
            Laid laid = pages.fitted(role);
            all.put(file + ".html", WholeFolder.bytes(laid.html));
            all.put(file + ".pdf", laid.printed.bytes());
        });
        return all.buildOrThrow();
    }

    /** A page. @param printed the same as PDF @param sheets how many sheets are on it */
    record Laid(String html, Pdf.Printed printed, int sheets) {}

    /** {@return the page for one reader} */
    static Laid page(CardSet set, LocalDate date, Paper paper, Optional<Person> role) {
        return new CardPages(set, date, paper, new Measured()).fitted(role);
    }

    /** Lays out so that no sheet runs over: that would put the head of the next in the middle of a page. */
    private Laid fitted(Optional<Person> role) {
        for (double room = ROOM; ; room -= LESS) {
            Optional<List<List<Piece>>> sheets = sheets(role, room);
            if (sheets.isPresent()) {
                String html = html(sheets.get(), reader(role));
                return new Laid(html, Pdf.printed(html, date), sheets.get().size());
            }
            if (room < LEAST) {
                throw new IllegalStateException("a piece of a card is higher than a page of " + paper);
            }
        }
    }

    private static String reader(Optional<Person> role) {
        return role.map(p -> p.name() + ", " + p.title()).orElse("the whole crew");
    }

    /** {@return for each file who reads it; nobody for the whole crew} */
    private static ImmutableMap<String, Optional<Person>> readers(CardSet set) {
        ImmutableMap.Builder<String, Optional<Person>> all = ImmutableMap.builder();
        all.put("crew", Optional.empty());
        for (Person person : set.instance().procedure().crew()) {
            all.put((person.desk() ? "desk-" : "role-") + WholeFolder.slug(person.name()), Optional.of(person));
        }
        return all.buildOrThrow();
    }

    /** {@return the sheets for a reader; nothing if a piece is higher than a page} @param room how many lines cards may have at most */
    private Optional<List<List<Piece>>> sheets(Optional<Person> role, double room) {
        List<Piece> briefing = BriefingPieces.of(set, room);
        List<Piece> steps = new ArrayList<>();
        for (StepCard step : set.steps()) {
            boolean mine = role.map(p -> step.who().contains(p.name())).orElse(true);
            boolean field = role.map(p -> !p.desk()).orElse(true);
            steps.addAll(mine ? StepPieces.full(set, step, field, room) : StepPieces.other(step, room));
        }
        String head = head(reader(role));
        String foot = foot(999, 999);
        measured.add(Stream.concat(Stream.of(head, foot), Stream.concat(briefing.stream(), steps.stream()).map(Piece::html)).toList());
        double free = paper.room() - measured.height(head) - measured.height(foot) - SPARE;
        if (Stream.concat(briefing.stream(), steps.stream()).anyMatch(piece -> measured.height(piece.html()) > free)) {
            return Optional.empty();
        }
        List<List<Piece>> sheets = new ArrayList<>(fill(briefing, free));
        sheets.addAll(fill(steps, free));
        return Optional.of(sheets);
    }

    private String html(List<List<Piece>> sheets, String reader) {
        StringBuilder html = new StringBuilder("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"/><title>")
                .append(Html.text(set.instance().words() + ", cards for " + reader))
                .append("</title><style>").append(CardStyle.of(paper)).append("</style></head><body>\n");
        for (int i = 0; i < sheets.size(); i++) {
            html.append("<section class=\"sheet\">").append(part(head(reader)));
            sheets.get(i).forEach(piece -> html.append(part(piece.html())));
            html.append(part(foot(i + 1, sheets.size()))).append("</section>\n");
        }
        return html.append("</body></html>\n").toString();
    }

    /** {@return a piece as it was measured} */
    private static String part(String html) {
        return "<div class=\"piece\">" + html + "</div>\n";
    }

    /** Fills sheets from top to bottom; a piece that does not fit any more begins the next. */
    private List<List<Piece>> fill(List<Piece> pieces, double room) {
        List<List<Piece>> sheets = new ArrayList<>();
        double used = room;
        for (Piece piece : pieces) {
            double height = measured.height(piece.html());
            if (used + height > room) {
                sheets.add(new ArrayList<>());
                used = 0;
            }
            sheets.get(sheets.size() - 1).add(piece);
            used += height;
        }
        return sheets;
    }

    private String head(String reader) {
        Procedure procedure = set.instance().procedure();
        String warning = set.proof() == Proof.HOLDS
                ? ""
                : Html.tag("div", "across", "NOT PROVED") + Html.tag("div", "bar", Html.text(set.proof().words()));
        return warning + "<header><h1>" + Html.text(procedure.name() + ", revision " + procedure.revision() + ": for " + reader)
                + "</h1><p>" + Html.text("on " + set.instance().place()) + "</p></header>";
    }

    private String foot(int number, int of) {
        Procedure procedure = set.instance().procedure();
        String words = set.proof().words() + (set.proof() == Proof.HOLDS ? " Any change of it, or of the network, ends that." : "");
        return "<footer><p><b>" + Html.text(CAUTION) + "</b></p><p>"
                + Html.text(procedure.name() + " revision " + procedure.revision() + ", network " + set.instance().network().name()
                        + ", input " + set.hash() + ", " + date)
                + ". <b class=\"pages\">Page " + number + " of " + of + "</b></p><p>" + Html.text(words) + "</p></footer>";
    }
}
