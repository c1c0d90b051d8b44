package boardside.engine.trial.simulated;

import boardside.engine.rules.Tally;
import boardside.engine.trial.Unit;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;

/**
 * A player in a trial whose candidates truly differ by what is said. A bag is kept, and a kept one is in, by two logits:
 *
 * <ul>
 *   <li>base: kept uniform on 0..2.2, in on -1.4..0.9 (about 3 to 9 points a round), as {@code SimulatedPlayer} has it;
 *   <li>candidates: one shift of both logits that makes just the difference in points a round;
 *   <li>level: a random walk from outing to outing, 0.04 a step;
 *   <li>days: 0.2; runs: 0.1; both for both logits;
 *   <li>streaks: within a run, an autoregression with 0.9 from round to round and a standard deviation of 0.2;
 *   <li>warming up: -0.4 at the first round of an outing, fading with eight rounds; tiring: -0.3 a hundred rounds.
 * </ul>
 *
 * Whoever throws stops after so many rounds as an outing has, in the middle of a block too.
 */
public final class SimulatedThrower {
    private static final double STREAK = 0.2;
    private static final double STICKS = 0.9;

    private final UniformRandomProvider random;
    private final ZigguratSampler.NormalizedGaussian normal;
    private final double kept;
    private final double in;
    private final double[] shifts;
    private double level;
    private double outing;
    private double streak;
    private int round;
    private int rounds;

    /**
     * Draws a player.
     *
     * @param differences points per round of each candidate above the first, which has 0
     */
    public SimulatedThrower(double[] differences, UniformRandomProvider random) {
        this.random = random;
        normal = ZigguratSampler.NormalizedGaussian.of(random);
        kept = 2.2 * random.nextDouble();
        in = -1.4 + 2.3 * random.nextDouble();
        shifts = new double[differences.length];
        double base = points(0);
        for (int c = 0; c < shifts.length; c++) {
            shifts[c] = differences[c] == 0 ? 0 : shift(base + differences[c]);
        }
        nextOuting();
    }

    private double shift(double wanted) {
        double low = -6;
        double high = 6;
        for (int step = 0; step < 50; step++) {
            double middle = (low + high) / 2;
            if (points(middle) < wanted) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private double points(double shift) {
        double keeps = logistic(kept + shift);
        return 4 * keeps * (1 + 2 * logistic(in + shift));
    }

    private static double logistic(double x) {
        return 1 / (1 + Math.exp(-x));
    }

    /** The next outing: another day, warm up again. */
    public void nextOuting() {
        level += 0.04 * normal.sample();
        outing = 0.2 * normal.sample() + 0.1 * normal.sample();
        streak = STREAK * normal.sample();
        round = 0;
        rounds = 10 + random.nextInt(50);
    }

    /** Whether the player has had enough for today. */
    public boolean tired() {
        return round >= rounds;
    }

    /** Two rounds of a candidate. */
    public Unit unit(int candidate) {
        int inHole = 0;
        int onBoard = 0;
        for (int i = 0; i < 2; i++) {
            double now = level + outing + streak + shifts[candidate] - 0.4 * Math.exp(-round / 8.0) - 0.003 * round;
            double keeps = logistic(kept + now);
            double goesIn = keeps * logistic(in + now);
            for (int bag = 0; bag < 4; bag++) {
                double u = random.nextDouble();
                inHole += u < goesIn ? 1 : 0;
                onBoard += u >= goesIn && u < keeps ? 1 : 0;
            }
            streak = STICKS * streak + Math.sqrt(1 - STICKS * STICKS) * STREAK * normal.sample();
            round++;
        }
        return new Unit(candidate, new Tally(inHole, onBoard, Unit.BAGS - inHole - onBoard));
    }
}
