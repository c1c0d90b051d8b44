package boardside.engine.odds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.ReferenceTable;
import boardside.engine.ReferenceTable.Row;
import boardside.engine.rules.GameRules;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.apache.commons.rng.UniformRandomProvider;
import org.ejml.simple.SimpleMatrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class ClimbTest {
    private static Climb of(Double... wins) {
        return new Climb(0, List.of(wins));
    }

    private static Climb random(long seed) {
        UniformRandomProvider random = Generators.random(seed);
        int rungs = 2 + random.nextInt(12);
        return new Climb(0, random.doubles(rungs).boxed().toList());
    }

    static LongStream seeds() {
        return Generators.seeds(20);
    }

    /** Feller vol. 1, XV: the Ehrenfest model; and a staircase (08-birth-death.csv). */
    @ParameterizedTest
    @ValueSource(strings = {"ehrenfest-8", "staircase-7"})
    void settlesAsBirthDeathChainsDo(String chain) {
        List<Row> rows = ReferenceTable.read("08-birth-death.csv").stream()
                .filter(row -> row.text("chain").equals(chain))
                .toList();
        // At the ends whatever is no move stays there: a win at the top, a loss at the bottom.
        List<Double> wins = rows.stream()
                .map(row -> row.whole("state") == 0 ? row.number("p_up") : 1 - row.number("p_down"))
                .toList();
        double[] shares = new Climb(0, wins).stationary();
        for (Row row : rows) {
            assertThat(shares[row.whole("state")]).isCloseTo(row.number("stationary"), within(6e-11));
        }
    }

    /** Feller vol. 1, XV: a walk between two reflecting ends has shares that go as (p / q)^k. */
    @ParameterizedTest
    @ValueSource(doubles = {0.5, 0.6, 0.45, 0.001, 0.999})
    void oneChanceIsAReflectingWalk(double p) {
        double[] shares = new Climb(0, Collections.nCopies(13, p)).stationary();
        double ratio = p / (1 - p);
        double sum = IntStream.rangeClosed(0, 12)
                .mapToDouble(k -> Math.pow(ratio, k))
                .sum();
        for (int k = 0; k <= 12; k++) {
            assertThat(shares[k]).isCloseTo(Math.pow(ratio, k) / sum, within(1e-14));
        }
    }

    /** EJML: shares that one more game does not change. */
    @ParameterizedTest
    @MethodSource("seeds")
    void agreesWithALinearSolveOfAReferenceLibrary(long seed) {
        Climb climb = random(seed);
        int n = climb.winByRung().size();
        SimpleMatrix a = new SimpleMatrix(n, n);
        for (int i = 0; i < n; i++) {
            double win = climb.winByRung().get(i);
            int up = Math.min(i + 1, n - 1);
            int down = Math.max(i - 1, 0);
            a.set(up, i, a.get(up, i) + win);
            a.set(down, i, a.get(down, i) + 1 - win);
            a.set(i, i, a.get(i, i) - 1);
        }
        for (int i = 0; i < n; i++) {
            a.set(0, i, 1);
        }
        SimpleMatrix b = new SimpleMatrix(n, 1);
        b.set(0, 0, 1);
        SimpleMatrix shares = a.solve(b);
        double mean = 0;
        for (int i = 0; i < n; i++) {
            assertThat(climb.stationary()[i]).isCloseTo(shares.get(i, 0), within(1e-12));
            mean += i * shares.get(i, 0);
        }
        assertThat(climb.mean()).isCloseTo(mean, within(1e-11));
        assertThat(climb.stationary()[climb.mode()])
                .isEqualTo(Arrays.stream(climb.stationary()).max().orElseThrow());
    }

    /**
     * Levitt 1971, table I (05-staircase-targets.csv): a one-up one-down staircase settles where the chance is one half.
     * In the long run steps up and down balance, but for stays at the ends; and the rung met most often is next to the
     * level.
     */
    @ParameterizedTest
    @CsvSource({"0.3,0.3", "0.5,0.3", "0.65,0.25", "0.4,0.05"})
    void settlesWhereTheChanceIsOneHalf(double in, double on) {
        double target = ReferenceTable.read("05-staircase-targets.csv").stream()
                .filter(row -> row.text("successes_needed").equals("1")
                        && row.text("misses_needed").equals("1"))
                .findFirst()
                .orElseThrow()
                .number("target_success_rate");
        RoundDistribution me = RoundDistribution.of(new BagChances(in, on));
        Climb climb = Climb.of(GameRules.STANDARD, me, 0, 12);
        double[] shares = climb.stationary();
        double won = 0;
        for (int rung = 0; rung <= 12; rung++) {
            won += shares[rung] * climb.winByRung().get(rung);
        }
        double ends = shares[0] + shares[12];
        assertThat(won).isCloseTo(target, within(ends + 1e-12));
        assertThat(ends).isLessThan(0.01);
        double level = Level.of(GameRules.STANDARD, me).value();
        assertThat((double) climb.mode()).isCloseTo(level, within(1.0));
        assertThat(climb.mean()).isCloseTo(level, within(0.3));
    }

    /** By hand: 4 points a round beat ghosts up to 3, are even with 4 (no end, counted half) and lose above. */
    @Test
    void certainBagsMoveBetweenFewRungs() {
        Climb climb = Climb.of(GameRules.STANDARD, RoundDistribution.of(new BagChances(0, 1)), 0, 12);
        assertThat(climb.stationary()).containsExactly(0, 0, 0, 0.25, 0.5, 0.25, 0, 0, 0, 0, 0, 0, 0);
        assertThat(climb.mode()).isEqualTo(4);
        assertThat(climb.mean()).isEqualTo(4);
        // Four wins, then a loss half the time, else at the next game.
        assertThat(climb.gamesToFirstLoss()).isEqualTo(4 + 0.5 * 1 + 0.5 * 2);
        // All in: up to 12, and there won or lost by half; 11 is always won.
        Climb allIn = Climb.of(GameRules.STANDARD, RoundDistribution.of(new BagChances(1, 0)), 0, 12);
        assertThat(allIn.stationary()[11]).isCloseTo(1.0 / 3, within(1e-15));
        assertThat(allIn.stationary()[12]).isCloseTo(2.0 / 3, within(1e-15));
        Climb allOff = Climb.of(GameRules.STANDARD, RoundDistribution.of(new BagChances(0, 0)), 0, 12);
        assertThat(allOff.stationary()[0]).isCloseTo(2.0 / 3, within(1e-15));
        assertThat(allOff.stationary()[1]).isCloseTo(1.0 / 3, within(1e-15));
    }

    @Test
    void aLadderMayStartAndEndAnywhere() {
        RoundDistribution me = RoundDistribution.of(new BagChances(0.5, 0.3));
        Climb climb = Climb.of(GameRules.STANDARD, me, 5, 9);
        assertThat(climb.highest()).isEqualTo(9);
        assertThat(climb.stationary()).hasSize(5);
        assertThat(climb.mode()).isBetween(5, 9);
        Climb oneRung = Climb.of(GameRules.STANDARD, me, 7, 7);
        assertThat(oneRung.stationary()).containsExactly(1);
        assertThat(oneRung.mean()).isEqualTo(7);
    }

    /** A constant chance to win makes the games to the first loss geometric: mean 1 / (1 - w). */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.3, 0.9})
    void gamesToTheFirstLossAreGeometricForOneChance(double win) {
        assertThat(new Climb(0, Collections.nCopies(13, win)).gamesToFirstLoss())
                .isCloseTo(1 / (1 - win), within(1e-12));
    }

    @Test
    void whoNeverLosesWaitsForEver() {
        assertThat(of(1.0, 1.0).gamesToFirstLoss()).isInfinite();
        assertThat(of(1.0, 0.0, 1.0).gamesToFirstLoss()).isEqualTo(2);
        assertThat(of(1.0, 1.0).gamesToPin(1, 1, 0.9)).isEmpty();
        assertThat(of(0.0, 1.0).stationary()).containsExactly(1, 0);
    }

    /** All ways a few games can go, one by one. */
    @ParameterizedTest
    @MethodSource("seeds")
    void theErrorIsThatOfAllWaysGamesCanGo(long seed) {
        Climb climb = random(seed);
        double[] shares = climb.stationary();
        for (int games = 1; games <= 6; games++) {
            double square = 0;
            for (int rung = 0; rung < shares.length; rung++) {
                square += shares[rung] * squares(climb, rung, games, games, -2.3 * games);
            }
            assertThat(climb.error(2.3, games)).isCloseTo(Math.sqrt(square), within(1e-12));
        }
    }

    /** Mean of ((sum + rungs of the games left) / all)^2. */
    private static double squares(Climb climb, int rung, int left, int all, double sum) {
        if (left == 0) {
            return sum / all * sum / all;
        }
        int top = climb.winByRung().size() - 1;
        double win = climb.winByRung().get(rung);
        return win * squares(climb, Math.min(rung + 1, top), left - 1, all, sum + rung)
                + (1 - win) * squares(climb, Math.max(rung - 1, 0), left - 1, all, sum + rung);
    }

    /** By hand: after the first loss, always at rung 1, come rungs 0, 1, 0, 1, ... */
    @Test
    void gamesToPinByHand() {
        Climb sure = of(1.0, 0.0, 0.0);
        // Their means are 0, 1/2, 1/3, 1/2, 2/5, 1/2, ...: within 0.15 of 1/2 from the fourth game on.
        assertThat(sure.gamesToPin(0.5, 0.15, 0.9)).hasValue(4);
        assertThat(sure.gamesToPin(0.5, 0.5, 0.9)).hasValue(1);
        assertThat(sure.gamesToPin(2, 1, 0.9)).isEmpty();
    }

    @Test
    void refusesWhatIsNoLadder() {
        RoundDistribution me = RoundDistribution.ghost(5);
        for (int[] rungs : new int[][] {{-1, 12}, {0, 13}, {7, 6}}) {
            assertThatThrownBy(() -> Climb.of(GameRules.STANDARD, me, rungs[0], rungs[1]))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessage("the rungs are ghost scores 0 to 12, the lowest first, not " + rungs[0] + " to "
                            + rungs[1]);
        }
        assertThatThrownBy(() -> of(1.1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("a chance to win is 0 to 1, not 1.1");
        assertThatThrownBy(() -> of(0.5).error(3, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("at least one game is needed, not 0");
        assertThatThrownBy(() -> of(0.5).gamesToPin(13, 1, 0.9))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("a level is 0 to 12, a distance above 0, a chance between 0 and 1, not 13.0, 1.0 and 0.9");
    }

    /** The rule of the ladder: one up when won, one down when lost, the same at the ends. */
    @ParameterizedTest
    @CsvSource({"5,true,6", "5,false,4", "12,true,12", "0,false,0", "0,true,1", "12,false,11"})
    void nextRung(int rung, boolean won, int next) {
        assertThat(Climb.next(rung, won)).isEqualTo(next);
    }

    @Test
    void startsWhereEveryRaceUpToThereIsLikelyWon() {
        assertThat(of(0.99, 0.9, 0.75, 0.7, 0.4).start(0.7)).isEqualTo(3);
        assertThat(of(0.99, 0.6, 0.75).start(0.7)).isZero();
        assertThat(of(0.3, 0.1).start(0.7)).isZero();
        assertThat(of(0.99, 0.98).start(0.7)).isEqualTo(1);
        assertThat(new Climb(4, List.of(0.9, 0.8, 0.2)).start(0.7)).isEqualTo(5);
    }
}
