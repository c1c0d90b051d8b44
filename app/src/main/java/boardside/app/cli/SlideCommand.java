package boardside.app.cli;

import boardside.app.practice.Change;
import boardside.app.practice.Failure;
import boardside.app.practice.Operation;
import boardside.app.practice.SlideTest;
import boardside.app.record.SlideText;
import boardside.app.record.Throws;
import boardside.engine.physics.Range;
import boardside.engine.physics.SpeedSheet;
import boardside.engine.physics.ThrowFit;
import boardside.engine.physics.ThrowFit.Parameter;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Face;
import boardside.engine.rules.Word;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
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
                    + " centre line and up from the front edge; >in or >off for one that slid into the hole or off. With"
                    + " --keep it is recorded, and sharpens all answers about that bag.",
            "",
            "For example: boardside slide --bag Barley --test \"0,14>1,33 -2,11>-2,29 1,20>in\" --keep",
            "Tests that were kept: boardside slide --tests; one is deleted, or brought back, by its id.",
            "",
            "Exit status: 0 done, 1 the answer is no or nothing was found, 2 wrong usage or bad input."
        })
final class SlideCommand implements Callable<Integer> {
    private static final int MOST = 1000;

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

    @Option(names = "--board", paramLabel = "BOARD", description = "regulation (unless said) or narrow, 12 in wide.")
    private String board = BoardKind.REGULATION.word();

    @Option(names = "--keep", description = "Record the test.")
    private boolean keep;

    @Option(names = "--tests", description = "List the tests that were kept, the latest first.")
    private boolean tests;

    @Option(names = "--delete", paramLabel = "ID", description = "Delete a test that was kept.")
    private @Nullable String delete;

    @Option(names = "--restore", paramLabel = "ID", description = "Bring back a test that was deleted.")
    private @Nullable String restore;

    SlideCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        if (delete != null) {
            return delete(delete);
        }
        if (restore != null) {
            return restore(restore);
        }
        if (tests) {
            return list();
        }
        List<SlideTest.Slid> slides = slides();
        Conditions said = conditions == null ? null : word(Conditions.class, "--conditions", conditions);
        BoardKind kind = word(BoardKind.class, "--board", board);
        if (keep && slides.isEmpty()) {
            throw new Failure.BadInput("--keep: there is no test to keep; give its slides with --test");
        }
        int player = (keep ? context.writingPlayer() : context.player()).id();
        Throws all = throwing(player);
        Throws.Group group = group(context, all, bag, face);
        if (group == null) {
            return Cli.NO;
        }
        SlideTest.Tapped tapped = null;
        if (!slides.isEmpty()) {
            tapped = new SlideTest.Tapped(now(), group.key().bag(), group.key().face(), kind, said, slides);
            check(tapped);
        }
        String kept = "";
        if (tapped != null && keep) {
            kept = context.records().ids().next();
            context.records()
                    .applyAll(
                            player,
                            List.of(new Operation.KeepSlideTest(
                                    context.records().ids().next(), kept, tapped)),
                            context.surroundings().clock().instant());
            all = throwing(player);
            group = all.find(group.key()).orElseThrow();
        }
        Map<String, Object> json = new LinkedHashMap<>();
        List<String> words = new ArrayList<>();
        if (!all.recorded()) {
            words.add("No counted throws in the last year: this is what is believed of any player.");
        }
        Optional<ThrowFit.Day> measured = all.today();
        List<Map<String, Object>> bags = new ArrayList<>();
        for (Throws.Group one : all.groups()) {
            SpeedSheet.Sheet sheet = one.sheet();
            Map<String, Object> row = named(one);
            row.putAll(json(sheet.usual()));
            row.put("slower", json(sheet.slower()));
            row.put("faster", json(sheet.faster()));
            measured.ifPresent(day -> row.put("today", json(one.today(day.factor()))));
            bags.add(row);
            words.add(words(one, sheet));
            measured.ifPresent(day -> words.add(today(one.today(day.factor()))));
        }
        json.put("usual", named(all.usual()));
        json.put("bags", bags);
        if (tapped != null) {
            ThrowFit.Day day =
                    kept.isEmpty() ? group.test(tapped) : group.day(tapped).orElseThrow();
            Map<String, Object> today = today(day);
            if (!kept.isEmpty()) {
                today.put("id", kept);
            }
            json.put("today", today);
            words.add(words(day));
            if (!kept.isEmpty()) {
                words.add("Kept as " + kept + ".");
            }
        }
        context.answer(json, String.join("\n", words));
        return Cli.DONE;
    }

    private Throws throwing(int player) {
        return Throws.of(
                context.records(), player, LocalDate.now(context.surroundings().clock()));
    }

    private String now() {
        return OffsetDateTime.now(context.surroundings().clock())
                .truncatedTo(ChronoUnit.SECONDS)
                .format(DateTimeFormatter.ISO_OFFSET_DATE_TIME);
    }

    private void check(SlideTest.Tapped tapped) {
        List<String> faults =
                context.records().slideTests().faults(context.player().id(), tapped);
        if (!faults.isEmpty()) {
            throw new Failure.BadInput(
                    faults.stream().map(fault -> "--test: " + fault).toList());
        }
    }

    private int list() {
        int player = context.player().id();
        Map<String, String> bags = new LinkedHashMap<>();
        context.records().bags(player).forEach(bagSet -> bags.put(bagSet.id(), bagSet.name()));
        List<Map<String, Object>> json = new ArrayList<>();
        List<String> words = new ArrayList<>();
        for (SlideTest test : context.records().slideTests().latest(player, MOST)) {
            SlideTest.Tapped tapped = test.tapped();
            if (tapped != null) {
                Map<String, Object> one = new LinkedHashMap<>();
                one.put("id", test.id());
                one.put("at", tapped.at());
                one.put("bag", bags.getOrDefault(tapped.bag(), ""));
                one.put("face", word(tapped.face()));
                one.put("board", tapped.board().word());
                one.put("conditions", word(tapped.conditions()));
                one.put("slides", SlideText.of(tapped.slides()));
                json.add(one);
                words.add(test.id() + "  " + tapped.at() + "  " + one.get("bag") + " " + one.get("face") + "  "
                        + one.get("slides"));
            }
        }
        context.answer(
                Map.of("tests", json),
                words.isEmpty() ? "No slide tests yet; record one with --test and --keep." : String.join("\n", words));
        return json.isEmpty() ? Cli.NO : Cli.DONE;
    }

    private static String word(@Nullable Word word) {
        return word == null ? "" : word.word();
    }

    private int delete(String id) {
        SlideTest test = found(id);
        if (test.tapped() == null) {
            throw new Failure.NotFound("slide test " + id + " is deleted already");
        }
        context.records()
                .applyAll(
                        context.player().id(),
                        List.of(new Operation.KeepSlideTest(
                                context.records().ids().nextAfter(test.op()), id, null)),
                        context.surroundings().clock().instant());
        context.say("Deleted; bring it back with --restore " + id);
        return Cli.DONE;
    }

    private int restore(String id) {
        if (found(id).tapped() != null) {
            throw new Failure.NotFound("slide test " + id + " is not deleted");
        }
        int player = context.player().id();
        Change last = context.records().changes(player, id).get(0);
        context.records().undo(player, last.id(), context.surroundings().clock().instant());
        context.say("Brought back");
        return Cli.DONE;
    }

    private SlideTest found(String id) {
        return context.records()
                .slideTests()
                .find(context.player().id(), id)
                .orElseThrow(
                        () -> new Failure.NotFound("there is no slide test " + id + "; --tests lists those there are"));
    }

    private List<SlideTest.Slid> slides() {
        List<String> faults = new ArrayList<>();
        List<SlideTest.Slid> slides = SlideText.read(test == null ? "" : test, faults);
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

    private static String today(SpeedSheet.Row row) {
        return String.format(
                        Locale.ROOT,
                        "  Today, by the slide tests: %.0f in (%.0f to %.0f); land it %.0f in up (%.0f to %.0f).",
                        row.slide().estimate(),
                        row.slide().low(),
                        row.slide().high(),
                        row.landing().estimate(),
                        row.landing().low(),
                        row.landing().high())
                + harder(row.harder());
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
