package boardside.engine.physics;

import boardside.engine.physics.Tap.Place;
import boardside.engine.rules.Outcome;
import boardside.engine.rules.Tally;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The chance of what was recorded under a {@link ThrowModel}: of counts the multinomial one, as Tibshirani, Price and Taylor
 * (2011, "A statistician plays darts", Journal of the Royal Statistical Society A 174, 213-226) take it for darts from
 * scores alone; of tapped places their density, with {@link Tap#ERROR} added to the spreads, and given the place of landing
 * the chance of what followed.
 *
 * <p>Days differ in friction by {@link TappedDay#DAY_TO_DAY}; a player finds the board and keeps the reach, so counts know
 * nothing of it. All bags tapped on a day share its friction: slides are longer or shorter, and bags landed by as much
 * nearer or farther. It is integrated out by Laplace's approximation around the friction that the lengths make likeliest,
 * and what became of bags that did not stop on the board is averaged over it there, by Gauss and Hermite's rule of three
 * points.
 */
final class ThrowLikelihood {
    private static final double DERIVATIVE = 0.05;

    /** Newton's steps on a day's friction: at most so many, none longer than the second, until one is shorter than the third. */
    private static final int STEPS = 8;

    private static final double LONGEST = 0.2;
    private static final double CLOSE = 1e-5;
    private static final double ROOT_THREE = 1.7320508075688772;

    /** Gauss and Legendre's rule of six points (Abramowitz and Stegun 1964, table 25.4). */
    private static final double[] OFFSETS = {
        -0.932469514203152,
        -0.661209386466265,
        -0.238619186083197,
        0.238619186083197,
        0.661209386466265,
        0.932469514203152
    };

    private static final double[] OFFSET_WEIGHTS = {
        0.171324492379170, 0.360761573048139, 0.467913934572691, 0.467913934572691, 0.360761573048139, 0.171324492379170
    };

    /** One bag in a thousand is taken to be tapped wrongly, so that no single tap makes a model impossible. */
    private static final double MISTAPPED = 0.001;

    /**
     * However many bags are counted at a board, they are worth no more than so many: throws are not quite normal, nor are
     * days alike, and the model's shares are right to about one in a hundred only (chosen: the standard error of a share of
     * one half among so many). Without it, ten thousand bags would be believed to tell what their few per cent cannot.
     */
    private static final double MOST_WORTH = 2000;

    private final List<ThrowCount> counts = new ArrayList<>();
    private final List<ThrowKernel> kernels = new ArrayList<>();
    private final List<Day> days = new ArrayList<>();

    ThrowLikelihood(ThrowRecords records) {
        Map<Board, ThrowCount> byBoard = new LinkedHashMap<>();
        for (ThrowCount count : records.counts()) {
            byBoard.merge(count.board(), count, ThrowLikelihood::plus);
        }
        byBoard.forEach((board, count) -> {
            counts.add(count);
            kernels.add(new ThrowKernel(board));
        });
        records.days().forEach(day -> days.add(new Day(day)));
    }

    private static ThrowCount plus(ThrowCount a, ThrowCount b) {
        Tally bags = a.bags().plus(b.bags());
        return new ThrowCount(
                a.board(),
                bags,
                a.left() + b.left(),
                a.right() + b.right(),
                a.shortOf() + b.shortOf(),
                a.past() + b.past(),
                a.notIn() + b.notIn(),
                a.inOnly() + b.inOnly());
    }

    /** Whether anything tells left from right. */
    boolean toldSides() {
        return !days.isEmpty() || counts.stream().anyMatch(count -> count.left() + count.right() > 0);
    }

    /** The log of the chance, but for a constant. */
    double log(ThrowModel model) {
        double sum = 0;
        for (int i = 0; i < counts.size(); i++) {
            ThrowCount count = counts.get(i);
            sum += count.logLikelihood(kernels.get(i).chances(model)) / (1 + count.thrown() / MOST_WORTH);
        }
        for (Day day : days) {
            sum += day.log(model);
        }
        return sum;
    }

    private static double blurred(double spread) {
        return Math.sqrt(spread * spread + Tap.ERROR * Tap.ERROR);
    }

    /** Mean of the slides' lengths, a little above that of the mean speed. */
    private static double meanSlide(ThrowModel model) {
        return model.slide() * (1 + model.spreadSpeed() * model.spreadSpeed());
    }

    /** Of a tapped slide: of the speed and of both taps. */
    private static double slideVariance(ThrowModel model) {
        double speeds = 2 * model.slide() * model.spreadSpeed();
        return speeds * speeds + 2 * Tap.ERROR * Tap.ERROR;
    }

    /**
     * Of what became of a bag that landed where it was tapped. Taps err, and a far tap is likelier a tap that erred outwards:
     * the true place is normal around one drawn towards the mean. Across, that is averaged over the hole by Gauss and
     * Legendre's rule, scaled to the exact chance of lying before it; along the board it is in the model's speeds.
     */
    private static double logEnd(ThrowModel model, Outcome outcome, Place landing, ThrowKernel kernel) {
        double shareX = trusted(model.spreadX());
        double x = model.x() + shareX * (landing.x() - model.x());
        double y = model.landingY() + trusted(model.spreadY()) * (landing.y() - model.landingY());
        double error = Math.sqrt(shareX) * Tap.ERROR;
        double before = Phi.between((-Board.HOLE_RADIUS - x) / error, (Board.HOLE_RADIUS - x) / error);
        double sum = 1e-300;
        double in = 0;
        double on = 0;
        for (int i = 0; i < OFFSETS.length; i++) {
            double offset = OFFSETS[i] * Board.HOLE_RADIUS;
            double weight = OFFSET_WEIGHTS[i] * Phi.density((offset - x) / error);
            sum += weight;
            if (weight > 1e-6) {
                double[] chances = kernel.fromLanding(model, offset, y);
                in += weight * chances[0];
                on += weight * chances[1];
            }
        }
        double beside = kernel.fromLanding(model, 2 * Board.HOLE_RADIUS, y)[1];
        in *= before / sum;
        on = on * before / sum + (1 - before) * beside;
        double chance = switch (outcome) {
            case IN -> in;
            case ON -> on;
            case OFF -> 1 - in - on;
        };
        return Elementary.log((1 - MISTAPPED) * Math.max(0, chance) + MISTAPPED / 3);
    }

    /** How much of a tap's distance from the mean is the bag's own. */
    private static double trusted(double spread) {
        return spread * spread / (spread * spread + Tap.ERROR * Tap.ERROR);
    }

    /** Of a bag of which only the rest was tapped: it reached so far, having landed on the board. */
    private static double logRest(ThrowModel model, Place rest) {
        double speeds = 2 * model.slide() * model.spreadSpeed();
        double reach = speeds * speeds + model.spreadY() * model.spreadY();
        double share = model.spreadY() * model.spreadY() / reach;
        double meant = model.landingY() + meanSlide(model);
        double landed = model.landingY() + share * (rest.y() - meant);
        double left = Math.sqrt(share) * speeds;
        return Phi.logDensity(rest.x(), model.x(), blurred(model.spreadX()))
                + Phi.logDensity(rest.y(), meant, Math.sqrt(reach + Tap.ERROR * Tap.ERROR))
                + Elementary.log(Math.max(1e-9, Phi.at(landed / Math.max(left, 1e-6))));
    }

    /** A day of tapped bags, and the sums of its lengths. */
    static final class Day {
        private final TappedDay day;
        private final ThrowKernel kernel;
        private final double expected;
        private final List<Tap> others;
        private final Sums slides = new Sums();
        private final Sums landings = new Sums();

        Day(TappedDay day) {
            this.day = day;
            kernel = new ThrowKernel(day.board());
            expected = TappedDay.expected(day.conditions());
            others = day.taps().stream()
                    .filter(tap -> tap.landing() != null && tap.rest() == null)
                    .toList();
            for (Tap tap : day.taps()) {
                Double slid = tap.slid();
                if (slid != null) {
                    slides.add(slid);
                }
                Place landing = tap.landing();
                if (landing != null) {
                    landings.add(landing.y());
                }
            }
        }

        double log(ThrowModel usual) {
            double[] friction = frictionAgainst(usual);
            ThrowModel model = usual.onBoards(StrictMath.exp(friction[0]));
            double across = blurred(model.spreadX());
            double sum = 0;
            int missed = 0;
            for (Tap tap : day.taps()) {
                Place landing = tap.landing();
                Place rest = tap.rest();
                if (landing != null) {
                    sum += Phi.logDensity(landing.x(), model.x(), across);
                } else if (rest != null) {
                    sum += logRest(model, rest);
                } else {
                    missed++;
                }
            }
            double lands = lands(model, day.board());
            if (day.slideTest()) {
                sum -= day.taps().size() * Elementary.log(Math.max(1e-9, lands));
            } else if (missed > 0) {
                sum += missed * Elementary.log(Math.max(1e-9, 1 - lands));
            }
            double z = (friction[0] - expected) / TappedDay.DAY_TO_DAY;
            sum += landings.log(model.landingY(), blurred(model.spreadY()))
                    + slides.log(meanSlide(model), Math.sqrt(slideVariance(model)))
                    - z * z / 2
                    + Elementary.log(friction[1] / TappedDay.DAY_TO_DAY);
            return others.isEmpty() ? sum : sum + logOthers(usual, friction);
        }

        /**
         * What the lengths say of the day's friction, under a model: by Gauss and Newton's method.
         *
         * @return mean and standard deviation of the log of the day's friction against the usual
         */
        double[] frictionAgainst(ThrowModel usual) {
            double days = 1 / (TappedDay.DAY_TO_DAY * TappedDay.DAY_TO_DAY);
            double log = expected;
            double precision = days;
            for (int step = 0; step < STEPS && slides.n + landings.n > 0; step++) {
                ThrowModel model = usual.onBoards(StrictMath.exp(log));
                double perLog = perLog(model);
                double bySlide = perLog / slideVariance(model);
                double byLanding = perLog / (blurred(model.spreadY()) * blurred(model.spreadY()));
                precision = days + slides.n * perLog * bySlide + landings.n * perLog * byLanding;
                double pull = days * (expected - log)
                        + bySlide * (slides.sum - slides.n * meanSlide(model))
                        - byLanding * (landings.sum - landings.n * model.landingY());
                double move = pull / precision;
                log += Math.max(-LONGEST, Math.min(LONGEST, move));
                if (Math.abs(move) < CLOSE) {
                    break;
                }
            }
            return new double[] {log, 1 / Math.sqrt(precision)};
        }

        private double logOthers(ThrowModel usual, double[] friction) {
            double middle = logOthers(usual, friction[0]);
            double low = logOthers(usual, friction[0] - ROOT_THREE * friction[1]);
            double high = logOthers(usual, friction[0] + ROOT_THREE * friction[1]);
            double most = Math.max(middle, Math.max(low, high));
            return most
                    + Elementary.log((4 * Elementary.exp(middle - most)
                                    + Elementary.exp(low - most)
                                    + Elementary.exp(high - most))
                            / 6);
        }

        private double logOthers(ThrowModel usual, double log) {
            ThrowModel then = usual.onBoards(StrictMath.exp(log));
            double tap = Math.sqrt(trusted(then.spreadY())) * Tap.ERROR / (2 * then.slide());
            ThrowModel tapped = new ThrowModel(
                    then.x(),
                    then.spreadX(),
                    then.reach(),
                    then.spreadY(),
                    Math.sqrt(then.spreadSpeed() * then.spreadSpeed() + tap * tap),
                    then.slide(),
                    then.friction());
            double sum = 0;
            for (Tap other : others) {
                Place landing = other.landing();
                if (landing != null) {
                    sum += logEnd(tapped, other.outcome(), landing, kernel);
                }
            }
            return sum;
        }

        private static double lands(ThrowModel model, Board board) {
            double half = board.width() / 2;
            return Phi.between((-half - model.x()) / model.spreadX(), (half - model.x()) / model.spreadX())
                    * Phi.between(
                            -model.landingY() / model.spreadY(), (Board.LENGTH - model.landingY()) / model.spreadY());
        }

        /** How a slide's length changes with the log of the friction at the same steepness, inches; below 0. */
        private static double perLog(ThrowModel model) {
            double steepness = model.steepness();
            return (ThrowModel.slide(steepness, model.friction() * (1 + DERIVATIVE))
                            - ThrowModel.slide(steepness, model.friction() * (1 - DERIVATIVE)))
                    / (2 * DERIVATIVE);
        }
    }

    /** Sums of lengths, inches. */
    private static final class Sums {
        private int n;
        private double sum;
        private double squares;

        void add(double length) {
            n++;
            sum += length;
            squares += length * length;
        }

        /** The log of their density as normal variables. */
        double log(double mean, double deviation) {
            double around = squares - 2 * mean * sum + n * mean * mean;
            return -n * (0.9189385332046727 + Elementary.log(deviation)) - around / (2 * deviation * deviation);
        }
    }
}
