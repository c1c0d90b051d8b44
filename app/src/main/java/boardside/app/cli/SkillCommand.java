package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.app.record.Skills;
import boardside.app.record.Spreads;
import boardside.app.record.Spreads.Spread;
import boardside.engine.skill.Dispersion;
import boardside.engine.skill.ForecastsAnswer;
import boardside.engine.skill.ForecastsAnswer.Forecasts;
import boardside.engine.skill.Interval;
import boardside.engine.skill.NarrowAnswer;
import boardside.engine.skill.NarrowAnswer.BeforeAndAfter;
import boardside.engine.skill.NarrowAnswer.Narrow;
import boardside.engine.skill.Skill;
import boardside.engine.skill.StakesAnswer;
import boardside.engine.skill.StakesAnswer.Stakes;
import boardside.engine.skill.SwingAnswer;
import boardside.engine.skill.SwingAnswer.Swing;
import boardside.engine.skill.TotalForecast;
import boardside.engine.skill.UsualAnswer;
import boardside.engine.skill.UsualAnswer.NoTotals;
import boardside.engine.skill.UsualAnswer.Unusual;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Further questions about a player's skill, each the same call as a page's. */
@Command(
        name = "skill",
        synopsisSubcommandLabel = "QUESTION",
        description = "What is usual for you, why totals swing, what stakes and the narrow board do, where bags go.")
final class SkillCommand extends Family {
    private final Context context;

    SkillCommand(Context context) {
        super("say which question");
        this.context = context;
    }

    /** The day asked about. */
    static final class Day {
        @Option(names = "--as-of", paramLabel = "DATE", description = "The day that is today, such as 2026-05-31.")
        private @Nullable LocalDate asOf;

        LocalDate of(Context context) {
            return Objects.requireNonNullElseGet(
                    asOf, () -> LocalDate.now(context.surroundings().clock()));
        }
    }

    private Skill skill(Day day) {
        return Skills.of(context.records(), context.player().id(), day.of(context));
    }

    private int no(String sentence) {
        context.surroundings().err().println(sentence);
        return Cli.NO;
    }

    private int answer(Map<String, Object> json, String sentence) {
        json.put("sentence", sentence);
        context.answer(json, sentence);
        return Cli.DONE;
    }

    @Command(name = "usual", description = "What totals are usual for you, and how unusual one was.")
    int usual(
            @Mixin Day day,
            @Option(names = "--rounds", paramLabel = "N", description = "Rounds of four; 10 unless said.") @Nullable
                    Integer rounds,
            @Option(names = "--total", paramLabel = "POINTS", description = "A total to hold against what is usual.")
                    @Nullable
                    Integer total) {
        int n = Objects.requireNonNullElse(rounds, 10);
        if (!(n >= 1 && n <= 1000)) {
            throw new Failure.BadInput("--rounds: a total is of 1 to 1000 rounds, not " + n);
        }
        if (total != null && !(total >= 0 && total <= 12 * n)) {
            throw new Failure.BadInput("--total: " + n + " rounds make 0 to " + 12 * n + " points, not " + total);
        }
        Skill skill = skill(day);
        UsualAnswer usual = skill.usual(n);
        if (usual instanceof NoTotals) {
            return no(usual.sentence());
        }
        TotalForecast forecast = skill.total(n).orElseThrow();
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("rounds", n);
        int low = forecast.quantile(0.05);
        int high = forecast.quantile(0.95);
        json.put("total", new Interval(Math.min(Math.max(forecast.mean(), low), high), low, high));
        if (total == null) {
            return answer(json, usual.sentence());
        }
        Unusual unusual = (Unusual) skill.unusual(total, n);
        json.put("points", total);
        json.put("atMost", unusual.atMost());
        json.put("atLeast", unusual.atLeast());
        return answer(json, unusual.sentence() + " " + usual.sentence());
    }

    @Command(name = "swing", description = "How much of the swing between totals is luck.")
    int swing(@Mixin Day day) {
        SwingAnswer answer = skill(day).swing();
        if (!(answer instanceof Swing swing)) {
            return no(answer.sentence());
        }
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("rounds", swing.rounds());
        json.put("standardDeviation", swing.deviation());
        json.put("luck", swing.luck());
        json.put("days", swing.days());
        json.put("change", swing.change());
        return answer(json, swing.sentence());
    }

    @Command(name = "stakes", description = "What league and tournament do to your points, against practice.")
    int stakes(@Mixin Day day) {
        StakesAnswer answer = skill(day).stakes();
        if (!(answer instanceof Stakes stakes)) {
            return no(answer.sentence());
        }
        Map<String, Object> json = new LinkedHashMap<>();
        json.put(
                "settings",
                stakes.settings().stream()
                        .map(stake -> {
                            Map<String, Object> one = new LinkedHashMap<>();
                            one.put("setting", stake.setting());
                            one.put("throws", stake.throwsCounted());
                            one.put("difference", stake.difference());
                            one.put("probabilityBetter", stake.probabilityBetter());
                            one.put("verdict", stake.verdict());
                            one.put("sentence", stake.sentence());
                            return one;
                        })
                        .toList());
        return answer(json, stakes.sentence());
    }

