package boardside.engine.skill;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * How much more a player's days differ than independent bags would make them. With n bags on a day, the day's mean of a
 * score varies by v / n from luck alone and by r v from good and bad days, where v is the variance of one bag's score and
 * r the <em>day share</em>. r is estimated by moments: for days d with n_d bags and means y_d around the common mean y,
 * the sum of n_d (y_d - y)^2 / v has the expectation (D - 1) + r (N - sum n_d^2 / N), N being all bags (Williams 1982,
 * Applied Statistics 31, 144-148, for binomial counts).
 *
 * <p>Few days say little about r, so a guess counts as much as {@value #GUESS_DAYS} days: {@value #GUESS}, which is
 * half a point a round (common practice, no source). How badly r is known widens the range further, by the ratio of the
 * t quantile to the normal one.
 *
 * @param share r, 0 or more
 * @param days what r rests on, in days, guess included
 */
record DayToDay(double share, double days) {
    private static final double GUESS = 0.01;
    private static final double GUESS_DAYS = 4;
    private static final double NORMAL_95 = 1.6448536269514722;

    /** Which bags (or rounds) a score is taken of, how many hits or points they have, and a score's variance. */
    enum Score {
        /** Bags in the hole, of all thrown. */
        IN(Counts::thrown, Counts::in, c -> share(c.in(), c.thrown())),
        /** Bags on the board, of those counted. */
        ON(Counts::known, Counts::knownOn, c -> share(c.knownOn(), c.known())),
        /** Bags off, of those counted. */
        OFF(Counts::known, Counts::knownOff, c -> share(c.knownOff(), c.known())),
        /** Points of the bags counted. */
        POINTS(Counts::known, c -> 3 * c.knownIn() + c.knownOn(), c -> {
            double in = (c.knownIn() + 0.5) / (c.known() + 1.5);
            double on = (c.knownOn() + 0.5) / (c.known() + 1.5);
            double mean = 3 * in + on;
            return 9 * in + on - mean * mean;
        }),
        /** Full rounds with all four in. */
        FOUR_BAGGERS(Counts::fullRounds, Counts::fourBaggers, c -> share(c.fourBaggers(), c.fullRounds()));

        private final ToDoubleFunction<Counts> trials;
        private final ToDoubleFunction<Counts> sum;
        private final ToDoubleFunction<Counts> variance;

        Score(ToDoubleFunction<Counts> trials, ToDoubleFunction<Counts> sum, ToDoubleFunction<Counts> variance) {
            this.trials = trials;
            this.sum = sum;
            this.variance = variance;
        }

        private static double share(double hits, double trials) {
            double p = (hits + 0.5) / (trials + 1);
            return p * (1 - p);
        }

        /** Variance of one trial's score, kept off 0 by half a hit and half a miss. */
        double variance(Counts all) {
            return variance.applyAsDouble(all);
        }
    }

    /** From several groups, each around its own mean. */
    static DayToDay of(List<List<Counts>> groups, Score score) {
        double days = 0;
        double excess = 0;
        double weight = 0;
        for (List<Counts> group : groups) {
            Counts all = group.stream().reduce(Counts.NONE, Counts::plus);
            double n = score.trials.applyAsDouble(all);
            if (n == 0) {
                continue;
            }
            double mean = score.sum.applyAsDouble(all) / n;
            double squares = 0;
            int counted = 0;
            for (Counts day : group) {
                double m = score.trials.applyAsDouble(day);
                if (m > 0) {
                    double gap = score.sum.applyAsDouble(day) / m - mean;
                    excess += m * gap * gap / score.variance(all);
                    squares += m * m;
                    counted++;
                }
            }
            excess -= counted - 1;
            weight += n - squares / n;
            days += counted - 1;
        }
        double seen = weight > 0 ? excess / weight : 0;
        double total = GUESS_DAYS + days;
        return new DayToDay(Math.max(0, (GUESS_DAYS * GUESS + days * seen) / total), total);
    }

    /** By how much the mean over these days varies more than with independent bags; 1 or more. */
    double inflation(List<Counts> group, Score score) {
        double n = 0;
        double squares = 0;
        for (Counts day : group) {
            double m = score.trials.applyAsDouble(day);
            n += m;
            squares += m * m;
        }
        if (n == 0) {
            return 1;
        }
        double t = TDistribution.of(days).inverseCumulativeProbability(1 - Interval.TAIL) / NORMAL_95;
        return 1 + share * t * t * squares / n;
    }

    /** Counts day by day. */
    static List<Counts> byDay(Collection<RunCount> counts) {
        Map<LocalDate, Counts> days = new TreeMap<>();
        for (RunCount count : counts) {
            days.merge(count.day(), Counts.of(count), Counts::plus);
        }
        return new ArrayList<>(days.values());
    }
}
