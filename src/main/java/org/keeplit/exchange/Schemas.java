package org.keeplit.exchange;

import com.google.common.collect.ImmutableList;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/**
 * The published schemas of the JSON that commands write, by JSON Schema 2020-12. A schema is changed only so that what was valid stays
 * valid; else its number goes up.
 */
public final class Schemas {
    /** The commands whose JSON has a schema. */
    public static final ImmutableList<String> COMMANDS =
            ImmutableList.of("check", "test", "order", "slips", "retreat", "plan", "sweep", "mend", "why", "import", "recheck");

    private static final String COMMON = "common";

    private Schemas() {}

    /** {@return the identifier that JSON carries and its schema has} @param command the command */
    public static String id(String command) {
        return "urn:keeplit:schema:" + command + ":1";
    }

    /** {@return a schema that stands alone: what it shares with others is in its definitions} @param command the command */
    public static String text(String command) {
        JsonObject schema = read(command);
        JsonObject definitions = new JsonObject();
        definitions.add(COMMON, read(COMMON));
        schema.add("$defs", definitions);
        return Tree.text(schema);
    }

    private static JsonObject read(String name) {
        try (InputStream in = Schemas.class.getResourceAsStream(name + ".schema.json")) {
            if (in == null) {
                throw new IllegalArgumentException("there is no schema " + name);
            }
            return JsonParser.parseReader(new InputStreamReader(in, StandardCharsets.UTF_8)).getAsJsonObject();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
