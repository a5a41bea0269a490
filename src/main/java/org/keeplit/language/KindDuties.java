package org.keeplit.language;

import com.google.common.collect.ImmutableMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.antlr.v4.runtime.ParserRuleContext;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.network.ClosingDuty;
import org.keeplit.network.DutyLimit;
import org.keeplit.network.DutyTable;
import org.keeplit.network.OpeningDuty;
import org.keeplit.unit.Dimension;
import org.keeplit.unit.Quantity;

/** Reads what a kind is made to break and make: {@code breaks parallel break up to 300 A at up to 20 V, load break}. */
final class KindDuties {
    private static final String LEADS_FORM = "leads break nothing, parallel break at up to 20 V";

    private final Report report;
    private final Map<OpeningDuty, DutyLimit> breaks = new LinkedHashMap<>();
    private final Map<ClosingDuty, DutyLimit> makes = new LinkedHashMap<>();
    private final Map<OpeningDuty, DutyLimit> leadsBreak = new LinkedHashMap<>();
    private final Map<ClosingDuty, DutyLimit> leadsMake = new LinkedHashMap<>();

    KindDuties(Report report) {
        this.report = report;
    }

    /** {@return what poles, clamps and ends are made for} */
    DutyTable ofPoles() {
        return new DutyTable(ImmutableMap.copyOf(breaks), ImmutableMap.copyOf(makes));
    }

    /** {@return what leads are made for: what is said, or what is usual} */
    DutyTable ofLeads() {
        return new DutyTable(
                leadsBreak.isEmpty() ? DutyTable.LEAD.breaks() : ImmutableMap.copyOf(leadsBreak),
                leadsMake.isEmpty() ? DutyTable.LEAD.makes() : ImmutableMap.copyOf(leadsMake));
    }

    /** Reads {@code breaks …} or {@code makes …}. */
    void read(Line line) {
        String form = line.head().getText() + " nothing, parallel …";
        read(line, form, 0, line.starts("breaks"), false);
    }

    /** Reads {@code leads break …} or {@code leads make …}. */
    void readOfLeads(Line line) {
        if (!line.starts("leads", "break") && !line.starts("leads", "make")) {
            throw new Misread(Code.UNKNOWN_LINE
                    .at(line.span(), "leads break or make, and this says neither")
                    .help("such a line reads: " + LEADS_FORM));
        }
        read(line, LEADS_FORM, 1, line.starts("leads", "break"), true);
    }

    private void read(Line line, String form, int skipped, boolean opening, boolean leads) {
        List<? extends ParserRuleContext> parts = Shape.of(line, Shapes::dutyLine, form).attribute();
        for (int i = 0; i < parts.size(); i++) {
            List<Lexeme> all = Shape.lexemes(line.lexemes(), parts.get(i));
            List<Lexeme> words = i == 0 ? all.subList(Math.min(skipped, all.size()), all.size()) : all;
            report.attempt(() -> {
                if (words.isEmpty()) {
                    throw new Misread(Code.UNEXPECTED.at(line.span(), "there is nothing between two commas"));
                } else if (opening) {
                    duty(words, OpeningDuty.values(), OpeningDuty::phrase, leads ? leadsBreak : breaks, "opening duty");
                } else {
                    duty(words, ClosingDuty.values(), ClosingDuty::phrase, leads ? leadsMake : makes, "closing duty");
                }
            });
        }
    }

    private static <E> void duty(
            List<Lexeme> words, E[] all, Function<E, String> phrase, Map<E, DutyLimit> into, String what) {
        int end = 0;
        while (end < words.size() && !isLimit(words, end)) {
            end++;
        }
        E duty = KindResolver.oneOf(words.subList(0, Math.max(1, end)), all, phrase, what);
        DutyLimit limit = limit(words, end, phrase.apply(duty));
        if (into.containsKey(duty) && !limit.isNone()) {
            throw new Misread(Code.DUPLICATE.at(
                    Line.spanOf(words), "the " + what + " " + phrase.apply(duty) + " is given twice"));
        }
        into.putIfAbsent(duty, limit);
    }

    private static boolean isLimit(List<Lexeme> words, int at) {
        int up = words.get(at).is("at") ? at + 1 : at;
        return up < words.size() && words.get(up).is("up");
    }

    /** Reads {@code up to 300 A}, {@code at up to 20 V}, or both. */
    private static DutyLimit limit(List<Lexeme> words, int start, String duty) {
        if (start == words.size()) {
            return DutyLimit.NONE;
        }
        Cursor cursor = Cursor.over(words);
        cursor.moveTo(start);
        if (duty.equals("nothing")) {
            throw new Misread(Code.LEFT_OVER.at(
                    Line.spanOf(words.subList(start, words.size())), "where nothing is broken or made, nothing limits it"));
        }
        Optional<Quantity> current = Optional.empty();
        Optional<Quantity> voltage = Optional.empty();
        if (cursor.take("up", "to")) {
            current = Optional.of(Figures.positive(cursor, Dimension.CURRENT, "the most current of " + duty));
        }
        if (cursor.take("at", "up", "to")) {
            voltage = Optional.of(Figures.positive(cursor, Dimension.VOLTAGE, "the most voltage of " + duty));
        }
        cursor.finish("the limit of " + duty);
        return new DutyLimit(current, voltage);
    }
}
