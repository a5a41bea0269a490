package org.keeplit.gridfile;

import com.google.common.collect.ArrayListMultimap;
import com.google.common.collect.ListMultimap;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Pattern;
import org.keeplit.language.FreeNames;

/** All objects of the files read together, with what refers to what. Reading an attribute notes that it counts for something. */
final class CimModel {
    private static final Pattern FIGURE = Pattern.compile("[+-]?(?:[0-9]+\\.?[0-9]*|\\.[0-9]+)(?:[eE][+-]?[0-9]+)?");

    private final List<Path> files = new ArrayList<>();
    private final Map<String, CimObject> objects = new LinkedHashMap<>();
    private final Map<String, List<CimObject>> byType = new LinkedHashMap<>();
    private final Map<String, ListMultimap<String, CimObject>> pointing = new HashMap<>();
    private final Set<String> read = new HashSet<>();
    private final Set<Mark> marks = new LinkedHashSet<>();

    int addFile(Path file) {
        files.add(file);
        return files.size() - 1;
    }

    List<Path> files() {
        return files;
    }

    /** {@return the object of that identifier, a new one if there is none yet} */
    CimObject object(String id, String type, int file, int line) {
        CimObject before = objects.get(id);
        if (before == null) {
            CimObject made = new CimObject(id, type, file, line);
            objects.put(id, made);
            byType.computeIfAbsent(type, t -> new ArrayList<>()).add(made);
            return made;
        }
        if (!before.type().equals(type)) {
            mark("same-identifier", file, line, type + " has the identifier " + id + ", which " + before + " has in line " + before.line(),
                    "each object has an mRID of its own");
        }
        return before;
    }

    /** {@return an identifier as the object keeps it that has it, if it was read already} */
    String kept(String id) {
        CimObject known = objects.get(id);
        return known == null ? id : known.id();
    }

    void mark(String code, int file, int line, String message, String help) {
        marks.add(new Mark(code, file, line, message, help));
    }

    /** Notes a mistake at an object. */
    void mark(String code, CimObject at, String message, String help) {
        mark(code, at.file(), at.line(), message, help);
    }

    List<Mark> marks() {
        return List.copyOf(marks);
    }

    boolean isEmpty() {
        return objects.isEmpty();
    }

    /** {@return the classes, in the order of their first objects} */
    Set<String> types() {
        return byType.keySet();
    }

    Iterable<CimObject> all() {
        return objects.values();
    }

    List<CimObject> all(String type) {
        return byType.getOrDefault(type, List.of());
    }

    /** {@return whether any rule of translation reads an attribute} @param type a class @param key the attribute's full name */
    boolean isRead(String type, String key) {
        return read.contains(type + " " + key);
    }

    private int index(CimObject object, String attribute) {
        int index = object.find(attribute);
        if (index >= 0) {
            read.add(object.type() + " " + object.key(index));
            for (int i = index + 1; i < object.size(); i++) {
                if (object.key(i).equals(object.key(index)) && !object.value(i).equals(object.value(index))) {
                    mark("two-values", object.file(), object.line(i),
                            attribute + " of " + object + " is “" + clip(object.value(i)) + "” here and “" + clip(object.value(index)) + "” in line " + object.line(index),
                            "take one of them out");
                }
            }
        }
        return index;
    }

    Optional<String> text(CimObject object, String attribute) {
        int index = index(object, attribute);
        return index < 0 || object.value(index).isEmpty() ? Optional.empty() : Optional.of(object.value(index));
    }

    /** {@return a value of an enumeration, without the enumeration's name} */
    Optional<String> choice(CimObject object, String attribute) {
        return text(object, attribute).map(t -> t.substring(t.lastIndexOf('.') + 1));
    }

    /** {@return a number, empty if it is not there or is none, which is a mistake} */
    OptionalDouble number(CimObject object, String attribute) {
        int index = index(object, attribute);
        if (index < 0) {
            return OptionalDouble.empty();
        }
        String text = object.value(index);
        // As the standard's data types have it: Java would read suffixes and hexadecimal figures, too.
        double value = FIGURE.matcher(text).matches() ? Double.parseDouble(text) : Double.NaN;
        if (Double.isFinite(value)) {
            return OptionalDouble.of(value);
        }
        String point = text.replace(',', '.');
        mark("bad-figure", object.file(), object.line(index), attribute + " of " + object + " is no number: “" + clip(text) + "”",
                !point.equals(text) && point.matches("-?[0-9]+\\.[0-9]+") ? "did you mean " + point + "?" : "figures stand in the standard's units, without any");
        return OptionalDouble.empty();
    }

    /** {@return a number, or another if it is not there} */
    double number(CimObject object, String attribute, double otherwise) {
        return number(object, attribute).orElse(otherwise);
    }

    /** {@return a number that must be there and above zero; 1 after telling that it is not} @param unit of the standard, for the message */
    double positive(CimObject object, String attribute, String unit) {
        OptionalDouble value = number(object, attribute);
        int index = object.find(attribute);
        if (value.isPresent() && value.getAsDouble() > 0) {
            return value.getAsDouble();
        } else if (index < 0) {
            mark("missing-figure", object, object + " does not say its " + attribute, "add it, in " + unit);
        } else if (value.isPresent()) {
            mark("bad-figure", object.file(), object.line(index), attribute + " of " + object + " is " + object.value(index) + ", and must be above zero", "");
        }
        return 1;
    }

    boolean flag(CimObject object, String attribute, boolean otherwise) {
        int index = index(object, attribute);
        if (index < 0) {
            return otherwise;
        }
        String text = object.value(index);
        if (!text.equals("true") && !text.equals("false")) {
            mark("bad-figure", object.file(), object.line(index), attribute + " of " + object + " is “" + clip(text) + "”", "write true or false");
        }
        return text.equals("true");
    }

    boolean says(CimObject object, String attribute) {
        return index(object, attribute) >= 0;
    }

    /** {@return the object that another refers to; a reference to nothing is a mistake} */
    Optional<CimObject> follow(CimObject object, String attribute) {
        int index = index(object, attribute);
        if (index < 0) {
            return Optional.empty();
        }
        CimObject found = objects.get(object.value(index));
        if (found == null) {
            mark("dangling-reference", object.file(), object.line(index),
                    attribute + " of " + object + " refers to " + clip(object.value(index)) + ", which no file has",
                    near(object.value(index)).orElse("give all files of the model together"));
        }
        return Optional.ofNullable(found);
    }

    private Optional<String> near(String id) {
        // With many objects a look at all is slow, and a mistyped identifier is rare.
        return objects.size() > 20_000 ? Optional.empty() : FreeNames.didYouMean(id, objects.keySet());
    }

    /** {@return the objects of a class that refer to one, by their sequence or end number, else in the order of the files} */
    List<CimObject> pointing(CimObject to, String type, String attribute) {
        ListMultimap<String, CimObject> index = pointing.computeIfAbsent(type + " " + attribute, k -> {
            ListMultimap<String, CimObject> made = ArrayListMultimap.create();
            for (CimObject object : all(type)) {
                text(object, attribute).ifPresent(id -> made.put(id, object));
            }
            made.asMap().values().forEach(list -> ((List<CimObject>) list).sort(Comparator.comparingDouble(this::order)));
            return made;
        });
        return index.get(to.id());
    }

    private double order(CimObject object) {
        if (says(object, "sequenceNumber")) {
            return number(object, "sequenceNumber", 0);
        }
        return says(object, "endNumber") ? number(object, "endNumber", 0) : 0;
    }

    static String clip(String text) {
        return text.length() > 60 ? text.substring(0, 60) + "…" : text;
    }
}
