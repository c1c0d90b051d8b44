package boardside.engine.tactics.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.tactics.advice.Toy.State;
import boardside.engine.tactics.advice.Toy.Throw;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.ForkJoinPool;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Rollouts on rounds that {@link ToySolved} solves completely. */
class RolloutsTest {
    private static final Evidence SIMULATED = new Evidence(Double.NaN, false, 0, 0);
    private static final double[] LINEAR = worth(net -> net);
    /** Behind: only three points or more are any good. */
    private static final double[] BEHIND = worth(net -> net >= 3 ? 1 : 0);
    /** Ahead: anything but a loss will do. */
    private static final double[] AHEAD = worth(net -> net >= 0 ? 1 : 0);

    private static double[] worth(IntToDoubleFunction of) {
        double[] worth = new double[25];
        for (int i = 0; i < 25; i++) {
            worth[i] = of.applyAsDouble(i - 12);
        }
        return worth;
    }

    private static double[][] byDraw(double[] worth) {
        double[][] values = new double[4][];
        Arrays.fill(values, worth);
        return values;
    }

    private static List<State> states() {
        List<State> states = new ArrayList<>();
        for (int mine = 1; mine <= 3; mine++) {
            for (int theirs = mine - 1; theirs <= mine; theirs++) {
                for (int net = -2; net <= 2; net += 2) {
                    states.add(new State(mine, theirs, net, false, true, false));
                    states.add(new State(mine, theirs, net, true, true, false));
                }
            }
        }
        return states;
    }

    @Test
    void valuesAgreeWithDynamicProgramming() {
        int outside = 0;
        int all = 0;
        for (double[] worth : List.of(LINEAR, BEHIND, AHEAD)) {
            ToySolved solved = new ToySolved(worth);
            for (Throw base : List.of(Throw.SAFE, Throw.BOLD)) {
                BiFunction<State, Boolean, Throw> policy = (state, mine) -> base;
                for (State state : states()) {
                    for (Sampled<Throw> sampled : Rollouts.halving(
                            new Toy(base),
                            state,
                            Toy.ALL,
                            6000,
                            all,
                            s -> Estimate.of(s, byDraw(worth), SIMULATED, new double[4])
                                    .value())) {
                        Estimate estimate = Estimate.of(sampled, byDraw(worth), SIMULATED, new double[4]);
                        double exact = solved.after(state, sampled.shot(), policy);
                        double error = Math.max(estimate.error(), 1e-9);
                        assertThat(estimate.value()).isCloseTo(exact, within(6 * error + 1e-3));
                        outside += Math.abs(estimate.value() - exact) > 2 * error + 1e-9 ? 1 : 0;
                        all++;
                    }
                }
            }
        }
        // Two standard errors hold about 95 in 100.
        assertThat((double) outside / all).isLessThan(0.08);
    }

    @Test
    void lastBagsAreIntegratedMoreExactlyThanByChance() {
        ToySolved solved = new ToySolved(BEHIND);
        State state = new State(1, 0, 1, false, true, false);
        for (Sampled<Throw> sampled : Rollouts.halving(new Toy(Throw.SAFE), state, Toy.ALL, 12_000, 5, s -> 0)) {
            Estimate estimate = Estimate.of(sampled, byDraw(BEHIND), SIMULATED, new double[4]);
            assertThat(estimate.value())
                    .isCloseTo(solved.after(state, sampled.shot(), (s, mine) -> Throw.SAFE), within(0.003));
        }
    }

    @Test
    void theShotFoundIsTheOneThatPolicyImprovementPicks() {
        for (double[] worth : List.of(LINEAR, BEHIND, AHEAD)) {
            ToySolved solved = new ToySolved(worth);
            BiFunction<State, Boolean, Throw> policy = (state, mine) -> Throw.SAFE;
            for (State state : states()) {
                Throw found = Rollouts.halving(
                                new Toy(Throw.SAFE),
                                state,
                                Toy.ALL,
                                6000,
                                9,
                                s -> Estimate.of(s, byDraw(worth), SIMULATED, new double[4])
                                        .value())
                        .get(0)
                        .shot();
                double lost =
                        solved.after(state, solved.greedy(state, policy), policy) - solved.after(state, found, policy);
                assertThat(lost).as("%s", state).isLessThan(0.05);
            }
        }
    }

