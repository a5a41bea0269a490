package org.keeplit.house;

import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.Field;
import java.lang.reflect.GenericArrayType;
import java.lang.reflect.Member;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;
import java.lang.reflect.TypeVariable;
import java.lang.reflect.WildcardType;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** What the signatures of a type name. */
final class Signatures {
    private final Set<Type> met = new LinkedHashSet<>();

    private Signatures() {}

    /** {@return the methods of its own, constructors and fields that others may use; those that the compiler made aside} @param hidden whether those are among them that only subclasses may use */
    static List<Member> members(Class<?> type, boolean hidden) {
        List<Member> all = new ArrayList<>();
        Stream.of(type.getDeclaredMethods(), type.getDeclaredConstructors(), type.getDeclaredFields())
                .flatMap(Arrays::stream)
                .map(Member.class::cast)
                .filter(m -> Modifier.isPublic(m.getModifiers()) || hidden && Modifier.isProtected(m.getModifiers()))
                .filter(m -> !m.isSynthetic())
                .forEach(all::add);
        return all;
    }

    /** {@return the classes that a member's signature names, type arguments and bounds included} @param member the member */
    static Set<Class<?>> of(Member member) {
        Signatures all = new Signatures();
        if (member instanceof Field field) {
            all.add(field.getGenericType());
        } else if (member instanceof Executable called) {
            all.add(called.getGenericParameterTypes());
            all.add(called.getGenericExceptionTypes());
            all.add(called.getTypeParameters());
            if (called instanceof Method method) {
                all.add(method.getGenericReturnType());
            } else {
                all.add(((Constructor<?>) called).getDeclaringClass());
            }
        }
        return all.classes();
    }

    /** {@return the classes that a type's own signature names: what it extends, implements, and is bound by} @param type the type */
    static Set<Class<?>> head(Class<?> type) {
        Signatures all = new Signatures();
        if (type.getGenericSuperclass() != null) {
            all.add(type.getGenericSuperclass());
        }
        all.add(type.getGenericInterfaces());
        all.add(type.getTypeParameters());
        return all.classes();
    }

    private Set<Class<?>> classes() {
        Set<Class<?>> all = new LinkedHashSet<>();
        met.stream().filter(Class.class::isInstance).forEach(t -> all.add((Class<?>) t));
        return all;
    }

    private void add(Type... types) {
        Arrays.stream(types).forEach(this::add);
    }

    private void add(Type type) {
        if (!met.add(type)) {
            return;
        }
        if (type instanceof Class<?> plain && plain.isArray()) {
            add(plain.getComponentType());
        } else if (type instanceof ParameterizedType of) {
            add(of.getRawType());
            add(of.getActualTypeArguments());
        } else if (type instanceof WildcardType any) {
            add(any.getUpperBounds());
            add(any.getLowerBounds());
        } else if (type instanceof GenericArrayType array) {
            add(array.getGenericComponentType());
        } else if (type instanceof TypeVariable<?> variable) {
            add(variable.getBounds());
        }
    }
}
