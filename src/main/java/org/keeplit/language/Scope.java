package org.keeplit.language;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.keeplit.condition.Condition;
import org.keeplit.condition.Noun;
import org.keeplit.condition.Type;
import org.keeplit.network.Element;
import org.keeplit.network.Network;
import org.keeplit.rule.Definition;
import org.keeplit.text.Span;
import org.keeplit.unit.Quantity;

/** The names that a line may use: variables, people, and the objects of the networks that are known. */
final class Scope {
    /** A variable. */
    private record Variable(Noun noun, Span span) {}

    private final Scope parent;
    private final Vocabulary vocabulary;
    private final Map<String, Variable> variables = new LinkedHashMap<>();
    private final Set<String> people = new LinkedHashSet<>();
    private final List<Network> networks = new ArrayList<>();
    private boolean hasNetworks;
    private boolean incomplete;
    private boolean forgiving;
    private boolean remembering;
    private Supplier<List<Definition>> definitions;
    private Map<String, Quantity> settings;
    private List<Condition.Binder> anyBinders;

    private Scope(Scope parent, Vocabulary vocabulary) {
        this.parent = parent;
        this.vocabulary = vocabulary;
    }

    /** {@return a scope with nothing in it} */
    static Scope root(Vocabulary vocabulary) {
        return new Scope(null, vocabulary);
    }

    /** {@return a scope inside this one} */
    Scope inner() {
        return new Scope(this, vocabulary);
    }

    Vocabulary vocabulary() {
        return vocabulary;
    }

    /** Declares a variable; its name is new and begins with a capital. */
    void declare(Lexeme name, Noun noun) {
        if (name.isPhases()) {
            throw new Misread(Code.BAD_VARIABLE
                    .at(
                            name.span(),
                            "“" + name.getText() + "” means a phase or the neutral, so it cannot be a variable")
                    .help("choose another letter, such as "
                            + noun.words().substring(0, 1).toUpperCase(Locale.ROOT) + "1"));
        }
        if (!name.isVariable()) {
            throw new Misread(Code.BAD_VARIABLE
                    .at(name.span(), "“" + Cursor.clip(name.getText()) + "” stands where a variable should")
                    .help("a variable begins with a capital, such as " + noun.words() + " " + capital(name)));
        }
        Optional<Variable> before = find(name.getText());
        if (before.isPresent()) {
            throw new Misread(Code.DUPLICATE
                    .at(name.span(), "the variable " + name.getText() + " is taken already")
                    .related(
                            before.get().span(),
                            "it stands for " + before.get().noun().words() + " here"));
        }
        variables.put(name.getText(), new Variable(noun, name.span()));
    }

