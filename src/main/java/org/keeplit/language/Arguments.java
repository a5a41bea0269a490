package org.keeplit.language;

import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.keeplit.condition.Term;
import org.keeplit.condition.Type;
import org.keeplit.language.grammar.Shapes;
import org.keeplit.network.Element;
import org.keeplit.network.Network;
import org.keeplit.procedure.Person;
import org.keeplit.procedure.Procedure;
import org.keeplit.text.Problem;
import org.keeplit.text.Span;

/** Reads which object stands for which parameter, where a procedure is called or proved. */
final class Arguments {
    private final Scope scope;
    private final Report report;

    Arguments(Scope scope, Report report) {
        this.scope = scope;
        this.report = report;
    }

    /** {@return the arguments of a call: {@code with OURS as THEIRS}} */
    ImmutableMap<String, Term> ofCall(Procedure callee, Shapes.BindingsContext bindings, Span at) {
        Map<String, Term> arguments = new LinkedHashMap<>();
        int before = report.errors();
        if (bindings != null) {
            for (Shapes.BindingContext binding : bindings.binding()) {
                Lexeme ours = Shape.lexeme(binding.name(0));
                Lexeme theirs = Shape.lexeme(binding.name(1));
                report.attempt(() -> bind(callee, ours, theirs, arguments));
            }
        }
        if (report.errors() != before) {
            // Something that seems to be missing was probably meant by what is wrong.
            throw Misread.told();
        }
        for (Procedure.Parameter parameter : callee.parameters()) {
            if (!arguments.containsKey(parameter.name())) {
                throw new Misread(missing(callee.name(), parameter, at));
            }
        }
        for (Person person : callee.crew()) {
            if (!arguments.containsKey(person.name()) && !scope.isPerson(person.name())) {
                throw new Misread(Code.MISSING_ARGUMENT
                        .at(
                                at,
                                callee.name() + " needs somebody as " + person.name()
                                        + ", and nobody here is called so")
                        .help("add “" + first(scope.people()) + " as " + person.name() + "”"));
            }
        }
        return ImmutableMap.copyOf(arguments);
    }

    private static String first(List<String> people) {
        return people.isEmpty() ? "NAME" : people.get(0);
    }

    private void bind(Procedure callee, Lexeme ours, Lexeme theirs, Map<String, Term> arguments) {
        Optional<Procedure.Parameter> parameter = callee.parameters().stream()
                .filter(p -> p.name().equals(theirs.value()))
                .findFirst();
        boolean person = callee.crew().stream().anyMatch(p -> p.name().equals(theirs.value()));
        if (parameter.isEmpty() && !person) {
            List<String> known = new ArrayList<>();
            callee.parameters().forEach(p -> known.add(p.name()));
            callee.crew().forEach(p -> known.add(p.name()));
            throw new Misread(unknown(callee.name(), theirs, known));
        }
        Type type = parameter.map(p -> p.noun().type()).orElse(Type.PERSON);
        Term term = new TermReader(scope)
                .resolve(new TermText.Ref(ours), ImmutableSet.of(type), theirs.value() + " of " + callee.name());
        put(arguments, theirs, term);
    }

    private static void put(Map<String, Term> arguments, Lexeme name, Term term) {
        if (arguments.putIfAbsent(name.value(), term) != null) {
            throw new Misread(Code.DUPLICATE.at(name.span(), name.value() + " is given twice"));
        }
    }

    private static Problem unknown(String owner, Lexeme name, List<String> known) {
        return Code.UNKNOWN_NAME
                .at(name.span(), owner + " is not written for anything called " + Cursor.clip(name.value()))
                .help(Suggestions.didYouMean(name.value(), known)
                        .orElse(
                                known.isEmpty()
                                        ? "it has no parameters"
                                        : "it is written for " + Suggestions.list(known, "and")));
    }

    private static Problem missing(String owner, Procedure.Parameter parameter, Span at) {
        return Code.MISSING_ARGUMENT
                .at(
                        at,
                        owner + " is written for "
                                + Suggestions.a(parameter.noun().words()) + " " + parameter.name()
                                + ", which is not given here")
                .help("add it after “with”, joined by “as”");
    }

