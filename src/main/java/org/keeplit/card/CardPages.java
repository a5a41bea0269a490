package org.keeplit.card;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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

    /** How many lines a sheet holds between its head and its foot, at most, as far as heights are guessed well. */
    static final double ROOM = 41;
    /** With so few lines every sheet fits on a page, if each of its cards does. */
    private static final double LEAST = 34;

    private static final double LESS = 2;

    private final CardSet set;
    private final LocalDate date;
    private final Paper paper;

    private final double room;

    private CardPages(CardSet set, LocalDate date, Paper paper, double room) {
        this.room = room;
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
     * @return each page by the name of its file, as HTML and as PDF: the whole crew's, one for each role, the desk's
     */
    public static ImmutableMap<String, byte[]> files(CardSet set, LocalDate date, Paper paper) {
        ImmutableMap.Builder<String, byte[]> all = ImmutableMap.builder();
        readers(set).forEach((file, role) -> {
            Laid laid = fitted(set, date, paper, role);
            all.put(file + ".html", WholeFolder.bytes(laid.html));
            all.put(file + ".pdf", laid.printed.bytes());
        });
        return all.buildOrThrow();
    }

    /** A page. @param printed the same as PDF @param sheets how many sheets are on it */
    record Laid(String html, Pdf.Printed printed, int sheets) {}

    /** {@return the page for one reader, laid out so that no sheet runs over: that would put the head of the next in the middle of a page} */
    static Laid fitted(CardSet set, LocalDate date, Paper paper, Optional<Person> role) {
        for (double room = ROOM; ; room -= LESS) {
            Laid laid = new CardPages(set, date, paper, room).page(role);
            if (laid.printed.pages() == laid.sheets || room - LESS < LEAST) {
                return laid;
            }
        }
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

    private Laid page(Optional<Person> role) {
        String reader = role.map(p -> p.name() + ", " + p.title()).orElse("the whole crew");
        List<List<Piece>> sheets = new ArrayList<>(fill(BriefingPieces.of(set)));
        List<Piece> steps = new ArrayList<>();
        for (StepCard step : set.steps()) {
            boolean mine = role.map(p -> step.who().contains(p.name())).orElse(true);
            boolean field = role.map(p -> !p.desk()).orElse(true);
            steps.addAll(mine ? StepPieces.full(set, step, field, room) : List.of(StepPieces.other(step)));
        }
        sheets.addAll(fill(steps));
        StringBuilder html = new StringBuilder("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"/><title>")
                .append(Html.text(set.instance().words() + ", cards for " + reader))
                .append("</title><style>").append(CardStyle.of(paper)).append("</style></head><body>\n");
        for (int i = 0; i < sheets.size(); i++) {
            sheet(sheets.get(i), reader, i + 1, sheets.size(), html);
        }
        String whole = html.append("</body></html>\n").toString();
        return new Laid(whole, Pdf.printed(whole, date), sheets.size());
    }

    /** Fills sheets from top to bottom; a piece that does not fit any more begins the next. */
    private ImmutableList<List<Piece>> fill(List<Piece> pieces) {
        ImmutableList.Builder<List<Piece>> sheets = ImmutableList.builder();
        List<Piece> sheet = new ArrayList<>();
        double lines = 0;
        for (Piece piece : pieces) {
            if (!sheet.isEmpty() && lines + piece.lines() > room) {
                sheets.add(sheet);
                sheet = new ArrayList<>();
                lines = 0;
            }
            sheet.add(piece);
            lines += piece.lines();
        }
        if (!sheet.isEmpty()) {
            sheets.add(sheet);
        }
        return sheets.build();
    }

    private void sheet(List<Piece> pieces, String reader, int number, int of, StringBuilder html) {
        Procedure procedure = set.instance().procedure();
        boolean holds = set.proof() == Proof.HOLDS;
        html.append("<section class=\"sheet\">");
        if (!holds) {
            html.append(Html.tag("div", "across", "NOT PROVED")).append(Html.tag("div", "bar", Html.text(set.proof().words())));
        }
        html.append("<header><h1>").append(Html.text(procedure.name() + ", revision " + procedure.revision() + ": for " + reader))
                .append("</h1><p>").append(Html.text("on " + set.instance().place())).append("</p></header>\n");
        pieces.forEach(piece -> html.append(piece.html()).append('\n'));
        html.append("<footer><p><b>").append(Html.text(CAUTION)).append("</b></p><p>")
                .append(Html.text(procedure.name() + " revision " + procedure.revision() + ", network " + set.instance().network().name()
                        + ", input " + set.hash() + ", " + date))
                .append("</p><p>").append(Html.text(holds ? set.proof().words() + " Any change of it, or of the network, ends that." : set.proof().words()))
                .append(" <b class=\"pages\">Page ").append(number).append(" of ").append(of).append("</b></p></footer></section>\n");
    }
}
