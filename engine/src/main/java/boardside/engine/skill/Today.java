package boardside.engine.skill;

import boardside.engine.odds.BagChances;
import boardside.engine.odds.Level;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.odds.Total;
import boardside.engine.rules.Finish;
import boardside.engine.rules.GameRules;
import boardside.engine.skill.FormAnswer.Form;
import boardside.engine.skill.FormAnswer.Trend;
import boardside.engine.skill.Measured.Mix;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/** Today's skill at the usual mix. */
final class Today {
    /** Parts into which equally likely states are gathered before totals are worked out. */
    private static final int PARTS = 60;

    private final Draws draws;
    private final List<RunCount> recent;
    private final boolean isRecent;
    private final Mix mix;
    private final Measured measured;

    /** Ask {@link Draws#today()}, which measures once. */
    Today(Draws draws) {
        this.draws = draws;
        LocalDate after = draws.asOf.minusDays(Skill.RECENT_DAYS);
        List<RunCount> all = draws.fit.log.counts;
        int from = all.size();
        while (from > 0 && all.get(from - 1).day().isAfter(after)) {
            from--;
        }
        isRecent = from < all.size();
        recent = isRecent ? all.subList(from, all.size()) : all;
        mix = new Usual(draws.fit.log, isRecent ? from : 0).mix();
        measured = new Measured(draws, mix, draws.now);
    }

    Mix mix() {
        return mix;
    }

    Measured measured() {
        return measured;
    }

    Form form(int trendDays) {
        Counts all = Counts.of(recent);
        LocalDate from = recent.get(0).day();
        Interval points = measured.pointsPerRound();
        LocalDate then = draws.asOf.minusDays(trendDays);
        Trend trend = trend(trendDays, then);
        boolean reaches = !draws.fit.log.counts.get(0).day().isAfter(then);
        return new Form(
                all.thrown(),
                recent.stream().mapToLong(RunCount::rounds).sum(),
                from,
                isRecent,
                measured.inHole(),
                measured.onBoard(),
                measured.offBoard(),
                points,
                measured.fourBaggers(),
                chances().of(Today::level),
                trend,
                Sentences.form(points, all.thrown(), from, isRecent) + " " + Sentences.trend(trend, reaches));
    }

    private Trend trend(int days, LocalDate then) {
        Measured before = new Measured(draws, mix, draws.levels(List.of(then))[0]);
        double better = measured.beats(before);
        // Before the first record the prior alone speaks, and it settles nothing.
        Verdict verdict = draws.fit.log.counts.get(0).day().isAfter(then) ? Verdict.OPEN : Verdict.of(better);
        return new Trend(days, measured.lead(before), better, verdict);
    }

    private static double level(BagChances chances) {
        return Level.of(GameRules.STANDARD, RoundDistribution.of(chances)).value();
    }

    /** The likeliest chances, and those along the line in which draws vary that make the ends of the range of points. */
    ChanceRange chances() {
        return chances(measured);
    }

    /** The same of skill on any day. */
    static ChanceRange chances(Measured measured) {
        Interval points = measured.pointsPerRound();
        double in = 0;
        double slope = 0;
        double square = 0;
        for (int i = 0; i < measured.in.length; i++) {
            in += measured.in[i] / measured.in.length;
        }
        for (int i = 0; i < measured.in.length; i++) {
            double off = measured.points(i) - points.estimate();
            slope += off * (measured.in[i] - in);
            square += off * off;
        }
        slope = square > 0 ? slope / square : 0;
        return new ChanceRange(
                chances(in, points.estimate()),
                chances(in + slope * (points.low() - points.estimate()), points.low()),
                chances(in + slope * (points.high() - points.estimate()), points.high()));
    }

    /** Chances that make so many points, with about this share in the hole. */
    private static BagChances chances(double in, double points) {
        double each = points / Finish.BAGS;
        // in + on <= 1 and on >= 0 with 3 in + on = each.
        double p = Math.min(Math.min(1, each / 3), Math.max(Math.max(0, (each - 1) / 2), in));
        return new BagChances(p, Math.min(1 - p, Math.max(0, each - 3 * p)));
    }

    /**
     * A total: luck over rounds that are alike, on a day that may be good or bad, in one of the usual ways. Draws that make
     * about the same points are taken together.
     */
    TotalForecast total(int rounds) {
        return total(rounds, mix);
    }

    TotalForecast total(int rounds, Mix mix) {
        double[][] states = new double[draws.size][];
        double[] eta = new double[2];
        Normals normals = new Normals(7);
        double place = 0.5 / draws.size;
        for (int from = 0; from < draws.size; from += draws.each()) {
            DaySpread spread = new DaySpread(draws.fit.log.variances, draws.theta(from));
            for (int i = from; i < from + draws.each(); i++) {
                Log.Row row = mix.rows().get(pick(mix, place));
                // The golden section spreads the ways evenly over the draws.
                place = (place + 0.6180339887498949) % 1;
                draws.predict(i, draws.now, row, eta);
                double z0 = normals.next();
                double z1 = normals.next();
                double kept = BagCounts.logistic(spread.moved(0, eta[0], z0, z1));
                double in = kept * BagCounts.logistic(spread.moved(1, eta[1], z0, z1));
                states[i] = new double[] {in, kept - in};
            }
        }
        Arrays.sort(states, Comparator.comparingDouble(state -> 3 * state[0] + state[1]));
        double[] chances = new double[3 * Finish.BAGS * rounds + 1];
        for (int part = 0; part < PARTS; part++) {
            int from = part * draws.size / PARTS;
            int to = (part + 1) * draws.size / PARTS;
            double in = 0;
            double on = 0;
            for (int i = from; i < to; i++) {
                in += states[i][0] / (to - from);
                on += states[i][1] / (to - from);
            }
            Total total = Total.of(RoundDistribution.of(new BagChances(in, on)), rounds);
            for (int t = 0; t < chances.length; t++) {
                chances[t] += total.chance(t) * (to - from) / draws.size;
            }
        }
        List<Double> list = new ArrayList<>(chances.length);
        for (double chance : chances) {
            list.add(chance);
        }
        return new TotalForecast(rounds, list);
    }

    private static int pick(Mix mix, double place) {
        double sum = 0;
        for (int i = 0; i < mix.weights().length - 1; i++) {
            sum += mix.weights()[i];
            if (place < sum) {
                return i;
            }
        }
        return mix.weights().length - 1;
    }
}
