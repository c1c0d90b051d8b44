package boardside.engine.odds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.ReferenceTable;
import boardside.engine.ReferenceTable.Row;
import boardside.engine.rules.FirstThrow;
import boardside.engine.rules.Game;
import boardside.engine.rules.GameRules;
import java.util.List;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class RaceTest {
    private static final GameRules STANDARD = GameRules.STANDARD;

    private static NetDistribution nets(String text) {
        double[] chances = new double[25];
        for (String part : text.split(" ")) {
            String[] pair = part.split(":");
            chances[12 + Integer.parseInt(pair[0])] = ReferenceTable.fraction(pair[1]);
        }
        return NetDistribution.of(chances);
    }

    private static NetDistribution steps(double up, double down) {
        double[] chances = new double[25];
        chances[13] = up;
        chances[11] = down;
        chances[12] = Math.max(0, 1 - up - down);
        return NetDistribution.of(chances);
    }

    private static RaceAnswer.Ends ends(Race race, int mine, int theirs) {
        return (RaceAnswer.Ends) race.from(mine, theirs, true);
    }

    static Stream<Row> problemOfPoints() {
        return ReferenceTable.read("08-race.csv").stream();
    }

    /** The problem of points, Pascal and Fermat 1654; Feller vol. 1, VI.8 (08-race.csv, exact fractions). */
    @ParameterizedTest
    @MethodSource("problemOfPoints")
    void solvesTheProblemOfPoints(Row row) {
        Race race = Race.solve(STANDARD, steps(row.number("p_a_scores_1"), row.number("q_b_scores_1")));
        RaceAnswer.Ends answer = ends(race, 21 - row.whole("a_needs"), 21 - row.whole("b_needs"));
        assertThat(answer.winProbability()).isCloseTo(row.number("p_a_wins"), within(6e-9));
        assertThat(answer.expectedRounds()).isCloseTo(row.number("expected_rounds"), within(6e-9));
    }

    /** Pascal to Fermat, 29 July 1654: of 64 pistoles who needs 1 point, the other 2, is due 48; 1 and 3: 56. */
    @ParameterizedTest
    @CsvSource({"1,2,48", "1,3,56", "2,3,44"})
    void dividesPascalsStakes(int needs, int otherNeeds, double due) {
        Race race = Race.solve(STANDARD.withTarget(3), steps(0.5, 0.5));
        assertThat(64 * ends(race, 3 - needs, 3 - otherNeeds).winProbability()).isCloseTo(due, within(1e-12));
    }

    /** The same against the binomial tail of a reference library: at least a successes in a + b - 1 trials. */
    @ParameterizedTest
    @CsvSource({"0.3,0.5", "0.45,0.1", "0.02,0.9", "0.5,0.5"})
    void agreesWithTheBinomialTailEverywhere(double up, double down) {
        Race race = Race.solve(STANDARD, steps(up, down));
        for (int mine = 0; mine < 21; mine++) {
            for (int theirs = 0; theirs < 21; theirs++) {
                int a = 21 - mine;
                int b = 21 - theirs;
                double tail =
                        BinomialDistribution.of(a + b - 1, up / (up + down)).survivalProbability(a - 1);
                assertThat(race.winOrHalf(mine, theirs, false)).isCloseTo(tail, within(1e-12));
            }
        }
    }

    static Stream<Row> netRaces() {
        return ReferenceTable.read("08-race-net.csv").stream();
    }

    /** Games to 21 with given net points (08-race-net.csv, exact fractions). */
    @ParameterizedTest
    @MethodSource("netRaces")
    void solvesRacesOfNetPoints(Row row) {
        Race race = Race.solve(STANDARD, nets(row.text("net_score_distribution_for_a")));
        RaceAnswer.Ends answer = ends(race, row.whole("a_start"), row.whole("b_start"));
        assertThat(answer.winProbability()).isCloseTo(row.number("p_a_wins"), within(6e-9));
        assertThat(answer.expectedRounds()).isCloseTo(row.number("expected_rounds"), within(6e-9));
    }

    static LongStream seeds() {
        return Generators.seeds(60);
    }

    /** EJML's dense solver on equations set up by playing rounds; rules and both nets drawn at random. */
    @ParameterizedTest
    @MethodSource("seeds")
    void agreesWithALinearSolveOfAReferenceLibrary(long seed) {
        UniformRandomProvider random = Generators.random(seed);
        GameRules rules = Generators.rules(random);
        NetDistribution meFirst = Generators.net(random);
        NetDistribution theyFirst = random.nextBoolean() ? meFirst : Generators.net(random);
        agree(rules, meFirst, theyFirst);
    }

    /** Rules and nets with which little can happen, so that races without end are among them. */
    private record Sparse(GameRules rules, NetDistribution meFirst, NetDistribution theyFirst) {
        static Sparse of(long seed) {
            UniformRandomProvider random = Generators.random(seed + 1_000_000);
            GameRules rules = Generators.rules(random).withTarget(1 + random.nextInt(16));
            rules = random.nextInt(3) > 0
                    ? rules.withExact(random.nextInt(rules.target()))
                    : STANDARD.withTarget(5).withFirstThrow(rules.firstThrow());
            return new Sparse(rules, sparse(random), sparse(random));
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void agreesWhereRacesMayNotEnd(long seed) {
        Sparse sparse = Sparse.of(seed);
        agree(sparse.rules(), sparse.meFirst(), sparse.theyFirst());
    }

    @Test
    void racesWithoutEndAreAmongThem() {
        long endless = seeds().mapToObj(Sparse::of)
                .filter(sparse -> Race.solve(sparse.rules(), sparse.meFirst(), sparse.theyFirst())
                                .fromStart()
                        instanceof RaceAnswer.Endless)
                .count();
        assertThat(endless).isBetween(10L, 50L);
    }

    private static NetDistribution sparse(UniformRandomProvider random) {
        double[] chances = new double[25];
        chances[random.nextInt(25)] += 0.5;
        chances[random.nextInt(3) > 0 ? 12 : random.nextInt(25)] += 0.25;
        chances[random.nextInt(3) > 0 ? 12 : random.nextInt(25)] += 0.25;
        return NetDistribution.of(chances);
    }

    private static void agree(GameRules rules, NetDistribution meFirst, NetDistribution theyFirst) {
        Race race = meFirst.equals(theyFirst) ? Race.solve(rules, meFirst) : Race.solve(rules, meFirst, theyFirst);
        LinearRace linear = new LinearRace(rules, meFirst, theyFirst);
        linear.index.forEach((state, i) -> {
            RaceAnswer answer = race.from(state.mine(), state.theirs(), state.meFirst());
            assertThat(answer.winOrHalf()).as("%s %s", rules, state).isCloseTo(linear.win[i], within(1e-12));
            if (answer instanceof RaceAnswer.Endless endless) {
                assertThat(endless.never()).as("%s %s", rules, state).isCloseTo(linear.never[i], within(1e-12));
            } else {
                assertThat(linear.never[i]).as("%s %s", rules, state).isCloseTo(0, within(1e-12));
                double expected = linear.rounds[i];
                assertThat(((RaceAnswer.Ends) answer).expectedRounds())
                        .as("%s %s", rules, state)
                        .isCloseTo(expected, within(1e-10 * Math.max(1, expected)));
            }
        });
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void seenFromTheOtherSideTheChancesAddUpToOne(long seed) {
        UniformRandomProvider random = Generators.random(seed + 2_000_000);
        GameRules rules = Generators.rules(random);
        NetDistribution meFirst = Generators.net(random);
        NetDistribution theyFirst = Generators.net(random);
        Race race = Race.solve(rules, meFirst, theyFirst);
        Race mirrored = Race.solve(rules, theyFirst.mirrored(), meFirst.mirrored());
        for (int a = 0; a < rules.target(); a++) {
            for (int b = 0; b < rules.target(); b++) {
                if (!rules.won(a, b) && !rules.won(b, a)) {
                    assertThat(race.winOrHalf(a, b, true) + mirrored.winOrHalf(b, a, false))
                            .isCloseTo(1, within(1e-12));
                }
            }
        }
    }

    /** With a fall-back of F = T - 1 and steps of 1 and 2 the one unknown can be had by hand. */
    @Test
    void solvesAnExactTargetByHand() {
        // To exactly 2, falling back to 1; they never score. From 1: win with 1, fall back with 2.
        Race race = Race.solve(STANDARD.withTarget(2).withExact(1), nets("+1:1/4 +2:3/4"));
        assertThat(ends(race, 1, 0).winProbability()).isEqualTo(1);
        assertThat(ends(race, 1, 0).expectedRounds()).isCloseTo(4, within(1e-12));
        // From 0: 2 wins at once, 1 leads to 1: 1 + 1/4 x 4.
        assertThat(ends(race, 0, 0).expectedRounds()).isCloseTo(2, within(1e-12));
    }

    /**
     * Feller vol. 1, XIII.7, success runs: the mean wait for r successes in a row is (1 - p^r) / (q p^r). A step of 12 in
     * a race to less than that passes the target and falls back to 0: a failure.
     */
    @ParameterizedTest
    @CsvSource({"1,0.5", "3,0.5", "6,0.8", "11,0.4"})
    void anExactTargetWithFallBackToNothingIsASuccessRun(int run, double p) {
        double[] chances = new double[25];
        chances[13] = p;
        chances[24] = 1 - p;
        Race race = Race.solve(STANDARD.withTarget(run).withExact(0), NetDistribution.of(chances));
        double wait = (1 - Math.pow(p, run)) / ((1 - p) * Math.pow(p, run));
        assertThat(ends(race, 0, 0).expectedRounds()).isCloseTo(wait, within(1e-12 * wait));
        assertThat(ends(race, 0, 0).winProbability()).isCloseTo(1, within(1e-14));
    }

    /** Symmetry: two equal sides are even at equal scores, and a point more never hurts without variants. */
    @Test
    void equalSidesAreEvenAndPointsHelp() {
        RoundDistribution side = RoundDistribution.of(new BagChances(0.4, 0.35));
        Race race = Race.solve(STANDARD, side, side);
        for (int a = 0; a < 21; a++) {
            assertThat(race.winOrHalf(a, a, true)).isCloseTo(0.5, within(1e-13));
            for (int b = 0; b < 20; b++) {
                assertThat(race.winOrHalf(b + 1, a, true)).isGreaterThan(race.winOrHalf(b, a, true));
            }
        }
    }

    @Test
    void answersCertainBags() {
        RoundDistribution allIn = RoundDistribution.of(new BagChances(1, 0));
        RoundDistribution allOn = RoundDistribution.of(new BagChances(0, 1));
        assertThat(Race.solve(STANDARD, allIn, RoundDistribution.ghost(0)).fromStart())
                .isEqualTo(new RaceAnswer.Ends(1, 2));
        assertThat(Race.solve(STANDARD, allOn, RoundDistribution.ghost(3)).fromStart())
                .isEqualTo(new RaceAnswer.Ends(1, 21));
        assertThat(Race.solve(STANDARD, allOn, RoundDistribution.ghost(12)).fromStart())
                .isEqualTo(new RaceAnswer.Ends(0, 3));
        assertThat(Race.solve(STANDARD, allOn, allIn).fromStart()).isEqualTo(new RaceAnswer.Ends(0, 3));
        assertThat(Race.solve(STANDARD, allOn, RoundDistribution.ghost(4)).fromStart())
                .isEqualTo(new RaceAnswer.Endless(
                        0.5,
                        1,
                        "both sides can come to make the same points every round, so that nobody ever scores again"));
    }

    /** By hand: always 8 net goes 0, 8, 16, back to 15, back to 15, ...: an exact 21 is never hit. */
    @Test
    void findsThatAnExactTargetIsNeverHit() {
        Race race = Race.solve(STANDARD.withExact(15), nets("+8:1"));
        assertThat(race.fromStart())
                .isEqualTo(new RaceAnswer.Endless(
                        0.5, 1, "an exact 21 may never be hit with the points that can be made"));
        assertThat(race.from(5, 0, true)).isEqualTo(new RaceAnswer.Ends(1, 2));
    }

    /** Kept first throw: once the side that never moves the score throws first, nobody scores any more. */
    @Test
    void findsARaceThatMayComeToAStand() {
        NetDistribution stuck = nets("0:1");
        NetDistribution moves = nets("1:1/2 -1:1/2");
        Race kept = Race.solve(STANDARD.withTarget(2), stuck, moves);
        assertThat(kept.from(1, 1, true)).isInstanceOf(RaceAnswer.Endless.class);
        assertThat(kept.from(1, 1, false)).isEqualTo(new RaceAnswer.Ends(0.5, 1));
        // From 0-1, they to throw: 1/2 lost at once, 1/2 to 1-1 with my first throw, and there it stands.
        assertThat(kept.from(0, 1, false)).isInstanceOfSatisfying(RaceAnswer.Endless.class, answer -> {
            assertThat(answer.never()).isEqualTo(0.5);
            assertThat(answer.winOrHalf()).isEqualTo(0.25);
        });
        Race swapped = Race.solve(STANDARD.withTarget(2).withFirstThrow(FirstThrow.SWAP), stuck, moves);
        assertThat(swapped.from(1, 1, true)).isEqualTo(new RaceAnswer.Ends(0.5, 2));
    }

    @Test
    void valuesAGameOverOrOpen() {
        Race race = Race.solve(STANDARD, steps(0.5, 0.5));
        assertThat(race.value(new Game(STANDARD, 21, 3, true, 30))).isEqualTo(1);
        assertThat(race.value(new Game(STANDARD, 3, 22, true, 30))).isZero();
        assertThat(race.value(new Game(STANDARD, 20, 20, true, 40))).isEqualTo(0.5);
    }

    @Test
    void refusesAScoreAtWhichNoRaceIsOpen() {
        Race race = Race.solve(STANDARD.withSkunk(13), steps(0.5, 0.5));
        for (List<Integer> score : List.of(List.of(21, 0), List.of(-1, 3), List.of(3, 21))) {
            assertThatThrownBy(() -> race.from(score.get(0), score.get(1), true))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessage(
                            "a race to 21 is open at scores from 0 to 20, not at " + score.get(0) + "-" + score.get(1));
        }
        assertThatThrownBy(() -> Race.solve(STANDARD.withTarget(201).withExact(0), steps(0.5, 0.5)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("a race to an exact target is solved up to 200 points, not 201");
        assertThatThrownBy(() -> race.winOrHalf(13, 0, true))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(
                        "the race is over at 13-0, by a skunk of 13 to nil; start from a score at which it is open");
    }
}