    /** {@return the objects of a proof: {@code with R as r-24}; the parameter may stand on either side} */
    ImmutableMap<String, Term> ofProof(
            String owner,
            List<Procedure.Parameter> parameters,
            Network network,
            Shapes.BindingsContext bindings,
            Span at) {
        Map<String, Term> arguments = new LinkedHashMap<>();
        List<String> known = parameters.stream().map(Procedure.Parameter::name).toList();
        int before = report.errors();
        if (bindings != null) {
            for (Shapes.BindingContext binding : bindings.binding()) {
                Lexeme left = Shape.lexeme(binding.name(0));
                Lexeme right = Shape.lexeme(binding.name(1));
                boolean swapped = !known.contains(left.value()) && known.contains(right.value());
                Lexeme name = swapped ? right : left;
                Lexeme object = swapped ? left : right;
                report.attempt(() -> put(arguments, name, object(owner, parameters, network, name, object)));
            }
        }
        for (Procedure.Parameter parameter : parameters) {
            if (!arguments.containsKey(parameter.name()) && report.errors() == before) {
                throw new Misread(missing(owner, parameter, at));
            }
        }
        return ImmutableMap.copyOf(arguments);
    }

    private Term object(
            String owner, List<Procedure.Parameter> parameters, Network network, Lexeme name, Lexeme object) {
        Procedure.Parameter parameter = parameters.stream()
                .filter(p -> p.name().equals(name.value()))
                .findFirst()
                .orElseThrow(() -> new Misread(unknown(
                        owner,
                        name,
                        parameters.stream().map(Procedure.Parameter::name).toList())));
        Type type = parameter.noun().type();
        boolean known = type == Type.POINT && network.nodes().containsKey(object.value())
                || type == Type.SITE && network.sites().contains(object.value());
        if (known) {
            return new Term.Name(object.value(), type, object.span());
        }
        Element element =
                network.element(object.value()).orElseThrow(() -> new Misread(absent(parameter, network, object)));
        fits(parameter, element, object);
        return new Term.Name(element.name(), type, object.span());
    }

    private static Problem absent(Procedure.Parameter parameter, Network network, Lexeme object) {
        Type type = parameter.noun().type();
        List<String> all = new ArrayList<>();
        network.elements().stream()
                .filter(e -> Vocabulary.typeOf(e.kind().base()) == type)
                .forEach(e -> all.add(e.name()));
        all.addAll(type == Type.POINT ? network.nodes().keySet() : type == Type.SITE ? network.sites() : List.of());
        Problem problem = Code.UNKNOWN_NAME.at(
                object.span(),
                "there is no " + parameter.noun().words() + " " + Cursor.clip(object.value()) + " in "
                        + network.name());
        return Suggestions.didYouMean(object.value(), all).map(problem::help).orElse(problem);
    }

    private static void fits(Procedure.Parameter parameter, Element element, Lexeme object) {
        boolean sort =
                Vocabulary.typeOf(element.kind().base()) == parameter.noun().type();
        boolean kind = parameter.noun().kinds().isEmpty()
                || parameter.noun().kinds().contains(element.kind().name());
        if (!sort || !kind) {
            throw new Misread(Code.WRONG_SORT.at(
                    object.span(),
                    parameter.name() + " is " + Suggestions.a(parameter.noun().words()) + ", and " + element.name()
                            + " is " + Suggestions.a(element.kind().name())));
        }
        if (element instanceof Element.Device device
                && parameter.ganged().isPresent()
                && parameter.ganged().get() != device.ganged()
                && device.phases().size() > 1) {
            throw new Misread(Code.WRONG_BUILD.at(
                    object.span(),
                    parameter.name()
                            + (parameter.ganged().get() ? " is ganged, but " : " has single-phase units, but ")
                            + element.name()
                            + (device.ganged() ? " is ganged" : " has single-phase units")));
        }
    }
}
