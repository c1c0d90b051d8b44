package boardside.engine.odds;

import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * What a better bag is worth: the change in a chance when one bag in a hundred moves.
 *
 * @param winProbability the chance as it is
 * @param offToOn what it gains when one bag in a hundred that went off stays on; empty where fewer go off
 * @param onToIn the same from on to in; empty where fewer stay on
 * @param offToIn the same from off to in; empty where fewer go off
 */
public record Worth(double winProbability, OptionalDouble offToOn, OptionalDouble onToIn, OptionalDouble offToIn) {
    /** One bag in a hundred. */
    public static final double STEP = 0.01;

    /** What a share written as a decimal may miss {@link #STEP} by. */
    private static final double ROUNDING = 1e-12;

    /**
     * The worth of a better bag.
     *
     * @param bag the chances as they are
     * @param win the chance they give: of winning a race, of being ahead in a match, of reaching a total
     */
    public static Worth of(BagChances bag, ToDoubleFunction<BagChances> win) {
        double now = win.applyAsDouble(bag);
        return new Worth(
                now,
                gain(bag.off(), bag.in(), bag.on() + STEP, win, now),
                gain(bag.on(), bag.in() + STEP, bag.on() - STEP, win, now),
                gain(bag.off(), bag.in() + STEP, bag.on(), win, now));
    }

    private static OptionalDouble gain(
            double movable, double in, double on, ToDoubleFunction<BagChances> win, double now) {
        if (!(movable >= STEP - ROUNDING)) {
            return OptionalDouble.empty();
        }
        BagChances moved = new BagChances(Math.min(1, in), Math.max(0, Math.min(1, on)));
        return OptionalDouble.of(win.applyAsDouble(moved) - now);
    }
}
