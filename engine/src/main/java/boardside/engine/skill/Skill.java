package boardside.engine.skill;

import boardside.engine.odds.RoundDistribution;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Finish;
import boardside.engine.rules.Tally;
import boardside.engine.skill.ComparisonAnswer.Comparison;
import boardside.engine.skill.ComparisonAnswer.Group;
import boardside.engine.skill.ComparisonAnswer.NothingToCompare;
import boardside.engine.skill.FormAnswer.Form;
import boardside.engine.skill.FormAnswer.NoRecords;
import boardside.engine.skill.FormAnswer.Trend;
import boardside.engine.skill.Shares.Measure;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;

/**
 * What a player's records say on a day. Immutable; every answer is the same each time it is asked.
 *
 * <p>Form speaks of the last {@value #RECENT_DAYS} days, or of all records where those hold none, at the mix of bags,
 * faces, approaches and drills found there, at regulation boards unless there are only narrow ones. Comparisons take all
 * records as they were thrown, adjusted for nothing. Verdicts are always {@link Verdict#OPEN}: this model does not know
 * enough to call anything settled.
 */
public final class Skill {
    /** Days that speak for today. */
    public static final int RECENT_DAYS = 90;

    /** The most {@link Group#roundsToSettle()} says. */
    public static final long MOST_ROUNDS = 10_000;

    private final LocalDate asOf;
    private final List<RunCount> counts;

    private Skill(List<RunCount> counts, LocalDate asOf) {
        this.counts = counts;
        this.asOf = asOf;
    }

    /**
     * From records.
     *
     * @param counts in any order; not modified; days after {@code asOf} are left out
     * @param asOf the day that is today, included
     */
    public static Skill of(List<RunCount> counts, LocalDate asOf) {
        return new Skill(
                counts.stream()
                        .filter(count -> !count.day().isAfter(asOf) && count.thrown() > 0)
                        .toList(),
                asOf);
    }

    /** The same records without one run, to hold that run against. */
    public Skill without(String run) {
        return new Skill(
                counts.stream().filter(count -> !count.run().equals(run)).toList(), asOf);
    }

    /**
     * Points per round of four that one day's bags alone speak for, bags being independent.
     *
     * @param bags all bags of a run or a day
     */
    public static Interval pointsPerRound(Tally bags) {
        return Shares.of(Counts.of(bags), 1).interval(Measure.POINTS);
    }

