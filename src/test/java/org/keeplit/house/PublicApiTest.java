package org.keeplit.house;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.lang.reflect.Constructor;
import java.lang.reflect.Field;
import java.lang.reflect.GenericArrayType;
import java.lang.reflect.Method;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;
import java.lang.reflect.WildcardType;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Arrays;
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
        Arrays.stream(type.getMethods()).filter(m -> m.getDeclaringClass() == type && !m.isSynthetic()).forEach(m -> add(m, members, named));
        Arrays.stream(type.getConstructors()).forEach(c -> add(c, members, named));
        Arrays.stream(type.getFields()).filter(f -> f.getDeclaringClass() == type).forEach(f -> add(f, members, named));
    }

    private static void add(Method method, TreeSet<String> members, Deque<Class<?>> open) {
        members.add(method.toGenericString());
        lead(method.getGenericReturnType(), open);
        Arrays.stream(method.getGenericParameterTypes()).forEach(t -> lead(t, open));
    }

    private static void add(Constructor<?> constructor, TreeSet<String> members, Deque<Class<?>> open) {
        members.add(constructor.toGenericString());
        Arrays.stream(constructor.getGenericParameterTypes()).forEach(t -> lead(t, open));
    }

    private static void add(Field field, TreeSet<String> members, Deque<Class<?>> open) {
        members.add(field.toGenericString());
        lead(field.getGenericType(), open);
    }

    private static void lead(Type type, Deque<Class<?>> open) {
        if (type instanceof Class<?> plain) {
            open.push(plain.isArray() ? plain.getComponentType() : plain);
        } else if (type instanceof ParameterizedType of) {
            lead(of.getRawType(), open);
            Arrays.stream(of.getActualTypeArguments()).forEach(t -> lead(t, open));
        } else if (type instanceof WildcardType any) {
            Arrays.stream(any.getUpperBounds()).forEach(t -> lead(t, open));
        } else if (type instanceof GenericArrayType array) {
            lead(array.getGenericComponentType(), open);
        }
    }
}
