package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.app.record.SlideText;
import boardside.app.record.Throws;
import boardside.engine.physics.Range;
import boardside.engine.physics.SpeedSheet;
import boardside.engine.physics.ThrowFit;
import boardside.engine.physics.ThrowFit.Parameter;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Face;
import boardside.engine.rules.Word;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** How far bags slide, where to land them, and what a few slides say of today's boards. */
@Command(
        name = "slide",
        description = "Say how far each bag slides and where to land it, and measure today's boards.",
        footerHeading = "%n",
        footer = {
            "A slide test: throw a few bags as always and give where each landed and where it stopped, inches right of the"
                    + " centre line and up from the front edge. It is answered and not kept.",
            "",
            "For example: boardside slide --bag Barley --test \"0,14>1,33 -2,11>-2,29 1,16>2,36\"",
            "",
            "Exit status: 0 done, 1 the answer is no or nothing was found, 2 wrong usage or bad input."
        })
final class SlideCommand implements Callable<Integer> {
    private final Context context;

    @Option(
            names = "--bag",
            paramLabel = "NAME",
            description = "The bag set tested; the one you throw most unless said.")
    private @Nullable String bag;

    @Option(names = "--face", paramLabel = "FACE", description = "The face tested: slow or fast.")
    private @Nullable String face;

    @Option(
            names = "--test",
            paramLabel = "SLIDES",
            description = "Slides of today, such as \"0,14>1,33 -2,11>-2,29\".")
    private @Nullable String test;

    @Option(
            names = "--conditions",
            paramLabel = "C",
            description = "How you would say the boards play today: slow, normal or fast.")
    private @Nullable String conditions;

    SlideCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        List<Throws.Slid> slides = slides();
        Conditions said = conditions == null ? null : word(Conditions.class, "--conditions", conditions);
        Throws all = Throws.of(
                context.records(),
                context.player().id(),
                LocalDate.now(context.surroundings().clock()));
        Throws.Group group = group(context, all, bag, face);
        if (group == null) {
            return Cli.NO;
        }
        List<SpeedSheet.Sheet> sheets = all.sheet();
        Map<String, Object> json = new LinkedHashMap<>();
        List<String> words = new ArrayList<>();
        if (!all.recorded()) {
            words.add("No counted throws in the last year: this is what is believed of any player.");
        }
        List<Map<String, Object>> bags = new ArrayList<>();
        for (int i = 0; i < sheets.size(); i++) {
            Map<String, Object> one = named(all.groups().get(i));
            one.putAll(json(sheets.get(i).usual()));
            one.put("slower", json(sheets.get(i).slower()));
            one.put("faster", json(sheets.get(i).faster()));
            bags.add(one);
            words.add(words(all.groups().get(i), sheets.get(i)));
        }
        json.put("usual", named(all.usual()));
        json.put("bags", bags);
        if (!slides.isEmpty()) {
            ThrowFit.Day day = Throws.test(group, said, slides);
            json.put("today", today(day));
            words.add(words(day));
        }
        context.answer(json, String.join("\n", words));
        return Cli.DONE;
    }

    private List<Throws.Slid> slides() {
        List<String> faults = new ArrayList<>();
        List<Throws.Slid> slides = SlideText.read(test == null ? "" : test, faults);
        if (!faults.isEmpty()) {
            throw new Failure.BadInput(
                    faults.stream().map(fault -> "--test: " + fault).toList());
        }
        return slides;
    }

    private static <W extends Enum<W> & Word> W word(Class<W> kind, String option, String text) {
        try {
            return Word.of(kind, text);
        } catch (IllegalArgumentException e) {
            throw new Failure.BadInput(option + ": " + e.getMessage());
        }
    }

    /** The bag asked for; null, having said so, where it is none. */
    static Throws.@Nullable Group group(Context context, Throws all, @Nullable String bag, @Nullable String face) {
        Face side = face == null ? null : word(Face.class, "--face", face);
        if (bag == null && side == null) {
            return all.usual();
        }
        Throws.Group found =
                all.find(bag == null ? all.usual().name() : bag, side).orElse(null);
        if (found == null) {
            context.surroundings()
                    .err()
                    .println("No throws of " + (bag == null ? "that face" : "\"" + bag + "\"")
                            + " in the last year, and no speed of it is known; there are: "
                            + String.join(
                                    ", ",
                                    all.groups().stream()
                                            .map(SlideCommand::name)
                                            .toList())
                            + ".");
        }
        return found;
    }

    static String name(Throws.Group group) {
        String name = group.name().isEmpty() ? "Bags without a name" : group.name();
        Face side = group.key().face();
        return side == null ? name : name + ", " + side.word() + " face";
    }

    static Map<String, Object> named(Throws.Group group) {
        Map<String, Object> json = new LinkedHashMap<>();
        Face side = group.key().face();
        json.put("bag", group.name());
        json.put("face", side == null ? "" : side.word());
        return json;
    }

    /** A parameter's key in JSON: SPREAD_X is spreadX. */
    static String key(Parameter parameter) {
        StringBuilder key = new StringBuilder();
        for (String part : parameter.name().toLowerCase(Locale.ROOT).split("_")) {
            key.append(key.isEmpty() ? part : part.substring(0, 1).toUpperCase(Locale.ROOT) + part.substring(1));
        }
        return key.toString();
    }

    private static Map<String, Object> json(SpeedSheet.Row row) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("slide", row.slide());
        json.put("landing", row.landing());
        json.put("friction", row.friction());
        json.put("harder", row.harder());
        return json;
    }

    private static Map<String, Object> today(ThrowFit.Day day) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("slides", day.slides());
        json.put("slide", day.slide());
        json.put("friction", day.friction());
        json.put("againstUsual", day.factor());
        json.put("probabilitySlower", day.probabilitySlower());
        return json;
    }

    private static String words(Throws.Group group, SpeedSheet.Sheet sheet) {
        Range slide = sheet.usual().slide();
        Range landing = sheet.usual().landing();
        return String.format(
                Locale.ROOT,
                "%s: slides %.0f in (%.0f to %.0f); land it %.0f in up (%.0f to %.0f). Slower boards %.0f in, faster %.0f.%s",
                name(group),
                slide.estimate(),
                slide.low(),
                slide.high(),
                landing.estimate(),
                landing.low(),
                landing.high(),
                sheet.slower().slide().estimate(),
                sheet.faster().slide().estimate(),
                harder(sheet.usual().harder()));
    }

    private static String harder(Range harder) {
        double percent = 100 * harder.estimate();
        return Math.abs(percent) < 0.05
                ? ""
                : String.format(
                        Locale.ROOT,
                        " Throw it %.1f %% %s than your usual bag (%.1f to %.1f).",
                        Math.abs(percent),
                        percent > 0 ? "harder" : "softer",
                        100 * harder.low(),
                        100 * harder.high());
    }

    private static String words(ThrowFit.Day day) {
        return String.format(
                Locale.ROOT,
                "Today, from %d slides: %.0f in (%.0f to %.0f), friction %.2f (%.2f to %.2f); slower than your usual boards"
                        + " with a chance of %.0f %%.",
                day.slides(),
                day.slide().estimate(),
                day.slide().low(),
                day.slide().high(),
                day.friction().estimate(),
                day.friction().low(),
                day.friction().high(),
                100 * day.probabilitySlower());
    }
}