    @Command(name = "narrow", description = "What the narrow board costs you, and whether training on it has helped.")
    int narrow(@Mixin Day day) {
        NarrowAnswer answer = skill(day).narrow();
        if (!(answer instanceof Narrow narrow)) {
            return no(answer.sentence());
        }
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("throws", narrow.throwsCounted());
        json.put("cost", narrow.cost());
        json.put("probabilityCost", narrow.probabilityCost());
        json.put("verdict", narrow.verdict());
        Map<String, Object> training = new LinkedHashMap<>();
        if (narrow.training() instanceof BeforeAndAfter both) {
            training.put("from", both.from().toString());
            training.put("days", both.days());
            training.put("before", both.before());
            training.put("after", both.after());
            training.put("difference", both.difference());
            training.put("probabilityFaster", both.probabilityFaster());
            training.put("verdict", both.verdict());
        }
        training.put("sentence", narrow.training().sentence());
        json.put("training", training);
        return answer(json, narrow.sentence() + "\n" + narrow.training().sentence());
    }

    @Command(name = "forecasts", description = "How good forecasts of your past totals were.")
    int forecasts(@Mixin Day day) {
        ForecastsAnswer answer = skill(day).forecasts();
        if (!(answer instanceof Forecasts forecasts)) {
            return no(answer.sentence());
        }
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("totals", forecasts.scored().size());
        json.put("within", forecasts.within());
        json.put("rankedProbabilityScore", forecasts.score());
        json.put(
                "bins",
                forecasts.bins().stream()
                        .map(bin -> {
                            Map<String, Object> one = new LinkedHashMap<>();
                            one.put("stated", bin.stated());
                            one.put("happened", bin.happened());
                            one.put("statements", bin.statements());
                            return one;
                        })
                        .toList());
        return answer(json, forecasts.sentence());
    }

    @Command(name = "spread", description = "Where your bags go and how they scatter, from taps and misses; in inches.")
    int spread(@Mixin Day day) {
        List<Spread> spreads = Spreads.of(context.records(), context.player().id(), day.of(context));
        if (spreads.isEmpty()) {
            return no("Nothing was recorded of where bags go in the last " + Spreads.DAYS
                    + " days; note misses or tap where bags lie, and ask again.");
        }
        List<String> words = new ArrayList<>();
        List<Map<String, Object>> parts = new ArrayList<>();
        for (Spread spread : spreads) {
            String flight = spread.marks().flight().name().toLowerCase(Locale.ROOT);
            Map<String, Object> json = new LinkedHashMap<>();
            json.put("flight", flight);
            json.put("board", spread.board());
            json.put("bags", spread.marks().bags());
            json.put("taps", spread.marks().points().size());
            Map<String, Object> known = new LinkedHashMap<>();
            spread.marks().others().entrySet().stream()
                    .sorted(Map.Entry.comparingByKey())
                    .forEach(entry -> known.put(entry.getKey().name().toLowerCase(Locale.ROOT), entry.getValue()));
            json.put("untapped", known);
            String head = flight + "s, " + spread.board().word() + " board: "
                    + spread.marks().bags() + " bags, "
                    + spread.marks().points().size() + " of them tapped";
            words.add(spread.found()
                    .map(found -> head + "\n" + tell(json, found))
                    .orElse(head + "; from " + Dispersion.LEAST_POINTS + " taps on, the spread can be told"));
            parts.add(json);
        }
        context.answer(Map.of("parts", parts), String.join("\n", words));
        return Cli.DONE;
    }

    private static String tell(Map<String, Object> json, Dispersion found) {
        json.put("right", found.x());
        json.put("beyond", found.y());
        json.put("probabilityRight", found.probabilityRight());
        json.put("probabilityBeyond", found.probabilityLong());
        json.put("deviationAcross", found.spreadX());
        json.put("deviationAlong", found.spreadY());
        json.put("half", found.half());
        List<String> lines = new ArrayList<>(List.of(
                line("right of the hole", found.x()) + ", " + found.across().word(),
                line("beyond the hole", found.y()) + ", " + found.along().word(),
                line("deviation across", found.spreadX()),
                line("deviation along", found.spreadY())));
        found.hole().ifPresent(hole -> {
            json.put("hole", hole);
            lines.add(String.format(
                    Locale.ROOT,
                    "  in the hole        %.0f times in 100, most likely %.0f to %.0f",
                    100 * hole.estimate(),
                    100 * hole.low(),
                    100 * hole.high()));
        });
        return String.join("\n", lines);
    }

    private static String line(String what, Interval inches) {
        return String.format(
                Locale.ROOT,
                "  %-18s %.1f in, most likely %.1f to %.1f",
                what,
                inches.estimate(),
                inches.low(),
                inches.high());
    }
}
