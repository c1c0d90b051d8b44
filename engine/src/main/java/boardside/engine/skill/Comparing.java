package boardside.engine.skill;

import boardside.engine.rules.Finish;
import boardside.engine.skill.ComparisonAnswer.Comparison;
import boardside.engine.skill.ComparisonAnswer.Group;
import boardside.engine.skill.ComparisonAnswer.NothingToCompare;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Ways to throw side by side, each at today's skill and at the same mix of everything else. */
final class Comparing {
    /** How many standard deviations a difference must be from 0 for a chance of 97.5 % of its sign. */
    private static final double SIGNAL_DEVIATIONS = 1.959963984540054;

    /** Rounds of a run with which a question would be settled. */
    private static final int ROUNDS_A_RUN = 10;

    private final Draws draws;
    private final List<Trait> by;
    private final List<List<String>> keys = new ArrayList<>();
    private final List<Long> thrown = new ArrayList<>();
    private final List<Measured> measured = new ArrayList<>();

    private Comparing(Draws draws, List<Trait> by) {
        this.draws = draws;
        this.by = by;
    }

    static ComparisonAnswer answer(Draws draws, List<Trait> by) {
        Map<List<String>, Long> groups = new TreeMap<>(Comparator.comparing(List::toString));
        Log log = draws.fit.log;
        long leftOut = 0;
        for (RunCount count : log.counts) {
            List<String> key = by.stream().map(trait -> trait.of(count)).toList();
            if (key.contains("")) {
                leftOut += count.thrown();
            } else {
                groups.merge(key, (long) count.thrown(), Long::sum);
            }
        }
        if (groups.isEmpty()) {
            return new NothingToCompare(Sentences.unsaid(by, leftOut));
        }
        Comparing comparing = new Comparing(draws, by);
        Usual usual = new Usual(log, 0);
        groups.forEach((key, bags) -> {
            comparing.keys.add(key);
            comparing.thrown.add(bags);
            comparing.measured.add(measured(draws, usual, by, key).orElseThrow());
        });
        return comparing.answer(leftOut);
    }

    /** Two groups against each other; empty where a word is not in the records. */
    static Optional<Difference> difference(Draws draws, List<Trait> by, List<String> first, List<String> second) {
        Usual usual = new Usual(draws.fit.log, 0);
        Optional<Measured> one = measured(draws, usual, by, first);
        Optional<Measured> other = measured(draws, usual, by, second);
        if (one.isEmpty() || other.isEmpty()) {
            return Optional.empty();
        }
        double ahead = one.get().beats(other.get());
        return Optional.of(new Difference(one.get().lead(other.get()), ahead, Verdict.of(ahead)));
    }

    private static Optional<Measured> measured(Draws draws, Usual usual, List<Trait> by, List<String> key) {
        List<Integer> words = new ArrayList<>();
        for (int i = 0; i < by.size(); i++) {
            words.add(draws.fit.log.levels(by.get(i)).number(key.get(i)));
        }
        return words.contains(-1)
                ? Optional.empty()
                : Optional.of(new Measured(draws, usual.with(by, words), draws.now));
    }

    private ComparisonAnswer answer(long leftOut) {
        int n = keys.size();
        List<Interval> points = measured.stream().map(Measured::pointsPerRound).toList();
        double[] best = new double[n];
        double[] loss = new double[n];
        for (int draw = 0; draw < draws.size; draw++) {
            int top = 0;
            for (int i = 1; i < n; i++) {
                top = measured.get(i).points(draw) > measured.get(top).points(draw) ? i : top;
            }
            best[top] += 1.0 / draws.size;
            for (int i = 0; i < n; i++) {
                loss[i] += (measured.get(top).points(draw) - measured.get(i).points(draw)) / draws.size;
            }
        }
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            order.add(i);
        }
        order.sort(Comparator.comparingDouble((Integer i) -> -points.get(i).estimate()));
        int first = order.get(0);
        int second = order.get(Math.min(1, n - 1));
        List<Group> groups = new ArrayList<>();
        for (int i : order) {
            Measured own = measured.get(i);
            groups.add(new Group(
                    keys.get(i),
                    thrown.get(i),
                    own.inHole(),
                    own.onBoard(),
                    own.offBoard(),
                    points.get(i),
                    n == 1 ? 1 : Math.min(1, best[i]),
                    n == 1 ? 0 : loss[i],
                    n == 1 ? 0 : roundsToSettle(i, i == first ? second : first)));
        }
        if (n == 1) {
            Interval none = new Interval(0, 0, 0);
            return new Comparison(
                    by, groups, leftOut, none, 0.5, Verdict.OPEN, Sentences.alone(by, groups.get(0), leftOut));
        }
        Interval lead = measured.get(first).lead(measured.get(second));
        double ahead = measured.get(first).beats(measured.get(second));
        Verdict verdict = Verdict.of(ahead);
        return new Comparison(
                by, groups, leftOut, lead, ahead, verdict, Sentences.comparison(by, groups, lead, verdict, leftOut));
    }

    /**
     * Rounds of each that would take a difference as large as it now looks to 97.5 % of its sign: its variance falls as
     * that of a mean of new rounds, in runs of ten on the same days.
     */
    private long roundsToSettle(int i, int rival) {
        Measured mine = measured.get(i);
        Measured theirs = measured.get(rival);
        double gap = 0;
        double square = 0;
        for (int draw = 0; draw < draws.size; draw++) {
            double d = mine.points(draw) - theirs.points(draw);
            gap += d / draws.size;
            square += d * d / draws.size;
        }
        double now = Math.max(square - gap * gap, 1e-12);
        double wanted = gap * gap / (SIGNAL_DEVIATIONS * SIGNAL_DEVIATIONS);
        if (now <= wanted) {
            return 0;
        }
        double oneRound = oneRound(mine) + oneRound(theirs);
        double rounds = oneRound * (1 / Math.max(wanted, 1e-12) - 1 / now);
        return (long) Math.min(Skill.MOST_ROUNDS, Math.ceil(rounds));
    }

    /** Variance of one round's points, with a tenth of what runs differ by times ten: luck, and good and bad runs. */
    private double oneRound(Measured measured) {
        double in = 0;
        double kept = 0;
        for (int draw = 0; draw < draws.size; draw++) {
            in += measured.in[draw] / draws.size;
            kept += measured.kept[draw] / draws.size;
        }
        double mean = 2 * in + kept;
        double luck = Finish.BAGS * (9 * in + (kept - in) - mean * mean);
        DaySpread spread = new DaySpread(draws.fit.log.variances, draws.fit.theta);
        double p = in / kept;
        double slope0 = Finish.BAGS * kept * (1 - kept) * (1 + 2 * p);
        double slope1 = Finish.BAGS * kept * 2 * p * (1 - p);
        double runs =
                slope0 * slope0 * spread.run[0] + 2 * slope0 * slope1 * spread.run[1] + slope1 * slope1 * spread.run[2];
        return luck + ROUNDS_A_RUN * runs;
    }
}
