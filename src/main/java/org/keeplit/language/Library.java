package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.Optional;
import org.keeplit.network.Equipment;
import org.keeplit.network.Network;
import org.keeplit.procedure.Examples;
import org.keeplit.procedure.Procedure;
import org.keeplit.procedure.Unjudged;
import org.keeplit.rule.Rulebook;
import org.keeplit.text.Problem;
import org.keeplit.text.Source;

/**
 * What a reading came to. Only what has no mistake in it, and refers to nothing that has one, is here; the problems
 * say what is not, and why. Each thing knows its file by its span.
 *
 * @param equipment the equipment lists by name: the given ones first, in the order of the files, then those that
 *     were found in library folders
 * @param networks the networks by name, in the same order
 * @param rulebooks the rulebooks by name, in the same order
 * @param procedures the procedures and variants by name, in the same order
 * @param examples the examples of rules by the name of their file's first line, in the same order
 * @param mistaken the procedures and examples in given files of which nothing is claimed, because of a mistake in a file that they read
 * @param given the names of the given files, without those that were found in library folders
 * @param sources the texts of all files that were read, by name
 * @param problems what is wrong, by file, line and column
 */
public record Library(
        ImmutableMap<String, Equipment> equipment,
        ImmutableMap<String, Network> networks,
        ImmutableMap<String, Rulebook> rulebooks,
        ImmutableMap<String, Procedure> procedures,
        ImmutableMap<String, Examples> examples,
        ImmutableList<Unjudged> mistaken,
        ImmutableSet<String> given,
        ImmutableMap<String, Source> sources,
        ImmutableList<Problem> problems) {

    /** {@return whether any problem is an error} */
    public boolean hasErrors() {
        return problems.stream().anyMatch(p -> p.severity() == Problem.Severity.ERROR);
    }

    /** {@return whether something is judged: whether no file that it reads has a mistake} @param name its name */
    private boolean isJudged(String name) {
        return mistaken.stream().noneMatch(n -> n.name().equals(name));
    }

    /**
     * {@return the procedures and variants that stand in given files, not only in library folders, and that may be judged: no file that
     * one of them reads has any mistake}
     */
    public ImmutableList<Procedure> givenProcedures() {
        return procedures.values().stream()
                .filter(p -> given.contains(p.span().source().name()) && isJudged(p.name()))
                .collect(ImmutableList.toImmutableList());
    }

    /**
     * {@return the procedure of that name, wherever it stands, if it may be judged}
     *
     * @param name the name
     */
    public Optional<Procedure> judged(String name) {
        return Optional.ofNullable(procedures.get(name)).filter(p -> isJudged(name));
    }

    /** {@return the procedures and examples in given files of which nothing is claimed, those with mistakes first} */
    public ImmutableList<Unjudged> unjudged() {
        ImmutableList.Builder<Unjudged> all = ImmutableList.<Unjudged>builder().addAll(mistaken);
        givenProcedures().stream().filter(p -> p.proofs().isEmpty()).map(Unjudged::withoutPlace).forEach(all::add);
        return all.build();
    }

    /** {@return the rulebooks that stand in given files} */
    public ImmutableList<Rulebook> givenRulebooks() {
        return rulebooks.values().stream()
                .filter(r -> given.contains(r.span().source().name()))
                .collect(ImmutableList.toImmutableList());
    }

    /** {@return the examples that stand in given files and may be judged, like procedures} */
    public ImmutableList<Examples> givenExamples() {
        return examples.values().stream()
                .filter(e -> given.contains(e.span().source().name()) && isJudged(e.name()))
                .collect(ImmutableList.toImmutableList());
    }
}
