package boardside.engine.plan;

import boardside.engine.odds.BagChances;
import boardside.engine.rules.Finish;
import boardside.engine.skill.Interval;

/**
 * What a player can do at one thing, and what came of practising it.
 *
 * @param bags thrown at it so far, as far as recorded
 * @param days since the last of them, infinite where there were none
 * @param uncertainty standard deviation of what is known of it, logits
 * @param pace how fast it has been coming against the usual, above 0; 1 where nothing tells
 */
public record Ability(double bags, double days, double uncertainty, double pace) {
    /** Checked. */
    public Ability {
        if (!(bags >= 0 && days >= 0 && uncertainty >= 0 && pace > 0)) {
            throw new IllegalArgumentException("bags, days and uncertainty are 0 or more and a pace is above 0, not "
                    + bags + ", " + days + ", " + uncertainty + ", " + pace);
        }
    }

    /** What one standard deviation of players learn faster or slower than usual, as a share; chosen. */
    private static final double SPREAD = 1;

    private static final double SLOWEST = 0.25;
    private static final double FASTEST = 3;
    private static final double NORMAL_95 = 1.6448536269514722;

    /**
     * How fast it has been coming: the change that the records show against what the law of practice has come to expect of so
     * many bags, drawn towards 1 by how little the records know (normal with mean 1 and standard deviation {@value #SPREAD}
     * beforehand, then the precision-weighted mean), within 0.25 to 3.
     *
     * @param change of points a round
     * @param bag chances now
     * @param before bags thrown before that time
     * @param since bags thrown in it
     */
    public static double pace(Interval change, BagChances bag, double before, double since) {
        double kept = bag.in() + bag.on();
        double share = kept > 0 ? bag.in() / kept : 0;
        double perLogit = Finish.BAGS * (2 * kept * share * (1 - share) + (1 + 2 * share) * kept * (1 - kept));
        double expected = perLogit
                * Learning.PER_FOLD
                * Math.log((Learning.BEFORE + before + since) / (Learning.BEFORE + before));
        if (!(expected > 1e-6)) {
            return 1;
        }
        double seen = change.estimate() / expected;
        double error = (change.high() - change.low()) / (2 * NORMAL_95) / expected;
        double weight = SPREAD * SPREAD / (SPREAD * SPREAD + error * error);
        return Math.max(SLOWEST, Math.min(FASTEST, 1 + weight * (seen - 1)));
    }

    /** Of something that was never practised: known within about one logit. */
    public static final Ability NEVER = new Ability(0, Double.POSITIVE_INFINITY, 1, 1);
}
