package org.keeplit.gridfile;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.keeplit.language.FreeNames;
import org.keeplit.language.Formatter;
import org.keeplit.network.Equipment;
import org.keeplit.text.Problem;
import org.keeplit.text.Source;
import org.keeplit.text.Span;
import org.keeplit.text.Versions;

/**
 * Makes a network text of the grid files of one model.
 *
 * <p>Source of classes, attributes and units: IEC 61970-301 (CIM100) and its profile for distribution, as published open models use
 * them. Figures there are in plain SI units: ohm, siemens, metres, volts, watts.
 */
public final class GridImport {
    private static final int WIDEST = 400;

    /** The order in which headings stand in a network text. */
    private static final ImmutableList<String> HEADINGS = ImmutableList.of("Sources.", "Transformers.", "Regulators; taps as they stand in the model.",
            "Line sections.", "Switching devices, in their normal positions.", "Loads.", "Capacitor banks.", "Customers' generators and storage.");

    /**
     * What is wanted.
     *
     * @param network the name of the network
     * @param equipment the equipment list that it uses
     * @param kinds the kind to take for a class, where it is not the usual one
     * @param hertz the frequency, which grid files do not state
     */
    public record Options(String network, Equipment equipment, ImmutableMap<String, String> kinds, double hertz) {}

    private GridImport() {}

    /**
     * Reads files and makes a network of them. Nothing is written.
     *
     * @param files the files of one model, in RDF/XML
     * @param options what is wanted
     * @return the network and the list of what became of every object; only problems if the files have mistakes
     */
    public static Imported read(List<Path> files, Options options) {
        Imported raw = raw(files, options);
        return raw.text().isEmpty() ? raw : raw.with(canonical(options.network(), raw.text()));
    }

    private static String canonical(String network, String text) {
        return Formatter.format(new Source(network + ".network", text)).text().orElse(text);
    }

    /** The objects of the files go with this: what the text takes to be written in its canonical form is as much again. */
    private static Imported raw(List<Path> files, Options options) {
        CimModel model = new CimModel();
        RdfReader reader = new RdfReader(model);
        files.forEach(reader::read);
        Ledger ledger = new Ledger(model);
        if (model.marks().isEmpty() && model.all("EnergySource").isEmpty()) {
            model.mark("no-source", 0, 0, model.isEmpty() ? "the model has no objects" : "the model has no EnergySource, so nothing in it would be alive",
                    "give all files of the model together; a distribution model has an EnergySource where its feeder begins");
        }
        Work work = new Work(model, ledger, options.equipment().kinds(), options.kinds());
        if (kindsAreThere(work, options.equipment())) {
            translate(work, options.hertz());
        }
        List<Problem> problems = problems(model);
        Imported.Listing listing = ledger.listing();
        int elements = work.lines().values().stream().mapToInt(List::size).sum();
        String text = problems.isEmpty() ? text(work, options, files) : "";
        return new Imported(options.network(), text, elements, listing, ImmutableList.copyOf(problems));
    }

    /** Tells of classes whose kind the equipment list does not have. @return whether it has all that are asked for */
    private static boolean kindsAreThere(Work work, Equipment equipment) {
        boolean all = true;
        for (Map.Entry<String, String> usual : usualKinds().entrySet()) {
            List<CimObject> objects = work.model().all(usual.getKey());
            String kind = work.kind(usual.getKey(), usual.getValue());
            if (!objects.isEmpty() && !work.kinds().containsKey(kind)) {
                all = false;
                work.model().mark("no-such-kind", objects.get(0), usual.getKey() + " becomes the kind " + kind + ", which the equipment list " + equipment.name() + " does not have",
                        "choose another with --kind " + usual.getKey() + "=KIND");
            }
        }
        return all;
    }

    private static void translate(Work work, double hertz) {
        Limits limits = new Limits(work);
        Voltages voltages = new Voltages(work);
        new ShuntTranslator(work, voltages).translate();
        new TransformerTranslator(work, voltages).translate();
        new LineTranslator(work, limits, hertz).translate();
        new SwitchTranslator(work, limits).translate();
        new ConverterTranslator(work).translate();
        for (String type : List.of("BaseVoltage", "Feeder", "IEC61970CIMVersion")) {
            work.model().all(type).forEach(work.ledger()::part);
        }
        for (CimObject node : work.model().all("ConnectivityNode")) {
            if (!work.ledger().knows(node)) {
                work.ledger().left(node, "nothing that is carried hangs there");
            }
        }
    }

