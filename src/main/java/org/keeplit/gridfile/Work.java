package org.keeplit.gridfile;

import com.google.common.collect.ImmutableMap;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.StringJoiner;
import org.keeplit.network.Kind;

/**
 * What the translations of one run share.
 *
 * @param model the objects
 * @param ledger what becomes of them
 * @param graph what hangs where
 * @param names names of elements and sites
 * @param kinds the kinds of equipment, by name
 * @param chosen the kind that is taken for a class, where it is not the usual one
 * @param lines the lines of the network text, by the heading below which they stand
 */
record Work(
        CimModel model,
        Ledger ledger,
        Graph graph,
        Names names,
        ImmutableMap<String, Kind> kinds,
        ImmutableMap<String, String> chosen,
        Map<String, List<String>> lines) {

    Work(CimModel model, Ledger ledger, ImmutableMap<String, Kind> kinds, ImmutableMap<String, String> chosen) {
        this(model, ledger, new Graph(model, ledger), new Names(), kinds, chosen, new LinkedHashMap<>());
    }

    /** {@return the kind for a class} @param usual its name if none is chosen */
    String kind(String type, String usual) {
        return chosen.getOrDefault(type, usual);
    }

    /** Adds a line. @param heading a comment above its sort @param parts the head and the attributes; empty ones are left out */
    void line(String heading, Iterable<String> parts) {
        StringJoiner line = new StringJoiner(", ");
        parts.forEach(p -> {
            if (!p.isEmpty()) {
                line.add(p);
            }
        });
        lines.computeIfAbsent(heading, h -> new ArrayList<>()).add(line.toString());
    }

    /** {@return how a figure is written: up to seven digits, without an exponent} */
    static String number(double value) {
        if (!Double.isFinite(value)) {
            return "0";
        }
        BigDecimal rounded = new BigDecimal(value, new MathContext(7)).stripTrailingZeros();
        return rounded.signum() == 0 ? "0" : rounded.toPlainString();
    }
}
