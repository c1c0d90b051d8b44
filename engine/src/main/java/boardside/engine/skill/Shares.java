package boardside.engine.skill;

import boardside.engine.rules.Finish;

/**
 * Belief in a player's shares of bags in, on and off: the posterior of independent bags under the Dirichlet prior
 * (1/2, 1/2, 1/2), which is Jeffreys' for three outcomes. That belief splits into two independent ones: {@code in}, the
 * share in the hole, is Beta(1/2 + in, 1 + not in), and {@code kept}, the share on the board of those not in, is
 * Beta(1/2 + on, 1/2 + off). Bags of which only the ones in were counted therefore add to the first and leave the second
 * alone.
 *
 * @param in belief in the share in the hole
 * @param kept belief in the share on the board among the rest
 */
record Shares(Beta in, Beta kept) {
    /** What can be asked of the shares. */
    enum Measure {
        IN,
        ON,
        OFF,
        /** Points per round of four: 4 (3 in + on). */
        POINTS
    }

    /** The posterior of counts, bags being independent. */
    static Shares of(Counts counts) {
        return new Shares(
                new Beta(0.5 + counts.in(), 1.0 + counts.thrown() - counts.in()),
                new Beta(0.5 + counts.knownOn(), 0.5 + counts.known() - counts.knownIn() - counts.knownOn()));
    }

    double mean(Measure measure) {
        double p = in.mean();
        double q = kept.mean();
        return switch (measure) {
            case IN -> p;
            case ON -> (1 - p) * q;
            case OFF -> (1 - p) * (1 - q);
            case POINTS -> Finish.BAGS * (3 * p + (1 - p) * q);
        };
    }

    /** Variance of the points per round, exact. */
    double pointsVariance() {
        // 4 (3 - (3 - q)(1 - p)), a product of independent factors: E[x^2] E[y^2] - (E[x] E[y])^2.
        double x = 1 - in.mean();
        double y = 3 - kept.mean();
        double x2 = x * x + in.variance();
        double y2 = y * y + kept.variance();
        return Finish.BAGS * Finish.BAGS * (x2 * y2 - x * x * y * y);
    }

    Interval interval(Measure measure) {
        if (measure == Measure.IN) {
            return in.interval();
        }
        Law law = law(measure);
        return Interval.of(mean(measure), law.quantile(Interval.TAIL), law.quantile(1 - Interval.TAIL));
    }

    /** The belief in one measure as a distribution that can be evaluated many times. */
    Law law(Measure measure) {
        double most = measure == Measure.POINTS ? 3.0 * Finish.BAGS : 1;
        double sd = Math.sqrt(
                switch (measure) {
                    case IN -> in.variance();
                    case ON -> productVariance(kept.mean());
                    case OFF -> productVariance(1 - kept.mean());
                    case POINTS -> pointsVariance();
                });
        if (measure == Measure.IN) {
            return new Law(in::cdf, mean(measure), sd, most);
        }
        // Sum over the factor that matters less and use the other's distribution function: that keeps what is summed
        // smooth between the nodes.
        double ofIn = Math.sqrt(in.variance()) * (measure == Measure.POINTS ? 3 - kept.mean() : 1);
        double ofKept = Math.sqrt(kept.variance()) * (1 - in.mean());
        boolean overKept = measure == Measure.OFF
                ? ofIn * (1 - kept.mean()) > ofKept
                : measure == Measure.ON ? ofIn * kept.mean() > ofKept : ofIn > ofKept;
        double[][] nodes = overKept ? kept.nodes() : in.nodes();
        return new Law(
                t -> {
                    double sum = 0;
                    for (int i = 0; i < nodes[0].length; i++) {
                        double x = nodes[0][i];
                        sum += nodes[1][i] * (overKept ? givenKept(measure, x, t) : givenIn(measure, x, t));
                    }
                    return sum;
                },
                mean(measure),
                sd,
                most);
    }

    private double productVariance(double share) {
        double x = 1 - in.mean();
        return (x * x + in.variance()) * (share * share + kept.variance()) - x * x * share * share;
    }

    /** Chance that the measure is at most t when the share kept is q. */
    private double givenKept(Measure measure, double q, double t) {
        return switch (measure) {
            case IN -> in.cdf(t);
            case ON -> 1 - in.cdf(1 - t / q);
            case OFF -> 1 - in.cdf(1 - t / (1 - q));
            case POINTS -> in.cdf((t / Finish.BAGS - q) / (3 - q));
        };
    }

    /** Chance that the measure is at most t when the share in is p. */
    private double givenIn(Measure measure, double p, double t) {
        return switch (measure) {
            case IN -> p <= t ? 1 : 0;
            case ON -> kept.cdf(t / (1 - p));
            case OFF -> 1 - kept.cdf(1 - t / (1 - p));
            case POINTS -> kept.cdf((t / Finish.BAGS - 3 * p) / (1 - p));
        };
    }
}
