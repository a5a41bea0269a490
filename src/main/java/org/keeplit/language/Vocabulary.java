package org.keeplit.language;

import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.keeplit.condition.Noun;
import org.keeplit.condition.Type;
import org.keeplit.network.Base;
import org.keeplit.network.Equipment;
import org.keeplit.network.Kind;
import org.keeplit.network.Mode;

/** The words that the equipment kinds bring: nouns, modes with their values, and verbs. */
final class Vocabulary {
    private static final ImmutableMap<String, Type> NOUNS = ImmutableMap.<String, Type>builder()
            .put("switching device", Type.DEVICE)
            .put("device", Type.DEVICE)
            .put("regulator", Type.REGULATOR)
            .put("capacitor bank", Type.CAPACITOR)
            .put("capacitor", Type.CAPACITOR)
            .put("transformer", Type.TRANSFORMER)
            .put("line section", Type.LINE)
            .put("load", Type.LOAD)
            .put("generator", Type.GENERATOR)
            .put("source", Type.SOURCE)
            .put("temporary conductor", Type.JUMPER)
            .put("jumper", Type.JUMPER)
            .put("protective ground", Type.GROUND)
            .put("ground", Type.GROUND)
            .put("temporary source", Type.MOBILE)
            .put("hold", Type.HOLD)
            .put("clearance", Type.CLEARANCE)
            .put("person", Type.PERSON)
            .put("point", Type.POINT)
            .put("site", Type.SITE)
            .put("contact", Type.CONTACT)
            .put("phase", Type.PHASE)
            .buildOrThrow();

    private final Map<String, Kind> kinds = new LinkedHashMap<>();
    private final Map<String, Noun> nouns = new LinkedHashMap<>();
    private final Map<String, Set<String>> modes = new LinkedHashMap<>();
    private final List<StepPattern> verbs = new ArrayList<>();
    private final Phrasebook phrasebook;
    private final FigureNames figures;

    /** The words of some equipment lists; of kinds with one name the first counts. */
    Vocabulary(Iterable<Equipment> lists) {
        for (Equipment list : lists) {
            list.kinds().forEach(kinds::putIfAbsent);
        }
        NOUNS.forEach((word, type) -> addNoun(word, Noun.all(type, word)));
        for (Kind kind : kinds.values()) {
            addNoun(kind.name(), new Noun(typeOf(kind.base()), ImmutableSet.of(kind.name()), kind.name()));
            for (Mode mode : kind.modes()) {
                modes.computeIfAbsent(mode.name(), m -> new LinkedHashSet<>()).addAll(mode.values());
            }
        }
        phrasebook = new Phrasebook(modes.keySet());
        figures = new FigureNames(kinds.values());
        verbs.addAll(StepPattern.ofKinds(kinds.values()));
    }

    private void addNoun(String word, Noun noun) {
        nouns.putIfAbsent(word, noun);
        nouns.putIfAbsent(plural(word), noun);
    }

    private static String plural(String word) {
        if (word.equals("person")) {
            return "people";
        }
        return word.endsWith("s") || word.endsWith("ch") ? word + "es" : word + "s";
    }

    /** {@return the sort of the elements of a family} */
    static Type typeOf(Base base) {
        return switch (base) {
            case SOURCE -> Type.SOURCE;
            case LINE -> Type.LINE;
            case TRANSFORMER -> Type.TRANSFORMER;
            case REGULATOR -> Type.REGULATOR;
            case CAPACITOR -> Type.CAPACITOR;
            case LOAD -> Type.LOAD;
            case GENERATOR -> Type.GENERATOR;
            case SWITCH -> Type.DEVICE;
            case JUMPER -> Type.JUMPER;
            case GROUND -> Type.GROUND;
            case MOBILE -> Type.MOBILE;
        };
    }

    /** {@return the words with one space between} */
    static String join(List<Lexeme> lexemes) {
        StringBuilder text = new StringBuilder();
        for (Lexeme lexeme : lexemes) {
            text.append(text.isEmpty() ? "" : " ").append(lexeme.getText());
        }
        return text.toString();
    }

    Optional<Kind> kind(String name) {
        return Optional.ofNullable(kinds.get(name));
    }

    Iterable<Kind> kinds() {
        return kinds.values();
    }

    /** {@return the kinds that a noun means} */
    List<Kind> kindsOf(Noun noun) {
        return kinds.values().stream()
                .filter(k -> noun.kinds().isEmpty()
                        ? typeOf(k.base()) == noun.type()
                        : noun.kinds().contains(k.name()))
                .toList();
    }

    Phrasebook phrasebook() {
        return phrasebook;
    }

    /** {@return the figures of nameplates} */
    FigureNames figures() {
        return figures;
    }

    List<StepPattern> verbs() {
        return verbs;
    }

    /** {@return the names of all modes} */
    Set<String> modes() {
        return modes.keySet();
    }

    /** {@return the values of a mode, over all kinds} */
    Set<String> values(String mode) {
        return modes.getOrDefault(mode, Set.of());
    }

    /** {@return the noun here, the longest that fits, moving past it} */
    Noun noun(Cursor cursor) {
        Lexeme first = cursor.next("a noun such as load or switching device");
        Lexeme second = cursor.peek(0);
        if (second != null) {
            Noun longer = nouns.get(first.getText() + " " + second.getText());
            if (longer != null) {
                cursor.next("");
                return longer;
            }
        }
        Noun noun = nouns.get(first.value());
        if (noun == null) {
            throw new Misread(Code.UNKNOWN_NOUN
                    .at(first.span(), "“" + Cursor.clip(first.getText()) + "” is no kind or family of things")
                    .help(Optional.of(first.getText())
                            .filter(word -> first.isName())
                            .flatMap(word -> Suggestions.didYouMean(word, nouns.keySet()))
                            .orElse("the families are " + Suggestions.list(NOUNS.keySet(), "and"))));
        }
        return noun;
    }

    /** {@return whether a noun starts here} */
    boolean seesNoun(Cursor cursor) {
        Lexeme first = cursor.peek(0);
        Lexeme second = cursor.peek(1);
        return first != null
                && (nouns.containsKey(first.value())
                        || second != null && nouns.containsKey(first.getText() + " " + second.getText()));
    }

    /** {@return the mode named here, written with hyphens or in words, if “of” or a value follows; moves past it} */
    Optional<String> mode(Cursor cursor) {
        for (String mode : modes.keySet()) {
            if (cursor.sees(0, mode)) {
                cursor.next("");
                return Optional.of(mode);
            }
            List<String> words = List.of(mode.split("-"));
            if (words.size() > 1 && cursor.sees(words)) {
                cursor.moveTo(cursor.index() + words.size());
                return Optional.of(mode);
            }
        }
        return Optional.empty();
    }
}
