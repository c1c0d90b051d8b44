package boardside.engine.tactics.advice;

import boardside.engine.odds.BagChances;
import boardside.engine.physics.Board;
import boardside.engine.physics.ThrowChances;
import boardside.engine.physics.ThrowKernel;
import boardside.engine.physics.ThrowMatch;
import boardside.engine.physics.ThrowModel;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import java.util.ArrayList;
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
    private static final ThrowKernel KERNEL = new ThrowKernel(Board.of(BoardKind.REGULATION));

    /** A model has the chances that were told if it has them this nearly. */
    private static final double MATCHED = 1e-3;

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

    /**
     * One of whom the draws are believed. Spreads that are little known make the chances of the middle of the belief better
     * than chances are on average over it, so the model that stands for it is that middle with the average chances at an
     * empty board ({@link ThrowMatch}).
     *
     * @param middle the middle of the belief
     */
    public static Thrower believed(ThrowModel middle, List<ThrowModel> draws, Approach approach, List<Tried> tries) {
        Thrower some = new Thrower(middle, draws, approach, tries).thinned(Matchup.DRAWS);
        double in = 0;
        double on = 0;
        for (ThrowModel draw : some.draws) {
            ThrowChances chances = KERNEL.chances(draw);
            in += chances.in() / some.draws.size();
            on += chances.on() / some.draws.size();
        }
        return new Thrower(ThrowMatch.of(middle, in, on), some.draws, approach, tries);
    }

    /**
     * One whose chances at an empty board are told: draws are brought to them ({@link ThrowMatch}). A draw that cannot be (a
     * bag that slides farther than from the front edge to the hole, say) is none the player can be, and left out; where none
     * can be, all stay as near as they come.
     *
     * @param middle the middle of the belief
     * @param draws what is believed of how they throw
     */
    public static Thrower told(
            BagChances chances, ThrowModel middle, List<ThrowModel> draws, Approach approach, List<Tried> tries) {
        List<ThrowModel> near = new Thrower(middle, draws, approach, tries)
                .thinned(Matchup.DRAWS).draws.stream()
                        .map(draw -> ThrowMatch.of(draw, chances.in(), chances.on()))
                        .toList();
        List<ThrowModel> matched = near.stream()
                .filter(model -> {
                    ThrowChances has = KERNEL.chances(model);
                    return Math.max(Math.abs(has.in() - chances.in()), Math.abs(has.on() - chances.on())) < MATCHED;
                })
                .toList();
        return new Thrower(
                ThrowMatch.of(middle, chances.in(), chances.on()), matched.isEmpty() ? near : matched, approach, tries);
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
        List<ThrowModel> some = new ArrayList<>();
        for (int i = 0; i < most; i++) {
            some.add(draws.get((int) ((i + 0.5) * draws.size() / most)));
        }
        return new Thrower(usual, some, approach, tries);
    }
}
