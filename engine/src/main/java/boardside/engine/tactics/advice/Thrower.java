package boardside.engine.tactics.advice;

import boardside.engine.physics.ThrowModel;
import boardside.engine.rules.Approach;
import java.util.List;

/**
 * How a side throws.
 *
 * @param usual the model that stands for the belief
 * @param draws models that the records leave possible, equally likely; at least one
 * @param approach base policy in the rest of a round
 * @param tries the side's own tries at targets and in situations; may be empty
 */
public record Thrower(ThrowModel usual, List<ThrowModel> draws, Approach approach, List<Tried> tries) {
    /** Lists copied. */
    public Thrower {
        draws = List.copyOf(draws);
        tries = List.copyOf(tries);
        if (draws.isEmpty()) {
            throw new IllegalArgumentException("a thrower has at least one model");
        }
    }

    /** One of whom everything is taken as known. */
    public static Thrower known(ThrowModel model, Approach approach) {
        return new Thrower(model, List.of(model), approach, List.of());
    }

    /** The same with another base policy. */
    public Thrower with(Approach other) {
        return new Thrower(usual, draws, other, tries);
    }

    /** The same with other tries. */
    public Thrower with(List<Tried> other) {
        return new Thrower(usual, draws, approach, other);
    }

    /** At most so many of the draws, spread evenly over them. */
    Thrower thinned(int most) {
        if (draws.size() <= most) {
            return this;
        }
        List<ThrowModel> some = new java.util.ArrayList<>();
        for (int i = 0; i < most; i++) {
            some.add(draws.get((int) ((i + 0.5) * draws.size() / most)));
        }
        return new Thrower(usual, some, approach, tries);
    }
}
