package boardside.engine.tactics.advice;

import boardside.engine.physics.Board;
import boardside.engine.physics.Normal;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.Rate;
import boardside.engine.tactics.Shot;
import java.util.List;
import org.apache.commons.statistics.distribution.BetaDistribution;

/**
 * What is known of how often a shot works, beside the simulation: a beta belief whose prior is worth {@link #WORTH} tries,
 * with the simulation's rate (or, for a shot that is not simulated, a stated one) as its mean. Forty tries outweigh it two to
 * one.
 *
 * <p>Tries of the same call on a board that looks the same count in full; those where the same ways in are blocked, or at the
 * same target on another board, a quarter (common practice, no source).
 *
 * @param prior mean of the prior where the simulation has none to offer, else NaN
 * @param doubted whether the simulation itself is in doubt; not on an empty board, where throw models are learned
 * @param tries counted as said, 0 or more
 * @param worked of them, 0..tries
 */
record Evidence(double prior, boolean doubted, double tries, double worked) {
    /** Tries that the simulation, or a stated prior, is worth. */
    static final double WORTH = 20;

    private static final double ELSEWHERE = 0.25;

    /** No one tries a shot that never or always works; where no sample did, the belief still has a place to begin. */
    private static final double EXTREME = 1e-3;

    /** How often a cut, a roll or a drag works before any try: common practice, no source. */
    static double statedPrior(Shot shot) {
        return switch (shot) {
            case CUT_LEFT, CUT_RIGHT -> 0.2;
            case ROLL -> 0.15;
            case DRAG -> 0.1;
            default -> Double.NaN;
        };
    }

    /** What is known without any tries. */
    static Evidence untried(Call call, boolean empty) {
        return new Evidence(statedPrior(call.shot()), !(empty && call.shot() == Shot.SLIDE), 0, 0);
    }

    static Evidence of(Call call, Position position, List<Tried> tried) {
        String code = position.code(Board.REGULATION_WIDTH);
        String family = position.family(Board.REGULATION_WIDTH);
        double tries = 0;
        double worked = 0;
        for (Tried kind : tried) {
            boolean same = kind.shot().placed() == call.shot().placed()
                    && (call.shot().placed()
                            ? call.target() != null && call.target().equals(kind.target())
                            : kind.shot() == call.shot());
            if (same) {
                boolean here = kind.position().code(Board.REGULATION_WIDTH).equals(code);
                boolean alike = call.shot().placed()
                        || kind.position().family(Board.REGULATION_WIDTH).equals(family);
                double weight = here ? 1 : alike ? ELSEWHERE : 0;
                tries += weight * kind.tries();
                worked += weight * kind.worked();
            }
        }
        boolean learned = position.bags().isEmpty() && call.shot() == Shot.SLIDE;
        return new Evidence(statedPrior(call.shot()), !learned, learned ? 0 : tries, learned ? 0 : worked);
    }

    private double mean(double simulated) {
        return Double.isNaN(prior) ? simulated : prior;
    }

    /** The rate to reckon with, where the simulation says {@code simulated}. */
    double rate(double simulated) {
        return doubted ? (WORTH * mean(simulated) + worked) / (WORTH + tries) : simulated;
    }

    /** How far the rate follows the simulation's: its derivative. */
    double follows() {
        return Double.isNaN(prior) ? doubted ? WORTH / (WORTH + tries) : 1 : 0;
    }

    private BetaDistribution belief(double simulated) {
        double mean = Math.max(EXTREME, Math.min(1 - EXTREME, mean(simulated)));
        return BetaDistribution.of(WORTH * mean + worked, WORTH * (1 - mean) + tries - worked);
    }

    /** The rate with its range; only where it is doubted. */
    Rate range(double simulated) {
        BetaDistribution belief = belief(simulated);
        double low = belief.inverseCumulativeProbability(0.05);
        double high = belief.inverseCumulativeProbability(0.95);
        return new Rate(Math.min(high, Math.max(low, rate(simulated))), low, high);
    }

    /**
     * Rates drawn from the belief, less {@link #rate}: evenly spread and in an order that has nothing to do with that of the
     * player's draws. By Wilson and Hilferty's way to the beta from normal numbers it would cost less; there are few.
     */
    double[] doubts(double simulated, int count, int salt) {
        double[] doubts = new double[count];
        if (!doubted) {
            return doubts;
        }
        BetaDistribution belief = belief(simulated);
        double mean = belief.getMean();
        double deviation = Math.sqrt(belief.getVariance());
        for (int k = 0; k < count; k++) {
            double share = (k + 0.5) * 0.6180339887498949 + salt * 0.7548776662466927;
            share -= Math.floor(share);
            double value = mean + deviation * Normal.quantile(Math.min(1 - 1e-9, Math.max(1e-9, share)));
            doubts[k] = Math.max(0, Math.min(1, value)) - mean;
        }
        return doubts;
    }
}
