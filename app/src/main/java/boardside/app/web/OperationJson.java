package boardside.app.web;

import boardside.app.json.Json;
import boardside.app.practice.Operation;
import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.AnnotationIntrospector;
import com.fasterxml.jackson.databind.introspect.Annotated;
import com.fasterxml.jackson.databind.introspect.AnnotatedMember;
import com.fasterxml.jackson.databind.introspect.AnnotatedParameter;
import com.fasterxml.jackson.databind.introspect.NopAnnotationIntrospector;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.lang.reflect.RecordComponent;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Reads what pages send; {@code type} tells which operation it is. */
final class OperationJson {
    private static final JsonMapper MAPPER = mapper();

    private OperationJson() {}

    private static JsonMapper mapper() {
        JsonMapper mapper = (JsonMapper) Json.MAPPER.copy().addMixIn(Operation.class, Typed.class);
        mapper.setAnnotationIntrospector(AnnotationIntrospector.pair(
                new Needed(), mapper.getDeserializationConfig().getAnnotationIntrospector()));
        // A list holds no nothing.
        mapper.setDefaultSetterInfo(JsonSetter.Value.forContentNulls(Nulls.FAIL));
        return mapper;
    }

    /** Says what a text must hold: every part of a record that may not be null. */
    private static final class Needed extends NopAnnotationIntrospector {
        private static final long serialVersionUID = 1L;

        @Override
        public @Nullable Boolean hasRequiredMarker(AnnotatedMember member) {
            return needed(member) ? Boolean.TRUE : null;
        }

        @Override
        public JsonSetter.Value findSetterInfo(Annotated member) {
            return needed(member) ? JsonSetter.Value.construct(Nulls.FAIL, Nulls.FAIL) : JsonSetter.Value.empty();
        }

        /** Whether it is a part of a record that may not be null; what is left out of numbers and switches is Jackson's to say. */
        private static boolean needed(Annotated member) {
            if (!(member instanceof AnnotatedParameter parameter)
                    || member.getRawType().isPrimitive()) {
                return false;
            }
            RecordComponent[] parts = parameter.getDeclaringClass().getRecordComponents();
            return parts != null
                    && !parts[parameter.getIndex()].getAnnotatedType().isAnnotationPresent(Nullable.class);
        }
    }

    @JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "type")
    @JsonSubTypes({
        @JsonSubTypes.Type(value = Operation.NameBag.class, name = "bag"),
        @JsonSubTypes.Type(value = Operation.StartRun.class, name = "run"),
        @JsonSubTypes.Type(value = Operation.PutRound.class, name = "round"),
        @JsonSubTypes.Type(value = Operation.PutTry.class, name = "try"),
        @JsonSubTypes.Type(value = Operation.KeepSituation.class, name = "situation"),
        @JsonSubTypes.Type(value = Operation.KeepSlideTest.class, name = "slide-test"),
        @JsonSubTypes.Type(value = Operation.ChangeSetup.class, name = "setup"),
        @JsonSubTypes.Type(value = Operation.ScoreRun.class, name = "score"),
        @JsonSubTypes.Type(value = Operation.FinishRun.class, name = "finish"),
        @JsonSubTypes.Type(value = Operation.ReopenRun.class, name = "reopen"),
        @JsonSubTypes.Type(value = Operation.PlayFixture.class, name = "fixture"),
        @JsonSubTypes.Type(value = Operation.PlayMatch.class, name = "match"),
        @JsonSubTypes.Type(value = Operation.ThrowTrial.class, name = "trial"),
        @JsonSubTypes.Type(value = Operation.TakeBlock.class, name = "block")
    })
    private interface Typed {}

    /** The operations there are, by the word of their {@code type}. */
    static Map<String, Class<?>> kinds() {
        Map<String, Class<?>> kinds = new LinkedHashMap<>();
        for (JsonSubTypes.Type type : Objects.requireNonNull(Typed.class.getAnnotation(JsonSubTypes.class))
                .value()) {
            kinds.put(type.name(), type.value());
        }
        return kinds;
    }

    /**
     * A value that holds operations.
     *
     * @throws Refusal saying what is wrong with the text
     */
    static <T> T read(String text, Class<T> type) {
        @Nullable T value;
        try {
            value = MAPPER.readValue(text, type);
        } catch (JsonProcessingException e) {
            throw new Refusal(400, "This is not what the interface takes: " + Json.wrong(e));
        }
        if (value == null) {
            throw new Refusal(400, "This is not what the interface takes: null.");
        }
        return value;
    }
}
