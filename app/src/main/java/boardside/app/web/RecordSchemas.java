package boardside.app.web;

import boardside.engine.rules.Word;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * JSON Schema (2020-12) of records as {@link boardside.app.json.Json} writes and reads them: a part is required unless it may be
 * null, constants are their words, and what else a record holds against its values is not said.
 */
final class RecordSchemas {
    private final Map<Class<?>, String> names = new LinkedHashMap<>();
    private final Map<String, Object> schemas = new TreeMap<>();
    private final Map<Class<?>, Map<String, Class<?>>> kinds;

    /** @param kinds what a sealed type may be, by the word of its {@code type} */
    RecordSchemas(Map<Class<?>, Map<String, Class<?>>> kinds) {
        this.kinds = kinds;
    }

    /** Schemas by name, of all that was asked for and what that holds. */
    Map<String, Object> all() {
        return schemas;
    }

    /** A reference to the schema of a record or of constants, which is told under that name. */
    Map<String, Object> named(String name, Class<?> type) {
        if (!names.containsKey(type)) {
            names.put(type, name);
            schemas.put(name, described(type));
        }
        return Map.of("$ref", "#/components/schemas/" + names.get(type));
    }

    private Map<String, Object> described(Class<?> type) {
        Map<String, Class<?>> ways = kinds.get(type);
        if (ways != null) {
            List<Object> some = new ArrayList<>();
            Map<String, Object> mapping = new LinkedHashMap<>();
            ways.forEach((word, way) -> {
                Map<String, Object> record = record(way);
                @SuppressWarnings("unchecked")
                Map<String, Object> parts = (Map<String, Object>) record.get("properties");
                Map<String, Object> all = new LinkedHashMap<>(Map.of("type", Map.of("const", word)));
                all.putAll(parts);
                @SuppressWarnings("unchecked")
                List<String> required = new ArrayList<>((List<String>) record.get("required"));
                required.add(0, "type");
                schemas.put(way.getSimpleName(), object(all, required));
                String reference = "#/components/schemas/" + way.getSimpleName();
                some.add(Map.of("$ref", reference));
                mapping.put(word, reference);
            });
            return Map.of("oneOf", some, "discriminator", Map.of("propertyName", "type", "mapping", mapping));
        }
        return type.isEnum() ? Map.of("type", "string", "enum", words(type)) : record(type);
    }

    private static List<String> words(Class<?> type) {
        List<String> words = new ArrayList<>();
        for (Object constant : type.getEnumConstants()) {
            words.add(constant instanceof Word word ? word.word() : ((Enum<?>) constant).name());
        }
        return words;
    }

    private Map<String, Object> record(Class<?> type) {
        Map<String, Object> parts = new LinkedHashMap<>();
        List<String> required = new ArrayList<>();
        for (RecordComponent part : type.getRecordComponents()) {
            boolean nullable = part.getAnnotatedType().isAnnotationPresent(Nullable.class);
            Map<String, Object> schema = of(part.getGenericType());
            parts.put(part.getName(), nullable ? Map.of("anyOf", List.of(schema, Map.of("type", "null"))) : schema);
            if (!nullable) {
                required.add(part.getName());
            }
        }
        return object(parts, required);
    }

    private static Map<String, Object> object(Map<String, Object> parts, List<String> required) {
        Map<String, Object> object = new LinkedHashMap<>();
        object.put("type", "object");
        object.put("properties", parts);
        object.put("required", required);
        return object;
    }

    private Map<String, Object> of(Type type) {
        if (type instanceof ParameterizedType list && list.getRawType() == List.class) {
            return Map.of("type", "array", "items", of(list.getActualTypeArguments()[0]));
        }
        Class<?> plain = (Class<?>) type;
        if (plain == String.class) {
            return Map.of("type", "string");
        }
        if (plain == boolean.class || plain == Boolean.class) {
            return Map.of("type", "boolean");
        }
        if (plain == int.class || plain == Integer.class) {
            return Map.of("type", "integer", "format", "int32");
        }
        if (plain == long.class || plain == Long.class) {
            return Map.of("type", "integer", "format", "int64");
        }
        if (plain == double.class || plain == Double.class) {
            return Map.of("type", "number");
        }
        if (!plain.isEnum() && !plain.isRecord() && !kinds.containsKey(plain)) {
            throw new IllegalStateException("no schema for " + plain);
        }
        return named(name(plain), plain);
    }

    /** A name that tells parts of different records from each other. */
    private static String name(Class<?> type) {
        Class<?> outer = type.getEnclosingClass();
        return outer == null || outer == RunPage.class
                ? type.getSimpleName()
                : outer.getSimpleName() + type.getSimpleName();
    }
}
