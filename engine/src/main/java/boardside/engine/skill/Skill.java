package boardside.engine.skill;

import boardside.engine.odds.RoundDistribution;
import boardside.engine.rules.Finish;
import boardside.engine.rules.Tally;
import boardside.engine.skill.ComparisonAnswer.NothingToCompare;
import boardside.engine.skill.FormAnswer.NoRecords;
import boardside.engine.skill.Shares.Measure;
import boardside.engine.skill.UsualAnswer.NoTotals;
import boardside.engine.skill.UsualAnswer.Unusual;
import boardside.engine.skill.UsualAnswer.Usual;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * What a player's records say on a day. Every answer is the same each time it is asked; the object does not change, and
 * may be shared between threads.
 *
 * <p>Form speaks of today's skill at the mix of bags, faces and approaches of the last {@value #RECENT_DAYS} days, or of
 * all records where those hold none, on a regulation board (unless there are only narrow ones), in practice, in normal
 * conditions, drills at their usual mix, averaged over good and bad days. Comparisons take all records, adjusted to
 * today's skill and to the same mix of everything else. The model stands in the package's description.
 */
public final class Skill {
    /** Days that speak for today. */
    public static final int RECENT_DAYS = 90;

    /** The most {@link ComparisonAnswer.Group#roundsToSettle()} says. */
    public static final long MOST_ROUNDS = 10_000;

    private final LocalDate asOf;
    /** As given, those that count. */
    private final List<RunCount> counts;

    private final @Nullable Fit fit;
    private @Nullable Draws draws;

    private Skill(List<RunCount> counts, LocalDate asOf, @Nullable Fit fit) {
        this.counts = counts;
        this.asOf = asOf;
        this.fit = fit;
    }

    /**
     * From records alone.
     *
     * @param counts in any order; not modified; days after {@code asOf} are left out
     * @param asOf the day that is today, included
     */
    public static Skill of(List<RunCount> counts, LocalDate asOf) {
        return of(counts, asOf, Optional.empty());
    }

    /**
     * From records and what was learned before of how much the player varies: kept as it is where the records have grown
     * by no more than a quarter since, else learned anew from there.
     *
     * @param counts in any order; not modified; days after {@code asOf} are left out
     * @param asOf the day that is today, included
     * @param start as {@link #learned()} gave it
     */
    public static Skill of(List<RunCount> counts, LocalDate asOf, Learned start) {
        return of(counts, asOf, Optional.of(start));
    }

    private static Skill of(List<RunCount> counts, LocalDate asOf, Optional<Learned> start) {
        List<RunCount> used = used(counts, asOf);
        return new Skill(used, asOf, used.isEmpty() ? null : Fit.of(new Log(used), start.orElse(null)));
    }

    private static List<RunCount> used(List<RunCount> counts, LocalDate asOf) {
        return counts.stream()
                .filter(count -> !count.day().isAfter(asOf) && count.thrown() > 0)
                .toList();
    }

    /** The same player after more runs, with what was learned before; the modes move on from where they were. */
    public Skill with(List<RunCount> more) {
        List<RunCount> all = new ArrayList<>(counts);
        all.addAll(used(more, asOf));
        return again(all);
    }

    /** The same records without one run, to hold that run against. */
    public Skill without(String run) {
        return again(counts.stream().filter(count -> !count.run().equals(run)).toList());
    }

    private Skill again(List<RunCount> changed) {
        if (changed.isEmpty()) {
            return new Skill(List.of(), asOf, null);
        }
        return fit == null ? of(changed, asOf) : new Skill(List.copyOf(changed), asOf, fit.with(new Log(changed)));
    }

    /** What to keep for a later {@link #of(List, LocalDate, Learned)}; empty without records. */
    public Optional<Learned> learned() {
        return Optional.ofNullable(fit).map(Fit::learned);
    }

    /**
     * Points per round of four that one day's bags alone speak for, bags being independent.
     *
     * @param bags all bags of a run or a day
     */
    public static Interval pointsPerRound(Tally bags) {
        return Shares.of(Counts.of(bags)).interval(Measure.POINTS);
    }

