package boardside.engine.skill;

import java.util.Arrays;
import java.util.List;
import java.util.function.IntToDoubleFunction;

/** What a mix of ways to throw makes in each draw, averaged over good and bad days. */
final class Measured {
    /**
     * Ways to throw and how much of each.
     *
     * @param rows their covariates
     * @param weights their shares, which add up to 1
     */
    record Mix(List<Log.Row> rows, double[] weights) {}

    final double[] in;
    final double[] kept;
    final double[] four;

    /**
     * Measures.
     *
     * @param level at 2 * draw: the level on the day in question
     */
    Measured(Draws draws, Mix mix, double[] level) {
        in = new double[draws.size];
        kept = new double[draws.size];
        four = new double[draws.size];
        double[] sums = new double[3];
        double[] eta = new double[2];
        Log.Row[] rows = mix.rows.toArray(Log.Row[]::new);
        for (int from = 0; from < draws.size; from += draws.each()) {
            DaySpread spread = new DaySpread(draws.fit.log.variances, draws.theta(from));
            for (int i = from; i < from + draws.each(); i++) {
                Arrays.fill(sums, 0);
                for (int r = 0; r < rows.length; r++) {
                    draws.predict(i, level, rows[r], eta);
                    spread.add(eta[0], eta[1], mix.weights[r], sums);
                }
                in[i] = sums[0];
                kept[i] = sums[1];
                four[i] = sums[2];
            }
        }
    }

    /** Points per round of four in a draw: 4 (3 in + on). */
    double points(int draw) {
        return 4 * (2 * in[draw] + kept[draw]);
    }

    Interval inHole() {
        return interval(in.length, i -> in[i]);
    }

    Interval onBoard() {
        return interval(in.length, i -> kept[i] - in[i]);
    }

    Interval offBoard() {
        return interval(in.length, i -> 1 - kept[i]);
    }

    Interval pointsPerRound() {
        return interval(in.length, this::points);
    }

    Interval fourBaggers() {
        return interval(in.length, i -> four[i]);
    }

    /** Points per round more than another mix makes. */
    Interval lead(Measured other) {
        return interval(in.length, i -> points(i) - other.points(i));
    }

    /** The chance that points per round are more than another's. */
    double beats(Measured other) {
        return positive(in.length, i -> points(i) - other.points(i));
    }

    /** Mean and 90 % range of a number that has a value in each draw. */
    static Interval interval(int draws, IntToDoubleFunction value) {
        double[] sorted = new double[draws];
        double sum = 0;
        for (int i = 0; i < draws; i++) {
            sorted[i] = value.applyAsDouble(i);
            sum += sorted[i];
        }
        Arrays.sort(sorted);
        return Interval.of(sum / draws, quantile(sorted, Interval.TAIL), quantile(sorted, 1 - Interval.TAIL));
    }

    static double quantile(double[] sorted, double q) {
        double at = q * sorted.length - 0.5;
        int below = (int) Math.max(0, Math.min(sorted.length - 1, Math.floor(at)));
        int above = Math.min(sorted.length - 1, below + 1);
        double share = Math.min(1, Math.max(0, at - below));
        return sorted[below] + share * (sorted[above] - sorted[below]);
    }

    /** The chance that a number is above 0, never quite 0 or 1: as if one more draw had been half of each. */
    static double positive(int draws, IntToDoubleFunction value) {
        double count = 0.5;
        for (int i = 0; i < draws; i++) {
            double v = value.applyAsDouble(i);
            count += v > 0 ? 1 : v == 0 ? 0.5 : 0;
        }
        return count / (draws + 1);
    }
}
