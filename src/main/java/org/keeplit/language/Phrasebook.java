package org.keeplit.language;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.keeplit.condition.Predicate;
import org.keeplit.network.Place;
import org.keeplit.network.Side;
import org.keeplit.network.Trait;

/** How each predicate is said: of one, of several, and that it is not so. */
final class Phrasebook {
    /**
     * One way to say it.
     *
     * @param words the words after the subject
     * @param predicate what they ask
     * @param fixed constants that the words themselves say, such as a place
     * @param negative whether they say that it is not so
     */
    record Saying(ImmutableList<String> words, Predicate predicate, ImmutableList<String> fixed, boolean negative) {}

    private static final ImmutableSet<Predicate> SPECIAL =
            ImmutableSet.of(
                    Predicate.MODE,
                    Predicate.PLACED,
                    Predicate.HAS,
                    Predicate.WAITED,
                    Predicate.ON_SIDE,
                    Predicate.IN_CLASS);

    private final Map<String, List<Saying>> byFirst = new LinkedHashMap<>();

    /** The sayings, with those for the modes that the known kinds have. */
    Phrasebook(Iterable<String> modes) {
        for (Predicate predicate : Predicate.values()) {
            if (!SPECIAL.contains(predicate)) {
                add(predicate, words(predicate.words()), ImmutableList.of());
            }
        }
        for (Place place : Place.values()) {
            add(Predicate.PLACED, words("is " + place.phrase()), ImmutableList.of(place.phrase()));
        }
        for (Trait trait : Trait.values()) {
            add(Predicate.HAS, words("has " + trait.phrase()), ImmutableList.of(trait.phrase()));
        }
        for (Trait trait : List.of(Trait.GANGED, Trait.REMOVABLE, Trait.FUSIBLE)) {
            add(Predicate.HAS, words("is " + trait.phrase()), ImmutableList.of(trait.phrase()));
        }
        for (String mode : modes) {
            add(Predicate.HAS, words("has " + mode), ImmutableList.of(mode));
            if (mode.contains("-")) {
                add(Predicate.HAS, words("has " + mode.replace('-', ' ')), ImmutableList.of(mode));
            }
        }
        for (Side side : Side.values()) {
            add(Predicate.ON_SIDE, words("is on the " + side.word() + " side"), ImmutableList.of(side.word()));
        }
        add(Predicate.WAITED, words("has been dead for"), ImmutableList.of());
        byFirst.values()
                .forEach(list ->
                        list.sort(Comparator.comparing((Saying s) -> -s.words().size())));
    }

    private static List<String> words(String text) {
        return Arrays.stream(text.split(" ")).filter(w -> !w.equals("the")).toList();
    }

    private void add(Predicate predicate, List<String> words, ImmutableList<String> fixed) {
        List<String> rest = words.subList(1, words.size());
        switch (words.get(0)) {
            case "is" -> {
                say(predicate, fixed, false, List.of("is"), rest);
                say(predicate, fixed, false, List.of("are"), rest);
                say(predicate, fixed, true, List.of("is", "not"), rest);
                say(predicate, fixed, true, List.of("are", "not"), rest);
            }
            case "has" -> {
                List<String> bare = !rest.isEmpty() && rest.get(0).equals("a") ? rest.subList(1, rest.size()) : rest;
                say(predicate, fixed, false, List.of("has"), rest);
                say(predicate, fixed, false, List.of("have"), rest);
                say(predicate, fixed, true, List.of("does", "not", "have"), rest);
                say(predicate, fixed, true, List.of("do", "not", "have"), rest);
                say(predicate, fixed, true, List.of("has", "not"), rest);
                say(predicate, fixed, true, List.of("has", "no"), bare);
                say(predicate, fixed, true, List.of("have", "no"), bare);
            }
            default -> {
                String plural = words.get(0).substring(0, words.get(0).length() - 1);
                say(predicate, fixed, false, List.of(words.get(0)), rest);
                say(predicate, fixed, false, List.of(plural), rest);
                say(predicate, fixed, true, List.of("does", "not", plural), rest);
                say(predicate, fixed, true, List.of("do", "not", plural), rest);
            }
        }
    }

    private void say(
            Predicate predicate, ImmutableList<String> fixed, boolean negative, List<String> head, List<String> rest) {
        ImmutableList<String> all =
                ImmutableList.<String>builder().addAll(head).addAll(rest).build();
        byFirst.computeIfAbsent(all.get(0), w -> new ArrayList<>()).add(new Saying(all, predicate, fixed, negative));
    }

    /** {@return whether a word can start what is said of a subject} */
    boolean starts(Lexeme word) {
        return word != null && !word.isText() && byFirst.containsKey(word.getText());
    }

    /** {@return whether a word goes on after {@code is}, so that it was probably meant without a verb of its own} */
    boolean completes(Lexeme word) {
        return !word.isText()
                && byFirst.getOrDefault("is", List.of()).stream()
                        .anyMatch(s -> !s.negative() && word.is(s.words().get(1)));
    }

    /** {@return the sayings that fit here, all of the greatest length; several when one wording has two meanings} */
    List<Saying> match(Cursor cursor) {
        Lexeme first = cursor.peek(0);
        List<Saying> fitting = new ArrayList<>();
        if (!starts(first)) {
            return fitting;
        }
        for (Saying saying : byFirst.get(first.getText())) {
            if (!fitting.isEmpty()
                    && saying.words().size() < fitting.get(0).words().size()) {
                break;
            }
            if (cursor.sees(saying.words())) {
                fitting.add(saying);
            }
        }
        return fitting;
    }

    /** {@return the saying nearest to the words here} */
    Optional<String> nearest(Cursor cursor) {
        // Where the first word is right, only what follows it is compared: "is" alone makes nothing alike.
        int skip = starts(cursor.peek(0)) ? 1 : 0;
        Set<String> all = new LinkedHashSet<>();
        byFirst.values().forEach(list -> list.stream()
                .filter(s -> skip == 0 || cursor.sees(0, s.words().get(0)))
                .forEach(s -> all.add(
                        String.join(" ", s.words().subList(skip, s.words().size())))));
        String best = null;
        int least = Integer.MAX_VALUE;
        for (int length = skip + 1; length <= 5 && cursor.peek(length - 1) != null; length++) {
            String written = Vocabulary.join(cursor.rest().subList(skip, length));
            Optional<String> near = Suggestions.nearest(written, all);
            if (near.isPresent() && Suggestions.distance(written, near.get()) < least) {
                least = Suggestions.distance(written, near.get());
                best = near.get();
            }
        }
        String head = skip == 0 ? "" : cursor.peek(0).getText() + " ";
        return Optional.ofNullable(best).map(near -> Suggestions.withThe(head + near));
    }
}
