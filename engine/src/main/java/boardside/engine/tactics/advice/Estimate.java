package boardside.engine.tactics.advice;

import boardside.engine.physics.Range;
import java.util.Arrays;

/**
 * What a shot's samples say of its value, with the shot's rate put right by what is known of it.
 *
 * <p>With the rate p, and S and F the means of the value over samples in which it worked and did not, the value is p S + (1 -
 * p) F (post-stratification). Where nothing but the simulation speaks, p is the samples' own share and the value their mean.
 *
 * <p>Two kinds of not knowing are kept apart. {@link #error}: sampling, told by the spread over replicates of each sample's
 * influence on the value (the delta method). {@link #byDraw}: the player, told by the value at each draw of the throw model
 * and of the rate; what sampling adds to the spread over draws is taken out by drawing them together (Louis 1984, "Estimating
 * a population of parameter values using Bayes and empirical Bayes methods", JASA 79, 393-398).
 */
final class Estimate {
    private final double value;
    private final double rate;
    private final double ifWorked;
    private final double ifNot;
    private final double[] replicates;
    private final double[] byDraw;
    private final Influence influence;
    private final double[] doubts;

    private Estimate(double value, double rate, double ifWorked, double ifNot, Influence influence, double[] doubts) {
        this.value = value;
        this.rate = rate;
        this.ifWorked = ifWorked;
        this.ifNot = ifNot;
        this.influence = influence;
        this.doubts = doubts;
        replicates = influence.replicates(value);
        byDraw = new double[doubts.length];
        double[] deviations = deviations(influence.sampled.perReplicate(), influence::of);
        for (int k = 0; k < byDraw.length; k++) {
            byDraw[k] = value + deviations[k] + doubts[k] * (ifWorked - ifNot);
        }
    }

    /** What each sample adds to the value's error. */
    private static final class Influence {
        private final Sampled<?> sampled;
        private final double[][] values;
        private final double share;
        private final double ifWorked;
        private final double ifNot;
        private final double up;
        private final double down;
        private final double follow;

        Influence(
                Sampled<?> sampled, double[][] values, Evidence evidence, double share, double ifWorked, double ifNot) {
            this.sampled = sampled;
            this.values = values;
            this.share = share;
            this.ifWorked = ifWorked;
            this.ifNot = ifNot;
            double rate = evidence.rate(share);
            up = share > 0 ? rate / share : 0;
            down = share < 1 ? (1 - rate) / (1 - share) : 0;
            follow = evidence.follows() * (ifWorked - ifNot);
        }

        double of(int replicate, int n) {
            boolean worked = sampled.worked(replicate, n);
            double v = values[Rollouts.draw(replicate, n, values.length)][sampled.result(replicate, n)];
            return (worked ? up * (v - ifWorked) : down * (v - ifNot)) + follow * ((worked ? 1 : 0) - share);
        }

        double[] replicates(double value) {
            double[] replicates = new double[Rollouts.REPLICATES];
            int size = sampled.perReplicate();
            for (int r = 0; r < replicates.length; r++) {
                double sum = 0;
                for (int n = 0; n < size; n++) {
                    sum += of(r, n);
                }
                replicates[r] = value + sum / size;
            }
            return replicates;
        }
    }

    private interface BySample {
        double of(int replicate, int n);
    }

    /**
     * The estimate.
     *
     * @param values what each end is worth, by draw and end
     * @param doubts of the rate, by draw; see {@link Evidence#doubts}
     */
    static Estimate of(Sampled<?> sampled, double[][] values, Evidence evidence, double[] doubts) {
        int size = sampled.perReplicate();
        int draws = values.length;
        double[] sums = new double[2];
        int[] counts = new int[2];
        for (int r = 0; r < Rollouts.REPLICATES; r++) {
            for (int n = 0; n < size; n++) {
                int worked = sampled.worked(r, n) ? 1 : 0;
                sums[worked] += values[Rollouts.draw(r, n, draws)][sampled.result(r, n)];
                counts[worked]++;
            }
        }
        int all = counts[0] + counts[1];
        double share = (double) counts[1] / all;
        double mean = (sums[0] + sums[1]) / all;
        // Where all samples went one way, the other is worth what all are: nothing is known of it.
        double ifWorked = counts[1] > 0 ? sums[1] / counts[1] : mean;
        double ifNot = counts[0] > 0 ? sums[0] / counts[0] : mean;
        double rate = evidence.rate(share);
        return new Estimate(
                rate * ifWorked + (1 - rate) * ifNot,
                rate,
                ifWorked,
                ifNot,
                new Influence(sampled, values, evidence, share, ifWorked, ifNot),
                doubts);
    }

