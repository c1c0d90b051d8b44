package boardside.app.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boardside.app.report.Palette;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Colours as they stand in tokens.css: enough contrast in every theme (WCAG 2.2, 1.4.3 and 1.4.11), and colours nowhere
 * else.
 */
class ThemeTest {
    private static final Path MAIN = Path.of("src", "main");
    private static final Path STATIC = MAIN.resolve("resources/boardside/static");
    private static final Path TOKENS = STATIC.resolve("tokens.css");
    private static final Pattern COLOUR = Pattern.compile("--([a-z-]+): (#[0-9a-f]{6});");

    private static final String LIGHT = ":root, [data-theme=\"light\"]";

    private static final double TEXT = 4.5;
    private static final double SHAPE = 3;

    /** Text on what it stands on. */
    private static final List<String> TEXTS = List.of(
            "ink/paper",
            "ink/surface",
            "ink/accent-wash",
            "ink/warn-wash",
            "ink/band",
            "ink-soft/paper",
            "ink-soft/surface",
            "ink-soft/warn-wash",
            "ink-soft/accent-wash",
            "accent/paper",
            "accent/surface",
            "accent/accent-wash",
            "accent-ink/accent",
            "warn/paper",
            "warn/surface",
            "warn/warn-wash");

    /** Shapes that carry meaning, focus rings and the borders of controls. */
    private static final List<String> SHAPES = List.of(
            "line/paper",
            "line/surface",
            "accent/paper",
            "accent/surface",
            "in/surface",
            "in/paper",
            "on/surface",
            "on/paper",
            "off/surface",
            "off/paper",
            "mark/surface",
            "mark/paper",
            "mark/band",
            "warn/surface",
            "warn/paper",
            "qr-dark/qr-light");

    private static Map<String, String> theme(String name) throws IOException {
        String css = Files.readString(TOKENS);
        Map<String, String> colours = new HashMap<>(block(css, LIGHT));
        if (!name.equals("light")) {
            colours.putAll(block(css, (name.equals("auto") ? ":root" : "") + "[data-theme=\"" + name + "\"]"));
        }
        return colours;
    }

    private static Map<String, String> block(String css, String selector) {
        int start = css.indexOf(selector + " {");
        assertThat(start).as(selector).isNotNegative();
        Map<String, String> colours = new HashMap<>();
        Matcher colour = COLOUR.matcher(css.substring(start, css.indexOf('}', start)));
        while (colour.find()) {
            colours.put(colour.group(1), colour.group(2));
        }
        assertThat(colours).as(selector).isNotEmpty();
        return colours;
    }

    /** Contrast ratio of two colours as WCAG 2.2 defines it, 1 to 21. */
    private static double contrast(String one, String other) {
        double a = luminance(one);
        double b = luminance(other);
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    private static double luminance(String colour) {
        double sum = 0;
        double[] weights = {0.2126, 0.7152, 0.0722};
        for (int i = 0; i < weights.length; i++) {
            double part = Integer.parseInt(colour.substring(1 + 2 * i, 3 + 2 * i), 16) / 255.0;
            sum += weights[i] * (part <= 0.04045 ? part / 12.92 : Math.pow((part + 0.055) / 1.055, 2.4));
        }
        return sum;
    }

    @Test
    void contrastIsComputedAsPublished() {
        assertThat(contrast("#ffffff", "#000000")).isEqualTo(21);
        // The grey that is just enough on white, in WCAG's own "Understanding 1.4.3": #767676 has 4.54:1.
        assertThat(contrast("#767676", "#ffffff")).isCloseTo(4.54, within(0.005));
    }

    @ParameterizedTest
    @ValueSource(strings = {"light", "dark", "sun", "auto"})
    void everyThemeHasEnoughContrast(String name) throws IOException {
        Map<String, String> theme = theme(name);
        List<String> faint = new ArrayList<>();
        TEXTS.forEach(pair -> check(theme, pair, TEXT, faint));
        SHAPES.forEach(pair -> check(theme, pair, SHAPE, faint));
        assertThat(faint).as(name).isEmpty();
    }

    private static void check(Map<String, String> theme, String pair, double least, List<String> faint) {
        String[] names = pair.split("/");
        double contrast = contrast(theme.getOrDefault(names[0], ""), theme.getOrDefault(names[1], ""));
        if (!(contrast >= least)) {
            faint.add(String.format(java.util.Locale.ROOT, "%s has %.2f, needs %.1f", pair, contrast, least));
        }
    }

    @Test
    void whatFollowsTheDeviceIsTheSameDark() throws IOException {
        String css = Files.readString(TOKENS);
        assertThat(block(css, ":root[data-theme=\"auto\"]")).isEqualTo(block(css, "[data-theme=\"dark\"]"));
    }

    @Test
    void whatIsPrintedHasTheColoursOfTheLightTheme() throws IOException {
        assertThat(theme("light")).containsAllEntriesOf(Palette.PAPER.colours());
    }

    @Test
    void anInstalledAppBeginsInTheColoursOfTheLightTheme() throws IOException {
        String manifest = Files.readString(STATIC.resolve("boardside.webmanifest"));
        String paper = theme("light").get("paper");
        assertThat(manifest).contains("\"background_color\": \"" + paper + "\"", "\"theme_color\": \"" + paper + "\"");
    }

    /** The icon stands alone, outside any page; the palette for print is held to tokens.css above. */
    @Test
    void coloursStandInOnePlace() throws IOException {
        Pattern inStyle = Pattern.compile(
                ":[^;{]*(#[0-9a-fA-F]{3,8}\\b|\\b(rgb|rgba|hsl|hsla|oklch|color)\\(|\\b(white|black|red|gr[ae]y)\\b)");
        Pattern inCode = Pattern.compile("#[0-9a-fA-F]{6}\\b|\"#[0-9a-fA-F]{3}\"|\\brgba?\\(|\\bhsla?\\(|style=\"");
        List<String> found = new ArrayList<>();
        try (Stream<Path> files = Files.walk(MAIN)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                String name = file.getFileName().toString();
                if (!name.matches(".*\\.(css|js|jte|java)")
                        || List.of("tokens.css", "Palette.java").contains(name)) {
                    continue;
                }
                Pattern pattern = name.endsWith(".css") ? inStyle : inCode;
                int number = 0;
                for (String line : Files.readAllLines(file)) {
                    number++;
                    if (pattern.matcher(line).find()) {
                        found.add(name + ":" + number + " " + line.strip());
                    }
                }
            }
        }
        assertThat(found).isEmpty();
    }

    @Test
    void everyTokenUsedExistsAndEveryTokenIsUsed() throws IOException {
        String tokens = Files.readString(TOKENS);
        String used = "";
        for (String file : List.of("boardside.css", "run.css")) {
            used += Files.readString(STATIC.resolve(file));
        }
        List<String> defined = names(tokens, "(?m)^\\s*--([a-z0-9-]+):");
        List<String> asked = names(used, "var\\(--([a-z0-9-]+)\\)");
        assertThat(asked).isNotEmpty().isSubsetOf(defined);
        assertThat(defined).isSubsetOf(asked);
    }

    private static List<String> names(String text, String pattern) {
        return Pattern.compile(pattern)
                .matcher(text)
                .results()
                .map(match -> match.group(1))
                .distinct()
                .toList();
    }
}