    /**
     * Today's skill, and how it changed.
     *
     * @param trendDays the change is that of the last so many days against as many before; 1 or more
     * @throws IllegalArgumentException if the days are not 1 or more
     */
    public FormAnswer form(int trendDays) {
        if (!(trendDays >= 1)) {
            throw new IllegalArgumentException("a trend is over 1 day or more, not " + trendDays);
        }
        if (counts.isEmpty()) {
            return new NoRecords(Sentences.noRecords(asOf));
        }
        List<RunCount> used = speakingForToday();
        List<Counts> days = DayToDay.byDay(used);
        Counts all = Counts.of(used);
        Belief belief = new Belief(days);
        LocalDate from =
                used.stream().map(RunCount::day).min(Comparator.naturalOrder()).orElseThrow();
        boolean recent = within(RECENT_DAYS, asOf).test(used.get(0));
        Interval points = belief.interval(Measure.POINTS);
        Trend trend = trend(trendDays);
        return new Form(
                all.thrown(),
                used.stream().mapToLong(RunCount::rounds).sum(),
                from,
                recent,
                belief.interval(Measure.IN),
                belief.interval(Measure.ON),
                belief.interval(Measure.OFF),
                points,
                belief.fourBaggers(),
                belief.level(),
                trend,
                Sentences.form(points, all.thrown(), from, recent) + " " + Sentences.trend(trend, compared(trendDays)));
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
        if (counts.isEmpty()) {
            return new NothingToCompare(Sentences.noRecords(asOf));
        }
        Map<List<String>, List<RunCount>> groups = new TreeMap<>(Comparator.comparing(List::toString));
        long leftOut = 0;
        for (RunCount count : counts) {
            List<String> key = by.stream().map(trait -> trait.of(count)).toList();
            if (key.contains("")) {
                leftOut += count.thrown();
            } else {
                groups.computeIfAbsent(key, k -> new ArrayList<>()).add(count);
            }
        }
        if (groups.isEmpty()) {
            return new NothingToCompare(Sentences.unsaid(by, leftOut));
        }
        List<Group> ranked = rank(groups);
        return new Comparison(by, ranked, leftOut, Verdict.OPEN, Sentences.comparison(by, ranked, leftOut));
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
     * Points per round over time, oldest first; days (or stretches) without such counts are absent.
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
                    to.minusDays(daysEach - 1L),
                    to,
                    all.known(),
                    Shares.of(all, 1).interval(Measure.POINTS)));
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
     * Skill over time as a band for a picture: points per round over the {@code window} days up to each date, good and
     * bad days allowed for. Dates whose window holds no such counts are absent.
     *
     * @param dates in any order
     * @param window days, 1 or more
     */
    public Map<LocalDate, Interval> band(List<LocalDate> dates, int window) {
        Map<LocalDate, Interval> band = new LinkedHashMap<>();
        for (LocalDate date : dates) {
            List<RunCount> inside = counts.stream()
                    .filter(count ->
                            within(window, date).test(count) && count.known().thrown() > 0)
                    .toList();
            if (!inside.isEmpty()) {
                band.put(date, new Belief(DayToDay.byDay(inside)).interval(Measure.POINTS));
            }
        }
        return band;
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
        return counted().map(Belief::chances);
    }

    /**
     * What a total of so many rounds would probably be today; empty without records that count points.
     *
     * @param rounds rounds of four, 1..1000
     */
    public Optional<TotalForecast> total(int rounds) {
        return counted().map(belief -> belief.total(rounds));
    }

    /** What today's days say, where at least one of them counted points. */
    private Optional<Belief> counted() {
        if (counts.isEmpty()) {
            return Optional.empty();
        }
        List<Counts> days = DayToDay.byDay(speakingForToday());
        return days.stream().allMatch(day -> day.known() == 0) ? Optional.empty() : Optional.of(new Belief(days));
    }

    private List<RunCount> speakingForToday() {
        List<RunCount> recent =
                counts.stream().filter(within(RECENT_DAYS, asOf)).toList();
        List<RunCount> used = recent.isEmpty() ? counts : recent;
        List<RunCount> regulation = used.stream()
                .filter(count -> count.board() == BoardKind.REGULATION)
                .toList();
        return regulation.isEmpty() ? used : regulation;
    }

    private static Predicate<RunCount> within(int days, LocalDate to) {
        return count -> !count.day().isAfter(to) && count.day().isAfter(to.minusDays(days));
    }

    /** The days now and the days before, at the boards that speak for today; days with points counted only. */
    private List<List<Counts>> compared(int trendDays) {
        BoardKind board = speakingForToday().get(0).board();
        List<RunCount> counted = counts.stream()
                .filter(count -> count.board() == board && count.known().thrown() > 0)
                .toList();
        LocalDate then = asOf.minusDays(trendDays);
        return List.of(
                DayToDay.byDay(counted.stream().filter(within(trendDays, asOf)).toList()),
                DayToDay.byDay(counted.stream().filter(within(trendDays, then)).toList()));
    }

    private Trend trend(int trendDays) {
        List<List<Counts>> windows = compared(trendDays);
        if (windows.stream().anyMatch(List::isEmpty)) {
            // Nothing to compare with: any change that a player might make is as likely up as down.
            return new Trend(trendDays, new Interval(0, -UNKNOWN_CHANGE, UNKNOWN_CHANGE), 0.5, Verdict.OPEN);
        }
        DayToDay spread = DayToDay.of(windows, DayToDay.Score.POINTS);
        Contest contest = new Contest(windows.stream()
                .map(days -> new Belief(days, spread).shares(Measure.POINTS).law(Measure.POINTS))
                .toList());
        return new Trend(trendDays, contest.difference(), contest.best(0), Verdict.OPEN);
    }

    /** How far a player's points per round may well have moved when nothing is recorded (common practice, no source). */
    private static final double UNKNOWN_CHANGE = 3;

    private static List<Group> rank(Map<List<String>, List<RunCount>> groups) {
        List<List<String>> keys = List.copyOf(groups.keySet());
        List<List<Counts>> days = groups.values().stream().map(DayToDay::byDay).toList();
        List<Long> thrown =
                groups.values().stream().map(group -> Counts.of(group).thrown()).toList();
        DayToDay spread = DayToDay.of(days, DayToDay.Score.POINTS);
        List<Belief> beliefs =
                days.stream().map(each -> new Belief(each, spread)).toList();
        List<Law> laws = beliefs.stream()
                .map(belief -> belief.shares(Measure.POINTS).law(Measure.POINTS))
                .toList();
        Contest contest = new Contest(laws);
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < keys.size(); i++) {
            order.add(i);
        }
        order.sort(Comparator.comparingDouble((Integer i) -> -laws.get(i).mean()));
        List<Group> ranked = new ArrayList<>();
        for (int i : order) {
            int rival = i == order.get(0) ? order.get(Math.min(1, order.size() - 1)) : order.get(0);
            Belief belief = beliefs.get(i);
            ranked.add(new Group(
                    keys.get(i),
                    thrown.get(i),
                    belief.interval(Measure.IN),
                    belief.interval(Measure.ON),
                    belief.interval(Measure.OFF),
                    belief.interval(Measure.POINTS),
                    contest.best(i),
                    contest.loss(i),
                    i == rival ? 0 : belief.roundsToSettle(beliefs.get(rival))));
        }
        return ranked;
    }
}
