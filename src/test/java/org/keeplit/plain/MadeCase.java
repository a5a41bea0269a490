package org.keeplit.plain;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.keeplit.language.Library;
import org.keeplit.language.Reader;
import org.keeplit.network.Network;
import org.keeplit.procedure.Procedure;
import org.keeplit.text.Problem;
import org.keeplit.text.Source;

/**
 * A made network with a made procedure and made rules.
 *
 * @param elements the network
 * @param header what stands between the crew and the steps: temporary equipment, holds, outages
 * @param starts the lines of {@code starts with}
 * @param parts the steps
 * @param ends the lines of {@code ends with}
 * @param books the shipped rulebooks that it keeps
 * @param rules the made rules, each with all its lines
 */
record MadeCase(
        List<MadeElement> elements,
        List<String> header,
        List<String> starts,
        List<Part> parts,
        List<String> ends,
        List<String> books,
        List<String> rules) {

    private static final List<Source> SHIPPED = shipped();

    /** A case as typed trees. */
    record Read(Procedure procedure, Network network) {}

    private static List<Source> shipped() {
        List<Source> all = new ArrayList<>();
        for (String folder : List.of("shared/equipment", "shared/rules")) {
            try (Stream<Path> files = Files.list(Path.of(folder))) {
                for (Path file : files.sorted().toList()) {
                    all.add(new Source(file.getFileName().toString(), Files.readString(file)));
                }
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return List.copyOf(all);
    }

    String network() {
        StringBuilder text = new StringBuilder("language 1\nnetwork made \"Made\"\nuses overhead\n");
        text.append("system voltage 12.47 kV, frequency 60 Hz, cold load factor 2, inrush factor 8, fault resistance 10 ohm\n");
        elements.forEach(e -> text.append(e.text()).append('\n'));
        List<String> tripping = elements.stream()
                .filter(e -> List.of("breaker", "recloser", "electronic-recloser").contains(e.kind()))
                .map(MadeElement::name)
                .toList();
        // From the network itself, so that nothing else is drawn otherwise. What was made later lies further out, mostly.
        Draw more = new Draw(elements.toString().hashCode() * 31L);
        for (int i = 1; i < tripping.size(); i++) {
            if (more.chance(60)) {
                text.append("coordination ").append(tripping.get(i)).append(" before ").append(tripping.get(more.below(i))).append('\n');
            }
        }
        return text.toString();
    }

    String rulebook() {
        return "language 1\nrulebook made revision 1\ntitle \"Made\"\n" + String.join("\n", rules) + "\n";
    }

    String procedure() {
        List<String> lines = new ArrayList<>(List.of("language 1", "procedure made-1 revision 1", "title \"Made\""));
        List<String> keeps = new ArrayList<>(books);
        if (!rules.isEmpty()) {
            keeps.add("made");
        }
        lines.add("keeps " + String.join(", ", keeps));
        lines.addAll(List.of(
                "crew",
                "foreman \"Person in charge\", in charge, observer",
                "east \"Lineworker\", on the source side, qualified",
                "west \"Lineworker\", on the load side, qualified for \"stick work\"",
                "desk \"System operator\", at control, ground hand"));
        lines.addAll(header);
        lines.add("proved on made");
        if (!starts.isEmpty()) {
            lines.add("starts with");
            lines.addAll(starts);
        }
        lines.add("stage \"All\"");
        parts.forEach(p -> lines.addAll(p.lines()));
        if (!ends.isEmpty()) {
            lines.add("ends with");
            lines.addAll(ends);
        }
        return String.join("\n", lines) + "\n";
    }

    /** {@return the typed trees} */
    Read read() {
        List<Source> all = new ArrayList<>();
        SHIPPED.stream()
                .filter(s -> s.name().endsWith(".equipment") || books.contains(s.name().replace(".rules", "")))
                .forEach(all::add);
        all.add(new Source("made.network", network()));
        if (!rules.isEmpty()) {
            all.add(new Source("made.rules", rulebook()));
        }
        all.add(new Source("made.procedure", procedure()));
        Library library = new Reader().readSources(all);
        if (library.hasErrors() || library.procedures().isEmpty()) {
            String problems = library.problems().stream()
                    .filter(p -> p.severity() == Problem.Severity.ERROR)
                    .map(p -> p.span().source().name() + ":" + p.span().line() + " " + p.message() + " ["
                            + p.span().source().line(p.span().line()) + "]")
                    .toList()
                    .toString();
            throw new IllegalArgumentException(problems);
        }
        return new Read(library.procedures().get("made-1"), library.networks().get("made"));
    }

    MadeCase withParts(List<Part> others) {
        return new MadeCase(elements, header, starts, List.copyOf(others), ends, books, rules);
    }

    MadeCase withElements(List<MadeElement> others) {
        return new MadeCase(List.copyOf(others), header, starts, parts, ends, books, rules);
    }

    MadeCase withRules(List<String> otherBooks, List<String> others) {
        return new MadeCase(elements, header, starts, parts, ends, List.copyOf(otherBooks), List.copyOf(others));
    }

    MadeCase withEnds(List<String> otherHeader, List<String> otherStarts, List<String> otherEnds) {
        return new MadeCase(
                elements,
                List.copyOf(otherHeader),
                List.copyOf(otherStarts),
                parts,
                List.copyOf(otherEnds),
                books,
                rules);
    }

    @Override
    public String toString() {
        return network() + "\n" + (rules.isEmpty() ? "" : rulebook() + "\n") + procedure();
    }
}
