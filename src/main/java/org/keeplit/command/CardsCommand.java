package org.keeplit.command;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.keeplit.card.CardPages;
import org.keeplit.card.CardSet;
import org.keeplit.card.Paper;
import org.keeplit.language.Library;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Watcher;
import org.keeplit.page.Proof;
import org.keeplit.paper.Papers;
import org.keeplit.procedure.Instance;
import org.keeplit.text.Problems;
import picocli.CommandLine;

/** {@code cards}: paper for the crew. */
@CommandLine.Command(
        name = "cards",
        description = "Write step cards for the crew, for each role and for the desk, with a briefing first, as HTML and as PDF to print.",
        mixinStandardHelpOptions = true)
final class CardsCommand extends PaperCommand<CardSet> {
    @CommandLine.Option(
            names = "--paper",
            paramLabel = "PAPER",
            converter = PaperReader.class,
            description = "a5 or half-letter (default: ${DEFAULT-VALUE})",
            defaultValue = "a5")
    private Paper paper;

    /** Reads the name of a paper. */
    static final class PaperReader implements CommandLine.ITypeConverter<Paper> {
        @Override
        public Paper convert(String value) {
            return switch (value) {
                case "a5" -> Paper.A5;
                case "half-letter" -> Paper.HALF_LETTER;
                default -> throw new CommandLine.TypeConversionException("there is no paper “" + value + "”; say a5 or half-letter");
            };
        }
    }

    @Override
    String noun() {
        return "cards";
    }

    @Override
    List<CardSet> workOut(Library library, Limits limits, Watcher watcher, Problems problems) {
        return Papers.cards(library, limits, watcher, problems);
    }

    @Override
    Instance instance(CardSet one) {
        return one.instance();
    }

    @Override
    String told(CardSet one) {
        return one.instance().words() + ": " + one.steps().size() + (one.steps().size() == 1 ? " step. " : " steps. ") + one.proof().words();
    }

    @Override
    Proof proof(CardSet one) {
        return one.proof();
    }

    @Override
    Map<String, byte[]> pages(CardSet one, LocalDate date, Consumer<String> told) {
        return CardPages.files(one, date, paper, told);
    }
}
