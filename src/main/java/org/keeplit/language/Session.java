package org.keeplit.language;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.keeplit.network.Equipment;
import org.keeplit.network.Network;
import org.keeplit.procedure.Procedure;
import org.keeplit.rule.Rulebook;

/** One reading: resolves each item once, when it is first asked for, and sees loops of references. */
final class Session {
    private final Shelf shelf;
    private final Map<Item, Optional<?>> done = new LinkedHashMap<>();
    private final Set<Item> open = new LinkedHashSet<>();
    private final Map<Object, Vocabulary> vocabularies = new LinkedHashMap<>();

    Session(Shelf shelf) {
        this.shelf = shelf;
    }

    /** {@return an item's typed tree, unless it has mistakes} */
    Optional<?> resolve(Item item) {
        return switch (item.kind()) {
            case EQUIPMENT -> once(item, i -> new EquipmentResolver(i).resolve());
            case NETWORK -> once(item, i -> new NetworkResolver(i, this).resolve());
            case RULES -> once(item, i -> new RulebookResolver(i, vocabulary(i)).resolve());
            case PROCEDURE -> once(
                    item,
                    i -> i.isVariant()
                            ? new VariantResolver(i, this).resolve()
                            : new ProcedureResolver(i, this).resolve());
        };
    }

    /** {@return an item's typed tree if it was asked for and has no mistakes} */
    Optional<?> known(Item item) {
        Optional<?> result = done.get(item);
        return result == null ? Optional.empty() : result;
    }

    private Optional<?> once(Item item, Function<Item, Optional<?>> resolver) {
        Optional<?> known = done.get(item);
        if (known != null) {
            return known;
        }
        open.add(item);
        Optional<?> result = resolver.apply(item);
        open.remove(item);
        done.put(item, result);
        return result;
    }

    private <T> Optional<T> find(FileKind kind, Class<T> type, Lexeme name, Report report) {
        Optional<Item> item = shelf.find(kind, name.value(), report.source());
        if (item.isEmpty()) {
            report.add(shelf.missing(kind, name, report.source()));
            return Optional.empty();
        }
        if (open.contains(item.get())) {
            report.add(Code.CIRCULAR
                    .at(name.span(), "the " + kind.word() + " " + Cursor.clip(name.value())
                            + " leads back to itself by what it refers to")
                    .help("the way is " + way(item.get())));
            return Optional.empty();
        }
        return resolve(item.get()).map(type::cast);
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

    Optional<Equipment> equipment(Lexeme name, Report report) {
        return find(FileKind.EQUIPMENT, Equipment.class, name, report);
    }

    Optional<Network> network(Lexeme name, Report report) {
        return find(FileKind.NETWORK, Network.class, name, report);
    }

    Optional<Rulebook> rulebook(Lexeme name, Report report) {
        return find(FileKind.RULES, Rulebook.class, name, report);
    }

    Optional<Procedure> procedure(Lexeme name, Report report) {
        return find(FileKind.PROCEDURE, Procedure.class, name, report);
    }

    /** {@return a network that was resolved already} */
    Optional<Network> knownNetwork(String name) {
        return done.values().stream()
                .flatMap(o -> o.stream())
                .filter(Network.class::isInstance)
                .map(Network.class::cast)
                .filter(n -> n.name().equals(name))
                .findFirst();
    }

    /** {@return the words that a rulebook or a procedure may use: those of all equipment in its reach} */
    Vocabulary vocabulary(Item item) {
        return vocabularies.computeIfAbsent(shelf.reach(item.report().source()), key -> {
            List<Equipment> all = new ArrayList<>();
            for (Item equipment : shelf.allEquipment(item.report().source())) {
                resolve(equipment).map(Equipment.class::cast).ifPresent(all::add);
            }
            return new Vocabulary(all);
        });
    }
}
