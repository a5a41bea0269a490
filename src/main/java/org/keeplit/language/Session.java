package org.keeplit.language;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.keeplit.network.Equipment;
import org.keeplit.network.Network;
import org.keeplit.procedure.Procedure;
import org.keeplit.rule.Rulebook;
import org.keeplit.unit.Quantity;

/** One reading: resolves each item once, when it is first asked for, and sees loops of references. */
final class Session {
    private static final int DEEPEST = 50;

    private final Shelf shelf;
    private final Map<Item, Resolved<?>> done = new LinkedHashMap<>();
    private final Set<Item> open = new LinkedHashSet<>();
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

    /** {@return an item's typed tree if it was asked for and is sound} */
    Optional<?> known(Item item) {
        Resolved<?> result = done.get(item);
        return result == null ? Optional.empty() : result.ifSound();
    }

    private <T> Resolved<T> find(FileKind kind, Class<T> type, Lexeme name, Report report) {
        Optional<Item> item = shelf.find(kind, name.value(), report.source());
        if (item.isEmpty()) {
            report.add(shelf.missing(kind, name, report.source()));
            return Resolved.nothing();
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

    /** Says that what is being resolved needs another item. */
    private void needed(Item other) {
        open.stream().reduce((a, b) -> b).ifPresent(item -> shelf.kept().needs(item, other));
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
        Item item = shelf.find(FileKind.RULES, name.value(), report.source()).orElseThrow();
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
