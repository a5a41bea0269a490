package org.keeplit.exchange;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.Optional;
import java.util.function.Function;

/** Builds JSON objects, their members in the order in which they are added; what is empty is left out. */
final class Tree {
    private static final Gson GSON = new GsonBuilder().setPrettyPrinting().disableHtmlEscaping().create();

    private final JsonObject object = new JsonObject();

    /** {@return an element as text, set in, with a line end at its end} */
    static String text(JsonElement element) {
        return GSON.toJson(element) + "\n";
    }

    /** Adds words, even if there are none. */
    Tree put(String name, String value) {
        object.addProperty(name, value);
        return this;
    }

    Tree put(String name, long value) {
        object.addProperty(name, value);
        return this;
    }

    Tree put(String name, boolean value) {
        object.addProperty(name, value);
        return this;
    }

    Tree put(String name, JsonElement value) {
        object.add(name, value);
        return this;
    }

    /** Adds words, if there are any. */
    Tree some(String name, String value) {
        return value.isEmpty() ? this : put(name, value);
    }

    /** Adds something, if it is there. */
    Tree some(String name, Optional<?> value) {
        value.ifPresent(v -> put(name, v instanceof JsonElement e ? e : new JsonPrimitive(v.toString())));
        return this;
    }

    /** Adds a list. @param values the things @param make makes an element of one */
    <T> Tree list(String name, Iterable<T> values, Function<T, JsonElement> make) {
        return put(name, array(values, make));
    }

    /** Adds a list, if it is not empty. */
    <T> Tree someList(String name, Iterable<T> values, Function<T, JsonElement> make) {
        JsonArray array = array(values, make);
        return array.isEmpty() ? this : put(name, array);
    }

    /** Adds a list of words. */
    Tree words(String name, Iterable<String> values) {
        return list(name, values, JsonPrimitive::new);
    }

    /** {@return a list} */
    static <T> JsonArray array(Iterable<T> values, Function<T, JsonElement> make) {
        JsonArray array = new JsonArray();
        values.forEach(v -> array.add(make.apply(v)));
        return array;
    }

    /** {@return the object} */
    JsonObject done() {
        return object;
    }
}
