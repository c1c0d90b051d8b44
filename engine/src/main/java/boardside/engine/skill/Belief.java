package boardside.engine.skill;

import boardside.engine.odds.BagChances;
import boardside.engine.odds.Level;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.odds.Total;
import boardside.engine.rules.Finish;
import boardside.engine.rules.GameRules;
import boardside.engine.skill.DayToDay.Score;
import boardside.engine.skill.Shares.Measure;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.statistics.distribution.BetaDistribution;
import org.jspecify.annotations.Nullable;

/** What some days say about a player, each measure widened by as much as days differ in it. */
final class Belief {
    private final List<Counts> days;
    private final Counts all;
    /** How days differ in points, where it was learned from more than these days. */
    private final @Nullable DayToDay pointsSpread;

    Belief(List<Counts> days) {
        this(days, null);
    }

    Belief(List<Counts> days, @Nullable DayToDay pointsSpread) {
        this.days = days;
        this.all = days.stream().reduce(Counts.NONE, Counts::plus);
        this.pointsSpread = pointsSpread;
    }

    /** How days differ in one measure. */
    private DayToDay spread(Score score) {
        return score == Score.POINTS && pointsSpread != null ? pointsSpread : DayToDay.of(List.of(days), score);
    }

    Shares shares(Measure measure) {
        Score score = switch (measure) {
            case IN -> Score.IN;
            case ON -> Score.ON;
            case OFF -> Score.OFF;
            case POINTS -> Score.POINTS;
        };
        return Shares.of(all, spread(score).inflation(days, score));
    }

    Interval interval(Measure measure) {
        return shares(measure).interval(measure);
    }

    /**
     * Share of rounds with all four in: from the rounds themselves, which need not be independent bags; without a full
     * round, the fourth power of the share in.
     */
    Interval fourBaggers() {
        if (all.fullRounds() == 0) {
            Beta in = shares(Measure.IN).in();
            Interval range = in.interval();
            return Interval.of(in.moment(Finish.BAGS), Math.pow(range.low(), 4), Math.pow(range.high(), 4));
        }
        double inflation = spread(Score.FOUR_BAGGERS).inflation(days, Score.FOUR_BAGGERS);
        return new Beta(0.5 + all.fourBaggers() / inflation, 0.5 + (all.fullRounds() - all.fourBaggers()) / inflation)
                .interval();
    }

    /**
     * The total of some rounds on one day. The day's shares vary around the belief's by what days differ; both shares
     * are taken to rise and fall together along one line, and the line is stretched until points per round vary as much
     * as belief and days make them vary.
     */
    TotalForecast total(int rounds) {
        Shares shares = shares(Measure.POINTS);
        double oneBag = Score.POINTS.variance(all);
        double wanted = shares.pointsVariance() + spread(Score.POINTS).share() * oneBag * Finish.BAGS * Finish.BAGS;
        double[] in = new double[GaussLegendre.NODES.length];
        double[] kept = new double[in.length];
        double low = 0.05;
        double high = 20;
        // Halving on a log scale: smaller shapes spread further.
        for (int step = 0; step < 12; step++) {
            double scale = Math.sqrt(low * high);
            if (line(shares, scale, in, kept) > wanted) {
                low = scale;
            } else {
                high = scale;
            }
        }
        line(shares, high, in, kept);
        double[] chances = new double[3 * Finish.BAGS * rounds + 1];
        for (int i = 0; i < in.length; i++) {
            BagChances bag = new BagChances(in[i], (1 - in[i]) * kept[i]);
            Total total = Total.of(RoundDistribution.of(bag), rounds);
            for (int t = 0; t < chances.length; t++) {
                chances[t] += GaussLegendre.WEIGHTS[i] / 2 * total.chance(t);
            }
        }
        return new TotalForecast(rounds, Arrays.stream(chances).boxed().toList());
    }

    /** Fills in the shares at equal quantiles of both; returns the variance of points per round along them. */
    private static double line(Shares shares, double scale, double[] in, double[] kept) {
        BetaDistribution first =
                BetaDistribution.of(shares.in().a() * scale, shares.in().b() * scale);
        BetaDistribution second =
                BetaDistribution.of(shares.kept().a() * scale, shares.kept().b() * scale);
        double mean = 0;
        double square = 0;
        for (int i = 0; i < in.length; i++) {
            double at = (1 + GaussLegendre.NODES[i]) / 2;
            in[i] = first.inverseCumulativeProbability(at);
            kept[i] = second.inverseCumulativeProbability(at);
            double points = Finish.BAGS * (3 * in[i] + (1 - in[i]) * kept[i]);
            mean += GaussLegendre.WEIGHTS[i] / 2 * points;
            square += GaussLegendre.WEIGHTS[i] / 2 * points * points;
        }
        return square - mean * mean;
    }

    /** The ghost score beaten half the time. */
    Interval level() {
        return chances().of(Belief::level);
    }

    /** The shares that most likely make points per round and the ends of their range. */
    ChanceRange chances() {
        Shares shares = shares(Measure.POINTS);
        Interval points = shares.interval(Measure.POINTS);
        return new ChanceRange(
                shares.making(points.estimate()), shares.making(points.low()), shares.making(points.high()));
    }

    private static double level(BagChances chances) {
        return Level.of(GameRules.STANDARD, RoundDistribution.of(chances)).value();
    }

    /** See {@link ComparisonAnswer.Group#roundsToSettle()}. */
    long roundsToSettle(Belief rival) {
        Shares mine = shares(Measure.POINTS);
        Shares theirs = rival.shares(Measure.POINTS);
        double gap = Math.abs(mine.mean(Measure.POINTS) - theirs.mean(Measure.POINTS));
        double wanted = gap * gap / (SIGNAL_DEVIATIONS * SIGNAL_DEVIATIONS);
        long low = -1;
        long high = Skill.MOST_ROUNDS;
        while (high - low > 1) {
            long rounds = (low + high) / 2;
            if (varianceAfter(mine, rounds) + rival.varianceAfter(theirs, rounds) <= wanted) {
                high = rounds;
            } else {
                low = rounds;
            }
        }
        return high;
    }

    /** How many standard deviations a difference must be from 0 for a chance of 97.5 % of its sign. */
    private static final double SIGNAL_DEVIATIONS = 1.959963984540054;

    private double varianceAfter(Shares now, long rounds) {
        double inflation = spread(Score.POINTS).inflation(days, Score.POINTS);
        double oneRound = Finish.BAGS * Score.POINTS.variance(all) * inflation;
        return 1 / (1 / now.pointsVariance() + rounds / oneRound);
    }
}
