package boardside.app.web;

import boardside.engine.rules.Word;
import io.javalin.http.Context;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** A form as it was filled in, with what was wrong beside the field it was wrong in. */
public final class Fields {
    private static final Pattern NUMBER = Pattern.compile("\\d{1,6}([.,]\\d{1,4})?");
    private static final Pattern WHOLE = Pattern.compile("\\d{1,6}");

    private final Texts texts;
    private final Map<String, String> values = new TreeMap<>();
    private final Map<String, String> faults = new TreeMap<>();

    private Fields(Texts texts) {
        this.texts = texts;
    }

    /** As sent. */
    static Fields sent(Context ctx, Texts texts) {
        Fields fields = new Fields(texts);
        ctx.formParamMap()
                .forEach((name, all) -> fields.values.put(name, all.get(0).strip()));
        return fields;
    }

    /** As first shown. */
    static Fields filled(Texts texts, Map<String, String> values) {
        Fields fields = new Fields(texts);
        fields.values.putAll(values);
        return fields;
    }

    /** The same, with what stands in the fields that were not sent. */
    Fields over(Map<String, String> others) {
        Fields all = filled(texts, others);
        all.values.putAll(values);
        all.faults.putAll(faults);
        return all;
    }

    /** What stands in a field; empty where there is nothing. */
    public String value(String name) {
        return Objects.requireNonNullElse(values.get(name), "");
    }

    /** What is wrong with a field, or null. */
    public @Nullable String fault(String name) {
        return faults.get(name);
    }

    /** Whether anything is wrong. */
    public boolean faulty() {
        return !faults.isEmpty();
    }

    /** Says what is wrong with a field; the first fault of a field stays. */
    void fault(String name, String message) {
        faults.putIfAbsent(name, message);
    }

    /** A whole number, or null where the field is empty or faulty. */
    @Nullable
    Integer whole(String name, int least, int most) {
        String text = value(name);
        if (text.isEmpty()) {
            return null;
        }
        if (WHOLE.matcher(text).matches()) {
            int number = Integer.parseInt(text);
            if (number >= least && number <= most) {
                return number;
            }
        }
        fault(name, texts.of("field.whole", least, most));
        return null;
    }

    /** A number, with a point or a comma, or null where the field is empty or faulty. */
    @Nullable
    Double number(String name, double least, double most) {
        String text = value(name);
        if (text.isEmpty()) {
            return null;
        }
        if (NUMBER.matcher(text).matches()) {
            double number = Double.parseDouble(text.replace(',', '.'));
            if (number >= least && number <= most) {
                return number;
            }
        }
        fault(name, texts.of("field.number", Units.plain(least), Units.plain(most)));
        return null;
    }

    /** One of a few words; anything else is the usual. */
    <E extends Enum<E> & Word> E word(String name, Class<E> kind, E usual) {
        String text = value(name);
        return Word.words(kind).contains(text) ? Word.of(kind, text) : usual;
    }
}
