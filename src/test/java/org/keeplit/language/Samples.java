package org.keeplit.language;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.keeplit.text.Source;

/** The good files that tests of this room read. */
final class Samples {
    /** The project's folder. */
    static final Path ROOT = Path.of(System.getProperty("keeplit.basedir", "."));
    /** Files that are right, and go with the project's own. */
    static final Path GOOD = ROOT.resolve("src/test/resources/good");

    private Samples() {}

    /** {@return a file as a source, by its name alone} */
    static Source source(Path file) {
        try {
            return new Source(file.getFileName().toString(), Files.readString(file));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** {@return the project's equipment, rules and procedure samples with the network that they are proved on} */
    static List<Source> all() {
        List<Source> all = new ArrayList<>();
        for (String file : List.of(
                "overhead.equipment",
                "wires.equipment",
                "electric.equipment",
                "heron-vale.network",
                "electric.network",
                "no-interruption.rules",
                "live-line.rules",
                "good-housekeeping.rules",
                "every-condition.rules",
                "figures.rules",
                "past.rules",
                "stricter.rules",
                "bench.procedure",
                "every-step.procedure",
                "recloser-out.procedure",
                "recloser-out-wrong.procedure",
                "every-edit.procedure",
                "measuring.procedure",
                "small.examples")) {
            all.add(source(GOOD.resolve(file)));
        }
        return all;
    }

    /** {@return what the samples say} */
    static Library library() {
        return new Reader().readSources(all());
    }
}
