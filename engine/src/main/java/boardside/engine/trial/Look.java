package boardside.engine.trial;

import boardside.engine.rules.Outcome;
import boardside.engine.rules.Tally;
import java.util.List;

/**
 * What the blocks say about the candidates in play, by the additive model points = block + candidate + error. Effects of
 * blocks (the day, the run, warming up, tiring) drop out of the differences; those of places within a block do by the
 * order of the blocks.
 *
 * @param points points per round of each candidate in play, in their order
 * @param deviation standard deviation of a unit's points per round within its block, above 0
 * @param blocks blocks looked at, 1 or more
 */
record Look(double[] points, double deviation, int blocks) {
    /**
     * What knowing how much luck there is in a throw counts for, in degrees of freedom: with few blocks the residuals
     * alone would be too rough, and luck is most of what they hold.
     */
    static final double LUCK_WEIGHT = 20;

    /**
     * The look at some blocks.
     *
     * @param inPlay candidates, 2 or more
     * @param blocks each holds a unit of all of these; other units in it are passed over
     */
    static Look at(List<Integer> inPlay, List<List<Unit>> blocks) {
        int a = inPlay.size();
        int n = blocks.size();
        // Everything in points of a unit (0..24), so that sums are exact.
        double[] sums = new double[a];
        double total = 0;
        double squares = 0;
        double blockSquares = 0;
        Tally bags = Tally.NONE;
        for (List<Unit> block : blocks) {
            double sum = 0;
            for (Unit unit : block) {
                int place = inPlay.indexOf(unit.candidate());
                if (place >= 0) {
                    int y = unit.bags().points();
                    bags = bags.plus(unit.bags());
                    sums[place] += y;
                    squares += y * y;
                    sum += y;
                }
            }
            total += sum;
            blockSquares += sum * sum;
        }
        double candidateSquares = 0;
        double[] points = new double[a];
        for (int c = 0; c < a; c++) {
            candidateSquares += sums[c] * sums[c];
            points[c] = sums[c] / (n * TrialDesign.ROUNDS);
        }
        double residual = squares - blockSquares / a - candidateSquares / n + total * total / (a * n);
        double freedom = (n - 1.0) * (a - 1);
        double variance = (LUCK_WEIGHT * luck(bags) + Math.max(0, residual)) / (LUCK_WEIGHT + freedom);
        return new Look(points, Math.sqrt(variance) / TrialDesign.ROUNDS, n);
    }

    /** Variance of a unit's points by luck alone: eight independent bags with these shares, each share half a bag more. */
    private static double luck(Tally bags) {
        double thrown = bags.thrown() + 1.5;
        double in = (bags.in() + 0.5) / thrown;
        double on = (bags.on() + 0.5) / thrown;
        return Unit.BAGS * variance(in, on);
    }

    /** Variance of one bag's points. */
    static double variance(double in, double on) {
        double mean = Outcome.IN.points() * in + on;
        return Outcome.IN.points() * Outcome.IN.points() * in + on - mean * mean;
    }

    /** Standard error of a difference of two candidates, points per round. */
    double error() {
        return deviation * Math.sqrt(2.0 / blocks);
    }

    /** Place of the candidate with the most points; of equal ones the first. */
    int best() {
        int best = 0;
        for (int c = 1; c < points.length; c++) {
            best = points[c] > points[best] ? c : best;
        }
        return best;
    }

    /** Place of the candidate with the fewest points; of equal ones the last. */
    int worst() {
        int worst = 0;
        for (int c = 1; c < points.length; c++) {
            worst = points[c] <= points[worst] ? c : worst;
        }
        return worst;
    }

    /** Points per round between the best and the worst, in standard errors. */
    double range() {
        return (points[best()] - points[worst()]) / error();
    }
}
