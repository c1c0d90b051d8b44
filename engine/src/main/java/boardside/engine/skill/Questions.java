package boardside.engine.skill;

import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Finish;
import boardside.engine.rules.Setting;
import boardside.engine.skill.NarrowAnswer.BeforeAndAfter;
import boardside.engine.skill.NarrowAnswer.Narrow;
import boardside.engine.skill.NarrowAnswer.OneBoard;
import boardside.engine.skill.NarrowAnswer.TooEarly;
import boardside.engine.skill.NarrowAnswer.Training;
import boardside.engine.skill.StakesAnswer.NothingAtStake;
import boardside.engine.skill.StakesAnswer.Stake;
import boardside.engine.skill.StakesAnswer.Stakes;
import boardside.engine.skill.SwingAnswer.Swing;
import boardside.engine.skill.SwingAnswer.TooFewRuns;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** Stakes, the narrow board, and why totals swing. */
final class Questions {
    /** Fewer runs than this tell nothing of good and bad days. */
    static final int FEWEST_RUNS = 10;

    private static final int ROUNDS = 10;
    private static final int FEWEST_TRAINING_DAYS = 28;
    private static final int MOST_TRAINING_DAYS = 180;
    private static final int YEAR = 365;
    /** Days of the last year at which levels are drawn. */
    private static final int LOOKS = 24;

    private Questions() {}

    static StakesAnswer stakes(Draws draws) {
        Log log = draws.fit.log;
        Levels settings = log.levels(Trait.SETTING);
        int practice = settings.number(Setting.PRACTICE.word());
        if (practice < 0 || settings.size() < 2) {
            return new NothingAtStake(Sentences.noStakes());
        }
        Usual usual = new Usual(log, 0);
        Measured base = new Measured(draws, usual.with(List.of(Trait.SETTING), List.of(practice)), draws.now);
        List<Stake> stakes = new ArrayList<>();
        for (Setting setting : Setting.values()) {
            int number = settings.number(setting.word());
            if (setting != Setting.PRACTICE && number >= 0) {
                Measured other = new Measured(draws, usual.with(List.of(Trait.SETTING), List.of(number)), draws.now);
                Interval difference = other.lead(base);
                double better = other.beats(base);
                Verdict verdict = Verdict.of(better);
                stakes.add(new Stake(
                        setting,
                        settings.thrown(number),
                        difference,
                        better,
                        verdict,
                        Sentences.stake(setting.word(), difference, verdict)));
            }
        }
        return new Stakes(stakes, stakes.stream().map(Stake::sentence).collect(Collectors.joining(" ")));
    }

    static NarrowAnswer narrow(Draws draws) {
        Log log = draws.fit.log;
        Levels boards = log.levels(Trait.BOARD);
        int narrow = boards.number(BoardKind.NARROW.word());
        int regulation = boards.number(BoardKind.REGULATION.word());
        if (narrow < 0 || regulation < 0) {
            return new OneBoard(Sentences.oneBoard());
        }
        Usual usual = new Usual(log, 0);
        Measured wide = new Measured(draws, usual.with(List.of(Trait.BOARD), List.of(regulation)), draws.now);
        Measured slim = new Measured(draws, usual.with(List.of(Trait.BOARD), List.of(narrow)), draws.now);
        Interval cost = wide.lead(slim);
        double costs = wide.beats(slim);
        Verdict verdict = Verdict.of(costs);
        return new Narrow(
                boards.thrown(narrow), cost, costs, verdict, training(draws, usual), Sentences.narrow(cost, verdict));
    }