    private synchronized Draws draws(Fit fit) {
        if (draws == null) {
            draws = new Draws(fit, asOf);
        }
        return draws;
    }

    /**
     * Today's skill, and how it changed.
     *
     * @param trendDays the change is that since so many days ago; 1 or more
     * @throws IllegalArgumentException if the days are not 1 or more
     */
    public FormAnswer form(int trendDays) {
        if (!(trendDays >= 1)) {
            throw new IllegalArgumentException("a trend is over 1 day or more, not " + trendDays);
        }
        return fit == null
                ? new NoRecords(Sentences.noRecords(asOf))
                : draws(fit).today().form(trendDays);
    }

    /**
     * Ways to throw, side by side.
     *
     * @param by what tells them apart, at least one, each once
     * @throws IllegalArgumentException if there is none, or one is given twice
     */
    public ComparisonAnswer compare(List<Trait> by) {
        if (by.isEmpty() || by.stream().distinct().count() < by.size()) {
            throw new IllegalArgumentException("compare by at least one thing, and by each only once, not by " + by);
        }
        return fit == null ? new NothingToCompare(Sentences.noRecords(asOf)) : Comparing.answer(draws(fit), by);
    }

    /**
     * One way to throw against another, as {@link #compare} sets them side by side.
     *
     * @param by what tells them apart
     * @param first a word per trait, in that order
     * @param second likewise
     * @return empty where the records hold no such word
     */
    public Optional<Difference> difference(List<Trait> by, List<String> first, List<String> second) {
        if (!(by.size() == first.size() && by.size() == second.size())) {
            throw new IllegalArgumentException("a word for each of " + by + ", not " + first + " and " + second);
        }
        return fit == null ? Optional.empty() : Comparing.difference(draws(fit), by, first, second);
    }

    /** What the stakes do: league and tournament against practice. */
    public StakesAnswer stakes() {
        return fit == null ? new StakesAnswer.NothingAtStake(Sentences.noStakes()) : Questions.stakes(draws(fit));
    }

    /** What the narrow board costs, and whether training on it has helped. */
    public NarrowAnswer narrow() {
        return fit == null ? new NarrowAnswer.OneBoard(Sentences.oneBoard()) : Questions.narrow(draws(fit));
    }

    /** Why totals differ: luck, good and bad days, change of skill. */
    public SwingAnswer swing() {
        return fit == null
                ? new SwingAnswer.TooFewRuns(Sentences.fewRuns(Questions.FEWEST_RUNS))
                : Questions.swing(draws(fit));
    }

    /**
     * What is usual for a total of so many rounds.
     *
     * @param rounds rounds of four, 1..1000
     */
    public UsualAnswer usual(int rounds) {
        return total(rounds)
                .<UsualAnswer>map(forecast -> {
                    int low = forecast.quantile(Interval.TAIL);
                    int high = forecast.quantile(1 - Interval.TAIL);
                    return new Usual(forecast, low, high, Sentences.usual(rounds, low, high));
                })
                .orElseGet(() -> new NoTotals(Sentences.noTotals()));
    }

    /**
     * How unusual a total was. Ask it of the records {@link #without(String)} the total's own run.
     *
     * @param total points, 0 to 12 times the rounds
     * @param rounds rounds of four, 1..1000
     */
    public UsualAnswer unusual(int total, int rounds) {
        if (!(total >= 0 && total <= 12L * rounds)) {
            throw new IllegalArgumentException(
                    "a total of " + rounds + " rounds is 0 to " + 12L * rounds + ", not " + total);
        }
        return total(rounds)
                .<UsualAnswer>map(forecast -> {
                    double atMost = forecast.atMost(total);
                    double atLeast = forecast.atLeast(total);
                    return new Unusual(
                            forecast, total, atMost, atLeast, Sentences.unusual(total, rounds, atMost, atLeast));
                })
                .orElseGet(() -> new NoTotals(Sentences.noTotals()));
    }

    /**
     * How good forecasts of past ten-round totals were, each made from the days before it. Takes a second for ten years
     * of daily practice; not for a request.
     */
    public ForecastsAnswer forecasts() {
        return fit == null
                ? new ForecastsAnswer.NothingForecast(Sentences.nothingForecast(Forecasting.FEWEST))
                : Forecasting.answer(fit);
    }

