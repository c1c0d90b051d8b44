package boardside.engine.tactics.advice;

import boardside.engine.tactics.advice.Toy.State;
import boardside.engine.tactics.advice.Toy.Throw;
import java.util.function.BiFunction;

/** The toy's rounds solved backwards, by dynamic programming over its states; shares no code with the rollouts. */
final class ToySolved {
    private final double[] worth;

    /** @param worth of each net, -12..12 */
    ToySolved(double[] worth) {
        this.worth = worth;
    }

    /** Value of a state where each side plays what the policy says in it. */
    double value(State state, BiFunction<State, Boolean, Throw> policy) {
        return state.mine() + state.theirs() == 0
                ? worth[state.net() + 12]
                : after(state, policy.apply(state, state.myTurn()), policy);
    }

    /** Value of a shot, the policy played from then on. */
    double after(State state, Throw shot, BiFunction<State, Boolean, Throw> policy) {
        double chance = state.blocked() && shot != Throw.BLOCK ? shot.chance / 2 : shot.chance;
        return chance * value(next(state, shot, true), policy) + (1 - chance) * value(next(state, shot, false), policy);
    }

    /** Value of a state where the shot worked, or did not. */
    double next(State state, Throw shot, boolean worked, BiFunction<State, Boolean, Throw> policy) {
        return value(next(state, shot, worked), policy);
    }

    private static State next(State s, Throw shot, boolean worked) {
        int sign = s.myTurn() ? 1 : -1;
        int points = worked ? (shot == Throw.BOLD ? 3 : 1) : 0;
        int mine = s.myTurn() ? s.mine() - 1 : s.mine();
        int theirs = s.myTurn() ? s.theirs() : s.theirs() - 1;
        boolean turn = s.myTurn() ? theirs == 0 : mine > 0;
        return new State(mine, theirs, s.net() + sign * points, worked && shot == Throw.BLOCK, turn, worked);
    }

    /** Value of a state under my best play against what the policy plays for the other side: backward induction. */
    double best(State state, BiFunction<State, Boolean, Throw> theirs) {
        if (state.mine() + state.theirs() == 0) {
            return worth[state.net() + 12];
        }
        double best = Double.NEGATIVE_INFINITY;
        for (Throw shot : state.myTurn() ? Throw.values() : new Throw[] {theirs.apply(state, false)}) {
            double chance = state.blocked() && shot != Throw.BLOCK ? shot.chance / 2 : shot.chance;
            best = Math.max(
                    best,
                    chance * best(next(state, shot, true), theirs)
                            + (1 - chance) * best(next(state, shot, false), theirs));
        }
        return best;
    }

    /** The shot of the greatest value to the side to throw, the policy played from then on. */
    Throw greedy(State state, BiFunction<State, Boolean, Throw> policy) {
        Throw best = Throw.SAFE;
        for (Throw shot : Throw.values()) {
            double gain = after(state, shot, policy) - after(state, best, policy);
            if (state.myTurn() ? gain > 1e-12 : gain < -1e-12) {
                best = shot;
            }
        }
        return best;
    }
}