    private static String capital(Lexeme name) {
        String text = name.getText();
        boolean near = name.getType() == org.keeplit.language.grammar.Words.WORD && !name.isVariable();
        return near && text.length() < 20 ? text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1) : "X";
    }

    /** Makes a variable known that a base procedure declares. */
    void inherit(String name, Noun noun, Span span) {
        variables.put(name, new Variable(noun, span));
    }

    /** Makes a person of the crew known. */
    void addPerson(String name) {
        people.add(name);
    }

    /** Makes the objects of some networks known. @param complete whether these are all that are meant */
    void addNetworks(List<Network> some, boolean complete) {
        networks.addAll(some);
        hasNetworks = true;
        incomplete |= !complete;
    }

    /** Lets terms bind variables by {@code any}, and collects them. */
    List<Condition.Binder> collectAny() {
        anyBinders = new ArrayList<>();
        return anyBinders;
    }

    /** {@return where {@code any} puts its variables, if it may stand here} */
    Optional<List<Condition.Binder>> any() {
        return anyBinders != null || parent == null ? Optional.ofNullable(anyBinders) : parent.any();
    }

    /** {@return the scope in which {@code any} declares its variables} */
    Scope anyScope() {
        return anyBinders != null || parent == null ? this : parent.anyScope();
    }

    /** Makes conditions known that have names, as far as they are declared when a line asks. */
    void define(Supplier<List<Definition>> some) {
        definitions = some;
    }

    /** {@return the conditions that have names here} */
    List<Definition> definitions() {
        return definitions != null ? definitions.get() : parent != null ? parent.definitions() : List.of();
    }

    /** Makes the figures known that a rulebook lets others set. */
    void set(Map<String, Quantity> figures) {
        settings = figures;
    }

    /** {@return the figures of the rulebook, by name} */
    Map<String, Quantity> settings() {
        return settings != null ? settings : parent != null ? parent.settings() : Map.of();
    }

    /** Lets conditions ask for what happened before. */
    void remember() {
        remembering = true;
    }

    boolean isRemembering() {
        return remembering || parent != null && parent.isRemembering();
    }

    private Optional<Variable> find(String name) {
        Variable own = variables.get(name);
        return own != null || parent == null ? Optional.ofNullable(own) : parent.find(name);
    }

    Optional<Type> typeOf(String variable) {
        return find(variable).map(v -> v.noun().type());
    }

    Optional<Noun> nounOf(String variable) {
        return find(variable).map(Variable::noun);
    }

    /** {@return the variables of a sort, inner ones first} */
    List<String> variables(Type type) {
        return variables().stream().filter(v -> typeOf(v).orElseThrow() == type).toList();
    }

    /** {@return all variables, inner ones first} */
    List<String> variables() {
        List<String> all = new ArrayList<>(variables.keySet());
        if (parent != null) {
            all.addAll(parent.variables());
        }
        return all;
    }

    boolean isPerson(String name) {
        return people.contains(name) || parent != null && parent.isPerson(name);
    }

    /** {@return the people of the crew} */
    List<String> people() {
        List<String> all = new ArrayList<>(parent == null ? List.of() : parent.people());
        all.addAll(people);
        return all;
    }

    /** {@return the networks whose objects can be named} */
    List<Network> networks() {
        return hasNetworks || parent == null ? networks : parent.networks();
    }

    /** {@return whether a network is meant that could not be read, so that an unknown name is no mistake} */
    boolean isIncomplete() {
        return incomplete || parent != null && parent.isIncomplete();
    }

    /** From here on an unknown variable is no mistake, since the line that should bind it could not be read. */
    void forgive() {
        forgiving = true;
    }

    boolean isForgiving() {
        return forgiving || parent != null && parent.isForgiving();
    }

    /** {@return the element of that name in the first network that has one} */
    Optional<Element> element(String name) {
        return networks().stream().flatMap(n -> n.element(name).stream()).findFirst();
    }

    /** {@return the sorts of object that a plain name may mean, the likeliest first} */
    List<Type> sorts(String name) {
        List<Type> sorts = new ArrayList<>();
        if (isPerson(name)) {
            sorts.add(Type.PERSON);
        }
        element(name).ifPresent(e -> sorts.add(Vocabulary.typeOf(e.kind().base())));
        for (Network network : networks()) {
            if (network.nodes().containsKey(name)) {
                sorts.add(Type.POINT);
            }
            if (network.sites().contains(name)) {
                sorts.add(Type.SITE);
            }
        }
        return sorts.stream().distinct().toList();
    }

    /** {@return the names in the networks that mean one of some sorts} */
    List<String> names(Set<Type> types) {
        Set<String> all = new LinkedHashSet<>();
        for (Network network : networks()) {
            for (Element element : network.elements()) {
                if (types.contains(Vocabulary.typeOf(element.kind().base()))) {
                    all.add(element.name());
                }
            }
            if (types.contains(Type.POINT)) {
                all.addAll(network.nodes().keySet());
            }
            if (types.contains(Type.SITE)) {
                all.addAll(network.sites());
            }
        }
        return new ArrayList<>(all);
    }
}
