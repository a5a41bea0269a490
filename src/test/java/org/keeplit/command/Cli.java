package org.keeplit.command;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.keeplit.exchange.Where;

/** A small territory in a folder of its own, and the command run on it as a user would. */
final class Cli {
    /** A source, a breaker, a single-phase recloser with leads, and load behind it. */
    static final String NETWORK =
            """
            language 1
            network spur "A spur"
            uses overhead
            system voltage 12.47 kV, frequency 60 Hz
            source bus at s-0, phases ABC, supply grid, fault level 100 MVA, reactance ratio 8
            breaker feeder from s-0 to s-1, phases ABC, pickup 480 A, ground pickup 240 A
            line l-1 from s-1 to s-2, phases ABC, length 1 km, conductor acsr-336
            recloser r-1 from s-2 to s-3, phases ABC, single-phase units, coil 140 A, at pole-1
            line l-2 from s-3 to s-4, phases ABC, length 1 km, conductor acsr-336
            load mill at s-4, phases ABC, 300 kW, 100 kvar, 12 customers
            load clinic at s-4, phases ABC, 60 kW, 20 kvar, 1 customer, critical "operating room"
            """;

    private final Path folder;

    Cli(Path folder) {
        this.folder = folder;
    }

    /** What a run came to. */
    record Ran(int code, String out, String err) {
        JsonObject json() {
            return JsonParser.parseString(out).getAsJsonObject();
        }

        /** {@return the status of each check, in order} */
        List<String> statuses() {
            List<String> all = new ArrayList<>();
            json().getAsJsonArray("checks").forEach(c -> all.add(c.getAsJsonObject().get("status").getAsString()));
            return all;
        }

        /** {@return the places at which the first check breaks, as {@code must fail on} would state them} */
        List<String> places() {
            List<String> all = new ArrayList<>();
            json().getAsJsonArray("checks").get(0).getAsJsonObject().getAsJsonArray("findings").forEach(f -> {
                JsonObject one = f.getAsJsonObject();
                all.add(one.get("name").getAsString()
                        + (one.has("step") ? " at " + one.get("step").getAsString() : "")
                        + (one.has("phase") ? " on phase " + one.get("phase").getAsString() : ""));
            });
            return all.stream().sorted().toList();
        }
    }

    Path path(String name) {
        return folder.resolve(name);
    }

    Cli file(String name, String text) {
        try {
            Files.createDirectories(path(name).getParent());
            Files.writeString(path(name), text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return this;
    }

    /** {@return a procedure on the spur} @param header more lines of its header */
    static String procedure(String name, String keeps, String header, String steps) {
        return "language 1\nprocedure " + name + " revision 1\ntitle \"A test\"\n"
                + (keeps.isEmpty() ? "" : "keeps " + keeps + "\n")
                + "for recloser R with single-phase units\n"
                + "crew\n  op \"Operator\", in charge\n  east \"Lineworker\", on the source side\n  west \"Lineworker\", on the load side\n"
                + header
                + "proved on spur with r-1 as R\nstage \"All\"\n" + steps.indent(2);
    }

    /** {@return what comes of a command on the shipped equipment, some shipped rulebooks and the files of the folder} */
    Ran run(String command, String rulebooks, String... options) {
        List<String> arguments = new ArrayList<>(List.of(command, "shared/equipment"));
        for (String book : rulebooks.isEmpty() ? new String[0] : rulebooks.split(", ")) {
            arguments.add("shared/rules/" + book + ".rules");
        }
        arguments.add(folder.toString());
        arguments.addAll(List.of(options));
        return of(arguments.toArray(String[]::new));
    }

    static Ran of(String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Main.run(new PrintWriter(out, true), new PrintWriter(err, true), arguments);
        return new Ran(code, out.toString(), err.toString());
    }

    /** {@return a file's name as reports show it} */
    String shown(String name) {
        return Where.file(path(name).toString());
    }
}
