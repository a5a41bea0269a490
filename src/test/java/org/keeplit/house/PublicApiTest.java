package org.keeplit.house;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.lang.reflect.Executable;
import java.lang.reflect.Field;
import java.lang.reflect.Member;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.keeplit.Keeplit;
import org.keeplit.text.Versions;

/**
 * What programs that embed this one call: {@link Keeplit} and the types that its signatures name, held against what was recorded at
 * the last release. What is gone breaks them, and asks for another major version (another minor one before 1.0). What is new is free.
 *
 * <p>To record it anew: {@code mvn test -Dtest=PublicApiTest -Dkeeplit.regenerate=true}.
 */
class PublicApiTest {
    private static final Path RECORDED = Path.of("src/test/resources/api.txt");

    @Test
    void nothingIsGoneThatWasThere() throws IOException {
        List<String> now = api();
        if (Boolean.getBoolean("keeplit.regenerate")) {
            Files.writeString(RECORDED, "# API of " + Versions.PROGRAM + "\n" + String.join("\n", now) + "\n");
        }
        List<String> recorded = Files.readAllLines(RECORDED);
        String version = recorded.get(0).replace("# API of ", "");
        List<String> before = recorded.subList(1, recorded.size());
        List<String> gone = before.stream().filter(line -> !now.contains(line)).toList();
        if (version.equals(Versions.PROGRAM)) {
            assertEquals(List.of(), gone, "this breaks programs that embed this one: another version, then record it anew");
        }
    }

    private static List<String> api() {
        TreeMap<String, TreeSet<String>> lines = new TreeMap<>();
        Deque<Class<?>> named = new ArrayDeque<>();
        record(Keeplit.class, lines, named);
        // Records of Keeplit itself belong to it; what their members lead to further on is told by its own Javadoc only.
        List.copyOf(named).forEach(type -> record(type, lines, new ArrayDeque<>()));
        return lines.values().stream().flatMap(TreeSet::stream).sorted(Comparator.naturalOrder()).toList();
    }

    private static void record(Class<?> type, TreeMap<String, TreeSet<String>> lines, Deque<Class<?>> named) {
        if (!type.getName().startsWith("org.keeplit.") || lines.containsKey(type.getName())) {
            return;
        }
        TreeSet<String> members = new TreeSet<>();
        lines.put(type.getName(), members);
        members.add(type.getName() + " is " + (type.isRecord() ? "record" : type.isEnum() ? "enum" : type.isInterface() ? "interface" : "class"));
        for (Member member : Signatures.members(type, false)) {
            members.add(member instanceof Executable called ? called.toGenericString() : ((Field) member).toGenericString());
            Signatures.of(member).forEach(named::push);
        }
    }
}
