package boardside.app.web;

import boardside.engine.rules.Word;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Reads a form field by field: what is out of range becomes a fault, and each field keeps what was typed. */
class FormReader {
    private final Texts texts;
    private final Context ctx;
    private final List<String> faults = new ArrayList<>();
    private final Map<String, String> fields;

    /** @param before what stands in the fields that are not read */
    FormReader(Texts texts, Context ctx, Map<String, String> before) {
        this.texts = texts;
        this.ctx = ctx;
        this.fields = new TreeMap<>(before);
    }

    /** What was wrong so far, worded. */
    List<String> faults() {
        return faults;
    }

    Map<String, String> fields() {
        return fields;
    }

    void fault(String key, Object... values) {
        faults.add(texts.of(key, values));
    }

    /** A field without blanks around it; empty where it was not sent. */
    String text(String name) {
        String value = Objects.requireNonNullElse(ctx.formParam(name), "").strip();
        fields.put(name, value);
        return value;
    }

    /** The values of a field that may be sent several times, but for empty ones. */
    List<String> all(String name) {
        return ctx.formParams(name).stream().filter(value -> !value.isEmpty()).toList();
    }

    boolean is(String name, String value) {
        return value.equals(ctx.formParam(name));
    }

    /** A number chosen, or typed into the field beside the choices, which wins; null for none, or with a fault. */
    @Nullable
    Integer number(String name, String label, int least, int most) {
        String other = text(name + "-other");
        String value = other.isEmpty() ? text(name) : other;
        if (value.isEmpty()) {
            return null;
        }
        try {
            int number = Integer.parseInt(value);
            if (number >= least && number <= most) {
                return number;
            }
        } catch (NumberFormatException e) {
            // Said below, like a number out of range.
        }
        fault("start.fault.number", texts.of(label), least, most, value);
        return null;
    }

    <E extends Enum<E> & Word> @Nullable E word(String name, Class<E> kind) {
        String value = text(name);
        return value.isEmpty() ? null : Word.of(kind, value);
    }

    /** A name of at most so many characters; a longer one is a fault. */
    String name(String name, String label, int longest) {
        String value = text(name);
        if (value.length() > longest) {
            fault("journal.fault.long", texts.of(label), longest, value.length());
        }
        return value;
    }

    /** The usual choices of a number, and the one in force where it is not among them. */
    static List<String> offered(String now, List<String> usual) {
        if (usual.contains(now)) {
            return usual;
        }
        List<String> more = new ArrayList<>(usual);
        more.add(0, now);
        return more;
    }
}
