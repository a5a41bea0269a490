package org.keeplit.language;

import com.google.common.collect.LinkedHashMultimap;
import com.google.common.collect.SetMultimap;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.keeplit.network.Equipment;
import org.keeplit.network.Network;
import org.keeplit.procedure.Procedure;
import org.keeplit.rule.Rulebook;
import org.keeplit.text.Problem;
import org.keeplit.unit.Quantity;

/** One reading: resolves each item once, when it is first asked for, and sees loops of references. */
final class Session {
    private static final int DEEPEST = 50;

    private final Shelf shelf;
    private final Map<Item, Resolved<?>> done = new LinkedHashMap<>();
    private final Set<Item> open = new LinkedHashSet<>();
    private final SetMultimap<Item, Item> needs = LinkedHashMultimap.create();
    private final Map<List<Object>, Resolved<Rulebook>> tuned = new LinkedHashMap<>();
    private final Map<Object, Vocabulary> vocabularies = new LinkedHashMap<>();

    Session(Shelf shelf) {
        this.shelf = shelf;
    }

    /** {@return what an item comes to} */
    Resolved<?> resolve(Item item) {
        Resolved<?> known = done.get(item);
        if (known != null) {
            return known;
        }
        Optional<Resolved<?>> before = shelf.kept().done(item);
        if (before.isPresent()) {
            done.put(item, before.get());
            for (Item other : shelf.kept().needs(item)) {
                needs.put(item, other);
                shelf.reopen(other);
                resolve(other);
            }
            return before.get();
        }
        open.add(item);
        Resolved<?> result =
                switch (item.kind()) {
                    case EQUIPMENT -> new EquipmentResolver(item).resolve();
                    case NETWORK -> new NetworkResolver(item, this).resolve();
                    case RULES -> new RulebookResolver(item, this, Map.of()).resolve();
                    case PROCEDURE -> item.isVariant()
                            ? new VariantResolver(item, this).resolve()
                            : new ProcedureResolver(item, this).resolve();
                    case EXAMPLES -> new ExamplesResolver(item, this).resolve();
                };
        open.remove(item);
        done.put(item, result);
        shelf.kept().done(item, result);
        return result;
    }

    /** {@return the items that were resolved} */
    Set<Item> resolved() {
        return Collections.unmodifiableSet(done.keySet());
    }

    /** {@return an item's typed tree if it was asked for and is sound} */
    Optional<?> known(Item item) {
        Resolved<?> result = done.get(item);
        return result == null ? Optional.empty() : result.ifSound();
    }

    private <T> Resolved<T> find(FileKind kind, Class<T> type, Lexeme name, Report report) {
        List<Item> all = shelf.find(kind, name.value(), report.source());
        if (all.isEmpty()) {
            report.add(shelf.missing(kind, name, report.source()));
            return Resolved.nothing();
        }
        Optional<Item> item = Optional.of(all.get(0));
        if (all.size() > 1) {
            report.add(twice(kind, name, all));
        }
        if (open.contains(item.get())) {
            report.add(Code.CIRCULAR
                    .at(
                            name.span(),
                            "the " + kind.word() + " " + Cursor.clip(name.value())
                                    + " leads back to itself by what it refers to")
                    .help("the way is " + way(item.get())));
            return Resolved.nothing();
        }
        if (open.size() > DEEPEST) {
            report.add(
                    Code.CIRCULAR.at(name.span(), "references lead over more than " + DEEPEST + " files or variants"));
            return Resolved.nothing();
        }
        needed(item.get());
        Resolved<?> result = resolve(item.get());
        return new Resolved<>(result.thing().map(type::cast), result.sound());
    }

    /** {@return the problem that a name means two things} */
    private static Problem twice(FileKind kind, Lexeme name, List<Item> all) {
        String places = all.stream()
                .map(i -> i.report().source().name() + ":" + i.name().span().line())
                .collect(Collectors.joining(" and "));
        return Code.TWO_READINGS
                .at(name.span(), "there are " + all.size() + " " + kind.word() + (kind.word().endsWith("s") ? "" : "s")
                        + " " + Cursor.clip(name.value()) + ": in " + places)
                .related(all.get(all.size() - 1).name().span(), "one of them")
                .help("rename one of them, or leave one of the files out");
    }

    /** Says that what is being resolved needs another item. */
    private void needed(Item other) {
        open.stream().reduce((a, b) -> b).ifPresent(item -> {
            needs.put(item, other);
            shelf.kept().needs(item, other);
        });
    }

    /** {@return the items that one needs, and those that these need, itself included} */
    Set<Item> allNeeded(Item item) {
        Set<Item> all = new LinkedHashSet<>(List.of(item));
        ArrayDeque<Item> left = new ArrayDeque<>(all);
        while (!left.isEmpty()) {
            for (Item next : needs.get(left.poll())) {
                if (all.add(next)) {
                    left.add(next);
                }
            }
        }
        return all;
    }

    private String way(Item to) {
        List<String> names = new ArrayList<>();
        boolean on = false;
        for (Item item : open) {
            on |= item == to;
            if (on) {
                names.add(item.name().value());
            }
        }
        names.add(to.name().value());
        return String.join(", then ", names);
    }

    Resolved<Equipment> equipment(Lexeme name, Report report) {
        return find(FileKind.EQUIPMENT, Equipment.class, name, report);
    }

    Resolved<Network> network(Lexeme name, Report report) {
        return find(FileKind.NETWORK, Network.class, name, report);
    }

    Resolved<Rulebook> rulebook(Lexeme name, Report report) {
        return find(FileKind.RULES, Rulebook.class, name, report);
    }

    /** {@return a sound rulebook once more, with some of its figures set} */
    Resolved<Rulebook> rulebook(Lexeme name, Map<String, Quantity> set, Report report) {
        Item item = shelf.find(FileKind.RULES, name.value(), report.source()).get(0);
        // Its mistakes were told when it was read with its own figures.
        Report silent = new Report(item.report().source());
        Item again = new Item(item.kind(), item.name(), item.head(), item.sections(), silent);
        Map<List<Object>, Resolved<Rulebook>> all = shelf.kept().tuned(item, tuned);
        Resolved<Rulebook> known = all.get(List.of(item, set));
        if (known == null) {
            known = new RulebookResolver(again, this, set).resolve();
            all.put(List.of(item, set), known);
        }
        return known;
    }

    Resolved<Procedure> procedure(Lexeme name, Report report) {
        return find(FileKind.PROCEDURE, Procedure.class, name, report);
    }

    /** {@return a network that was resolved already} */
    Optional<Network> knownNetwork(String name) {
        return done.values().stream()
                .flatMap(r -> r.ifSound().stream())
                .filter(Network.class::isInstance)
                .map(Network.class::cast)
                .filter(n -> n.name().equals(name))
                .findFirst();
    }

    /** {@return the words that a rulebook or a procedure may use: those of all equipment in its reach} */
    Vocabulary vocabulary(Item item) {
        List<Equipment> all = new ArrayList<>();
        for (Item equipment : shelf.allEquipment(item.report().source())) {
            needed(equipment);
            resolve(equipment).thing().map(Equipment.class::cast).ifPresent(all::add);
        }
        return shelf.kept().vocabularies(vocabularies).computeIfAbsent(shelf.reach(item.report().source()), key -> new Vocabulary(all));
    }
}
