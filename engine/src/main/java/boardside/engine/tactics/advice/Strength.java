package boardside.engine.tactics.advice;

import boardside.engine.physics.Board;
import boardside.engine.physics.Range;
import boardside.engine.tactics.Lane;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * A side on which a player is better: cuts one way, or bags put in one lane, against the mirror image.
 *
 * <p>Tries of a shot and of its mirror image are compared within each kind of board, mirrored, so that harder boards on one
 * side do not look like a weakness: of t that worked out of n_1 + n_2, y_1 on the first side have the chance C(n_1, y_1)
 * C(n_2, t - y_1) psi^y_1 but for a constant, whatever the kind's difficulty (Cox 1970, Analysis of Binary Data, chapter 4;
 * psi the odds ratio), with log psi ~ N(0, 1) before any try (common practice, no source). A strength is told when the chance
 * of its sign is so great that of players without any at most one in twenty is told of one, over all pairs that are compared.
 *
 * @param what which pair
 * @param left whether the left is the better side
 * @param probability chance that it is
 * @param oddsRatio odds of working on the better side over those on the other
 * @param tries on both sides
 */
public record Strength(Pair what, boolean left, double probability, Range oddsRatio, int tries) {
    /** What is compared. */
    public enum Pair {
        /** A cut to the left against one to the right. */
        CUTS,
        /** Bags put in the left lane against the right one. */
        LANES
    }

    private static final double ERRORS = 0.05;

    /** Chance of the sign from which a strength is told: errors are shared by the pairs, and by either sign. */
    static final double SURE = 1 - ERRORS / (2 * Pair.values().length);

    private static final double FARTHEST = 6;
    private static final double STEP = 0.02;

    /** One kind of board: tries and successes on either side. */
    private static final class Stratum {
        private int leftTries;
        private int leftWorked;
        private int rightTries;
        private int rightWorked;
    }

    /** The strengths that tries tell of, surest first. */
    public static List<Strength> of(List<Tried> tries) {
        List<Strength> told = new ArrayList<>();
        for (Pair pair : Pair.values()) {
            Strength found = compared(pair, tries);
            if (found != null && found.probability() >= SURE) {
                told.add(found);
            }
        }
        told.sort((a, b) -> Double.compare(b.probability(), a.probability()));
        return List.copyOf(told);
    }

    private static @Nullable Boolean leftSide(Pair pair, Tried tried) {
        if (pair == Pair.CUTS) {
            return tried.shot() == Shot.CUT_LEFT ? Boolean.TRUE : tried.shot() == Shot.CUT_RIGHT ? Boolean.FALSE : null;
        }
        Target target = tried.target();
        if (!tried.shot().placed() || target == null || target.lane() == Lane.MIDDLE) {
            return null;
        }
        return target.lane() == Lane.LEFT;
    }

    private static @Nullable Strength compared(Pair pair, List<Tried> tries) {
        Map<String, Stratum> strata = new TreeMap<>();
        int count = 0;
        for (Tried tried : tries) {
            Boolean left = leftSide(pair, tried);
            if (left == null) {
                continue;
            }
            Target target = tried.target();
            String code = (left ? tried.position() : tried.position().mirrored()).code(Board.REGULATION_WIDTH);
            String depth =
                    pair == Pair.CUTS || target == null ? "" : target.depth().word();
            Stratum stratum = strata.computeIfAbsent(code + " " + depth, key -> new Stratum());
            if (left) {
                stratum.leftTries += tried.tries();
                stratum.leftWorked += tried.worked();
            } else {
                stratum.rightTries += tried.tries();
                stratum.rightWorked += tried.worked();
            }
            count += tried.tries();
        }
        return count == 0 ? null : believed(pair, List.copyOf(strata.values()), count);
    }

    private static Strength believed(Pair pair, List<Stratum> strata, int count) {
        int points = (int) Math.round(2 * FARTHEST / STEP) + 1;
        double[] ratios = new double[points];
        double[] weights = new double[points];
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < points; i++) {
            double delta = i * STEP - FARTHEST;
            ratios[i] = delta;
            weights[i] = -delta * delta / 2;
            for (Stratum stratum : strata) {
                weights[i] += logLikelihood(stratum, delta);
            }
            most = Math.max(most, weights[i]);
        }
        double sum = 0;
        double left = 0;
        for (int i = 0; i < points; i++) {
            weights[i] = StrictMath.exp(weights[i] - most);
            sum += weights[i];
            left += i > points / 2 ? weights[i] : i == points / 2 ? weights[i] / 2 : 0;
        }
        boolean better = left > sum / 2;
        for (int i = 0; i < points; i++) {
            weights[i] /= sum;
            ratios[i] = StrictMath.exp(better ? ratios[i] : -ratios[i]);
        }
        return new Strength(pair, better, Math.max(left, sum - left) / sum, Range.of(ratios, weights), count);
    }

    /** Log of the noncentral hypergeometric chance of the successes on the left, given those on both sides. */
    private static double logLikelihood(Stratum s, double delta) {
        int worked = s.leftWorked + s.rightWorked;
        int low = Math.max(0, worked - s.rightTries);
        int high = Math.min(s.leftTries, worked);
        double term = 0;
        double at = 0;
        double largest = 0;
        double[] terms = new double[high - low + 1];
        for (int y = low; y <= high; y++) {
            if (y > low) {
                // C(n1, y) C(n2, t - y) over that of y - 1.
                term += StrictMath.log((double) (s.leftTries - y + 1) / y)
                        + StrictMath.log((double) (worked - y + 1) / (s.rightTries - worked + y))
                        + delta;
            }
            terms[y - low] = term;
            largest = Math.max(largest, term);
            if (y == s.leftWorked) {
                at = term;
            }
        }
        double sum = 0;
        for (double one : terms) {
            sum += StrictMath.exp(one - largest);
        }
        return at - largest - StrictMath.log(sum);
    }
}
