package org.keeplit.procedure;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Optional;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Noun;
import org.keeplit.condition.Term;
import org.keeplit.network.Conductor;
import org.keeplit.rule.Rulebook;
import org.keeplit.text.Span;

/**
 * A procedure as written, typed and resolved but not yet bound to a network.
 *
 * @param name its name, such as {@code LP-12}
 * @param revision its revision
 * @param title its title
 * @param keeps the rulebooks that it keeps
 * @param parameters what it is written for
 * @param crew the people
 * @param temporaries the temporary equipment
 * @param permits the holds and clearances
 * @param outages the loads that go without supply by plan
 * @param starts what differs from the network's normal state, or is checked against it
 * @param choices what else may be so at the start, in one of several ways each
 * @param body the steps
 * @param edits for a variant, what it changes in the steps of the procedure that it was made from; they are
 *     applied after the procedure is bound
 * @param ends what must be true at the end
 * @param proofs the networks and devices that it is to be proved on
 * @param mustFail the root breaks that a teaching variant must have; empty for a procedure that must hold
 * @param span where it is declared
 */
public record Procedure(
        String name,
        String revision,
        String title,
        ImmutableList<Rulebook> keeps,
        ImmutableList<Parameter> parameters,
        ImmutableList<Person> crew,
        ImmutableList<Temporary> temporaries,
        ImmutableList<Permit> permits,
        ImmutableList<Term> outages,
        ImmutableList<Start> starts,
        ImmutableList<Choice> choices,
        ImmutableList<Block> body,
        ImmutableList<Edit> edits,
        ImmutableList<Condition> ends,
        ImmutableList<Proof> proofs,
        ImmutableList<MustFail> mustFail,
        Span span) {

    /**
     * Something that the procedure is written for.
     *
     * @param name the variable
     * @param noun the sort and kind
     * @param ganged whether its poles must move together, if that was said
     * @param span where it was written
     */
    public record Parameter(String name, Noun noun, Optional<Boolean> ganged, Span span) {}

    /**
     * A line of {@code starts with}.
     *
     * @param given whether the line changes the network's normal state; otherwise it is checked against it
     * @param condition what holds
     * @param span where it was written
     */
    public record Start(boolean given, Condition condition, Span span) {}

    /**
     * A line {@code either given … or given …} of {@code starts with}.
     *
     * @param ways the ways
     * @param span where it was written
     */
    public record Choice(ImmutableList<Way> ways, Span span) {}

    /**
     * One of several ways to start.
     *
     * @param starts what is given then
     * @param words how it was written
     */
    public record Way(ImmutableList<Start> starts, String words) {}

    /**
     * The procedure with one of its starts.
     *
     * @param procedure the procedure, with no choice left
     * @param start in which ways it starts, in words; empty if there is only one
     */
    public record Begun(Procedure procedure, String start) {}

    /** {@return the procedure with each of its starts, in the order of the file; just itself if it has only one} */
    public ImmutableList<Begun> everyStart() {
        List<Begun> all = List.of(new Begun(with(starts), ""));
        for (Choice choice : choices) {
            ImmutableList.Builder<Begun> more = ImmutableList.builder();
            for (Begun begun : all) {
                for (Way way : choice.ways()) {
                    ImmutableList<Start> longer = ImmutableList.<Start>builder()
                            .addAll(begun.procedure().starts())
                            .addAll(way.starts())
                            .build();
                    String words = begun.start().isEmpty() ? way.words() : begun.start() + " and " + way.words();
                    more.add(new Begun(with(longer), words));
                }
            }
            all = more.build();
        }
        return ImmutableList.copyOf(all);
    }

    private Procedure with(ImmutableList<Start> others) {
        return new Procedure(
                name,
                revision,
                title,
                keeps,
                parameters,
                crew,
                temporaries,
                permits,
                outages,
                others,
                ImmutableList.of(),
                body,
                edits,
                ends,
                proofs,
                mustFail,
                span);
    }

    /**
     * A place to prove the procedure on.
     *
     * @param network the network's name
     * @param arguments the objects for the parameters
     * @param span where it was written
     */
    public record Proof(String network, ImmutableMap<String, Term> arguments, Span span) {}

    /**
     * A root break that must be found.
     *
     * @param rulebook the rulebook of the rule, where it was said
     * @param rule the rule's name, or one of the words {@code requirement}, {@code stop}, {@code cannot},
     *     {@code expectation}, {@code ending}
     * @param step the label of the step, or the sentence if it has none
     * @param phase the phase, if it was said
     * @param span where it was written
     */
    public record MustFail(
            Optional<String> rulebook, String rule, Optional<String> step, Optional<Conductor> phase, Span span) {}
}
