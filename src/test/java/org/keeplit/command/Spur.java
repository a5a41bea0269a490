package org.keeplit.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A small network in a folder, with a rulebook and procedures on it, written as a test needs them. */
final class Spur {
    private final Path folder;

    /** Begins a folder with equipment, a network with some switches, and the rulebook {@code supply}. @param switches how many */
    Spur(Path folder, int switches) throws IOException {
        this.folder = folder;
        Files.createDirectories(folder.resolve("shared"));
        Files.copy(Path.of("shared/equipment/overhead.equipment"), folder.resolve("shared/overhead.equipment"));
        StringBuilder network = new StringBuilder(
                """
                language 1
                network spur "A spur"
                uses overhead
                system voltage 12.47 kV, frequency 60 Hz
                source bus at s-0, phases ABC, supply grid, fault level 100 MVA, reactance ratio 8
                breaker feeder from s-0 to s-1, phases ABC, pickup 480 A, ground pickup 240 A
                load mill at s-1, phases ABC, 300 kW, 100 kvar, 12 customers
                """);
        for (int i = 1; i <= switches; i++) {
            network.append("switch gang-%d from s-1 to t-%d, phases ABC%n".formatted(i, i));
        }
        Files.writeString(folder.resolve("shared/spur.network"), network);
        rules("supply", "every load L is supplied");
    }

    /** Writes a rulebook with one rule. */
    void rules(String name, String always) throws IOException {
        Files.writeString(
                folder.resolve("shared/" + name + ".rules"),
                "language 1\nrulebook " + name + " revision 1\nrule r\n  always " + always + "\n  says \"somebody is dark\"\n  because \"They pay for it.\"\n");
    }

    /** {@return the file of a procedure} @param steps the lines of its one stage, each with its line end */
    Path procedure(String name, String keeps, String steps) throws IOException {
        return procedure(name, keeps, "A job", steps);
    }

    /** {@return the file of a procedure that is only called} @param steps the lines of its one stage, each with its line end */
    Path called(String name, String steps) throws IOException {
        Path file = procedure(name, "supply", steps);
        Files.writeString(file, Files.readString(file).replace("proved on spur\n", "").replace("keeps supply\n", ""));
        return file;
    }

    /** {@return the file of a procedure} @param title its title @param steps the lines of its one stage, each with its line end */
    Path procedure(String name, String keeps, String title, String steps) throws IOException {
        Path file = folder.resolve(name + ".procedure");
        Files.writeString(
                file,
                "language 1\nprocedure " + name + " revision 1\ntitle \"" + title + "\"\nkeeps " + keeps
                        + "\ncrew\n  west \"West\", in charge\nproved on spur\nstage \"All\"\n" + steps);
        return file;
    }
}
