package org.keeplit.command;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Runs the command line as a user does, and holds what it prints against the texts in {@code src/test/resources/told}.
 *
 * <p>To write them anew after a change, and then read the difference with care:
 * {@code mvn test -Dtest='*CommandTest' -Dkeeplit.regenerate=true}.
 */
final class Told {
    private static final Path FOLDER = Path.of("src/test/resources/told");

    private Told() {}

    /** What a run came to. */
    record Ran(int code, String out, String err) {}

    static Ran run(String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Main.run(new PrintWriter(out, true), new PrintWriter(err, true), arguments);
        return new Ran(code, out.toString(), err.toString());
    }

    /** Holds a text against the one that is expected. @param folder a folder whose path is left out of the text */
    static void assertTold(String name, Path folder, String text) throws IOException {
        String told = text.replace(folder + "/", "").replace(System.lineSeparator(), "\n");
        Path file = FOLDER.resolve(name + ".txt");
        if (Boolean.getBoolean("keeplit.regenerate")) {
            Files.writeString(file, told);
        }
        assertEquals(Files.readString(file), told);
    }
}
