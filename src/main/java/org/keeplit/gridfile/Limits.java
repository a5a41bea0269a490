package org.keeplit.gridfile;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Normal current limits of terminals: those that may last longest. */
final class Limits {
    private final CimModel model;
    private final Ledger ledger;
    private final Map<CimObject, OptionalDouble> known = new HashMap<>();

    Limits(Work work) {
        this.model = work.model();
        this.ledger = work.ledger();
    }

    /** {@return the smallest normal limit at some terminals, in amperes} */
    OptionalDouble normal(List<CimObject> terminals) {
        double least = Double.MAX_VALUE;
        for (CimObject terminal : terminals) {
            Optional<CimObject> set = model.follow(terminal, "OperationalLimitSet");
            if (set.isPresent()) {
                least = Math.min(least, known.computeIfAbsent(set.get(), this::ofSet).orElse(Double.MAX_VALUE));
            }
        }
        return least == Double.MAX_VALUE ? OptionalDouble.empty() : OptionalDouble.of(least);
    }

    private OptionalDouble ofSet(CimObject set) {
        double longest = -1;
        CimObject normal = null;
        for (CimObject limit : model.pointing(set, "CurrentLimit", "OperationalLimitSet")) {
            double lasts = model.follow(limit, "OperationalLimitType").map(t -> model.number(t, "acceptableDuration", 0)).orElse(0.0);
            if (lasts > longest) {
                longest = lasts;
                normal = limit;
            }
        }
        if (normal == null) {
            return OptionalDouble.empty();
        }
        ledger.part(set);
        ledger.part(normal);
        model.follow(normal, "OperationalLimitType").ifPresent(ledger::part);
        return OptionalDouble.of(model.positive(normal, "value", "amperes"));
    }
}
