package org.keeplit.language;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.keeplit.text.Problem;
import org.keeplit.text.Source;

/** The examples in the language's reference are read as they stand there. */
class ReferenceTest {
    private static final Map<String, String> KINDS = Map.of(
            "equipment", "equipment", "network", "network", "rulebook", "rules", "procedure", "procedure", "variant",
            "procedure", "examples", "examples");

    @Test
    void everyWholeFileInItReads() throws IOException {
        String text = Files.readString(Samples.ROOT.resolve("grammar/README.md"));
        Matcher block = Pattern.compile("```\n(language 1\n.*?)```", Pattern.DOTALL).matcher(text);
        int read = 0;
        while (block.find()) {
            String content = block.group(1).replace("  …\n", "  west opens R\n");
            String kind = KINDS.get(content.lines().skip(1).findFirst().orElseThrow().split(" ")[0]);
            List<Source> all = new ArrayList<>(List.of(new Source("reference." + kind, content)));
            all.addAll(Samples.all());
            List<String> told = new Reader()
                    .readSources(all).problems().stream()
                            .filter(p -> p.span().source().name().startsWith("reference."))
                            // Names in an example may be those of the samples; nodes may be left out.
                            .filter(p -> p.severity() == Problem.Severity.ERROR)
                            .map(Problem::message)
                            .toList();
            assertEquals(List.of(), told, content);
            read++;
        }
        assertEquals(6, read);
    }
}
