package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.app.record.Skills;
import boardside.engine.skill.FormAnswer;
import boardside.engine.skill.FormAnswer.Form;
import boardside.engine.skill.FormAnswer.Trend;
import boardside.engine.skill.Interval;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** How a player throws today. */
@Command(name = "form", description = "Say how you throw today, and whether that has changed.")
final class FormCommand implements Callable<Integer> {
    private static final int MOST_DAYS = 36_500;

    private final Context context;

    @Option(names = "--as-of", paramLabel = "DATE", description = "The day that is today, such as 2026-05-31.")
    private @Nullable LocalDate asOf;

    @Option(names = "--days", paramLabel = "N", description = "Days the trend is over; 30 unless said.")
    private int days = 30;

    FormCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        if (!(days >= 1 && days <= MOST_DAYS)) {
            throw new Failure.BadInput("--days: a trend is over 1 to " + MOST_DAYS + " days, not " + days);
        }
        LocalDate today = Objects.requireNonNullElseGet(
                asOf, () -> LocalDate.now(context.surroundings().clock()));
        FormAnswer answer =
                Skills.of(context.records(), context.player().id(), today).form(days);
        if (!(answer instanceof Form form)) {
            context.surroundings().err().println(answer.sentence());
            return Cli.NO;
        }
        context.answer(json(form), words(form));
        return Cli.DONE;
    }

    private static Map<String, Object> json(Form form) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("throws", form.throwsCounted());
        json.put("rounds", form.rounds());
        json.put("inHole", form.inHole());
        json.put("onBoard", form.onBoard());
        json.put("offBoard", form.offBoard());
        json.put("pointsPerRound", form.pointsPerRound());
        json.put("fourBaggers", form.fourBaggers());
        json.put("level", form.level());
        json.put("trend", json(form.trend()));
        json.put("from", form.from().toString());
        json.put("sentence", form.sentence());
        return json;
    }

    private static Map<String, Object> json(Trend trend) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("days", trend.days());
        json.put("change", trend.change());
        json.put("probabilityBetter", trend.probabilityBetter());
        json.put("verdict", trend.verdict().word());
        return json;
    }

    private static String words(Form form) {
        return String.join(
                "\n",
                form.sentence(),
                "",
                line("points a round", form.pointsPerRound(), 1, ""),
                line("in the hole", form.inHole(), 100, " %"),
                line("on the board", form.onBoard(), 100, " %"),
                line("off", form.offBoard(), 100, " %"),
                line("four-baggers", form.fourBaggers(), 100, " % of rounds"),
                line("level", form.level(), 1, " (the ghost you would beat half the time)"));
    }

    /** A number with its 90 % range. */
    static String line(String what, Interval interval, double scale, String unit) {
        return String.format(
                Locale.ROOT,
                "%-15s %5.1f%s, most likely %.1f to %.1f",
                what,
                scale * interval.estimate(),
                unit,
                scale * interval.low(),
                scale * interval.high());
    }
}
