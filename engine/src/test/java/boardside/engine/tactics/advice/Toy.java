package boardside.engine.tactics.advice;

import java.util.List;
import java.util.function.Function;

/**
 * A round small enough to solve completely: no board, only a block that is there or not. Rules of the toy are written twice,
 * here as chance and in {@link ToySolved} as equations.
 */
final class Toy implements Turns<Toy.State, Toy.Throw> {
    /** Bags left of either side, net points so far, whether the side to throw faces a block, whose turn it is. */
    record State(int mine, int theirs, int net, boolean blocked, boolean myTurn, boolean lastWorked) {}

    enum Throw {
        /** On the board nearly always: one point. */
        SAFE(0.9),
        /** In: three points, else none. */
        BOLD(0.35),
        /** One point, and in the other's way. */
        BLOCK(0.6);

        final double chance;

        Throw(double chance) {
            this.chance = chance;
        }
    }

    /** What a block leaves of the chance of a safe or bold throw; a block is put as before. */
    static final double BLOCKED = 0.5;

    static final List<Throw> ALL = List.of(Throw.values());

    private final Function<State, Throw> base;

    /** A base policy of both sides that always plays the same. */
    Toy(Throw base) {
        this(state -> base);
    }

    /** A base policy of both sides. */
    Toy(Function<State, Throw> base) {
        this.base = base;
    }

    static double chance(State state, Throw shot) {
        return state.blocked() && shot != Throw.BLOCK ? BLOCKED * shot.chance : shot.chance;
    }

    static State after(State state, Throw shot, boolean worked) {
        int points = !worked ? 0 : shot == Throw.BOLD ? 3 : 1;
        boolean block = worked && shot == Throw.BLOCK;
        int mine = state.mine() - (state.myTurn() ? 1 : 0);
        int theirs = state.theirs() - (state.myTurn() ? 0 : 1);
        boolean next = state.myTurn() ? theirs == 0 : mine > 0;
        return new State(mine, theirs, state.net() + (state.myTurn() ? points : -points), block, next, worked);
    }

    @Override
    public int left(State state) {
        return state.mine() + state.theirs();
    }

    @Override
    public int turn(State state) {
        return left(state);
    }

    @Override
    public Throw base(State state) {
        return base.apply(state);
    }

    @Override
    public State play(State state, Throw shot, int draw, Luck luck) {
        return after(state, shot, luck.uniform(turn(state), 0) < chance(state, shot));
    }

    @Override
    public boolean worked(State before, Throw shot, State after) {
        return after.lastWorked();
    }

    @Override
    public int result(State state) {
        return state.net() + Lie.MOST;
    }

    @Override
    public int results() {
        return 2 * Lie.MOST + 1;
    }

    @Override
    public int draws() {
        return 4;
    }
}
