package boardside.app.json;

import boardside.engine.rules.Word;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.cfg.MapperConfig;
import com.fasterxml.jackson.databind.deser.std.FromStringDeserializer;
import com.fasterxml.jackson.databind.exc.ValueInstantiationException;
import com.fasterxml.jackson.databind.introspect.AnnotatedClass;
import com.fasterxml.jackson.databind.introspect.JacksonAnnotationIntrospector;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.ToStringSerializer;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Records as JSON: components by name, words for constants, instants, times without a zone and zones as text, what is null left out, unknown keys ignored when read. */
public final class Json {
    /** Shared; thread safe as long as nobody configures it. */
    public static final JsonMapper MAPPER = JsonMapper.builder()
            .annotationIntrospector(new Words())
            .addModule(new SimpleModule()
                    .addSerializer(LocalDateTime.class, ToStringSerializer.instance)
                    .addDeserializer(LocalDateTime.class, new Text<>(LocalDateTime.class, LocalDateTime::parse))
                    .addSerializer(Instant.class, ToStringSerializer.instance)
                    .addDeserializer(Instant.class, new Text<>(Instant.class, Instant::parse))
                    .addSerializer(ZoneId.class, ToStringSerializer.instance)
                    .addDeserializer(ZoneId.class, new Text<>(ZoneId.class, ZoneId::of)))
            .serializationInclusion(JsonInclude.Include.NON_NULL)
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
            .build();

    private Json() {}

    /** A value as compact JSON. */
    public static String write(Object value) {
        try {
            return MAPPER.writeValueAsString(value);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("cannot write " + value.getClass() + " as JSON", e);
        }
    }

    /**
     * A value from JSON.
     *
     * @throws IllegalArgumentException if the text is not JSON, or no such value
     */
    public static <T> T read(String text, Class<T> type) {
        try {
            T value = MAPPER.readValue(text, type);
            if (value == null) {
                throw new IllegalArgumentException("JSON null where a value was expected");
            }
            return value;
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("not the JSON expected: " + wrong(e), e);
        }
    }

    /** What is wrong with a text, for whoever wrote it: without the names of our classes. */
    public static String wrong(JsonProcessingException e) {
        if (!(e instanceof JsonMappingException mapping)) {
            return e.getOriginalMessage();
        }
        String path = mapping.getPath().stream()
                .map(part -> part.getFieldName() == null ? String.valueOf(part.getIndex()) : part.getFieldName())
                .collect(Collectors.joining("/"));
        String where = path.isEmpty() ? "it" : "\"" + path + "\"";
        if (e instanceof ValueInstantiationException && e.getCause() instanceof IllegalArgumentException cause) {
            return where + ": " + cause.getMessage();
        }
        return where + " is missing or not what belongs there";
    }

    /** A value that has a text form. */
    private static final class Text<T> extends FromStringDeserializer<T> {
        private static final long serialVersionUID = 1L;

        private final transient Function<String, T> parse;

        Text(Class<T> type, Function<String, T> parse) {
            super(type);
            this.parse = parse;
        }

        @Override
        protected T _deserialize(String text, DeserializationContext context) {
            return parse.apply(text);
        }
    }

    /** Enum constants by their word, both ways. */
    private static final class Words extends JacksonAnnotationIntrospector {
        private static final long serialVersionUID = 1L;

        @Override
        public String[] findEnumValues(
                MapperConfig<?> config, AnnotatedClass type, Enum<?>[] constants, String[] names) {
            for (int i = 0; i < constants.length; i++) {
                if (constants[i] instanceof Word word) {
                    names[i] = word.word();
                }
            }
            return names;
        }
    }
}