    private static String text(Work work, Options options, List<Path> files) {
        double system = new Voltages(work).system();
        StringBuilder text = new StringBuilder();
        text.append("# Made by keeplit import of ").append(files.stream().map(f -> f.getFileName().toString()).collect(Collectors.joining(", ")))
                .append("; what could not be carried is in the list that it printed.\n");
        text.append("language ").append(Versions.LANGUAGE).append('\n');
        String title = work.model().all("Feeder").stream().map(CimObject::name).map(GridImport::title).collect(Collectors.joining(", "));
        text.append("network ").append(options.network()).append(title.isEmpty() ? "" : " \"" + title + "\"").append('\n');
        text.append("uses ").append(options.equipment().name()).append("\n\n");
        text.append("system voltage ").append(Work.number(system / 1000)).append(" kV, frequency ").append(Work.number(options.hertz())).append(" Hz\n");
        for (String heading : HEADINGS) {
            List<String> lines = work.lines().getOrDefault(heading, List.of());
            if (!lines.isEmpty()) {
                text.append("\n# ").append(heading).append('\n');
                lines.forEach(line -> text.append(line).append('\n'));
            }
        }
        return text.toString();
    }

    /** {@return a text that may stand between quotes} */
    private static String title(String name) {
        String plain = name.replaceAll("[\"\\p{Cntrl}]", " ").strip();
        return plain.length() > 80 ? plain.substring(0, 80) : plain;
    }

    /** {@return the mistakes with the lines that they are in, which are fetched from the files now} */
    private static List<Problem> problems(CimModel model) {
        Map<Integer, Set<Integer>> lines = new TreeMap<>();
        model.marks().forEach(m -> lines.computeIfAbsent(m.file(), f -> new TreeSet<>()).add(m.line()));
        Map<Integer, Source> sources = new HashMap<>();
        lines.forEach((file, wanted) -> sources.put(file, excerpt(model.files(), file, wanted)));
        List<Problem> problems = new ArrayList<>();
        for (Mark mark : model.marks()) {
            Source source = sources.get(mark.file());
            String line = mark.line() == 0 ? "" : source.line(mark.line());
            int column = line.length() - line.stripLeading().length();
            Span span = mark.line() == 0 ? Span.ofFile(source) : new Span(source, mark.line(), column + 1, Math.max(0, line.strip().length()));
            Problem problem = Problem.error(mark.code(), span, mark.message());
            problems.add(mark.help().isEmpty() ? problem : problem.help(mark.help()));
        }
        problems.sort(Problem.ORDER);
        return problems;
    }

    /** {@return a file of which only the lines wanted have their text} */
    private static Source excerpt(List<Path> files, int file, Set<Integer> wanted) {
        String name = file < files.size() ? files.get(file).toString().replace('\\', '/') : "";
        StringBuilder content = new StringBuilder();
        int last = wanted.stream().mapToInt(Integer::intValue).max().orElse(0);
        if (last > 0) {
            var decoder = StandardCharsets.UTF_8.newDecoder().onMalformedInput(CodingErrorAction.REPLACE).onUnmappableCharacter(CodingErrorAction.REPLACE);
            try (BufferedReader reader = new BufferedReader(new java.io.InputStreamReader(Files.newInputStream(files.get(file)), decoder))) {
                String line = reader.readLine();
                for (int i = 1; i <= last && line != null; i++) {
                    content.append(wanted.contains(i) ? line.length() > WIDEST ? line.substring(0, WIDEST) : line : "").append('\n');
                    line = reader.readLine();
                }
            } catch (IOException e) {
                // The place is told without its line.
                content.setLength(0);
            }
        }
        return new Source(name, content.toString());
    }

    /** {@return why a kind cannot stand for a class, or nothing if it can} @param equipment where it is @param type the class @param kind its name */
    public static Optional<String> mistake(Equipment equipment, String type, String kind) {
        if (!classes().contains(type)) {
            return Optional.of("there is no class " + type + " to choose a kind for; " + FreeNames.didYouMean(type, classes())
                    .orElse("there are " + String.join(", ", classes())));
        }
        return equipment.kinds().containsKey(kind)
                ? Optional.empty()
                : Optional.of("the equipment list " + equipment.name() + " has no kind " + kind + FreeNames.didYouMean(kind, equipment.kinds().keySet())
                        .map(n -> "; " + n).orElse(""));
    }

    /** {@return the usual kinds by class: what an equipment list must have, or be told otherwise} */
    public static ImmutableMap<String, String> usualKinds() {
        return ImmutableMap.<String, String>builder()
                .putAll(SwitchTranslator.KINDS)
                .put("ACLineSegment", "line")
                .put("cable", "cable")
                .put("PowerTransformer", "transformer")
                .put("RatioTapChanger", "regulator")
                .put("EnergyConsumer", "load")
                .put("EnergySource", "source")
                .put("LinearShuntCompensator", "capacitor")
                .put("PowerElectronicsConnection", "generator")
                .put("SynchronousMachine", "generator")
                .put("AsynchronousMachine", "generator")
                .buildOrThrow();
    }

    private static Set<String> classes() {
        return usualKinds().keySet();
    }
}
