package boardside.app.web;

import boardside.app.report.DateWords;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.time.temporal.TemporalAccessor;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.TreeMap;

/** All wording of the pages, by key, from one file a language. */
public final class Texts {
    private final Map<String, String> byKey;
    private final String language;
    private final Locale locale;

    private Texts(String language, Map<String, String> byKey) {
        this.language = language;
        this.locale = Locale.forLanguageTag(language);
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

    /** The language's own rules: names of months and days, small and capital letters. */
    public Locale locale() {
        return locale;
    }

    /** A day as the language writes it, "5 Jan 2026". */
    public String day(LocalDate day) {
        return format("day", day);
    }

    /** A day with its day of the week. */
    public String weekday(LocalDate day) {
        return format("weekday", day);
    }

    /** A month written out, with its year. */
    public String month(YearMonth month) {
        return format("month", month);
    }

    /** A day of the week, day and time of day. */
    public String when(LocalDateTime time) {
        return format("when", time);
    }

    /** How days stand at the axis of a picture. */
    public DateWords dates() {
        return new DateWords(locale, of("date.tick.day"), of("date.tick.month"), of("date.tick.year"));
    }

    private String format(String what, TemporalAccessor value) {
        return DateTimeFormatter.ofPattern(of("date." + what), locale).format(value);
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
