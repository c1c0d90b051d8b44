package boardside.app.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Properties;
import java.util.TreeMap;

/** All wording of the pages, by key, from one file a language. */
public final class Texts {
    private final Map<String, String> byKey;
    private final String language;

    private Texts(String language, Map<String, String> byKey) {
        this.language = language;
        this.byKey = byKey;
    }

    /** Reads the texts of a language, e.g. "en". */
    public static Texts in(String language) {
        Properties properties = new Properties();
        try (InputStream in = Texts.class.getResourceAsStream("/boardside/texts/" + language + ".properties")) {
            if (in == null) {
                throw new IllegalArgumentException("there are no texts in the language \"" + language + "\"");
            }
            properties.load(new InputStreamReader(in, StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        Map<String, String> byKey = new TreeMap<>();
        properties.forEach((key, value) -> byKey.put((String) key, (String) value));
        return new Texts(language, byKey);
    }

    /** The language's tag. */
    public String language() {
        return language;
    }

    /** Whether there is such a text. */
    public boolean has(String key) {
        return byKey.containsKey(key);
    }

    /**
     * A text with {0}, {1}, ... filled in.
     *
     * @throws IllegalArgumentException if there is no such text
     */
    public String of(String key, Object... values) {
        String text = byKey.get(key);
        if (text == null) {
            throw new IllegalArgumentException("there is no text \"" + key + "\"");
        }
        for (int i = 0; i < values.length; i++) {
            text = text.replace("{" + i + "}", String.valueOf(values[i]));
        }
        return text;
    }

    /** The texts whose keys begin with one of the prefixes, for a script. */
    public Map<String, String> startingWith(String... prefixes) {
        Map<String, String> some = new TreeMap<>();
        byKey.forEach((key, text) -> {
            for (String prefix : prefixes) {
                if (key.startsWith(prefix)) {
                    some.put(key, text);
                }
            }
        });
        return some;
    }
}
