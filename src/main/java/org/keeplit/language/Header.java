package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Term;
import org.keeplit.network.Network;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Edit;
import org.keeplit.procedure.Permit;
import org.keeplit.procedure.Person;
import org.keeplit.procedure.Procedure;
import org.keeplit.procedure.Temporary;
import org.keeplit.rule.Chance;
import org.keeplit.rule.Rulebook;
import org.keeplit.text.Span;

/** A procedure while it is put together; a variant starts from what its base has. */
final class Header {
    String revision = "";
    String title = "";
    final List<Rulebook> keeps = new ArrayList<>();
    final Map<String, Procedure.Parameter> parameters = new LinkedHashMap<>();
    final Map<String, Person> crew = new LinkedHashMap<>();
    final Map<String, Temporary> temporaries = new LinkedHashMap<>();
    final Map<String, Permit> permits = new LinkedHashMap<>();
    final List<Term> outages = new ArrayList<>();
    final List<Procedure.Start> starts = new ArrayList<>();
    final List<Procedure.Choice> choices = new ArrayList<>();
    final List<Condition> ends = new ArrayList<>();
    final List<Procedure.Proof> proofs = new ArrayList<>();
    final List<Network> networks = new ArrayList<>();
    /** Whether every network that is named could be read. */
    boolean allNetworks = true;
    /** Whether every rulebook that is named could be read. */
    boolean allRulebooks = true;

    /** Keeps one more rulebook. @param at where that is said @param how what is put before its name in a message */
    void keep(Rulebook book, Span at, String how) {
        if (keeps.contains(book)) {
            return;
        }
        for (Rulebook other : keeps) {
            boolean same = other.name().equals(book.name());
            if (same || other.extended().contains(book.name()) || book.extended().contains(other.name())) {
                String inner = other.extended().contains(book.name()) ? book.name() : other.name();
                String outer = inner.equals(book.name()) ? other.name() : book.name();
                throw new Misread(Code.DUPLICATE.at(
                        at,
                        how + (same
                                ? book.name() + " is kept already, with other figures"
                                : outer + " extends " + inner + ", so both cannot be kept: what it overrides would count")));
            }
            for (Chance chance : book.chances()) {
                other.chances().stream()
                        .filter(c -> c.name().equals(chance.name()) && !c.equals(chance))
                        .findFirst()
                        .ifPresent(c -> {
                            throw new Misread(Code.TWO_READINGS
                                    .at(at, how + book.name() + " and " + other.name() + " both declare an event " + c.name())
                                    .related(c.span(), "the one of " + other.name())
                                    .help("rename one of the two events"));
                        });
            }
        }
        keeps.add(book);
    }

    /** {@return whether everything that the header names could be read} */
    boolean soundReferences() {
        return allNetworks && allRulebooks;
    }

    /** Takes over what a base has. */
    static Header of(Procedure base) {
        Header header = new Header();
        header.revision = base.revision();
        header.title = base.title();
        header.keeps.addAll(base.keeps());
        base.parameters().forEach(p -> header.parameters.put(p.name(), p));
        base.crew().forEach(p -> header.crew.put(p.name(), p));
        base.temporaries().forEach(t -> header.temporaries.put(t.name(), t));
        base.permits().forEach(p -> header.permits.put(p.name(), p));
        header.outages.addAll(base.outages());
        header.starts.addAll(base.starts());
        header.choices.addAll(base.choices());
        header.ends.addAll(base.ends());
        header.proofs.addAll(base.proofs());
        return header;
    }

    Procedure procedure(String name, List<Block> body, List<Edit> edits, List<Procedure.MustFail> mustFail, Span span) {
        return new Procedure(
                name,
                revision,
                title,
                ImmutableList.copyOf(keeps),
                ImmutableList.copyOf(parameters.values()),
                ImmutableList.copyOf(crew.values()),
                ImmutableList.copyOf(temporaries.values()),
                ImmutableList.copyOf(permits.values()),
                ImmutableList.copyOf(outages),
                ImmutableList.copyOf(starts),
                ImmutableList.copyOf(choices),
                ImmutableList.copyOf(body),
                ImmutableList.copyOf(edits),
                ImmutableList.copyOf(ends),
                ImmutableList.copyOf(proofs),
                ImmutableList.copyOf(mustFail),
                span);
    }
}