    private static Training training(Draws draws, Usual usual) {
        Log log = draws.fit.log;
        LocalDate start = log.counts.stream()
                .filter(count -> count.board() == BoardKind.NARROW)
                .map(RunCount::day)
                .findFirst()
                .orElse(draws.asOf);
        LocalDate lastDay = log.counts.get(log.counts.size() - 1).day();
        long before = ChronoUnit.DAYS.between(log.counts.get(0).day(), start);
        long after = ChronoUnit.DAYS.between(start, lastDay);
        int days = (int) Math.min(MOST_TRAINING_DAYS, Math.min(before, after));
        if (days < FEWEST_TRAINING_DAYS) {
            return new TooEarly(Sentences.trainingTooEarly(FEWEST_TRAINING_DAYS));
        }
        double[][] levels = draws.levels(List.of(start.plusDays(days), start, start.minusDays(days)));
        Measured late = new Measured(draws, usual.mix(), levels[0]);
        Measured middle = new Measured(draws, usual.mix(), levels[1]);
        Measured early = new Measured(draws, usual.mix(), levels[2]);
        Interval was = middle.lead(early);
        Interval is = late.lead(middle);
        Interval difference =
                Measured.interval(draws.size, i -> late.points(i) - 2 * middle.points(i) + early.points(i));
        double faster = Measured.positive(draws.size, i -> late.points(i) - 2 * middle.points(i) + early.points(i));
        Verdict verdict = Verdict.of(faster);
        return new BeforeAndAfter(
                start,
                days,
                was,
                is,
                difference,
                faster,
                verdict,
                Sentences.training(days, was, is, verdict, faster > 0.5));
    }

    /**
     * The variance of a total, split by the law of total variance over days of the year: what bags make at a day's level and
     * what its mood adds, on average over the days, and the variance of the level's mean. Today's usual mix moves with the
     * level as one way to throw does; moods act by the slopes of points per round there.
     */
    static SwingAnswer swing(Draws draws) {
        Log log = draws.fit.log;
        if (log.cells.runs() < FEWEST_RUNS) {
            return new TooFewRuns(Sentences.fewRuns(FEWEST_RUNS));
        }
        LocalDate first = log.counts.get(0).day();
        LocalDate year = draws.asOf.minusDays(YEAR);
        List<LocalDate> days = log.counts.stream()
                .map(RunCount::day)
                .distinct()
                .filter(day -> day.isAfter(year))
                .toList();
        if (days.isEmpty()) {
            days = List.of(first);
        }
        List<LocalDate> looks = new ArrayList<>();
        int n = Math.min(LOOKS, days.size());
        for (int i = 0; i < n; i++) {
            looks.add(days.get((int) ((days.size() - 1L) - (long) i * (days.size() - 1) / Math.max(1, n - 1))));
        }
        double[][] levels = draws.levels(looks);
        Measured today = draws.today().measured();
        double[][] parts = new double[draws.size][];
        for (int from = 0; from < draws.size; from += draws.each()) {
            DaySpread spread = new DaySpread(log.variances, draws.theta(from));
            for (int i = from; i < from + draws.each(); i++) {
                double usual0 = logit(today.kept[i]) - draws.now[2 * i];
                double usual1 = logit(today.in[i] / today.kept[i]) - draws.now[2 * i + 1];
                double luck = 0;
                double moods = 0;
                double sum = 0;
                double square = 0;
                for (double[] level : levels) {
                    double kept = BagCounts.logistic(usual0 + level[2 * i]);
                    double share = BagCounts.logistic(usual1 + level[2 * i + 1]);
                    double mean = kept * (1 + 2 * share);
                    double slope0 = kept * (1 - kept) * (1 + 2 * share);
                    double slope1 = kept * 2 * share * (1 - share);
                    luck += (kept * (1 + 8 * share) - mean * mean) / n;
                    for (double[] v : List.of(spread.day, spread.run)) {
                        moods += (slope0 * slope0 * v[0] + 2 * slope0 * slope1 * v[1] + slope1 * slope1 * v[2]) / n;
                    }
                    sum += mean / n;
                    square += mean * mean / n;
                }
                double change = Math.max(0, square - sum * sum);
                double bags = ROUNDS * Finish.BAGS;
                parts[i] = new double[] {bags * luck, bags * bags * moods, bags * bags * change};
            }
        }
        Interval deviation = Measured.interval(draws.size, i -> Math.sqrt(parts[i][0] + parts[i][1] + parts[i][2]));
        Interval luck = share(parts, 0);
        Interval moods = share(parts, 1);
        Interval change = share(parts, 2);
        return new Swing(ROUNDS, deviation, luck, moods, change, Sentences.swing(ROUNDS, luck, moods, change));
    }

    private static double logit(double chance) {
        double kept = Math.min(Math.max(chance, 1e-12), 1 - 1e-12);
        return Math.log(kept / (1 - kept));
    }

    private static Interval share(double[][] parts, int part) {
        return Measured.interval(parts.length, i -> parts[i][part] / (parts[i][0] + parts[i][1] + parts[i][2]));
    }
}