    @Test
    void oneStepOfImprovementIsNeverWorseAndSomewhereBetter() {
        for (double[] worth : List.of(LINEAR, BEHIND, AHEAD)) {
            ToySolved solved = new ToySolved(worth);
            BiFunction<State, Boolean, Throw> policy = (state, mine) -> Throw.SAFE;
            BiFunction<State, Boolean, Throw> improved =
                    (state, mine) -> mine ? solved.greedy(state, policy) : policy.apply(state, false);
            double gained = 0;
            for (State state : states()) {
                double gain = solved.value(state, improved) - solved.value(state, policy);
                assertThat(gain).as("%s", state).isGreaterThan(-1e-12);
                gained += gain;
            }
            assertThat(gained).isGreaterThan(0.1);
        }
    }

    @Test
    void valuesAgreeWithALinearProgramme() {
        List<State> states = states();
        for (double[] worth : List.of(LINEAR, BEHIND, AHEAD)) {
            ToySolved solved = new ToySolved(worth);
            for (Throw base : List.of(Throw.SAFE, Throw.BOLD)) {
                BiFunction<State, Boolean, Throw> policy = (state, mine) -> base;
                ToyProgram fixed = new ToyProgram(states, worth, state -> Toy.ALL, state -> base);
                ToyProgram both = new ToyProgram(reached(states), worth, state -> List.of(base), state -> base);
                for (State state : states) {
                    // Two ways to the same: by equations backwards, and by the simplex method over all states at once.
                    assertThat(fixed.value(state)).isCloseTo(solved.best(state, policy), within(1e-9));
                    assertThat(both.value(state)).isCloseTo(solved.value(state, policy), within(1e-9));
                }
                for (State state : states.subList(0, 12)) {
                    for (Sampled<Throw> sampled :
                            Rollouts.halving(new Toy(base), state, Toy.ALL, 6000, 31, s -> value(s, worth))) {
                        Estimate estimate = Estimate.of(sampled, byDraw(worth), SIMULATED, new double[4]);
                        assertThat(estimate.value())
                                .isCloseTo(
                                        both.after(state, sampled.shot()),
                                        within(6 * Math.max(estimate.error(), 1e-9) + 1e-3));
                    }
                }
            }
        }
    }

    /** All that can follow, whatever either side throws. */
    private static Set<State> reached(List<State> states) {
        Set<State> reached = new LinkedHashSet<>();
        Deque<State> open = new ArrayDeque<>(states);
        while (!open.isEmpty()) {
            State state = open.remove();
            if (reached.add(state) && state.mine() + state.theirs() > 0) {
                for (Throw shot : Toy.ALL) {
                    open.add(Toy.after(state, shot, true));
                    open.add(Toy.after(state, shot, false));
                }
            }
        }
        return reached;
    }

    private static double value(Sampled<Throw> sampled, double[] worth) {
        return Estimate.of(sampled, byDraw(worth), SIMULATED, new double[4]).value();
    }

    /** Howard's policy improvement: exact, step by step, never worse, and where it stops is the programme's optimum. */
    @Test
    void improvementRepeatedEndsWhereTheLinearProgrammeDoes() {
        List<State> states = states();
        Set<State> all = reached(states);
        for (double[] worth : List.of(LINEAR, BEHIND, AHEAD)) {
            ToySolved solved = new ToySolved(worth);
            ToyProgram best = new ToyProgram(states, worth, state -> Toy.ALL, state -> Throw.SAFE);
            Map<State, Throw> plays = new HashMap<>();
            all.forEach(state -> plays.put(state, Throw.SAFE));
            BiFunction<State, Boolean, Throw> policy =
                    (state, mine) -> mine ? Objects.requireNonNull(plays.get(state)) : Throw.SAFE;
            double[] values = values(solved, states, policy);
            int steps = 0;
            for (boolean moved = true; moved; steps++) {
                Map<State, Throw> improved = new HashMap<>();
                all.stream()
                        .filter(state -> state.mine() + state.theirs() > 0)
                        .forEach(state -> improved.put(state, solved.greedy(state, policy)));
                plays.putAll(improved);
                double[] after = values(solved, states, policy);
                moved = false;
                for (int i = 0; i < after.length; i++) {
                    // One step, as the adviser makes it, lies between the policy before and the best there is.
                    assertThat(after[i])
                            .as("%s", states.get(i))
                            .isBetween(values[i] - 1e-12, best.value(states.get(i)) + 1e-9);
                    moved |= after[i] > values[i] + 1e-12;
                }
                values = after;
            }
            // A round has at most three throws of mine left: as many steps, and one that finds nothing more.
            assertThat(steps).isBetween(2, 4);
            for (int i = 0; i < values.length; i++) {
                assertThat(values[i]).isCloseTo(best.value(states.get(i)), within(1e-9));
            }
        }
    }

