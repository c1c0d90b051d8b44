package boardside.engine.odds;

import boardside.engine.rules.GameRules;
import java.util.Arrays;

/**
 * A race in which scores only rise: solved backwards from the end. Each score is seen after all that can follow it, so
 * one pass of additions gives the exact values: v(a, b) = c + sum over k of gain(k) v(a + k, b) + loss(k) v(a, b + k).
 *
 * <p>Rows (my score) are walked downwards. What I can score leads to rows that are done, a whole row at a time; what the
 * other side can score leads along the row. Rows and columns beyond the target are there and hold the end's values, so
 * that the inner loops need no test.
 */
final class ForwardRace {
    private final GameRules rules;
    private final int target;
    private final int stride;
    private final ScoringRound meFirst;
    private final ScoringRound theyFirst;
    private final boolean one;

    /**
     * @param rules without an exact target
     * @param meFirst the next round that scores, when I throw first
     * @param theyFirst the same when they do; the same object if it makes no difference
     */
    ForwardRace(GameRules rules, ScoringRound meFirst, ScoringRound theyFirst) {
        this.rules = rules;
        this.target = rules.target();
        this.stride = target + NetDistribution.MOST;
        this.meFirst = meFirst;
        this.theyFirst = theyFirst;
        this.one = meFirst == theyFirst;
    }

    /** The tables by who throws first: me, they; one and the same object twice if that makes no difference. */
    RaceTable[] solve() {
        boolean endless = meFirst.never() || theyFirst.never();
        double[][] win = pass(1, 0.5, 0, 0);
        double[][] rounds = pass(0, 0, meFirst.rounds(), theyFirst.rounds());
        double[][] never = endless ? pass(0, 1, 0, 0) : new double[2][];
        RaceTable mine = new RaceTable(stride, win[0], rounds[0], never[0]);
        return new RaceTable[] {mine, one ? mine : new RaceTable(stride, win[1], rounds[1], never[1])};
    }

    /**
     * One quantity at all scores, by who throws first.
     *
     * @param won its value where I have won; 0 where they have
     * @param stuck its value where nobody ever scores again
     * @param mineStep what a step adds when I throw first
     * @param theirStep what a step adds when they do
     */
    private double[][] pass(double won, double stuck, double mineStep, double theirStep) {
        double[] mine = ends(won);
        double[] theirs = one ? mine : ends(won);
        double[] mineSoFar = new double[target];
        double[] theirsSoFar = new double[target];
        double[] loss = meFirst.loss();
        int mostLoss = meFirst.mostLoss();
        double[] otherLoss = theyFirst.loss();
        int mostOtherLoss = theyFirst.mostLoss();
        for (int a = target - 1; a >= 0; a--) {
            gains(mine, a, meFirst, mineStep, mineSoFar);
            if (!one) {
                gains(mine, a, theyFirst, theirStep, theirsSoFar);
            }
            int lowest = rules.won(a, 0) ? 1 : 0;
            for (int b = highest(a); b >= lowest; b--) {
                int at = a * stride + b;
                // Who scored last throws first: their points lead into the table of their first throw.
                double value = meFirst.never() ? stuck : mineSoFar[b] + losses(theirs, at, loss, mostLoss);
                if (!one) {
                    theirs[at] =
                            theyFirst.never() ? stuck : theirsSoFar[b] + losses(theirs, at, otherLoss, mostOtherLoss);
                }
                mine[at] = value;
            }
        }
        return new double[][] {mine, theirs};
    }

    private int highest(int a) {
        return a == 0 && rules.skunk() > 0 ? rules.skunk() - 1 : target - 1;
    }

    private double[] ends(double won) {
        double[] values = new double[stride * stride];
        if (won != 0) {
            for (int a = target; a < stride; a++) {
                Arrays.fill(values, a * stride, a * stride + target, won);
            }
            if (rules.skunk() > 0) {
                for (int a = rules.skunk(); a < target; a++) {
                    values[a * stride] = won;
                }
            }
        }
        return values;
    }

    private void gains(double[] mine, int a, ScoringRound round, double step, double[] soFar) {
        Arrays.fill(soFar, step);
        double[] gain = round.gain();
        for (int points = 1; points <= round.mostGain(); points++) {
            double chance = gain[points];
            if (chance > 0) {
                int row = (a + points) * stride;
                for (int b = 0; b < soFar.length; b++) {
                    soFar[b] += chance * mine[row + b];
                }
            }
        }
    }

    private static double losses(double[] theirs, int at, double[] loss, int most) {
        // Two sums, so that one addition need not wait for the other; entries beyond the most are 0.
        double odd = 0;
        double even = 0;
        for (int points = 1; points <= most; points += 2) {
            odd += loss[points] * theirs[at + points];
            even += loss[points + 1] * theirs[at + points + 1];
        }
        return odd + even;
    }
}