    /** By draw, how far the samples lie from the value, without what sampling adds to the spread over draws. */
    private double[] deviations(int size, BySample bySample) {
        double[] sums = new double[doubts.length];
        double[] squares = new double[sums.length];
        int[] number = new int[sums.length];
        for (int r = 0; r < Rollouts.REPLICATES; r++) {
            for (int n = 0; n < size; n++) {
                int draw = Rollouts.draw(r, n, sums.length);
                double one = bySample.of(r, n);
                sums[draw] += one;
                squares[draw] += one * one;
                number[draw]++;
            }
        }
        together(sums, squares, number);
        return sums;
    }

    /**
     * By draw, how much this shot is worth less than another; the luck that both had in common is out of it.
     *
     * @param other of the same draws
     */
    double[] behind(Estimate other) {
        int size = Math.min(influence.sampled.perReplicate(), other.influence.sampled.perReplicate());
        double[] behind = deviations(size, (r, n) -> other.influence.of(r, n) - influence.of(r, n));
        for (int k = 0; k < behind.length; k++) {
            behind[k] += other.value
                    - value
                    + other.doubts[k] * (other.ifWorked - other.ifNot)
                    - doubts[k] * (ifWorked - ifNot);
        }
        return behind;
    }

    /** Sums by draw become deviations without what sampling adds to their spread. */
    private static void together(double[] sums, double[] squares, int[] number) {
        int known = 0;
        double mean = 0;
        double within = 0;
        double noise = 0;
        for (int k = 0; k < sums.length; k++) {
            if (number[k] > 0) {
                sums[k] /= number[k];
                mean += sums[k];
                known++;
            }
        }
        mean /= known;
        double between = 0;
        double freedom = 0;
        for (int k = 0; k < sums.length; k++) {
            if (number[k] > 0) {
                between += (sums[k] - mean) * (sums[k] - mean);
                within += squares[k] - number[k] * sums[k] * sums[k];
                freedom += number[k] - 1;
                noise += 1.0 / number[k];
            }
        }
        double variance = known > 1 ? between / (known - 1) : 0;
        double sampling = freedom > 0 ? within / freedom * noise / known : variance;
        double shrink = variance > 0 ? Math.sqrt(Math.max(0, 1 - sampling / variance)) : 0;
        for (int k = 0; k < sums.length; k++) {
            sums[k] = number[k] > 0 ? shrink * (sums[k] - mean) : 0;
        }
    }

    double value() {
        return value;
    }

    /** How often the shot works. */
    double rate() {
        return rate;
    }

    /** The value where it works. */
    double ifWorked() {
        return ifWorked;
    }

    /** The value where it does not. */
    double ifNot() {
        return ifNot;
    }

    /** The value at each draw of what is not known of the player. */
    double[] byDraw() {
        return byDraw.clone();
    }

    /** Standard error of sampling. */
    double error() {
        return spread(replicates);
    }

    /** Standard error of sampling in the difference from another shot, which had the same luck. */
    double errorAgainst(Estimate other) {
        double[] differences = new double[replicates.length];
        for (int r = 0; r < differences.length; r++) {
            differences[r] = replicates[r] - other.replicates[r];
        }
        return spread(differences);
    }

    private static double spread(double[] independent) {
        double mean = 0;
        for (double one : independent) {
            mean += one / independent.length;
        }
        double squares = 0;
        for (double one : independent) {
            squares += (one - mean) * (one - mean);
        }
        return Math.sqrt(squares / (independent.length - 1) / independent.length);
    }

    /** The value with its range, which is what is not known of the player. */
    Range range() {
        double[] equal = new double[byDraw.length];
        Arrays.fill(equal, 1.0 / equal.length);
        Range range = Range.of(byDraw, equal);
        return new Range(Math.max(range.low(), Math.min(range.high(), value)), range.low(), range.high());
    }
}