    /** How many points {@link #history(int, LocalDate)} would have; costs next to nothing. */
    public int stretches(int daysEach, LocalDate from) {
        return parts(daysEach, from).size();
    }

    /** All of {@link #history(int, LocalDate)}. */
    public List<DayForm> history(int daysEach) {
        return history(daysEach, LocalDate.MIN);
    }

    /**
     * Points per round over time as they were thrown, oldest first; days (or stretches) without such counts are absent.
     *
     * @param daysEach how many days make one point, 1 or more, counted back from today
     * @param from stretches that end before this day are left out
     */
    public List<DayForm> history(int daysEach, LocalDate from) {
        Map<Long, List<RunCount>> parts = parts(daysEach, from);
        List<DayForm> history = new ArrayList<>();
        parts.forEach((part, inside) -> {
            Counts all = Counts.of(inside);
            LocalDate to = asOf.minusDays(part * daysEach);
            // The days together say no more than independent bags would; good and bad days show between the points.
            history.add(new DayForm(
                    to.minusDays(daysEach - 1L), to, all.known(), Shares.of(all).interval(Measure.POINTS)));
        });
        return history;
    }

    /** Counts by stretch, the earliest first; the number of a stretch counts back from today, which lies in 0. */
    private Map<Long, List<RunCount>> parts(int daysEach, LocalDate from) {
        Map<Long, List<RunCount>> parts = new TreeMap<>(Comparator.reverseOrder());
        for (RunCount count : counts) {
            if (count.known().thrown() > 0) {
                long part = (asOf.toEpochDay() - count.day().toEpochDay()) / daysEach;
                if (!asOf.minusDays(part * daysEach).isBefore(from)) {
                    parts.computeIfAbsent(part, k -> new ArrayList<>()).add(count);
                }
            }
        }
        return parts;
    }

    /**
     * Skill over time as a band for a picture: points per round on each date at the mix that form speaks of, good and bad
     * days averaged. Dates before the first records are absent.
     *
     * @param dates in any order
     */
    public Map<LocalDate, Interval> band(List<LocalDate> dates) {
        return fit == null ? Map.of() : Band.of(fit, draws(fit).today().mix(), dates);
    }

    /** Months with full rounds of four, the latest first. */
    public List<YearMonth> months() {
        return counts.stream()
                .filter(count -> count.finishes().stream().anyMatch(rounds -> rounds > 0))
                .map(count -> YearMonth.from(count.day()))
                .distinct()
                .sorted(Comparator.reverseOrder())
                .toList();
    }

    /** Rounds as they were thrown in a month, as an opponent: one's own past. Empty where no full round was thrown. */
    public Optional<RoundDistribution> rounds(YearMonth month) {
        double[] finishes = new double[Finish.values().size()];
        for (RunCount count : counts) {
            if (YearMonth.from(count.day()).equals(month)) {
                for (int i = 0; i < finishes.length; i++) {
                    finishes[i] += count.finishes().get(i);
                }
            }
        }
        return Arrays.stream(finishes).sum() == 0
                ? Optional.empty()
                : Optional.of(RoundDistribution.ofFinishes(finishes));
    }

    /** One bag's chances today, to put to {@code boardside.engine.odds}; empty without records that count points. */
    public Optional<ChanceRange> chances() {
        return counted().map(Today::chances);
    }

    /**
     * Skill on a day to come, by drift alone; empty without records that count points.
     *
     * @param on that day; one before today is taken for today
     */
    public Optional<Outlook> outlook(LocalDate on) {
        return counted().map(today -> Outlook.of(draws(Objects.requireNonNull(fit)), on));
    }

    /**
     * What a total of so many rounds would probably be today; empty without records that count points.
     *
     * @param rounds rounds of four, 1..1000
     */
    public Optional<TotalForecast> total(int rounds) {
        return counted().map(today -> today.total(rounds));
    }

    private Optional<Today> counted() {
        return fit == null || counts.stream().allMatch(count -> count.known().thrown() == 0)
                ? Optional.empty()
                : Optional.of(draws(fit).today());
    }
}
