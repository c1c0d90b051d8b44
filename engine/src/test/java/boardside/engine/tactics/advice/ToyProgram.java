package boardside.engine.tactics.advice;

import boardside.engine.tactics.advice.Toy.State;
import boardside.engine.tactics.advice.Toy.Throw;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import org.hipparchus.optim.MaxIter;
import org.hipparchus.optim.PointValuePair;
import org.hipparchus.optim.linear.LinearConstraint;
import org.hipparchus.optim.linear.LinearConstraintSet;
import org.hipparchus.optim.linear.LinearObjectiveFunction;
import org.hipparchus.optim.linear.NonNegativeConstraint;
import org.hipparchus.optim.linear.Relationship;
import org.hipparchus.optim.linear.SimplexSolver;
import org.hipparchus.optim.nonlinear.scalar.GoalType;

/**
 * The toy's rounds as a linear programme, solved by Hipparchus' simplex method: the least values that no throw of mine beats
 * are those of the best play against a fixed opponent (Manne 1960, "Linear programming and sequential decisions", Management
 * Science 6, 259-267; recalled from memory). No recursion over values anywhere, and no code in common with {@link ToySolved}.
 */
final class ToyProgram {
    /** Values are counted from here, so that none is negative: the programme's variables are not. */
    private static final double FLOOR = -12;

    private final Map<State, Integer> number = new LinkedHashMap<>();
    private final double[] worth;
    private final Function<State, List<Throw>> mine;
    private final Function<State, Throw> theirs;
    private final double[] values;

    /**
     * Solves it for all states that can follow from some.
     *
     * @param worth of each net, -12..12
     * @param mine throws that I may choose from in a state: all of them, or one where my play is fixed
     * @param theirs what the opponent throws
     */
    ToyProgram(
            Collection<State> from, double[] worth, Function<State, List<Throw>> mine, Function<State, Throw> theirs) {
        this.worth = worth;
        this.mine = mine;
        this.theirs = theirs;
        reach(from);
        List<LinearConstraint> constraints = new ArrayList<>();
        number.keySet().forEach(state -> constrain(state, constraints));
        double[] sum = new double[number.size()];
        Arrays.fill(sum, 1);
        PointValuePair found = new SimplexSolver(1e-9, 10, 1e-12)
                .optimize(
                        new MaxIter(100_000),
                        new LinearObjectiveFunction(sum, 0),
                        new LinearConstraintSet(constraints),
                        GoalType.MINIMIZE,
                        new NonNegativeConstraint(true));
        values = found.getPoint();
    }

    /** States that look the same from here on; whether the last throw worked changes nothing. */
    private static State plain(State state) {
        return new State(state.mine(), state.theirs(), state.net(), state.blocked(), state.myTurn(), false);
    }

    private static boolean over(State state) {
        return state.mine() + state.theirs() == 0;
    }

    private List<Throw> throwsIn(State state) {
        return state.myTurn() ? mine.apply(state) : List.of(theirs.apply(state));
    }

    private void reach(Collection<State> from) {
        Deque<State> open = new ArrayDeque<>();
        from.forEach(state -> open.add(plain(state)));
        while (!open.isEmpty()) {
            State state = open.remove();
            if (!over(state) && number.putIfAbsent(state, number.size()) == null) {
                for (Throw shot : throwsIn(state)) {
                    open.add(plain(Toy.after(state, shot, true)));
                    open.add(plain(Toy.after(state, shot, false)));
                }
            }
        }
    }

    /** v(s) is at least what each throw comes to; exactly that where there is no choice. */
    private void constrain(State state, List<LinearConstraint> constraints) {
        List<Throw> shots = throwsIn(state);
        for (Throw shot : shots) {
            double[] coefficients = new double[number.size()];
            coefficients[at(state)] = 1;
            double constant = 0;
            for (boolean worked : new boolean[] {true, false}) {
                double chance = worked ? Toy.chance(state, shot) : 1 - Toy.chance(state, shot);
                State next = plain(Toy.after(state, shot, worked));
                if (over(next)) {
                    constant += chance * (worth[next.net() + 12] - FLOOR);
                } else {
                    coefficients[at(next)] -= chance;
                }
            }
            constraints.add(new LinearConstraint(
                    coefficients, shots.size() == 1 ? Relationship.EQ : Relationship.GEQ, constant));
        }
    }

    private int at(State state) {
        return Objects.requireNonNull(number.get(plain(state)), () -> "not reached: " + state);
    }

    /** Value of a state. */
    double value(State state) {
        return over(state) ? worth[state.net() + 12] : values[at(state)] + FLOOR;
    }

    /** Value of a throw in a state, what was solved for played from then on. */
    double after(State state, Throw shot) {
        double chance = Toy.chance(state, shot);
        return chance * value(Toy.after(state, shot, true)) + (1 - chance) * value(Toy.after(state, shot, false));
    }
}