    private static double[] values(ToySolved solved, List<State> states, BiFunction<State, Boolean, Throw> policy) {
        return states.stream().mapToDouble(state -> solved.value(state, policy)).toArray();
    }

    /** Rollouts of a base policy that is the best already find nothing better, and value it as the programme does. */
    @Test
    void theBestPolicyIsItsOwnImprovement() {
        State start = new State(3, 2, 0, false, true, false);
        for (double[] worth : List.of(LINEAR, BEHIND, AHEAD)) {
            ToyProgram best = new ToyProgram(List.of(start), worth, state -> Toy.ALL, state -> Throw.SAFE);
            Function<State, Throw> play = state -> state.myTurn()
                    ? Toy.ALL.stream()
                            .max(Comparator.comparingDouble(shot -> best.after(state, shot)))
                            .orElseThrow()
                    : Throw.SAFE;
            Sampled<Throw> found = Rollouts.halving(new Toy(play), start, Toy.ALL, 60_000, 12, s -> value(s, worth))
                    .get(0);
            Estimate estimate = Estimate.of(found, byDraw(worth), SIMULATED, new double[4]);
            assertThat(best.value(start) - best.after(start, found.shot())).isLessThan(0.01);
            assertThat(estimate.value())
                    .isCloseTo(best.after(start, found.shot()), within(6 * estimate.error() + 1e-3));
        }
    }

    @Test
    void safeThrowsRiseWhenAheadAndBoldOnesWhenBehind() {
        State last = new State(1, 0, 0, false, true, false);
        assertThat(best(last, BEHIND)).isEqualTo(Throw.BOLD);
        assertThat(best(new State(1, 0, -1, false, true, false), AHEAD)).isEqualTo(Throw.SAFE);
    }

    private static Throw best(State state, double[] worth) {
        return Rollouts.halving(
                        new Toy(Throw.SAFE),
                        state,
                        Toy.ALL,
                        3000,
                        2,
                        s -> Estimate.of(s, byDraw(worth), SIMULATED, new double[4])
                                .value())
                .get(0)
                .shot();
    }

    @Test
    void breakEvensAreThoseOfTheHandFormula() {
        ToySolved solved = new ToySolved(LINEAR);
        BiFunction<State, Boolean, Throw> policy = (state, mine) -> Throw.SAFE;
        State state = new State(2, 1, 0, false, true, false);
        List<Sampled<Throw>> ranked =
                Rollouts.halving(new Toy(Throw.SAFE), state, List.of(Throw.SAFE, Throw.BOLD), 40_000, 3, s -> 0);
        Estimate bold = of(ranked, Throw.BOLD);
        Estimate safe = of(ranked, Throw.SAFE);
        double worked = solved.next(state, Throw.BOLD, true, policy);
        double failed = solved.next(state, Throw.BOLD, false, policy);
        double alternative = solved.after(state, Throw.SAFE, policy);
        double byHand = (alternative - failed) / (worked - failed);
        // Three points or none against 0.9 of one: right from 0.3 on, whatever follows.
        assertThat(byHand).isCloseTo(0.3, within(1e-12));
        double found = (safe.value() - bold.ifNot()) / (bold.ifWorked() - bold.ifNot());
        assertThat(found).isCloseTo(byHand, within(0.01));
    }

    private static Estimate of(List<Sampled<Throw>> ranked, Throw shot) {
        return ranked.stream()
                .filter(sampled -> sampled.shot() == shot)
                .map(sampled -> Estimate.of(sampled, byDraw(LINEAR), SIMULATED, new double[4]))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void anyNumberOfThreadsGivesTheSame() throws Exception {
        State state = new State(3, 2, 0, false, true, false);
        List<String> answers = new ArrayList<>();
        for (int threads : new int[] {1, 3}) {
            ForkJoinPool pool = new ForkJoinPool(threads);
            try {
                answers.add(pool.submit(
                                () -> Rollouts.halving(new Toy(Throw.SAFE), state, Toy.ALL, 5000, 8, s -> s.share())
                                        .toString())
                        .get());
            } finally {
                pool.shutdown();
            }
        }
        assertThat(answers.get(0)).isEqualTo(answers.get(1));
    }
}
