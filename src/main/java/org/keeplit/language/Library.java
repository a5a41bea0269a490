package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import org.keeplit.network.Equipment;
import org.keeplit.network.Network;
import org.keeplit.procedure.Examples;
import org.keeplit.procedure.Procedure;
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
        ImmutableSet<String> given,
        ImmutableMap<String, Source> sources,
        ImmutableList<Problem> problems) {

    /** {@return whether any problem is an error} */
    public boolean hasErrors() {
        return problems.stream().anyMatch(p -> p.severity() == Problem.Severity.ERROR);
    }

    /** {@return the procedures and variants that stand in given files, not only in library folders} */
    public ImmutableList<Procedure> givenProcedures() {
        return procedures.values().stream()
                .filter(p -> given.contains(p.span().source().name()))
                .collect(ImmutableList.toImmutableList());
    }

    /** {@return the rulebooks that stand in given files} */
    public ImmutableList<Rulebook> givenRulebooks() {
        return rulebooks.values().stream()
                .filter(r -> given.contains(r.span().source().name()))
                .collect(ImmutableList.toImmutableList());
    }

    /** {@return the examples that stand in given files} */
    public ImmutableList<Examples> givenExamples() {
        return examples.values().stream()
                .filter(e -> given.contains(e.span().source().name()))
                .collect(ImmutableList.toImmutableList());
    }
}
