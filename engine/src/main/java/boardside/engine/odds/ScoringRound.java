package boardside.engine.odds;

import boardside.engine.rules.FirstThrow;

/**
 * The next round in which somebody scores, from a given first throw on; the rounds without points before it are summed
 * up in closed form.
 *
 * <p>With z, z' the chances of no points when this side, or the other, throws first, a net of n comes next with chance
 * p(n) / (1 - z) if the first throw is kept and (p(n) + z p'(n)) / (1 - z z') if it swaps; 1 - z is summed from the
 * chances that score, so that nothing cancels.
 *
 * @param gain chances by points 0..12 that I score so many; entry 0 is 0. Not to be modified.
 * @param loss the same for the other side. Not to be modified.
 * @param rounds expected rounds up to and with that round
 * @param never whether nobody ever scores from here on; then the chances are all 0
 */
record ScoringRound(double[] gain, double[] loss, double rounds, boolean never) {

    /** From one net distribution, whoever throws first. */
    static ScoringRound of(NetDistribution net) {
        return of(net, net, FirstThrow.KEEP);
    }

    /**
     * For one who may throw first.
     *
     * @param now a round with the first throw as it is
     * @param swapped a round with the first throw on the other side, as seen from the same side as {@code now}
     * @param rule what becomes of the first throw after a round without points
     */
    static ScoringRound of(NetDistribution now, NetDistribution swapped, FirstThrow rule) {
        double none = rule == FirstThrow.KEEP ? 0 : now.chance(0);
        double leave = scoring(now) + (rule == FirstThrow.KEEP ? 0 : none * scoring(swapped));
        double[] gain = new double[NetDistribution.MOST + 1];
        double[] loss = new double[NetDistribution.MOST + 1];
        if (!(leave > 0)) {
            return new ScoringRound(gain, loss, Double.POSITIVE_INFINITY, true);
        }
        for (int points = 1; points <= NetDistribution.MOST; points++) {
            gain[points] = (now.chance(points) + none * swapped.chance(points)) / leave;
            loss[points] = (now.chance(-points) + none * swapped.chance(-points)) / leave;
        }
        return new ScoringRound(gain, loss, (1 + none) / leave, false);
    }

    private static double scoring(NetDistribution net) {
        double sum = 0;
        for (int points = 1; points <= NetDistribution.MOST; points++) {
            sum += net.chance(points) + net.chance(-points);
        }
        return sum;
    }

    /** Most points I can score, 0 if none. */
    int mostGain() {
        return most(gain);
    }

    /** Most points the other side can score, 0 if none. */
    int mostLoss() {
        return most(loss);
    }

    private static int most(double[] chances) {
        int most = chances.length - 1;
        while (most > 0 && chances[most] == 0) {
            most--;
        }
        return most;
    }
}
