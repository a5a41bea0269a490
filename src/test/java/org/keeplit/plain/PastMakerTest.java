package org.keeplit.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.text.Problem;
import org.keeplit.text.Source;

/** What the maker of rules about the past writes can be read, so that the comparison of evaluators really runs on it. */
class PastMakerTest {
    @Test
    void everyMadeRuleIsRead() throws Exception {
        Source equipment =
                new Source("overhead.equipment", Files.readString(Path.of("shared/equipment/overhead.equipment")));
        Set<String> wrong = new TreeSet<>();
        for (long seed = 0; seed < 400; seed++) {
            PastMaker maker = new PastMaker(new Draw(seed));
            String rule = maker.rule();
            String book = "language 1\nrulebook made revision 1\n" + PastMaker.DEFINITIONS + "\nrule made-1\n" + rule
                    + "\nsays \"x\"\nbecause \"x\"\n";
            Library library = new Reader().readSources(List.of(equipment, new Source("made.rules", book)));
            library.problems().stream()
                    .filter(p -> p.severity() == Problem.Severity.ERROR)
                    .map(p -> p.message() + " [" + p.span().source().line(p.span().line()) + "]")
                    .forEach(wrong::add);
        }
        assertEquals(Set.of(), wrong);
    }
}
