package boardside.engine.physics;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * What records say of how a player throws: the belief in a {@link ThrowModel}, prior times {@link ThrowLikelihood}, as
 * weighted models. Every range is 90 %.
 *
 * <p>Counts of in, on and off are two numbers for seven unknowns: they hardly tell a spread across from one along, nor aim
 * from spread; the prior decides what they leave open, and {@link #told} says how much that is. A narrow board's counts tell
 * the sides apart, told misses the two ends, taps everything but the friction itself: a slide's length is made by friction
 * and steepness together, and only from bag to bag and day to day, at one steepness, does friction show.
 *
 * <p>Immutable; the same records give the same digits.
 */
public final class ThrowFit {
    /** Models of equal weight that stand for the belief in answers. */
    private static final int DRAWS = 400;

    /** What is asked of a model. */
    public enum Parameter {
        /** Mean across, inches to the right of the hole. */
        X(ThrowModel::x),
        /** Spread across, inches. */
        SPREAD_X(ThrowModel::spreadX),
        /** Mean reach, inches up from the front edge. */
        REACH(ThrowModel::reach),
        /** Spread of the landing place along the board, inches. */
        SPREAD_Y(ThrowModel::spreadY),
        /** Spread of the speed, as a share of it. */
        SPREAD_SPEED(ThrowModel::spreadSpeed),
        /** Spread of the reach: of landing place and speed together, inches. */
        SPREAD_ALONG(ThrowModel::spreadAlong),
        /** Length of the usual slide, inches. */
        SLIDE(ThrowModel::slide),
        /** Friction of bag and board. */
        FRICTION(ThrowModel::friction),
        /** Angle at which bags come down on the board, degrees. */
        STEEPNESS(ThrowModel::steepness);

        private final ToDoubleFunction<ThrowModel> value;

        Parameter(ToDoubleFunction<ThrowModel> value) {
            this.value = value;
        }

        /** Its value in a model. */
        public double of(ThrowModel model) {
            return value.applyAsDouble(model);
        }
    }

    /**
     * What slides say of their day.
     *
     * @param slide length of a slide that day, inches
     * @param friction that day
     * @param factor the friction against the player's usual with that bag
     * @param probabilitySlower the chance that the boards are slower than the player's usual ones
     * @param slides slides it is read from
     */
    public record Day(Range slide, Range friction, Range factor, double probabilitySlower, int slides) {}

    private final ThrowRecords records;
    private final ThrowModel[] models;
    private final double[] weights;
    private final ThrowModel mode;
    private final List<ThrowModel> draws;
    private final ThrowFit before;

    private ThrowFit(ThrowPrior prior, ThrowRecords records, boolean isPrior) {
        this.records = records;
        ThrowLikelihood likelihood = new ThrowLikelihood(records);
        Sampling sampling = new Sampling(z -> logDensity(prior, likelihood, z), !likelihood.toldSides());
        weights = sampling.weights();
        models = new ThrowModel[weights.length];
        for (int i = 0; i < models.length; i++) {
            models[i] = prior.at(sampling.points()[i]);
        }
        mode = prior.at(sampling.mode());
        draws = resampled();
        before = isPrior ? this : new ThrowFit(prior, ThrowRecords.NONE, true);
    }

    private static double logDensity(ThrowPrior prior, ThrowLikelihood likelihood, double[] z) {
        double sum = 0;
        for (double value : z) {
            sum -= value * value / 2;
        }
        return sum + likelihood.log(prior.at(z));
    }

    /** What records say, given what is believed before. */
    public static ThrowFit of(ThrowPrior prior, ThrowRecords records) {
        return new ThrowFit(prior, records, records.bags() == 0);
    }

    /** Systematic resampling (Kitagawa 1996): as many models as the weights say, the light ones sharing places. */
    private List<ThrowModel> resampled() {
        List<ThrowModel> equal = new ArrayList<>(DRAWS);
        double sum = 0;
        int i = 0;
        for (int n = 0; n < DRAWS; n++) {
            double place = (n + 0.5) / DRAWS;
            while (i < weights.length - 1 && sum + weights[i] < place) {
                sum += weights[i++];
            }
            equal.add(models[i]);
        }
        return List.copyOf(equal);
    }

    /** The records. */
    public ThrowRecords records() {
        return records;
    }

    /** What was believed before the records; itself if there are none. */
    public ThrowFit before() {
        return before;
    }

    /** A parameter's range. */
    public Range range(Parameter parameter) {
        double[] values = new double[models.length];
        for (int i = 0; i < values.length; i++) {
            values[i] = parameter.of(models[i]);
        }
        return Range.of(values, weights);
    }

    /** How much narrower the records made a parameter's range, 0 (they say nothing of it) to 1 (known exactly). */
    public double told(Parameter parameter) {
        return Math.max(
                0, 1 - range(parameter).width() / before.range(parameter).width());
    }

    /** The likeliest model: the posterior mode. */
    public ThrowModel mode() {
        return mode;
    }

    /** The model of the means of all parameters, to stand for the belief where one is wanted. */
    public ThrowModel mean() {
        double[] sums = new double[7];
        for (int i = 0; i < models.length; i++) {
            ThrowModel model = models[i];
            sums[0] += weights[i] * model.x();
            sums[1] += weights[i] * model.spreadX();
            sums[2] += weights[i] * model.reach();
            sums[3] += weights[i] * model.spreadY();
            sums[4] += weights[i] * model.spreadSpeed();
            sums[5] += weights[i] * model.slide();
            sums[6] += weights[i] * model.friction();
        }
        return new ThrowModel(sums[0], sums[1], sums[2], sums[3], sums[4], sums[5], sums[6]);
    }

    /** Models of equal weight that stand for the belief. */
    public List<ThrowModel> draws() {
        return draws;
    }

    /** The range of something that follows from a model. */
    public Range of(ToDoubleFunction<ThrowModel> answer) {
        double[] values = new double[DRAWS];
        double[] equal = new double[DRAWS];
        for (int i = 0; i < DRAWS; i++) {
            values[i] = answer.applyAsDouble(draws.get(i));
            equal[i] = 1.0 / DRAWS;
        }
        return Range.of(values, equal);
    }

    /** Correlation of two parameters in the belief, -1..1; far from 0 where records cannot tell the two apart. */
    public double correlation(Parameter first, Parameter second) {
        double[] sums = new double[5];
        for (int i = 0; i < models.length; i++) {
            double a = first.of(models[i]);
            double b = second.of(models[i]);
            sums[0] += weights[i] * a;
            sums[1] += weights[i] * b;
            sums[2] += weights[i] * a * a;
            sums[3] += weights[i] * b * b;
            sums[4] += weights[i] * a * b;
        }
        double spread = (sums[2] - sums[0] * sums[0]) * (sums[3] - sums[1] * sums[1]);
        return spread > 0 ? (sums[4] - sums[0] * sums[1]) / Math.sqrt(spread) : 0;
    }

    /**
     * What slides say of their day.
     *
     * @throws IllegalArgumentException unless it is one of the records' days
     */
    public Day day(TappedDay test) {
        if (!records.days().contains(test)) {
            throw new IllegalArgumentException("this day is not among the records");
        }
        ThrowLikelihood.Day sums = new ThrowLikelihood.Day(test);
        double[] slide = new double[models.length];
        double[] friction = new double[models.length];
        double[] factor = new double[models.length];
        double slower = 0;
        for (int i = 0; i < models.length; i++) {
            double[] day = sums.frictionAgainst(models[i]);
            double log = day[0] + day[1] * Sampling.aside(i);
            factor[i] = StrictMath.exp(log);
            ThrowModel then = models[i].onBoards(factor[i]);
            slide[i] = then.slide();
            friction[i] = then.friction();
            slower += weights[i] * Phi.at(day[0] / day[1]);
        }
        return new Day(
                Range.of(slide, weights),
                Range.of(friction, weights),
                Range.of(factor, weights),
                slower,
                test.slides());
    }

    /** Mean and standard deviation of a variable of {@link ThrowPrior}, steepness in the slide's place. */
    double[] moments(int variable) {
        double sum = 0;
        double sum2 = 0;
        for (int i = 0; i < models.length; i++) {
            double value = ThrowPrior.variable(models[i], variable);
            sum += weights[i] * value;
            sum2 += weights[i] * value * value;
        }
        return new double[] {sum, Math.sqrt(Math.max(0, sum2 - sum * sum))};
    }
}
