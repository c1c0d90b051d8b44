package boardside.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** All wording of the pages stands in one file: none in templates, none missing, none left over. */
class TextsTest {
    private static final Path MAIN = Path.of("src", "main");
    private static final String KEY = "[a-z]+(?:\\.[a-z0-9-]+)+";

    /** Keys, or beginnings of keys that are completed by a word, in quotes. */
    private static final Pattern QUOTED = Pattern.compile("[\"`](" + KEY + "|(?:[a-z0-9-]+\\.)+)(?:[\"`]|\\$\\{)");

    private static Map<String, String> sources(String... kinds) throws IOException {
        Map<String, String> sources = new HashMap<>();
        try (Stream<Path> files = Files.walk(MAIN)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                String name = file.getFileName().toString();
                if (List.of(kinds).contains(name.substring(name.lastIndexOf('.') + 1))) {
                    sources.put(name, Files.readString(file));
                }
            }
        }
        assertThat(sources).isNotEmpty();
        return sources;
    }

    private static Set<String> keys() {
        return Texts.in("en").startingWith("").keySet();
    }

    /**
     * In English as the Unicode CLDR, which comes with Java, writes days in Britain; in a second language, of which the tests
     * have the patterns of days only, with its own names.
     */
    @Test
    void daysAreWrittenAsTheLanguageDoes() {
        LocalDate day = LocalDate.of(2026, 1, 5);
        assertThat(Texts.in("en").day(day)).isEqualTo(medium(Locale.UK).format(day));
        assertThat(Texts.in("de").day(day)).isEqualTo("5. Jan. 2026");
        assertThat(Texts.in("de").month(YearMonth.of(2026, 3))).isEqualTo("M\u00e4rz 2026");
        assertThat(Texts.in("de").weekday(day)).startsWith("Mo").endsWith("5. Jan. 2026");
        assertThat(Texts.in("de").when(day.atTime(19, 30))).endsWith("19:30");
        assertThat(Texts.in("en").when(day.atTime(19, 30))).isEqualTo("Mon 5 Jan 2026, 19:30");
    }

    private static DateTimeFormatter medium(Locale locale) {
        return DateTimeFormatter.ofLocalizedDate(FormatStyle.MEDIUM).withLocale(locale);
    }

    @Test
    void templatesHoldNoWording() throws IOException {
        List<String> found = new ArrayList<>();
        sources("jte").forEach((name, template) -> {
            wording(template).forEach(words -> found.add(name + ": " + words));
        });
        assertThat(found).isEmpty();
    }

    @Test
    void wordingInATemplateWouldBeFound() {
        assertThat(wording("@param Page page\n<p>Hello</p>")).containsExactly("Hello");
        assertThat(wording("@template.layout(page = page, content = @`<p>${page.t(\"a.b\")}</p> there`)"))
                .containsExactly("there");
        assertThat(wording("<img alt=\"a dog\">")).containsExactly("alt=\"a dog\"");
        assertThat(wording("@if(x.y(z) > 0)\n<a href=\"/x\" aria-label=\"${page.t(\"k.l\")}\">${x}</a>\n@endif"))
                .isEmpty();
    }

    /** Words that would be read to a person: text between tags, and attributes that are shown or spoken. */
    private static List<String> wording(String template) {
        String rest = template.replaceAll("(?m)^@(import|param) .*$", " ")
                .replaceAll("(?s)<%--.*?--%>", " ")
                .replaceAll("(?s)@template\\.\\w+\\([^`]*?= @`", " ")
                .replace("`)", " ");
        rest = withoutCode(rest);
        List<String> found = new ArrayList<>();
        Matcher spoken = Pattern.compile(
                        "\\b(alt|title|placeholder|aria-label|aria-description)=\"[^\"]*\\p{L}[^\"]*\"")
                .matcher(rest);
        while (spoken.find()) {
            found.add(spoken.group());
        }
        for (String text : rest.replaceAll("(?s)<[^>]*>", "\n").split("\n")) {
            if (text.matches(".*\\p{L}.*")) {
                found.add(text.strip());
            }
        }
        return found;
    }

    /** Takes out ${...}, !{...}, @if(...), @for(...), @template.x(...) and the like, with their balanced brackets. */
    private static String withoutCode(String template) {
        Matcher start = Pattern.compile(
                        "[$!]\\{|\\$unsafe\\{|@(?:if|elseif|for|template\\.\\w+)\\(|@(?:else|endif|endfor)\\b")
                .matcher(template);
        StringBuilder rest = new StringBuilder();
        int from = 0;
        while (from < template.length() && start.find(from)) {
            rest.append(template, from, start.start());
            from = start.group().matches(".*[({]") ? closing(template, start.end()) : start.end();
        }
        return rest.append(template.substring(Math.min(from, template.length())))
                .toString();
    }

    private static int closing(String template, int from) {
        int depth = 1;
        boolean quoted = false;
        for (int i = from; i < template.length(); i++) {
            char c = template.charAt(i);
            if (c == '"' && template.charAt(i - 1) != '\\') {
                quoted = !quoted;
            } else if (!quoted && (c == '(' || c == '{')) {
                depth++;
            } else if (!quoted && (c == ')' || c == '}')) {
                depth--;
                if (depth == 0) {
                    return i + 1;
                }
            }
        }
        return template.length();
    }

    @Test
    void everyKeyUsedExists() throws IOException {
        Set<String> keys = keys();
        Set<String> missing = new TreeSet<>();
        // In templates and the recorder's script every quoted text of that form is a key; in Java those given to texts.
        Pattern inPages = Pattern.compile("\\bt\\(([^;]*?)\\)");
        sources("jte", "js").forEach((name, text) -> {
            Matcher call = inPages.matcher(text);
            while (call.find()) {
                collect(call.group(1), keys, name, missing);
            }
        });
        Pattern inJava = Pattern.compile("(?s)texts(?:\\(\\))?\\s*\\.of\\(\\s*(\"[^\"]*\"\\s*[,+)])");
        sources("java").forEach((name, text) -> {
            Matcher call = inJava.matcher(text);
            while (call.find()) {
                collect(call.group(1), keys, name, missing);
            }
        });
        assertThat(missing).isEmpty();
    }

    private static void collect(String arguments, Set<String> keys, String name, Set<String> missing) {
        Matcher quoted = QUOTED.matcher(arguments);
        while (quoted.find()) {
            String key = quoted.group(1);
            boolean beginning =
                    key.endsWith(".") || quoted.group().endsWith("${") || completed(arguments, quoted.end());
            if (!keys.contains(key) && !(beginning && keys.stream().anyMatch(one -> one.startsWith(key)))) {
                missing.add(name + ": " + key);
            }
        }
    }

    private static boolean completed(String arguments, int end) {
        return arguments.substring(Math.min(end, arguments.length())).strip().startsWith("+");
    }

    @Test
    void everyTextIsUsed() throws IOException {
        StringBuilder all = new StringBuilder();
        // What a script is given as a whole is not yet used by it.
        sources("jte", "js", "java")
                .values()
                .forEach(text -> all.append(text.replaceAll("(?s)startingWith\\([^)]*\\)", ""))
                        .append('\n'));
        Set<String> whole = new TreeSet<>();
        Set<String> beginnings = new TreeSet<>();
        Matcher quoted = QUOTED.matcher(all);
        while (quoted.find()) {
            (quoted.group(1).endsWith(".") ? beginnings : whole).add(quoted.group(1));
        }
        List<String> unused = new ArrayList<>();
        for (String key : keys()) {
            if (!whole.contains(key) && beginnings.stream().noneMatch(key::startsWith)) {
                unused.add(key);
            }
        }
        assertThat(unused).isEmpty();
    }

    @Test
    void noTextIsEmptyOrHasAStrayBrace() {
        List<String> wrong = new ArrayList<>();
        Texts.in("en").startingWith("").forEach((key, text) -> {
            if (text.isBlank() || text.replaceAll("\\{\\d}", "").matches(".*[{}].*")) {
                wrong.add(key + " = " + text);
            }
        });
        assertThat(wrong).isEmpty();
    }
}
